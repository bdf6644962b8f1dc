namespace SheetGen.Drawing.Primitives;

/// <summary>What a layer is for; the layer list gives each role its name and looks. Drawn in this order.</summary>
public enum LayerRole
{
    Fill,
    Panel,
    Drainage,
    Obstruction,
    Utility,
    Boundary,
    Boring,
    ExistingGround,
    FinishedGrade,
    LayoutLine,
    Face,
    NailTrace,
    NailLimit,
    Wall,
    SectionLimit,
    RowLine,
    Nail,
    NailNoted,
    NailUnresolved,
    NailTest,
    Axis,
    Dimension,
    Leader,
    Label,
    Callout,
    MatchLine,
    Detail,
    DetailHidden,
    Table,
    TableText,
    Note,
    Title,
    Border,
    TitleBlock,
    Viewport,
}

public static class LayerRoles
{
    /// <summary>True for what is drawn after the masks that texts stand on; all else may run under a mask.</summary>
    public static bool IsAboveMasks(this LayerRole layer) => layer is
        LayerRole.Nail or LayerRole.NailNoted or LayerRole.NailUnresolved or LayerRole.NailTest or LayerRole.Dimension or LayerRole.Leader
        or LayerRole.Label or LayerRole.Callout or LayerRole.MatchLine or LayerRole.TableText or LayerRole.Note or LayerRole.Title;
}

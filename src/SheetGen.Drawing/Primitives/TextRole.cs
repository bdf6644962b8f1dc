namespace SheetGen.Drawing.Primitives;

/// <summary>What a text is for; the text list gives each role its height and letters.</summary>
public enum TextRole
{
    /// <summary>Small text in and beside the drawing.</summary>
    Label,
    Callout,
    Dimension,
    Table,
    Note,
    /// <summary>Heading of a note block or table.</summary>
    Heading,
    /// <summary>Title below a view.</summary>
    ViewTitle,
    TitleBlock,
    SheetTitle,
}

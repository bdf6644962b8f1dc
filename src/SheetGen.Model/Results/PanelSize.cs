namespace SheetGen.Model.Results;

/// <summary>How a panel compares with the standard one.</summary>
public enum PanelSize
{
    Full,

    /// <summary>Full height, but not the standard width, or cut by an opening.</summary>
    Partial,

    /// <summary>Not the standard height, of any width.</summary>
    SpecialHeight,
}

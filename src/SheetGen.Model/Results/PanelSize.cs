namespace SheetGen.Model.Results;

/// <summary>How a panel compares with the standard one.</summary>
public enum PanelSize
{
    Full,

    /// <summary>Full height, not the standard width.</summary>
    Partial,

    /// <summary>Not the standard height, of any width.</summary>
    SpecialHeight,
}

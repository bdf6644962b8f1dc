namespace SheetGen.Writers.Workbook;

/// <summary>How a cell looks.</summary>
internal enum CellLook
{
    Plain,

    /// <summary>A text: to the left, a little off the cell's edge.</summary>
    Label,

    /// <summary>Bold.</summary>
    Strong,
    Title,
    Head,
    Total,

    /// <summary>A cell that the user may change.</summary>
    Input,
    Note,

    /// <summary>Something that a person must look at.</summary>
    Warning,
    Wrapped,

    /// <summary>A text that leads to another sheet.</summary>
    Link,
}

namespace SheetGen.Writers.Workbook;

/// <summary>Look and format of a cell; every pair has its own style in the workbook.</summary>
internal readonly record struct CellStyle(CellLook Look, CellFormat Format)
{
    public static CellStyle Text { get; } = new(CellLook.Label, CellFormat.General);

    public static CellStyle Title { get; } = new(CellLook.Title, CellFormat.General);

    public static CellStyle Head { get; } = new(CellLook.Head, CellFormat.General);

    public static CellStyle Note { get; } = new(CellLook.Note, CellFormat.General);

    public static CellStyle Wrapped { get; } = new(CellLook.Wrapped, CellFormat.General);

    public static CellStyle Link { get; } = new(CellLook.Link, CellFormat.General);

    /// <summary>True for a cell that may be changed while its sheet is protected.</summary>
    public bool IsOpen { get; init; }

    /// <summary>True for a text that a spreadsheet would read as a formula if it were typed in.</summary>
    public bool IsQuoted { get; init; }

    public static int LookCount => Enum.GetValues<CellLook>().Length;

    public static int FormatCount => Enum.GetValues<CellFormat>().Length;

    /// <summary>Place among the workbook's cell formats.</summary>
    public uint Index => (uint)((((IsOpen ? 2 : 0) + (IsQuoted ? 1 : 0)) * LookCount + (int)Look) * FormatCount + (int)Format);

    public static implicit operator CellStyle(CellFormat format) => new(CellLook.Plain, format);
}

namespace SheetGen.Dxf;

/// <summary>A drawing as plain data: what <see cref="DxfWriter"/> writes and <see cref="DxfReader"/> gives.</summary>
/// <remarks>A new document has layers 0 and Defpoints, text style and dimension style Standard, and application ACAD.</remarks>
public sealed class DxfDocument
{
    /// <summary>A document with the entries that every drawing has.</summary>
    public DxfDocument()
        : this(true)
    {
    }

    private DxfDocument(bool withStandardEntries)
    {
        if (withStandardEntries)
            AddStandardEntries();
    }

    /// <summary>Settings of the drawing.</summary>
    public DxfHeader Header { get; set; } = new();

    /// <summary>Layers.</summary>
    public DxfTable<DxfLayer> Layers { get; } = new();

    /// <summary>Linetypes other than ByBlock, ByLayer and Continuous.</summary>
    public DxfTable<DxfLinetype> Linetypes { get; } = new();

    /// <summary>Text styles.</summary>
    public DxfTable<DxfTextStyle> TextStyles { get; } = new();

    /// <summary>Dimension styles.</summary>
    public DxfTable<DxfDimStyle> DimStyles { get; } = new();

    /// <summary>Applications that keep extended data.</summary>
    public DxfTable<DxfAppId> AppIds { get; } = new();

    /// <summary>Blocks; not model space, paper space or the blocks of dimensions.</summary>
    public DxfTable<DxfBlock> Blocks { get; } = new();

    /// <summary>Entities of model space, in drawing order.</summary>
    public List<DxfEntity> Model { get; } = [];

    /// <summary>Layouts in the order of their tabs. A file has at least one: for none, the writer adds an empty one named Layout1.</summary>
    public DxfTable<DxfLayout> Layouts { get; } = new();

    /// <summary>A document with nothing in it, for the reader to fill in the file's order.</summary>
    internal static DxfDocument Bare() => new(false);

    /// <summary>Adds what every drawing has and this one lacks.</summary>
    internal void AddStandardEntries()
    {
        AddMissing(Layers, new DxfLayer("0"));
        AddMissing(Layers, new DxfLayer("Defpoints") { Plot = false });
        AddMissing(TextStyles, new DxfTextStyle("Standard", "txt"));
        AddMissing(DimStyles, new DxfDimStyle("Standard"));
        AddMissing(AppIds, new DxfAppId("ACAD"));
    }

    private static void AddMissing<T>(DxfTable<T> table, T item)
        where T : class, IDxfNamed
    {
        if (!table.Contains(item.Name))
            table.Add(item);
    }
}

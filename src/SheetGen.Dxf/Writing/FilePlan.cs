namespace SheetGen.Dxf;

/// <summary>The handles that must be known before anything is written, given out in a fixed order.</summary>
internal sealed class FilePlan
{
    /// <summary>The names of the nine tables in the order of the file.</summary>
    internal static readonly DxfSequence<string> TableNames =
        ["VPORT", "LTYPE", "LAYER", "STYLE", "VIEW", "UCS", "APPID", "DIMSTYLE", "BLOCK_RECORD"];

    private readonly Dictionary<string, int> _byName = new(StringComparer.OrdinalIgnoreCase);
    private int _last = 0x20;

    internal FilePlan(DxfDocument document)
    {
        foreach (var name in TableNames)
            Reserve("TABLE", name);
        (Root, Groups, Layouts, MlineStyles, PlotSettings, MlineStyle) = (Next(), Next(), Next(), Next(), Next(), Next());
        HasMasks = document.Model.Concat(document.Layouts.SelectMany(l => l.Entities)).Concat(document.Blocks.SelectMany(b => b.Entities)).Any(e => e is DxfWipeout);
        MaskSettings = HasMasks ? Next() : 0;
        Reserve("VPORT", "*Active");
        string[] builtIn = ["ByBlock", "ByLayer", DxfLinetype.Continuous];
        foreach (var name in builtIn.Concat(document.Linetypes.Select(l => l.Name)))
            Reserve("LTYPE", name);
        ReserveAll("LAYER", document.Layers);
        ReserveAll("STYLE", document.TextStyles);
        ReserveAll("APPID", document.AppIds);
        ReserveAll("DIMSTYLE", document.DimStyles);

        Model = new("*Model_Space", null, document.Model, Next(), Next(), 0);
        var sheets = document.Layouts.Count > 0 ? document.Layouts.ToList() : [new DxfLayout("Layout1", 297, 210)];
        Sheets = [.. sheets.Select((sheet, i) =>
            new PlannedSpace(i == 0 ? "*Paper_Space" : $"*Paper_Space{i - 1}", sheet, sheet.Entities, Next(), Next(), Next()))];
        ReserveAll("BLOCK_RECORD", document.Blocks);
        var dimensions = 0;
        foreach (var space in Spaces)
        {
            foreach (var dimension in space.Entities.OfType<DxfDimension>())
                space.Dimensions.Add(new($"*D{++dimensions}", Next(), dimension));
        }
    }

    internal int Root { get; }

    internal int Groups { get; }

    internal int Layouts { get; }

    internal int MlineStyles { get; }

    internal int PlotSettings { get; }

    internal int MlineStyle { get; }

    /// <summary>Whether there are masks.</summary>
    internal bool HasMasks { get; }

    /// <summary>The object that says how masks are shown; 0 where there are none.</summary>
    internal int MaskSettings { get; }

    internal PlannedSpace Model { get; }

    internal IReadOnlyList<PlannedSpace> Sheets { get; }

    internal IEnumerable<PlannedSpace> Spaces => Sheets.Prepend(Model);

    internal IEnumerable<PlannedDimension> DimensionBlocks => Spaces.SelectMany(s => s.Dimensions);

    /// <summary>One above the last handle given out.</summary>
    internal int Seed => _last + 1;

    /// <summary>A handle not given out before.</summary>
    internal int Next() => ++_last;

    /// <summary>The handle reserved for a name in a table.</summary>
    internal int this[string table, string name] => _byName[table + "|" + name];

    private void Reserve(string table, string name) => _byName.Add(table + "|" + name, Next());

    private void ReserveAll(string table, IEnumerable<IDxfNamed> items)
    {
        foreach (var item in items)
            Reserve(table, item.Name);
    }
}

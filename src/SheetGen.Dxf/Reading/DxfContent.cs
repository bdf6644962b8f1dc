using System.Globalization;

namespace SheetGen.Dxf;

/// <summary>A group of a DXF file.</summary>
/// <param name="Code">Group code.</param>
/// <param name="Value">Value as text, decoded.</param>
/// <param name="Line">Line of the value; of a binary file the line that it would have in text.</param>
public readonly record struct DxfGroup(int Code, string Value, int Line);

/// <summary>An entity as it stands in a file, in space and with everything that it has.</summary>
/// <param name="Kind">The entity's type in capitals, such as LWPOLYLINE.</param>
/// <param name="Line">Line where it starts.</param>
/// <param name="Groups">Its groups in order, without extended data.</param>
public sealed record DxfRecord(string Kind, int Line, IReadOnlyList<DxfGroup> Groups)
{
    /// <summary>Handle in capitals; empty where it has none (R12 and before may leave it out).</summary>
    public string Handle => Text(5).Trim().ToUpperInvariant();

    public string Layer => Text(8).Trim() is { Length: > 0 } layer ? layer : "0";

    public bool InPaperSpace => Whole(67) == 1;

    public bool IsInvisible => Whole(60) == 1;

    public bool Has(int code) => Groups.Any(g => g.Code == code);

    /// <summary>The first value of a code; empty where there is none.</summary>
    public string Text(int code)
    {
        foreach (DxfGroup group in Groups)
        {
            if (group.Code == code)
                return group.Value;
        }
        return "";
    }

    /// <summary>The first value of a code as a number; the other where there is none, or it is no finite number.</summary>
    public double Real(int code, double otherwise = 0) => Number(Text(code)) ?? otherwise;

    public int Whole(int code, int otherwise = 0) => int.TryParse(Text(code).Trim(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value) ? value : otherwise;

    /// <summary>All values of a code as numbers.</summary>
    public double[] Reals(int code) => [.. Groups.Where(g => g.Code == code).Select(g => Number(g.Value) ?? 0)];

    /// <summary>The text as a finite number; null where it is none.</summary>
    public static double? Number(string text) =>
        double.TryParse(text.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;
}

/// <summary>A block of a DXF file.</summary>
/// <param name="Base">X, Y and Z of its base point.</param>
/// <param name="IsExternal">True for an external reference, whose content is not in the file.</param>
public sealed record DxfBlockContent(string Name, IReadOnlyList<double> Base, bool IsExternal, IReadOnlyList<DxfRecord> Records);

/// <summary>
/// What a DXF file (R12 on, text or binary) holds, entity by entity as it stands: for those who need heights, meshes or handles, which
/// <see cref="DxfDocument"/> leaves out.
/// </summary>
public sealed class DxfContent
{
    private DxfContent(RawFile raw)
    {
        Header = raw.Header.ToDictionary(h => h.Key, h => (IReadOnlyList<string>)[.. h.Value.Groups.Select(g => g.Value.Trim())], StringComparer.OrdinalIgnoreCase);
        Layers = [.. raw.Tables.Where(r => r.Kind == "LAYER").Select(r => r.Name(2))];
        var blocks = new Dictionary<string, DxfBlockContent>(StringComparer.OrdinalIgnoreCase);
        var model = new List<DxfRecord>();
        foreach (var (head, content) in BlockReader.Split(raw.Blocks))
        {
            string name = head.Name(2).Replace('$', '*');
            if (name.StartsWith("*Model_Space", StringComparison.OrdinalIgnoreCase))
                model.AddRange(content.Select(Of));
            else if (!name.StartsWith("*Paper_Space", StringComparison.OrdinalIgnoreCase) && name.Length > 0)
                blocks.TryAdd(head.Name(2), new DxfBlockContent(head.Name(2), [head.Real(10), head.Real(20), head.Real(30)], (head.Integer(70) & 4) != 0, [.. content.Select(Of)]));
        }
        Blocks = blocks;
        Entities = [.. model, .. raw.Entities.Select(Of)];
    }

    /// <summary>Values of the header's variables.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> Header { get; }

    public IReadOnlyList<string> Layers { get; }

    public IReadOnlyDictionary<string, DxfBlockContent> Blocks { get; }

    /// <summary>Entities of model space, and of paper space where they say so.</summary>
    public IReadOnlyList<DxfRecord> Entities { get; }

    /// <summary>Release such as AC1015; empty where the file does not tell.</summary>
    public string Version => Header.TryGetValue("$ACADVER", out IReadOnlyList<string>? value) && value.Count > 0 ? value[0] : "";

    /// <summary>Reads a file. Never throws for what is in it.</summary>
    /// <returns>The content, or why there is none.</returns>
    public static (DxfContent? Content, DxfProblem? Error) Read(byte[] bytes)
    {
        var log = new ReadLog();
        var raw = RawFile.Read(bytes, log);
        return log.Error is { } error ? (null, error) : (new DxfContent(raw), null);
    }

    private static DxfRecord Of(Record record) =>
        new(record.Kind, record.Line, [.. record.Groups.Select(g => new DxfGroup(g.Code, StringCoding.Decode(g.Value), g.Line))]);
}

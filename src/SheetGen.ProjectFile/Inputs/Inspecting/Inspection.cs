using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Inputs.Csv;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.Inspecting;

/// <summary>What a file of another program holds, and what of it a project file can take.</summary>
/// <param name="Lines">For a person, a line each.</param>
/// <param name="Yaml">Blocks ready to paste into a project file; empty where nothing can be taken.</param>
/// <param name="Unit">The project unit that fits it.</param>
/// <param name="Problems">Why it cannot be read; empty where it can.</param>
public sealed record Inspection(IReadOnlyList<string> Lines, IReadOnlyList<YamlBlock> Yaml, LengthUnit Unit, IReadOnlyList<Problem> Problems)
{
    /// <summary>Length of the first alignment in the project unit that fits; 0 where there is none.</summary>
    public double LineLength { get; init; }

    /// <summary>Where along that alignment its only designed profile begins and ends, in the same unit; null where it has none or several.</summary>
    public (double From, double To)? Profile { get; init; }

    /// <summary>Name of that alignment.</summary>
    public string LineName { get; init; } = "";

    public bool IsReadable => !Problems.Any(p => p.Severity == Severity.Error);

    /// <summary>Reads a file, whatever it is called: DXF (text or binary), LandXML or a table.</summary>
    public static Inspection Of(string path)
    {
        var problems = new ProblemList();
        var spot = new SourceSpot(path, 1, 1);
        InputFile file = InputFile.Read(path, InputFile.MostDrawing);
        if (file.Bytes is not { } bytes)
        {
            problems.Add(file.IsTooLarge ? ProblemCodes.TooLarge : ProblemCodes.CannotRead, spot, $"the file cannot be read: {file.Why}", "check the path");
            return Failed(problems);
        }
        var foreign = new ForeignFile(path, System.IO.Path.GetFileName(path), bytes, spot);
        string end = System.IO.Path.GetExtension(path).ToLowerInvariant();
        Inspection? inspection = end switch
        {
            ".xml" or ".landxml" => LandXmlInspection.Of(foreign, problems),
            ".dxf" or ".dwg" => DxfInspection.Of(foreign, problems),
            ".csv" or ".txt" or ".tsv" or ".pnt" => CsvInspection(foreign, problems),
            _ => Unknown(problems, spot),
        };
        return inspection is null ? Failed(problems) : inspection with { Problems = problems.Sorted() };
    }

    /// <summary>All blocks as one text under their keys.</summary>
    public string YamlText => string.Join("\n", Yaml.GroupBy(y => y.Key).Select(g => g.Key + ":\n" + string.Concat(g.Select(y => y.Text))));

    private static Inspection Failed(ProblemList problems) => new([], [], LengthUnit.Foot, problems.Sorted());

    private static Inspection? Unknown(ProblemList problems, SourceSpot spot)
    {
        problems.Add(ProblemCodes.NotThisKind, spot, "inspect reads .dxf, .xml (LandXML) and .csv", "give the file the ending of its kind");
        return null;
    }

    private static Inspection? CsvInspection(ForeignFile file, ProblemList problems)
    {
        if (CsvTable.Read(file, problems) is not { } table)
            return null;
        string[] known = [.. table.Columns.OrderBy(c => c.Value).Select(c => c.Key)];
        var lines = new List<string>
        {
            $"table of {table.Rows.Count} rows{(table.Heads.Count == 0 ? ", without a row of heads" : "")}",
            known.Length == 0 ? "columns: none that is known" : "columns: " + string.Join(", ", known),
        };
        string[] other = [.. table.Heads.Where((_, i) => !table.Columns.Values.Contains(i)).Select(Shown.Short)];
        if (other.Length > 0)
            lines.Add("not used: " + string.Join(", ", other));
        bool Has(params string[] heads) => heads.All(table.Columns.ContainsKey);
        var yaml = new List<YamlBlock>();
        string name = LandXmlInspection.Quoted(file.Name);
        double length = 0;
        if (Has("name", "top") && (Has("northing", "easting") || Has("station", "offset")))
            yaml.Add(new YamlBlock("borings", $"  - from_csv: {{file: {name}}}\n"));
        else if (Has("station", "elevation") || Has("northing", "easting", "elevation"))
            yaml.Add(new YamlBlock("top", $"  from_csv: {{file: {name}}}\n"));
        else if (Has("northing", "easting"))
        {
            yaml.Add(new YamlBlock("layout_lines", $"  - name: WL-1\n    from_csv: {{file: {name}, station: 0}}\n"));
            length = LengthThrough(table);
        }
        lines.Add(yaml.Count == 0 ? "cannot be used: it takes station and elevation, northing and easting, or a boring's name, place and top" : $"can be used under {yaml[0].Key}");
        return new Inspection(lines, yaml, LengthUnit.Foot, []) { LineLength = length };
    }

    /// <summary>Length of the line through the points of a table; 0 where a row is none, which the project file's reader tells.</summary>
    private static double LengthThrough(CsvTable table)
    {
        var none = new ProblemList();
        double?[][] points = [.. table.Rows.Select(r => new[] { "northing", "easting" }.Select(h => table.Cell(r, h) is { } cell ? table.Number(cell, h, none) : null).ToArray())];
        return points.Any(p => p.Contains(null)) ? 0
            : points.Zip(points.Skip(1), (a, b) => Math.Sqrt(Math.Pow(b[0]!.Value - a[0]!.Value, 2) + Math.Pow(b[1]!.Value - a[1]!.Value, 2))).Sum();
    }
}

/// <summary>A block of a project file.</summary>
/// <param name="Key">Key that it stands under.</param>
/// <param name="Text">Its lines, indented.</param>
public sealed record YamlBlock(string Key, string Text);

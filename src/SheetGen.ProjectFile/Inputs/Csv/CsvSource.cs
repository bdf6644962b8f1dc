using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Records;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.Csv;

/// <summary>What a project file takes from tables: profiles, layout lines, borings.</summary>
internal sealed class CsvSource(ForeignFiles files, LengthUnit unit)
{
    private ProblemList Problems => files.Problems;

    /// <summary>Start and elements through the points of a table; null where they cannot be used, which is reported.</summary>
    public IReadOnlyList<(string Key, Node Value)>? LayoutLine(MapItem source)
    {
        if (Open(source) is not { } table || !Has(source, table, "northing", "easting"))
            return null;
        FileUnit length = Unit(source);
        var points = new List<(Vector2D At, IReadOnlyList<CsvCell> Row)>();
        bool good = true;
        foreach (IReadOnlyList<CsvCell> row in table.Rows)
        {
            if (Numbers(table, row, "northing", "easting") is not [double n, double e])
                good = false;
            else if (points.Count == 0 || (points[^1].At - new Vector2D(n, e)).Length > 1e-6)
                points.Add((new Vector2D(n, e), row));
        }
        if (!good)
            return null;
        if (points.Count < 2)
        {
            Problems.Add(ProblemCodes.CannotUse, source.SpotOf("file"), "a layout line needs two points that differ", "correct the table");
            return null;
        }
        SourceSpot Spot(int i) => table.At(points[i].Row[0]);
        LandXml.TracePiece[] pieces = [.. Enumerable.Range(0, points.Count - 1).Select(i => Straight(points[i].At, points[i + 1].At))];
        SourceSpot first = Spot(0);
        Problems.Add(ProblemCodes.Imported, first, FormattableString.Invariant($"the layout line runs straight through {points.Count} points, {pieces.Sum(p => p.Length):0.###} {length.Symbol}"));
        CsvCell north = table.Cell(points[0].Row, "northing")!, east = table.Cell(points[0].Row, "easting")!;
        return
        [
            ("start", Nodes.Map(first, ("station", Station(source, first)), ("northing", table.Length(north, length)), ("easting", table.Length(east, length)),
                ("azimuth", LandXml.AlignmentNodes.Azimuth(pieces[0], first)))),
            ("elements", LandXml.AlignmentNodes.Elements(pieces, length, p => Spot(Array.IndexOf(pieces, p)), first)),
        ];
    }

    /// <summary>The points of a profile; null where they cannot be used, which is reported.</summary>
    public IReadOnlyList<Node>? Profile(MapItem source, WallPlace wall, string key)
    {
        if (Open(source) is not { } table)
            return null;
        bool byStation = table.Columns.ContainsKey("station");
        if (!(byStation ? Has(source, table, "elevation") : Has(source, table, "northing", "easting", "elevation")))
            return null;
        FileUnit length = Unit(source);
        IReadOnlyList<Node>? nodes = byStation ? ByStation(source, table, length) : Projected(source, table, length, wall);
        if (nodes is not null)
            Problems.Add(ProblemCodes.Imported, table.File.At(1), FormattableString.Invariant($"\"{key}\" is made of {nodes.Count} of the table's {table.Rows.Count} rows"));
        return nodes;
    }

    /// <summary>The borings of a table; null where they cannot be used, which is reported.</summary>
    public IReadOnlyList<Node>? Borings(MapItem source)
    {
        if (Open(source) is not { } table)
            return null;
        bool byStation = table.Columns.ContainsKey("station");
        return Has(source, table, byStation ? ["name", "station", "offset", "top"] : ["name", "northing", "easting", "top"])
            ? new BoringTable(table, Unit(source), unit, Problems).Nodes(byStation)
            : null;
    }

    private List<Node>? ByStation(MapItem source, CsvTable table, FileUnit length)
    {
        var nodes = new List<Node>();
        double raise = source.Number("raise") ?? 0;
        foreach (IReadOnlyList<CsvCell> row in table.Rows)
        {
            if (table.Cell(row, "station") is not { } station || table.Cell(row, "elevation") is not { } elevation)
            {
                Problems.Add(ProblemCodes.CannotUse, table.At(row[0]), "the row lacks its station or elevation", "complete or remove it", table.File.Spot);
                continue;
            }
            Node level = table.Length(elevation, length);
            if (raise != 0)
                level = Numbers(table, row, "elevation") is [double z] ? Nodes.Length(z * length.In(unit) + raise, FileUnit.Of(unit), table.At(elevation)) : new FaultyNode(table.At(elevation));
            nodes.Add(Nodes.Map(table.At(station), ("station", new ScalarNode(station.Text.Trim(), false, table.At(station))), ("elevation", level)));
        }
        return nodes;
    }

    /// <summary>Points by their place along the line; what lies too far from it is left out and told.</summary>
    private List<Node>? Projected(MapItem source, CsvTable table, FileUnit length, WallPlace wall)
    {
        double limit = source.Number("limit") ?? (Lengths.IsFoot(unit) ? 10 : 3), factor = length.In(unit), raise = source.Number("raise") ?? 0;
        var nodes = new List<(double Along, Node Node)>();
        bool good = true;
        foreach (IReadOnlyList<CsvCell> row in table.Rows)
        {
            if (Numbers(table, row, "northing", "easting", "elevation") is not [double n, double e, double z])
            {
                good = false;
                continue;
            }
            SourceSpot spot = table.At(row[0]);
            LinePlace place = LayoutProjection.Locate(wall.Line, new Vector2D(n * factor, e * factor) - wall.Origin);
            if (Math.Abs(place.Right) > limit)
                Problems.Add(ProblemCodes.LeftOut, spot, FormattableString.Invariant($"the point lies {Math.Abs(place.Right):0.##} {Lengths.Symbol(unit)} from the layout line, over the limit of {limit:0.##}: it is left out"), "raise limit, or remove the row", table.File.Spot);
            else
                nodes.Add((place.Along, Nodes.Map(spot, ("station", Nodes.Along(place.Along, spot)), ("elevation", Nodes.Length(z * factor + raise, FileUnit.Of(unit), spot)))));
        }
        if (!good)
            return null;
        if (nodes.Count > 0)
            return [.. nodes.OrderBy(p => p.Along).Select(p => p.Node)];
        Problems.Add(ProblemCodes.NotInFile, source.SpotOf("file"), "no point of the table lies near the layout line", "compare its coordinates with those of the layout line");
        return null;
    }

    private CsvTable? Open(MapItem source) =>
        files.Open(source, "file", InputFile.MostText) is { } file && CsvTable.Read(file, Problems) is { } table && HeadsFit(source, table) ? table : null;

    /// <summary>False where a head names another unit than the one that the table is taken in. Columns that are not read are told, and what columns without heads are taken for.</summary>
    private bool HeadsFit(MapItem source, CsvTable table)
    {
        string[] unread = [.. table.Heads.Where((h, i) => h.Length > 0 && !table.Columns.Values.Contains(i)).Select(h => $"\"{Shown.Short(h)}\"")];
        if (unread.Length > 0)
            Problems.Add(ProblemCodes.Imported, table.File.At(1), $"the table's column{(unread.Length == 1 ? "" : "s")} {string.Join(", ", unread)} {(unread.Length == 1 ? "is" : "are")} not read");
        if (table.Heads.Count == 0)
            Problems.Add(ProblemCodes.Imported, table.File.At(1), $"the table has no row of heads: its columns are taken as {string.Join(", ", table.Columns.OrderBy(c => c.Value).Select(c => c.Key))}");
        FileUnit taken = Unit(source);
        bool fit = true;
        foreach (string head in table.Heads.Where((_, i) => table.Columns.Values.Contains(i)))
        {
            // A survey foot is mostly called ft.
            if (CsvTable.UnitOf(head) is { } said && said != taken.Symbol && !(said == "ft" && taken.Symbol == "us-ft"))
            {
                fit = false;
                Problems.Add(ProblemCodes.CannotUse, table.File.At(1), $"the head \"{Shown.Short(head)}\" says {said}, but the table's lengths are taken in {taken.Symbol}", $"write units: {said} beside its file, or correct the head", table.File.Spot);
            }
        }
        return fit;
    }

    /// <summary>The unit of a table's lengths: the project's unless the project file says otherwise.</summary>
    private FileUnit Unit(MapItem source) => source.Text("units") is { } named ? FileUnit.All.First(u => u.Symbol == named) : FileUnit.Of(unit);

    private static Node Station(MapItem source, SourceSpot spot) => source.NumberItem("station") is { } station ? Nodes.Number(station.Value, station.Spot) : Nodes.Number(0, spot);

    private bool Has(MapItem source, CsvTable table, params string[] heads)
    {
        string[] missing = [.. heads.Where(h => !table.Columns.ContainsKey(h))];
        if (missing.Length == 0)
            return true;
        string has = table.Heads.Count == 0 ? "without a row of heads it takes station, elevation; or northing, easting, elevation; or number, northing, easting, elevation" : "its heads must be in the first row";
        Problems.Add(ProblemCodes.NotInFile, source.SpotOf("file"), $"the table has no column {string.Join(" and no column ", missing)}", has);
        return false;
    }

    /// <summary>Numbers of a row; null where any is missing or none, each of which is reported.</summary>
    private double[]? Numbers(CsvTable table, IReadOnlyList<CsvCell> row, params string[] heads)
    {
        double?[] read = [.. heads.Select(head =>
        {
            if (table.Cell(row, head) is { } cell)
                return table.Number(cell, head, Problems);
            Problems.Add(ProblemCodes.CannotUse, table.At(row[0]), $"the row has no {head}", "complete or remove it", table.File.Spot);
            return null;
        })];
        return Array.TrueForAll(read, r => r.HasValue) ? [.. read.Select(r => r!.Value)] : null;
    }

    private static LandXml.TracePiece Straight(Vector2D start, Vector2D end) =>
        new(start, end, Math.Atan2((end - start).E, (end - start).N), (end - start).Length, 0, 0, new LandXml.XmlPart("", new Dictionary<string, string>(), [], "", 0, 0));
}

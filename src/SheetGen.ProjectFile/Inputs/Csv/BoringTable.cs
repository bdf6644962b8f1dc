using SheetGen.Model.Units;
using SheetGen.ProjectFile.Records;
using SheetGen.ProjectFile.Tree;
using SheetGen.ProjectFile.Values;

namespace SheetGen.ProjectFile.Inputs.Csv;

/// <summary>Borings of a table: rows of one name are one boring, each row with a layer if it has one.</summary>
internal sealed class BoringTable(CsvTable table, FileUnit length, LengthUnit unit, ProblemList problems)
{
    /// <summary>The borings in the order of the table; what is faulty is reported where it stands.</summary>
    public IReadOnlyList<Node> Nodes(bool byStation)
    {
        var nodes = new List<Node>();
        string before = "";
        var groups = new List<List<IReadOnlyList<CsvCell>>>();
        foreach (IReadOnlyList<CsvCell> row in table.Rows)
        {
            // A row without a name goes on with the boring above it.
            string name = table.Cell(row, "name")?.Text.Trim() ?? before;
            if (groups.Count == 0 || name != before)
                groups.Add([]);
            groups[^1].Add(row);
            before = name;
        }
        foreach (List<IReadOnlyList<CsvCell>> rows in groups)
            nodes.Add(One(rows, byStation));
        bool byDepth = table.Rows.Any(r => table.Cell(r, "layer") is not null && table.Cell(r, "layer_bottom") is null && table.Cell(r, "layer_to") is not null);
        problems.Add(ProblemCodes.Imported, table.File.At(1), FormattableString.Invariant(
            $"{nodes.Count} borings with {table.Rows.Count(r => table.Cell(r, "layer") is not null)} layers{(byDepth ? "; where they end is read as depth below the ground" : "")}"));
        return nodes;
    }

    private MapNode One(List<IReadOnlyList<CsvCell>> rows, bool byStation)
    {
        IReadOnlyList<CsvCell> first = rows[0];
        Model.Problems.SourceSpot spot = table.At(first[0]);
        var keys = new List<(string, Node)>();
        if (table.Cell(first, "name") is { } name)
            keys.Add(("name", table.Plain(name)));
        var at = new List<(string, Node)>();
        foreach (string head in byStation ? new[] { "station", "offset" } : ["northing", "easting"])
        {
            if (table.Cell(first, head) is { } cell)
                at.Add((head, head == "station" ? new ScalarNode(cell.Text.Trim(), false, table.At(cell)) : table.Length(cell, length)));
        }
        keys.Add(("at", Inputs.Nodes.Map(spot, [.. at])));
        double? top = Number(first, "top"), lowest = null;
        if (table.Cell(first, "top") is { } ground)
            keys.Add(("top", table.Length(ground, length)));
        var layers = new List<Node>();
        foreach (IReadOnlyList<CsvCell> row in rows)
        {
            if (table.Cell(row, "layer") is not { } soil)
            {
                if ((table.Cell(row, "layer_to") ?? table.Cell(row, "layer_bottom")) is { } end)
                    problems.Add(ProblemCodes.LeftOut, table.At(end), $"the layer that ends at {Shown.Short(end.Text.Trim())} has no soil: it is left out", "name its soil, or remove the row", table.File.Spot);
                continue;
            }
            var layer = new List<(string, Node)> { ("name", table.Plain(soil)) };
            CsvCell? depth = table.Cell(row, "layer_to"), elevation = table.Cell(row, "layer_bottom");
            if (elevation is not null)
                layer.Add(("to", table.Length(elevation, length)));
            else if (depth is not null && top is { } z && Number(row, "layer_to") is { } down)
                layer.Add(("to", Level(z - down, depth)));
            lowest = elevation is not null ? Number(row, "layer_bottom") : top - Number(row, "layer_to");
            if (table.Cell(row, "plasticity_index") is { } index)
                layer.Add(("plasticity_index", new ScalarNode(index.Text.Trim(), false, table.At(index))));
            layers.Add(Inputs.Nodes.Map(table.At(soil), [.. layer]));
        }
        if (table.Cell(first, "bottom") is { } bottom)
            keys.Add(("bottom", table.Length(bottom, length)));
        else if (top is { } from && table.Cell(first, "depth") is { } depth && Number(first, "depth") is { } whole)
            keys.Add(("bottom", Level(from - whole, depth)));
        else if (lowest is { } last)
            keys.Add(("bottom", Level(last, first[0])));
        if (table.Cell(first, "water") is { } water)
            keys.Add(("water", table.Length(water, length)));
        else if (top is { } over && table.Cell(first, "water_depth") is { } below && Number(first, "water_depth") is { } deep)
            keys.Add(("water", Level(over - deep, below)));
        if (layers.Count > 0)
            keys.Add(("layers", Inputs.Nodes.List(spot, layers)));
        return Inputs.Nodes.Map(spot, [.. keys]);
    }

    /// <summary>An elevation computed from a depth.</summary>
    private ScalarNode Level(double level, CsvCell at) => Inputs.Nodes.Length(Math.Round(level * length.In(unit), 9), FileUnit.Of(unit), table.At(at));

    private double? Number(IReadOnlyList<CsvCell> row, string head)
    {
        if (table.Cell(row, head) is not { } cell)
            return null;
        Amount amount = Numbers.Parse(Spelling.Plain(cell.Text.Trim()));
        if (!amount.IsGood)
            problems.Add(ProblemCodes.WrongType, table.At(cell), $"\"{head}\" is not a number", amount.Why, table.File.Spot);
        return amount.IsGood ? amount.Value : null;
    }
}

using SheetGen.Model.Units;
using SheetGen.ProjectFile.Records;
using SheetGen.ProjectFile.Tree;

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
        CsvCell first = rows[0][0];
        Model.Problems.SourceSpot spot = table.At(first);
        var keys = new List<(string, Node)>();
        if (table.Cell(rows[0], "name") is { } name)
            keys.Add(("name", table.Plain(name)));
        var at = new List<(string, Node)>();
        foreach (string head in byStation ? new[] { "station", "offset" } : ["northing", "easting"])
        {
            if (Whole(rows, head) is { } cell)
                at.Add((head, head == "station" ? new ScalarNode(cell.Text.Trim(), false, table.At(cell)) : table.Length(cell, length)));
        }
        keys.Add(("at", Inputs.Nodes.Map(spot, [.. at])));
        CsvCell? ground = Whole(rows, "top"), bottom = Whole(rows, "bottom"), depth = Whole(rows, "depth"), water = Whole(rows, "water"), below = Whole(rows, "water_depth");
        double? top = ground is null ? null : table.Number(ground, "top", problems);
        if (ground is not null)
            keys.Add(("top", top is null ? new FaultyNode(table.At(ground)) : table.Length(ground, length)));
        (List<Node> layers, Node? end) = Layers(rows, top);
        if (bottom is not null)
            keys.Add(("bottom", table.Length(bottom, length)));
        else if ((depth is null ? end : Level(top, depth, "depth")) is { } lowest)
            keys.Add(("bottom", lowest));
        if (water is not null)
            keys.Add(("water", table.Length(water, length)));
        else if (below is not null)
            keys.Add(("water", Level(top, below, "water_depth")));
        if (layers.Count > 0)
            keys.Add(("layers", Inputs.Nodes.List(spot, layers)));
        return Inputs.Nodes.Map(spot, [.. keys]);
    }

    /// <summary>The layers from the top down, and where the last of them ends; null where none tells its end.</summary>
    private (List<Node> Layers, Node? End) Layers(List<IReadOnlyList<CsvCell>> rows, double? top)
    {
        var layers = new List<Node>();
        Node? end = null;
        double reached = 0; // Depth.
        foreach (IReadOnlyList<CsvCell> row in rows)
        {
            CsvCell? from = table.Cell(row, "layer_from"), depth = table.Cell(row, "layer_to"), elevation = table.Cell(row, "layer_bottom");
            if (table.Cell(row, "layer") is not { } soil)
            {
                if ((depth ?? elevation) is { } bare)
                    problems.Add(ProblemCodes.LeftOut, table.At(bare), $"the layer that ends at {Shown.Short(bare.Text.Trim())} has no soil: it is left out", "name its soil, or remove the row", table.File.Spot);
                continue;
            }
            if (from is not null && depth is not null && table.Number(from, "layer_from", problems) is { } start)
                Begins(start, reached, from);
            var layer = new List<(string, Node)> { ("name", table.Plain(soil)) };
            if (elevation is not null)
                layer.Add(("to", end = table.Length(elevation, length)));
            else if (depth is not null)
            {
                layer.Add(("to", end = Level(top, depth, "layer_to")));
                reached = Values.Numbers.Parse(Values.Spelling.Plain(depth.Text.Trim())) is { IsGood: true } read ? read.Value : reached;
            }
            if (table.Cell(row, "plasticity_index") is { } index)
                layer.Add(("plasticity_index", new ScalarNode(index.Text.Trim(), false, table.At(index))));
            layers.Add(Inputs.Nodes.Map(table.At(soil), [.. layer]));
        }
        return (layers, end);
    }

    /// <summary>Tells a layer that begins elsewhere than where the one above it ends.</summary>
    private void Begins(double start, double reached, CsvCell from)
    {
        if (start > reached + 1e-6)
            problems.Add(ProblemCodes.Inexact, table.At(from), FormattableString.Invariant($"nothing is told from {reached} to {start} below the ground: the layer is taken from {reached} on"), "give that stretch a row of its own", table.File.Spot);
        else if (start < reached - 1e-6)
            problems.Add(ProblemCodes.CannotUse, table.At(from), FormattableString.Invariant($"the layer begins at {start}, over the end {reached} of the layer above"), "correct one of the two", table.File.Spot);
    }

    /// <summary>What a boring has once, in whichever of its rows it stands; a row that says otherwise is reported.</summary>
    private CsvCell? Whole(List<IReadOnlyList<CsvCell>> rows, string head)
    {
        CsvCell? told = null;
        foreach (CsvCell cell in rows.Select(r => table.Cell(r, head)).OfType<CsvCell>())
        {
            told ??= cell;
            if (cell.Text.Trim() != told.Text.Trim())
                problems.Add(ProblemCodes.CannotUse, table.At(cell), $"the boring's {head.Replace('_', ' ')} is another than in its row above", "give each boring a name of its own, or write it once", table.File.Spot);
        }
        return told;
    }

    /// <summary>An elevation computed from a depth; faulty without a word where the top is, which is reported there.</summary>
    private Node Level(double? top, CsvCell depth, string head) => top is { } ground && table.Number(depth, head, problems) is { } down
        ? Inputs.Nodes.Length(Math.Round((ground - down) * length.In(unit), 9), FileUnit.Of(unit), table.At(depth))
        : new FaultyNode(table.At(depth));
}

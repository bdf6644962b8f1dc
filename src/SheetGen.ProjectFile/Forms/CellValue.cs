using System.Text.RegularExpressions;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile.Forms.Xlsx;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Forms;

/// <summary>What a cell of the form says, as a node of the project file's tree.</summary>
internal static partial class CellValue
{
    [GeneratedRegex(@"[0-9],[0-9]")]
    private static partial Regex BareComma();

    /// <summary>The value of a cell under a key; a faulty node where there is none to be had, which is reported.</summary>
    public static Node Of(GridCell cell, SourceSpot spot, Key key, ProblemList problems)
    {
        bool isText = key.Kind is ValueKind.Text;
        switch (cell.Kind)
        {
            case CellKind.Fault:
                problems.Add(ProblemCodes.FormCell, spot, $"\"{key.Name}\" cannot be taken: the cell shows the error {Shown.Short(cell.Text)}", "mend the formula, or type the value");
                return new FaultyNode(spot);
            case CellKind.NoResult:
                problems.Add(ProblemCodes.FormCell, spot, $"\"{key.Name}\" cannot be taken: the cell's formula has no result in the file", "open the form in a spreadsheet program and save it, or type the value");
                return new FaultyNode(spot);
            case CellKind.Date when !isText:
                problems.Add(ProblemCodes.FormCell, spot, $"\"{key.Name}\" cannot be taken: the spreadsheet made the date or time {cell.Text} of what was typed", "format the cell as text and type it again");
                return new FaultyNode(spot);
            case CellKind.Date:
                return new ScalarNode(cell.Text, true, spot);
        }
        bool isBracketed = cell.Kind == CellKind.Text && cell.Text.TrimStart() is ['[' or '{', ..];
        return key.Kind switch
        {
            ValueKind.List when key.Item!.Kind is not (ValueKind.Map or ValueKind.List) => ListOf(cell, spot, key, problems),
            ValueKind.Map or ValueKind.List or ValueKind.Names when isBracketed => Bracketed(cell.Text, spot, problems),
            _ => new ScalarNode(cell.Text, cell.Kind == CellKind.Text, spot),
        };
    }

    /// <summary>Values parted by semicolons, or by commas with a blank behind them.</summary>
    private static Node ListOf(GridCell cell, SourceSpot spot, Key key, ProblemList problems)
    {
        if (cell.Kind != CellKind.Text)
            return new ListNode([new ScalarNode(cell.Text, false, spot)], spot);
        string text = cell.Text.Trim();
        text = text is ['[', .., ']'] ? text[1..^1] : text;
        bool semicolons = text.Contains(';', StringComparison.Ordinal);
        if (!semicolons && BareComma().IsMatch(text))
        {
            problems.Add(ProblemCodes.FormCell, spot, $"\"{key.Name}\" cannot be taken: it is not clear whether a comma of \"{Shown.Short(text)}\" parts two values", "part them by semicolons: 24; 24; 22.5");
            return new FaultyNode(spot);
        }
        return new ListNode([.. text.Split(semicolons ? ';' : ',', StringSplitOptions.TrimEntries).Select(t => new ScalarNode(t, true, spot))], spot);
    }

    /// <summary>What a project file would have in brackets; all its places are the cell's.</summary>
    private static Node Bracketed(string text, SourceSpot spot, ProblemList problems)
    {
        var found = new ProblemList();
        Node? node = YamlLoader.Load(text, spot.File, found);
        foreach (Problem problem in found.Sorted())
            problems.Add(ProblemCodes.All.First(c => c.Code == problem.Code), spot, problem.Message, problem.Hint);
        return node is null ? new FaultyNode(spot) : At(node, spot);
    }

    private static Node At(Node node, SourceSpot spot) => node switch
    {
        ScalarNode scalar => scalar with { Spot = spot },
        ListNode list => new ListNode([.. list.Items.Select(i => At(i, spot))], spot),
        MapNode map => new MapNode([.. map.Entries.Select(e => new KeyValuePair<ScalarNode, Node>(e.Key with { Spot = spot }, At(e.Value, spot)))], spot),
        _ => new FaultyNode(spot),
    };
}

using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Quantities;
using SheetGen.Model.PayItems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Keys;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

/// <summary>The table of docs/on-the-sheets.md has every key of the project file, and what it says stands on the sheets stands there.</summary>
public class OnTheSheetsTests
{
    private const string NotPrinted = "not printed";

    private static readonly Dictionary<string, string> Titles = new()
    {
        ["any"] = "",
        ["notes"] = "NOTES, LEGEND",
        ["views"] = "PLAN AND ELEVATION",
        ["sections"] = "SECTION|NOTES, LEGEND",
        ["details"] = "DETAIL",
        ["tables"] = "TABLES",
    };

    private static readonly Lazy<SheetSet> Set = new(() =>
    {
        DrawingContext context = PlacedWall.Context(GivenProject.Yaml);
        PayItemSet items = PayItemFile.Read(PayItemFile.BuiltIn(context.Project.PayItems)!, "pay", context.Project.Unit, [])!;
        return PlacedWall.Sheets(context with { Tables = [SummaryTables.Bid(BidQuantities.Make(context.Quantities, items, context.Project.Rates))] });
    });

    private sealed record Row(string Key, string Sheets, string Shown)
    {
        public bool Covers(string key) => Key == key || (Key.EndsWith(": *", StringComparison.Ordinal) && key.StartsWith(Key[..^1], StringComparison.Ordinal));
    }

    private static Row[] Rows { get; } = [.. Repository.Read("docs", "on-the-sheets.md").Split('\n')
        .Where(l => l.StartsWith("| ", StringComparison.Ordinal) && !l.StartsWith("| key |", StringComparison.Ordinal) && !l.StartsWith("| ---", StringComparison.Ordinal))
        .Select(l => l.Split('|').Select(c => c.Trim(' ')).ToArray()).Select(c => new Row(c[1], c[2], c[3]))];

    /// <summary>Every key that takes a value, with those of the blocks that it stands in: walls: openings: name.</summary>
    private static IEnumerable<string> Leaves(Key key, string path)
    {
        Key block = key.Kind == ValueKind.List ? key.Item! : key;
        Key[] children = [.. block.Children, .. block.Variants.Values.SelectMany(v => v).DistinctBy(c => c.Name)];
        // A block that many keys share is a point or a step: its values stand where its key does.
        bool isPlace = block.Shared is not null && block.Shared != "section defaults";
        return children.Length == 0 || isPlace ? [path] : children.SelectMany(c => Leaves(c, path.Length == 0 ? c.Name : $"{path}: {c.Name}"));
    }

    private static string[] Keys { get; } = [.. Leaves(KeyTable.Root, "").Distinct()];

    [Fact]
    public void Every_key_has_a_row_and_every_row_a_key()
    {
        Assert.True(Keys.Length > 250, $"{Keys.Length} keys");
        string[] missing = [.. Keys.Where(k => !Rows.Any(r => r.Covers(k)))], idle = [.. Rows.Where(r => !Keys.Any(r.Covers)).Select(r => r.Key)];
        Assert.True(missing.Length == 0, string.Join("\n", missing));
        Assert.True(idle.Length == 0, string.Join("\n", idle));
    }

    [Fact]
    public void What_is_not_printed_has_its_reason_and_all_else_something_to_look_for() => Assert.All(Rows, r =>
    {
        bool says = Regex.IsMatch(r.Shown, "`[^`]+`|layer [A-Z]");
        Assert.True(r.Sheets == NotPrinted ? r.Shown.Length > 10 && !says : says && Titles.ContainsKey(r.Sheets), r.Key);
    });

    /// <summary>The values of a project that has most keys, each unlike any other.</summary>
    [Fact]
    public void What_the_project_gives_stands_on_its_sheets()
    {
        var seen = Titles.ToDictionary(t => t.Key, t => Set.Value.Sheets.Where(s => t.Value.Split('|').Any(w => s.Title.Contains(w, StringComparison.Ordinal)))
            .SelectMany(s => SheetPicture.Of(Set.Value, s)).Select(p => p.Primitive).ToArray());
        var written = seen.ToDictionary(s => s.Key, s => string.Join(" ", s.Value.OfType<Text>().Select(t => t.Value)));
        var wrong = new List<string>();
        foreach (Row row in Rows.Where(r => r.Sheets != NotPrinted))
        {
            string[] words = [.. Regex.Matches(row.Shown, "`([^`]+)`").Select(m => m.Groups[1].Value)
                .SelectMany(w => w.Contains("<key>", StringComparison.Ordinal) ? Keys.Where(row.Covers).Select(k => w.Replace("<key>", k[(k.LastIndexOf(' ') + 1)..].Replace('_', ' ').ToUpperInvariant(), StringComparison.Ordinal)) : [w])];
            wrong.AddRange(words.Where(w => !written[row.Sheets].Contains(w, StringComparison.Ordinal)).Select(w => $"{row.Key}: \"{w}\" is not on the sheets of {row.Sheets}"));
            wrong.AddRange(Regex.Matches(row.Shown, "layer ([A-Za-z]+)").Select(m => Enum.Parse<LayerRole>(m.Groups[1].Value))
                .Where(l => !seen[row.Sheets].Any(p => p.Layer == l)).Select(l => $"{row.Key}: nothing on {l}"));
        }
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }
}

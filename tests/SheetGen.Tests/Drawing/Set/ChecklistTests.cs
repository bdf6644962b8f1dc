using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

/// <summary>The table of docs/plan-checklist.md holds: what it says stands on the sheets stands there.</summary>
public class ChecklistTests
{
    /// <summary>Items of the checklist; a later item of our own may follow.</summary>
    private const int Items = 26;

    private static readonly Dictionary<string, string> Titles = new()
    {
        ["notes"] = "NOTES, LEGEND",
        ["views"] = "PLAN AND ELEVATION",
        ["sections"] = "SECTIONS|NOTES, LEGEND",
        ["details"] = "DETAILS",
        ["tables"] = "TABLES",
    };

    private static readonly Lazy<SheetSet> Set = new(() => SampleSheets.Compose(SampleWalls.TwoWalls.Replace(
        "elevation: 107}], diameter: 2}", "elevation: 107}], diameter: 2, owner: Example water district, state: abandoned, quality_level: C, source: record drawing}",
        StringComparison.Ordinal)));

    public static TheoryData<int, string, string, string> Rows()
    {
        var rows = new TheoryData<int, string, string, string>();
        foreach (string line in Repository.Read("docs", "plan-checklist.md").Split('\n').Where(l => Regex.IsMatch(l, @"^\| \d")))
        {
            string[] cells = [.. line.Split('|').Select(c => c.Trim())];
            rows.Add(int.Parse(cells[1], System.Globalization.CultureInfo.InvariantCulture), cells[2], cells[3], cells[4]);
        }
        return rows;
    }

    [Fact]
    public void Every_item_of_the_checklist_has_a_row() =>
        Assert.Equal(Enumerable.Range(1, Items), Rows().Select(r => r.Data.Item1).Distinct().Where(i => i <= Items).Order());

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_row_stands_on_its_sheets(int item, string asked, string sheets, string shown)
    {
        Primitive[] seen = [.. Set.Value.Sheets.Where(s => Titles[sheets].Split('|').Any(t => s.Title.Contains(t, StringComparison.Ordinal)))
            .SelectMany(s => SheetPicture.Of(Set.Value, s)).Select(p => p.Primitive)];
        string written = string.Join(" ", seen.OfType<Text>().Select(t => t.Value));
        string[] words = [.. Regex.Matches(shown, "`([^`]+)`").Select(m => m.Groups[1].Value)];
        string[] layers = [.. Regex.Matches(shown, "layer ([A-Za-z]+)").Select(m => m.Groups[1].Value)];

        Assert.NotEmpty(words.Concat(layers));
        Assert.All(words, w => Assert.True(written.Contains(w, StringComparison.OrdinalIgnoreCase), $"{item}, {asked}: \"{w}\" is not on the sheets of {sheets}"));
        Assert.All(layers, l => Assert.True(seen.Any(p => p.Layer == Enum.Parse<LayerRole>(l)), $"{item}, {asked}: nothing on {l}"));
    }
}

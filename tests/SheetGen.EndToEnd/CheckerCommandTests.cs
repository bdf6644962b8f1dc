using System.Text.Json;
using System.Text.RegularExpressions;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>The checker's commands as a person runs them: recheck, compare, window, asbuilt on one small wall.</summary>
public sealed class CheckerCommandTests : IDisposable
{
    private const string Yaml = """
        format: 1
        project: {title: Invented wall, number: T-1, units: ft}
        layout_lines: [{name: WL-1, start: {station: 10+00, northing: 5000, easting: 2000, azimuth: 90}, elements: [{line: 20}]}]
        walls:
          - name: W
            layout_line: WL-1
            retained_side: right
            stations: [10+00, 10+20]
            top: [[10+00, 112], [10+20, 112]]
            bottom: {steps: [[10+00, 100]]}
            sections:
              - {name: A, stations: [10+00, 10+20], horizontal_spacing: 5, vertical_spacing: 4.5, top_row_depth: 2, inclination: 12, lengths: 16, bar: {size: "#8", grade: 75}, hole: 6 in}
        obstructions:
          - {name: S1, kind: shaft, at: {station: 10+12.5, offset: 5.2}, diameter: 36 in, top: 111, bottom: 80}

        """;

    private readonly TempFolder _temp = new();

    public CheckerCommandTests() => File.WriteAllText(_temp.File("wall.yaml"), Yaml);

    public void Dispose() => _temp.Dispose();

    private CliRun Run(params string[] arguments) => CliRun.With(_temp.Path, null, arguments);

    [Fact]
    public void A_drawing_that_nobody_edited_is_no_change_and_a_broken_one_has_a_line()
    {
        Assert.InRange(Run("build", "wall.yaml", "--out", "issued").Code, 0, 1);
        CliRun same = Run("recheck", "wall.yaml", "issued/sheets.dxf", "--json");
        JsonElement json = JsonDocument.Parse(same.Out).RootElement;
        Assert.True(json.GetProperty("equal").GetBoolean(), same.Out);
        CliRun written = Run("recheck", "wall.yaml", "issued/plan.dxf", "--out", "again");
        Assert.Equal(same.Code, written.Code);
        Assert.Subset(_temp.Listing("again").ToHashSet(), new HashSet<string> { "edited.yaml", "changes.xlsx", "changes.pdf", "sheets.dxf", "review.html" });
        Assert.Equal(File.ReadAllText(_temp.File("issued/nails.csv")), File.ReadAllText(_temp.File("again/nails.csv")));

        string text = File.ReadAllText(_temp.File("issued/sheets.dxf"));
        // A value that cannot be read is an edit that may be lost.
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        int[] pairs = [.. Enumerable.Range(0, lines.Length / 2).Select(i => 2 * i)];
        int attribute = pairs.First(i => lines[i].Trim() == "0" && lines[i + 1] == "ATTRIB" && lines[pairs.First(j => j > i && lines[j].Trim() == "2") + 1] == "INCLINATION");
        lines[pairs.First(i => i > attribute && lines[i].Trim() == "1") + 1] = "12,5";
        File.WriteAllLines(_temp.File("typed.dxf"), lines);
        CliRun typed = Run("recheck", "wall.yaml", "typed.dxf");
        Assert.Equal(0, same.Code);
        Assert.Equal(1, typed.Code);
        Assert.Contains("INCLINATION reads \"12,5\"", typed.Out, StringComparison.Ordinal);

        File.WriteAllText(_temp.File("cut.dxf"), text[..(text.Length / 2)]);
        CliRun cut = Run("recheck", "wall.yaml", "cut.dxf", "--out", "none");
        Assert.Equal(2, cut.Code);
        Assert.Matches(@"cut\.dxf:\d{2,}:1: error D01: the drawing cannot be read", cut.Problems);
        Assert.False(Directory.Exists(_temp.File("none")) && _temp.Listing("none").Count != 0);
    }

    [Fact]
    public void Compare_writes_old_and_new_on_one_page()
    {
        File.WriteAllText(_temp.File("longer.yaml"), Yaml.Replace("lengths: 16", "lengths: [16, 18]", StringComparison.Ordinal));
        Assert.InRange(Run("build", "wall.yaml", "--out", "issued").Code, 0, 1);
        CliRun equal = Run("compare", "issued", "wall.yaml");
        Assert.Equal(0, equal.Code);
        CliRun changed = Run("compare", "issued", "longer.yaml", "--out", "addendum");
        Assert.InRange(changed.Code, 0, 1);
        Assert.Equal(["changes.pdf", "changes.xlsx", "review.html"], _temp.Listing("addendum"));
        string page = File.ReadAllText(_temp.File("addendum/review.html"));
        JsonElement older = JsonDocument.Parse(Regex.Match(page, """id="older">(.*?)</script>""", RegexOptions.Singleline).Groups[1].Value).RootElement;
        Assert.Equal("issued", older.GetProperty("name").GetString());
        string data = older.GetProperty("text").GetString()!;
        Assert.StartsWith("<script type=\"application/json\" id=\"data\">{", data, StringComparison.Ordinal);
        Assert.Contains(data, File.ReadAllText(_temp.File("issued/review.html")), StringComparison.Ordinal);

        CliRun bare = Run("compare", "issued/nails.csv", "longer.yaml", "--out", "bare");
        Assert.Equal(["changes.pdf", "changes.xlsx"], _temp.Listing("bare"));
        Assert.Contains("review.html is not written: issued/nails.csv has no review page", bare.Problems, StringComparison.Ordinal);
    }

    [Fact]
    public void Window_tells_of_one_nail_and_names_the_nearest_mark_for_a_slip()
    {
        CliRun one = Run("window", "wall.yaml", "A-2-02", "--out", "room");
        Assert.InRange(one.Code, 0, 1);
        Assert.StartsWith("A-2-02: W, 10+", one.Out, StringComparison.Ordinal);
        Assert.Equal(["window.pdf", "window.svg"], _temp.Listing("room"));
        JsonElement nail = JsonDocument.Parse(Run("window", "wall.yaml", "A-2-02", "--json").Out).RootElement.GetProperty("nails")[0];
        Assert.Equal(61 * 24, nail.GetProperty("directions").GetArrayLength());
        CliRun slip = Run("window", "wall.yaml", "A-2-2");
        Assert.Equal(2, slip.Code);
        Assert.Contains("there is no nail A-2-2: did you mean A-2-02?", slip.Problems, StringComparison.Ordinal);
        Assert.Equal(2, Run("window", "wall.yaml").Code);
    }

    [Fact]
    public void A_record_is_written_filled_in_and_read()
    {
        Assert.Equal(0, Run("asbuilt", "wall.yaml", "--out", "field").Code);
        string empty = File.ReadAllText(_temp.File("field/asbuilt.csv"));
        Assert.Equal(0, Run("asbuilt", "wall.yaml", "field/asbuilt.csv").Code);

        File.WriteAllText(_temp.File("record.csv"), empty.Replace("A-1-01,,,,,,,,", "A-1-01,10+03.60,,,,,,2031-05-06,caved", StringComparison.Ordinal));
        CliRun off = Run("asbuilt", "wall.yaml", "record.csv", "--out", "report", "--json");
        Assert.Equal(1, off.Code);
        Assert.Equal(["asbuilt.pdf"], _temp.Listing("report"));
        JsonElement json = JsonDocument.Parse(off.Out).RootElement;
        Assert.Equal(1, json.GetProperty("drilled").GetInt32());
        Assert.Equal("A-1-01", json.GetProperty("tolerances_not_kept")[0].GetProperty("mark").GetString());

        File.WriteAllText(_temp.File("record.csv"), "mark,station\nZ-9-99,x\nA-1-01,x\n");
        CliRun wrong = Run("asbuilt", "wall.yaml", "record.csv");
        Assert.Equal(2, wrong.Code);
        Assert.Matches(@"record\.csv:2:1: error[\s\S]*record\.csv:3:8: error", wrong.Problems);
        Assert.Equal(2, Run("asbuilt", "wall.yaml").Code);
        // No nail is beyond a tolerance of NaN: once such a run found nothing.
        foreach (string tolerance in new[] { "NaN", "-1", "Infinity", "6 in" })
        {
            CliRun none = Run("asbuilt", "wall.yaml", "field/asbuilt.csv", "--head", tolerance);
            Assert.Equal(2, none.Code);
            Assert.Matches(@"--head and --angle are numbers of 0 or more|--head: '6 in' is no number", none.Problems);
        }
    }
}

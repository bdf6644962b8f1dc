using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Review;
using SheetGen.Writers.Json;
using Xunit;

namespace SheetGen.Tests.Review;

/// <summary>The review page as a file: what it may do, that no name gets out of its data, that its data are the results.</summary>
public sealed partial class ReviewPageTests
{
    private const string Hostile = "</script><script>alert(1)</script><!--", RightToLeft = "\u202Eevil\u2066 שלום";

    private static string Yaml(double shaft = 5.2, string shaftName = "S1", string title = "Invented wall", double length = 16) => FormattableString.Invariant($$$"""
        format: 1
        project: {title: {{{JsonSerializer.Serialize(title)}}}, number: T-1, units: ft}
        layout_lines:
          - {name: WL-1, start: {station: 10+00, northing: 51234.25, easting: 98765.5, azimuth: 80}, elements: [{line: 40}, {corner: {turn: right, angle: 20}}, {arc: {radius: 90, length: 20, turn: left}}]}
        walls:
          - name: W
            layout_line: WL-1
            retained_side: right
            stations: [10+00, 10+60]
            batter: {angle: 4 deg, elevation: 100}
            top: [[10+00, 112], [10+60, 113]]
            existing_ground: [[10+00, 113], [10+60, 115]]
            bottom: {steps: [[10+00, 100], [10+30, 101]]}
            sections:
              - {name: A, stations: [10+00, 10+60], horizontal_spacing: 5, vertical_spacing: 4.5, top_row_depth: 2, inclination: 12, lengths: {{{length}}}, bar: {size: "#8", grade: 75}, hole: 6 in}
        obstructions:
          - {name: {{{JsonSerializer.Serialize(shaftName)}}}, kind: shaft, at: {station: 10+12.5, offset: {{{shaft}}}}, diameter: 36 in, top: 111, bottom: 80}
          - {name: Cap, kind: solid, footprint: [[10+48, 8], [10+54, 8], [10+54, 10], [10+48, 10]], bottom: 96, top: 100}
          - {name: Pipe, kind: pipe, points: [{station: 10+00, offset: 24, elevation: 104}, {station: 10+60, offset: 24, elevation: 104}], diameter: 2}
          - {name: ROW, kind: boundary, points: [{station: 10+00, offset: 40}, {station: 10+60, offset: 40}]}
        borings:
          - {name: B-1, at: {station: 10+20, offset: 12}, top: 113, bottom: 80, water: 90, layers: [{to: 100, name: clay}, {to: 80, name: sand}]}
        """);

    private static (WallProject Project, NailLayout Layout, ClearanceReport Report, string Page, JsonElement Data) Make(string yaml)
    {
        WallProject project = ProjectReader.ReadText(yaml, "wall.yaml").Project!;
        NailLayout layout = Placer.Place(project, new PlacingOptions(false));
        ClearanceReport report = Checker.Check(project, layout);
        using var findings = new MemoryStream();
        FindingsJson.Write(project, layout, report, findings);
        var table = new TableData("Quantities", [new("Item", false), new("ft", true)], [[Hostile, "1.00"]]);
        string page = Encoding.UTF8.GetString(ReviewPage.Make(new ReviewInput(project, layout, report, [table], new RunInfo("test")), findings.ToArray()));
        return (project, layout, report, page, JsonDocument.Parse(DataOf(page)).RootElement);
    }

    private static string DataOf(string page) => Data().Match(page).Groups[1].Value;

    private static IEnumerable<Dictionary<string, JsonElement>> Rows(JsonElement data)
    {
        string[] columns = [.. data.GetProperty("columns").EnumerateArray().Select(c => c.GetString()!)];
        return data.GetProperty("nails").EnumerateArray().Select(row => columns.Zip(row.EnumerateArray()).ToDictionary(p => p.First, p => p.Second));
    }

    [Fact]
    public void Only_its_own_script_and_style_may_run_and_no_network_is_there()
    {
        string page = Make(Yaml()).Page;
        string policy = Policy().Match(page).Groups[1].Value;
        string script = Script().Match(page).Groups[1].Value, style = Style().Match(page).Groups[1].Value;

        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("connect-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains($"script-src '{Hash(script)}'", policy, StringComparison.Ordinal);
        Assert.Contains($"style-src '{Hash(style)}'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal(3, Regex.Count(page, "<script[ >]"));
        Assert.DoesNotMatch(@"\s(src|href)=""?https?:", page);

        static string Hash(string text) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
    }

    [Fact]
    public void No_code_turns_data_into_markup_or_code()
    {
        foreach (string module in PageBundle.Order)
            Assert.DoesNotMatch(@"</script|<script|<!--|DOMParser|innerHTML|outerHTML|insertAdjacentHTML|document\.write|\beval\b|new Function|setTimeout\(\s*[""'`]", PageBundle.Read(module));
    }

    [Fact]
    public void Modules_import_what_is_exported_and_export_what_never_changes()
    {
        Assert.True(PageBundle.Order.Count > 10);
        Assert.Equal("main.js", PageBundle.Order[^1]);
        foreach (string module in PageBundle.Order)
        {
            string text = PageBundle.Read(module);
            Assert.DoesNotMatch(@"(?m)^export (let|default|\{)", text);
            Assert.Equal(Regex.Count(text, @"(?m)^import "), PageBundle.Imports(text).Count());
            foreach ((string file, IReadOnlyList<string> names) in PageBundle.Imports(text))
            {
                foreach (string name in names)
                {
                    Assert.Matches($@"(?m)^export (async )?(const|function|class) {name}\b", PageBundle.Read(file));
                    Assert.True(Regex.Count(text, $@"\b{name}\b") > 1, $"{module} imports {name} and does not use it");
                }
            }
        }
    }

    [Fact]
    public void Hostile_names_stay_inside_the_data()
    {
        (_, _, _, string page, JsonElement data) = Make(Yaml(shaftName: Hostile, title: RightToLeft));

        Assert.DoesNotContain("alert(1)</script>", page, StringComparison.Ordinal);
        Assert.DoesNotContain('\u202E', page);
        Assert.DoesNotMatch("[<>]", DataOf(page));
        Assert.Equal(Hostile, data.GetProperty("obstructions")[0].GetProperty("name").GetString());
        Assert.Equal(RightToLeft, data.GetProperty("project").GetProperty("title").GetString());
    }

    [Fact]
    public void Its_data_are_the_results()
    {
        (WallProject project, NailLayout layout, ClearanceReport report, _, JsonElement data) = Make(Yaml());
        List<Dictionary<string, JsonElement>> rows = [.. Rows(data)];

        Assert.Equal(layout.Nails.Count, rows.Count);
        for (int i = 0; i < rows.Count; i++)
        {
            Nail nail = layout.Nails[i];
            NailClearance clear = report.Nails[nail.Mark];
            Assert.Equal(nail.Mark, rows[i]["mark"].GetString());
            Assert.Equal(nail.Hole.Head.N, rows[i]["head"][0].GetDouble(), 5);
            Assert.Equal(nail.Hole.Tip.Z, rows[i]["tip"][2].GetDouble(), 5);
            Assert.Equal(clear.LeastClear, rows[i]["clear"].GetDouble(), 5);
            Assert.Equal(clear.Nearest, rows[i]["nearest"].GetString());
            double[][] points = [.. rows[i]["points"].EnumerateArray().Select(p => p.EnumerateArray().Select(c => c.GetDouble()).ToArray())];
            double apart = Math.Sqrt(points[0].Zip(points[1]).Sum(p => (p.First - p.Second) * (p.First - p.Second)));
            // Between two axes, or an axis and a surface: the points are the clear distance and the radii apart.
            double radii = nail.Hole.Radius + (layout.Nails.FirstOrDefault(n => n.Mark == clear.Nearest)?.Hole.Radius ?? 0);
            Assert.Equal(clear.LeastClear + radii, apart, 4);
        }
        Assert.Equal(project.InputHash, data.GetProperty("checked").GetProperty("input_hash").GetString());
        Assert.Equal(report.Findings.Count, data.GetProperty("checked").GetProperty("findings").GetArrayLength());
        Assert.Equal(-1, data.GetProperty("walls")[0].GetProperty("sign").GetInt32());
    }

    [Fact]
    public void Prints_change_with_a_nail_and_with_what_stands_around_it_and_with_nothing_else()
    {
        List<Dictionary<string, JsonElement>> before = [.. Rows(Make(Yaml()).Data)], same = [.. Rows(Make(Yaml(title: "Another title")).Data)];
        List<Dictionary<string, JsonElement>> longer = [.. Rows(Make(Yaml(length: 17)).Data)], shaft = [.. Rows(Make(Yaml(shaft: 5.3)).Data)];
        string Print(IEnumerable<Dictionary<string, JsonElement>> rows, string mark, string which) => rows.First(r => r["mark"].GetString() == mark)[which].GetString()!;

        Assert.All(before, r => Assert.Equal((r["own"].GetString(), r["around"].GetString()), (Print(same, r["mark"].GetString()!, "own"), Print(same, r["mark"].GetString()!, "around"))));
        Assert.NotEqual(Print(before, "A-1-01", "own"), Print(longer, "A-1-01", "own"));
        // The nail nearest to the shaft sees it move; the last of the row does not.
        string near = before.Where(r => r["nearest"].GetString() == "S1").MinBy(r => r["clear"].GetDouble())!["mark"].GetString()!;
        string far = before.Last(r => r["row"].GetString() == "1")["mark"].GetString()!;
        Assert.NotEqual(Print(before, near, "around"), Print(shaft, near, "around"));
        Assert.Equal(Print(before, far, "around"), Print(shaft, far, "around"));
    }

    /// <summary>What would open without a comparison is refused where it is named.</summary>
    [Theory]
    [InlineData("wall,section,row,nail\n", "it is neither a review page nor a saved review")]
    [InlineData("<html></html>", "it is neither a review page nor a saved review")]
    [InlineData("{}", "it is not a saved review")]
    [InlineData("{\"kind\": \"sheetgen review\", \"marks\": 3}", "it is not a saved review")]
    [InlineData("{\"kind\": ", "it is no JSON at line 1, column 10")]
    [InlineData("null", "it is neither a review page nor a saved review")]
    [InlineData("{\"kind\": \"sheetgen review\", \"marks\": [], \"columns\": [], \"nails\": []}", null)]
    public void Only_an_older_page_or_a_saved_review_is_taken_into_a_page(string text, string? why) => Assert.Equal(why, ReviewPage.WhyNotOlder(text));

    [Fact]
    public void An_older_page_goes_into_a_new_one_as_data_and_nothing_else()
    {
        string page = Make(Yaml()).Page;
        Assert.Null(ReviewPage.WhyNotOlder(page));
        string against = Encoding.UTF8.GetString(ReviewPage.Against(Encoding.UTF8.GetBytes(page), Hostile, page));

        Assert.Equal(DataOf(page), DataOf(against));
        Assert.Equal(Policy().Match(page).Value, Policy().Match(against).Value);
        Assert.Equal(3, Regex.Count(against, "<script[ >]"));
        JsonElement older = JsonDocument.Parse(Regex.Match(against, """id="older">(.*?)</script>""", RegexOptions.Singleline).Groups[1].Value).RootElement;
        // Of the older page its data, and neither its code nor its looks; a saved review goes in as it is.
        Assert.Equal($"<script type=\"application/json\" id=\"data\">{Data().Match(page).Groups[1].Value}</script>", older.GetProperty("text").GetString());
        string saved = Encoding.UTF8.GetString(ReviewPage.Against(Encoding.UTF8.GetBytes(page), Hostile, "{\"kind\": \"sheetgen review\"}"));
        Assert.Contains("sheetgen review\\u0022}", saved, StringComparison.Ordinal);
        Assert.Equal(Hostile, older.GetProperty("name").GetString());
    }

    [Fact]
    public void The_same_input_gives_the_same_bytes()
    {
        Assert.Equal(Make(Yaml()).Page, Make(Yaml()).Page);
    }

    [GeneratedRegex("""<script type="application/json" id="data">(.*?)</script>""", RegexOptions.Singleline)]
    private static partial Regex Data();

    [GeneratedRegex("""Content-Security-Policy" content="([^"]*)">""")]
    private static partial Regex Policy();

    [GeneratedRegex("<script>(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Script();

    [GeneratedRegex("<style>(.*?)</style>", RegexOptions.Singleline)]
    private static partial Regex Style();
}

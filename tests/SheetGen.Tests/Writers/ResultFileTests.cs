using System.Globalization;
using System.Text;
using System.Text.Json;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Tests.Quantities;
using SheetGen.Writers.Csv;
using SheetGen.Writers.Json;
using Xunit;

namespace SheetGen.Tests.Writers;

public class ResultFileTests
{
    private static (WallProject Project, NailLayout Layout, ClearanceReport Report) Sample()
    {
        (WallProject project, NailLayout layout) = new TestWall().Make();
        Nail turned = layout.Nails[2] with
        {
            Splay = -12,
            Status = NailStatus.Noted,
            Reason = new NailReason("Shaft \"S1\", north", 0.123456789, 0.75, 0.5, [new FailedChoice(10007.5, 0, 5, "S1", 0.2), new FailedChoice(10007.75, 0, 0, "min_gap", null)], "turned, to pass\nS1"),
        };
        layout = layout with { Nails = [.. layout.Nails.Select((n, i) => i == 2 ? turned : n)] };
        Dictionary<string, NailClearance> clear = TestWall.Report(layout).Nails.ToDictionary(p => p.Key, p => p.Value);
        clear[turned.Mark] = new NailClearance("S1", 0.75, 6.5, 4.25);
        var report = new ClearanceReport(
            [
                new Finding
                {
                    Code = FindingCode.NailNail,
                    Severity = Severity.Error,
                    Wall = layout.Nails[0].Wall,
                    Nails = ["A-1-01", "A-1-02"],
                    Clear = -0.05,
                    Required = 0.5,
                    Points = [new Vector3D(1, 2, 110), new Vector3D(1.5, 2.5, 111)],
                    Depths = [3.25, double.NaN],
                    Message = "too close",
                },
                new Finding { Code = FindingCode.Guidance, Severity = Severity.Warning, Message = "wide" },
            ],
            clear);
        return (project, layout, report);
    }

    private static string Text(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    [Fact]
    public void Nails_stand_in_rows_of_rfc_4180()
    {
        (WallProject project, NailLayout layout, ClearanceReport report) = Sample();
        string text = Text(s => NailCsv.Write(project, layout, report, s));
        string[] lines = text.Split("\r\n");
        Assert.Equal(
            "wall,section,row,nail,kind,station,elevation,northing,easting,splay_deg,inclination_deg,length,bar,hole_diameter,status,tip_northing,tip_easting,tip_elevation,nearest,least_clear,margin_obstruction_deg,margin_nail_deg,reason",
            lines[0]);
        Assert.Equal("Wall 1,A,1,A-1-01,production,10002.50,118.00,5000.000000,2002.500000,0,10,24.00,#8 Gr 75,0.50,grid,4976.364614,2002.500000,113.832444,,,90.0000,90.0000,", lines[1]);
        Assert.StartsWith("Wall 1,A,1,A-1-03,production,10012.50,118.00,5000.000000,2012.500000,-12,10,24.00,#8 Gr 75,0.50,noted,", lines[3], StringComparison.Ordinal);
        Assert.EndsWith(",S1,0.750000,6.5000,4.2500,\"turned, to pass\nS1\"", lines[3], StringComparison.Ordinal);
        Assert.Equal(layout.Nails.Count + 2, lines.Length);
        Assert.Contains(",0,A-0-01,verification,", lines[^2], StringComparison.Ordinal);
    }

    [Fact]
    public void Findings_keep_what_applies_and_leave_out_the_rest()
    {
        (WallProject project, NailLayout layout, ClearanceReport report) = Sample();
        layout = layout with { Score = new LayoutScore(new FoundAndBound(1, 0), new FoundAndBound(2, null), new FoundAndBound(12.5, null)) };
        string text = Text(s => FindingsJson.Write(project, layout, report, s));
        using JsonDocument json = JsonDocument.Parse(text);
        JsonElement root = json.RootElement;
        Assert.Equal(1, root.GetProperty("format").GetInt32());
        Assert.Equal("ft", root.GetProperty("units").GetString());
        Assert.Equal("[1,0]", root.GetProperty("layout").GetProperty("unresolved").GetRawText().Replace(" ", "").Replace("\n", ""));
        Assert.Equal(JsonValueKind.Null, root.GetProperty("layout").GetProperty("noted")[1].ValueKind);
        JsonElement first = root.GetProperty("findings")[0];
        Assert.Equal("F-0001", first.GetProperty("id").GetString());
        Assert.Equal(["id", "code", "severity", "wall", "nails", "clear", "required", "points", "depths", "message"], first.EnumerateObject().Select(p => p.Name));
        Assert.Equal("-0.050000", first.GetProperty("clear").GetRawText());
        Assert.Equal("5001.000000", first.GetProperty("points")[0][0].GetRawText());
        Assert.Equal("2002.500000", first.GetProperty("points")[1][1].GetRawText());
        Assert.Equal(1, first.GetProperty("depths").GetArrayLength());
        Assert.Equal(["id", "code", "severity", "message"], root.GetProperty("findings")[1].EnumerateObject().Select(p => p.Name));
        JsonElement change = Assert.Single(root.GetProperty("changes").EnumerateArray());
        Assert.Equal("Shaft \"S1\", north", change.GetProperty("blocker").GetString());
        Assert.Equal(0.123457, change.GetProperty("clear_before").GetDouble());
        Assert.Equal(2, change.GetProperty("failed").GetArrayLength());
        Assert.False(change.GetProperty("failed")[1].TryGetProperty("clear", out _));
    }

    [Fact]
    public void A_comma_culture_changes_nothing()
    {
        (WallProject project, NailLayout layout, ClearanceReport report) = Sample();
        string before = Text(s => NailCsv.Write(project, layout, report, s)) + Text(s => FindingsJson.Write(project, layout, report, s));
        CultureInfo culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("1,5", 1.5.ToString(CultureInfo.CurrentCulture));
            Assert.Equal(before, Text(s => NailCsv.Write(project, layout, report, s)) + Text(s => FindingsJson.Write(project, layout, report, s)));
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Theory]
    [InlineData(-0.0000001, "0.0000")]
    [InlineData(12345678.12345, "12345678.1235")]
    [InlineData(double.PositiveInfinity, "")]
    [InlineData(1e-3, "0.0010")]
    public void Plain_numbers(double value, string text) => Assert.Equal(text, PlainNumber.Fixed(value, 4));

    [Fact]
    public void No_sentence_says_minus_zero()
    {
        Assert.Equal("0.00 ft, 0, 0.0, -0.01, -1,234.5, A-0, -0", PlainNumber.Text($"{-0.004:0.00} ft, {-0.0}, {-0.04:F1}, {-0.006:0.00}, {-1234.5:#,##0.##}, {"A-0"}, {"-0"}"));
    }
}

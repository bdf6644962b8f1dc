using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Drawing.Elevation;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Walls;
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

    private static readonly Lazy<SheetSet> Set = new(() => PlacedWall.Sheets(PlacedWall.Whole(SampleWalls.TwoWalls
        .Replace("elevation: 107}], diameter: 2}", "elevation: 107}], diameter: 2, owner: Example water district, state: abandoned, quality_level: C, source: record drawing}", StringComparison.Ordinal)
        .Replace("    facing: {shotcrete: 4 in, kind", "    batter: {angle: 4 deg, elevation: 102}\n    facing: {shotcrete: 4 in, kind", StringComparison.Ordinal))));

    public static TheoryData<int, string, string, string> Rows()
    {
        var rows = new TheoryData<int, string, string, string>();
        foreach (string line in Repository.Read("docs", "plan-checklist.md").Split('\n').Where(l => Regex.IsMatch(l, @"^\| \d")))
        {
            string[] cells = [.. line.Split('|').Select(c => c.Trim())];
            rows.Add(int.Parse(cells[1], CultureInfo.InvariantCulture), cells[2], cells[3], cells[4]);
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

    /// <summary>A part of a point of the checklist: when a project has it, on which sheets it then stands, and how it reads there.</summary>
    private sealed record Part(int Item, string What, Func<DrawingContext, bool> IsGiven, string Sheets, string Reads);

    private static bool Always(DrawingContext of) => true;

    private static Part[] Parts { get; } =
    [
        new(1, "bearings of the base line", Always, "tables", @"[NS] \d+°\d\d'\d\d"" [EW]"),
        new(1, "datum", Always, "notes", "VERTICAL DATUM: "),
        new(1, "offset to the face", Always, "tables", "FACE OFFSET"),
        new(2, "begin and end stations", Always, "views", @"(?s)BEGIN .*END "),
        new(3, "right of way", c => Has(c, ObstructionKind.Boundary), "views", "{boundary}"),
        new(4, "utilities", c => Has(c, ObstructionKind.Pipe), "tables", "{pipe}"),
        new(8, "pipes behind the wall", c => Has(c, ObstructionKind.Pipe), "views", "{pipe}"),
        new(5, "structures", c => Has(c, ObstructionKind.Shaft), "tables", "{shaft}"),
        new(6, "limit of the longest nails", Always, "views", "LIMIT OF LONGEST NAIL"),
        new(7, "borings", c => c.Project.Borings.Count > 0, "tables", "BORINGS"),
        new(9, "spacings both ways", Always, "views", @"[\d.]+('| m) H x [\d.]+('| m)"),
        new(9, "rows with their elevations", Always, "tables", "ROW ELEVATIONS"),
        new(10, "top of the wall", Always, "views", @"TOP \d"),
        new(10, "bottom of the wall", Always, "views", @"BOT EL \d"),
        new(11, "existing ground", c => c.Project.Walls.Any(w => w.ExistingGround is not null), "views", "EXISTING GROUND"),
        new(11, "finished grade", c => c.Project.Walls.Any(w => w.FinishedGrade is not null), "views", "FINISHED GRADE"),
        new(12, "width of panels", c => c.Quantities.PanelPieces.Any(p => p.Size == PanelSize.Full), "views", "PANEL, TYP"),
        new(13, "test nails", c => c.Layout.Nails.Any(n => n.Kind == NailKind.Verification), "tables", "(?s)TEST NAILS.*BONDED.*TEST LOAD"),
        new(14, "groundwater", c => c.Project.Borings.Any(b => b.Water is not null), "tables", "WATER"),
        new(15, "batter", c => c.Project.Walls.Any(w => w.Batter is not null), "sections", @"BATTER [\d.]+°"),
        new(15, "lifts with their elevations", c => c.Quantities.Lifts.Count > 0, "sections", @"LIFT \d+ EL [\d.]+"),
        new(15, "inclination", Always, "sections", @"[\d.]+° DOWN"),
        new(16, "bar, grade and hole", Always, "details", @"(?s)BAR: #\d+ GR \d+.*HOLE [\d.]+(""| mm)"),
        new(16, "inclination by design zone", Always, "tables", "ANGLE DOWN"),
        new(16, "corrosion protection", Always, "notes", "CORROSION PROTECTION: "),
        new(17, "head, plate and washers", Always, "details", "(?s)PLATE: .*NUT AND WASHER|NUT AND WASHER: .*PLATE: "),
        new(18, "temporary facing and its mesh", Always, "details", "(?s)SHOTCRETE.*MESH: |MESH: .*SHOTCRETE"),
        new(18, "permanent facing, reinforcement and finish", c => c.Project.Walls.Any(w => w.Facing is { Kind: not FacingKind.None }), "details", "(?s)FINISH: .*REINFORCEMENT: |REINFORCEMENT: .*FINISH: "),
        new(19, "drainage", c => c.Quantities.Strips.Count > 0, "details", "(?s)WEEP HOLE: .*UNDERDRAIN: .*OUTLET TO: |UNDERDRAIN: .*OUTLET TO: .*WEEP HOLE: "),
        new(19, "surface water", Always, "notes", "SURFACE WATER: "),
        new(20, "ends of the wall", Always, "details", "END OF WALL"),
        new(20, "corners", c => c.Project.Walls.Any(w => w.LayoutLine.Corners.Any(k => k.Along > w.Start && k.Along < w.End)), "details", "CORNER, PLAN AT "),
        new(21, "criteria", Always, "notes", "(?s)SPECIFICATION: .*DESIGN LOADS: .*SEISMIC: .*SERVICE LIFE: "),
        new(22, "bid quantities", Always, "tables", "(?s)BID QUANTITIES"),
        new(23, "construction sequence", Always, "notes", "CONSTRUCTION SEQUENCE: "),
        new(24, "monitoring", Always, "notes", "MONITORING POINTS, THRESHOLDS AND ACTIONS: "),
        new(25, "traffic", Always, "notes", "TRAFFIC STAGING AND BARRIERS: "),
        new(26, "limits of the site", Always, "notes", "ENVIRONMENTAL LIMITS, CONTAMINATION, ACCESS AND HEADROOM: "),
    ];

    private static bool Has(DrawingContext of, ObstructionKind kind) => of.Project.Obstructions.Any(o => o.Kind == kind);

    [Theory]
    [InlineData("heron-street-bridge")]
    [InlineData("quarry-lane")]
    [InlineData("corner")]
    [InlineData("long")]
    [InlineData("two")]
    [InlineData("random 701")]
    [InlineData("random 704")]
    public void The_parts_of_each_point_stand_on_sheets_of_other_walls(string wall)
    {
        DrawingContext context = PlacedWall.Whole(wall switch
        {
            "corner" => MarkWalls.Corner,
            "long" => MarkWalls.Long,
            "two" => MarkWalls.TwoOnASmallSheet,
            _ when wall.StartsWith("random ", StringComparison.Ordinal) => RandomWall.Yaml(ulong.Parse(wall[7..], CultureInfo.InvariantCulture)),
            _ => Repository.Read("demo", wall, "wall.yaml"),
        });
        SheetSet set = PlacedWall.Sheets(context);
        var others = new Dictionary<string, string> { ["views"] = "PLAN|ELEVATION", ["details"] = "DETAIL" };
        string Written(string sheets) => Regex.Replace(string.Join(" ", set.Sheets.Where(s => others.GetValueOrDefault(sheets, Titles[sheets] + (sheets == "tables" ? "|NOTES" : "")).Split('|').Any(t => s.Title.Contains(t, StringComparison.Ordinal)))
            .SelectMany(s => SheetPicture.Of(set, s)).Select(p => p.Primitive).OfType<Text>().Select(t => t.Value.ToUpperInvariant().Replace(" MM", " mm", StringComparison.Ordinal).Replace(" M ", " m ", StringComparison.Ordinal))), @"\s+", " ");
        string Reads(Part part) => Regex.Replace(part.Reads, @"\{(\w+)\}", m => Regex.Escape(context.Project.Obstructions.First(o => o.Kind == Enum.Parse<ObstructionKind>(m.Groups[1].Value, true)).Name.ToUpperInvariant()));
        string[] missing = [.. Parts.Where(p => p.IsGiven(context) && !Regex.IsMatch(Written(p.Sheets), Reads(p), RegexOptions.IgnoreCase)).Select(p => $"{p.Item}, {p.What}: no \"{p.Reads}\" on the sheets of {p.Sheets}")];

        Assert.True(missing.Length == 0, string.Join("\n", missing));
    }

    [Fact]
    public void Every_item_of_the_checklist_has_a_part() =>
        Assert.Equal(Enumerable.Range(1, Items), Parts.Select(p => p.Item).Distinct().Order());
}

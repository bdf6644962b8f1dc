using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.Tests.Placing;
using SheetGen.Tests.Properties;
using Xunit;

namespace SheetGen.Tests.Clearance;

/// <summary>A face without any nail is told: a wall or a leg too narrow for a head, a section that is closed. The slow twin says the same.</summary>
public sealed class BareFaceTests
{
    private const string Section = "horizontal_spacing: 3.5, vertical_spacing: 3.5, top_row_depth: 2, inclination: 15, lengths: 20, bar: {size: \"#8\", grade: 75}, hole: 6 in";

    /// <param name="elements">Of the layout line from station 0.</param>
    private static WallProject Project(string elements, double end, string wall = "", string blocks = "", string? sections = null) => PlacingWall.Read(FormattableString.Invariant($$"""
        format: 1
        project: {title: Bare, number: B-1, units: ft}
        layout_lines: [{name: L, start: {station: 0, northing: 5000, easting: 2000, azimuth: 90}, elements: [{{elements}}]}]
        walls:
          - name: W
            layout_line: L
            retained_side: left
            stations: [0, {{end}}]
            top: [[0, 115], [{{end}}, 115]]
            bottom: {steps: [[0, 100]]}
            {{wall}}
            sections: [{{sections ?? FormattableString.Invariant($"{{name: A, stations: [0, {end}], {Section}}}")}}]
        {{blocks}}
        """));

    private static (NailLayout Layout, Finding[] Findings) Build(WallProject project)
    {
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        Finding[] told = [.. Checker.Check(project, layout).Findings.Where(f => f.Code is FindingCode.Cover or FindingCode.NoNailHeight)];
        foreach (CoverTwin twin in CoverTwin.All(project, layout))
        {
            foreach (double s in twin.Samples().Where(twin.IsBroken))
                Assert.Contains(told, f => f.Station - 0.05 <= s && s <= f.ToStation + 0.05);
        }
        // The figure of findings.json is the length that is told: the pieces of these walls do not overlap.
        Assert.Equal(told.Where(f => f.Code == FindingCode.Cover).Sum(f => f.ToStation!.Value - f.Station!.Value), layout.Score.Cover.Found, 0.02);
        return (layout, told);
    }

    [Theory]
    [InlineData("line: 40", 1, 0, 1, "1.00 ft wide between the wall's ends and a head keeps 1.00 ft from the wall's end; move the wall's end, lower edge_min,")]
    [InlineData("line: 40", 1.99, 0, 1.99, "1.99 ft wide between the wall's ends")]
    [InlineData("line: 20}, {corner: {turn: left, angle: 40}}, {line: 1.5}, {corner: {turn: left, angle: 40}}, {line: 20", 41.5, 20, 21.5, "1.50 ft wide between two corners and a head keeps 1.00 ft from a corner; move the corner, lower corner_clear,")]
    [InlineData("line: 20}, {corner: {turn: left, angle: 40}}, {line: 20", 20.75, 20, 20.75, "0.75 ft wide from a corner to the wall's end and a head keeps 1.00 ft from a corner and 1.00 ft from the wall's end; move the corner, lower corner_clear or edge_min,")]
    [InlineData("line: 20}, {corner: {turn: left, angle: 40}}, {arc: {radius: 60, length: 1.5, turn: right}}, {corner: {turn: left, angle: 40}}, {line: 20", 41.5, 20, 21.5, "wide between two corners")]
    public void A_face_too_narrow_for_a_head_is_told_with_what_it_lacks(string elements, double end, double from, double to, string words)
    {
        (NailLayout layout, Finding[] told) = Build(Project($"{{{elements}}}", end));
        Finding one = Assert.Single(told);
        Assert.Equal((FindingCode.Cover, Severity.Error, "W"), (one.Code, one.Severity, one.Wall!.Name));
        Assert.Equal(from, one.Station!.Value, 0.011);
        Assert.Equal(to, one.ToStation!.Value, 0.011);
        Assert.Contains(words, one.Message);
        Assert.DoesNotContain(layout.Nails, n => n.Along > from && n.Along < to);
        Assert.Equal(end > 30 || from > 0, layout.Nails.Count > 0);
    }

    [Fact]
    public void A_part_of_a_section_beside_a_corner_names_the_limit()
    {
        string sections = $"{{name: A, stations: [0, 20.5], {Section}}}, {{name: B, stations: [20.5, 40], {Section}}}";
        (_, Finding[] told) = Build(Project("{line: 20}, {corner: {turn: left, angle: 40}}, {line: 20}", 40, sections: sections));
        Assert.Contains("0.50 ft wide from a corner to the section's limit and a head keeps 1.00 ft from a corner; move the corner, lower corner_clear,", Assert.Single(told, f => f.Station > 19.9 && f.ToStation < 20.6).Message);
    }

    /// <summary>Just wide enough: a column of nails stands in the middle, and nothing is told.</summary>
    [Theory]
    [InlineData("{line: 40}", 2, 1)]
    [InlineData("{line: 20}, {corner: {turn: left, angle: 40}}, {line: 2.02}, {corner: {turn: left, angle: 40}}, {line: 20}", 42.02, 21.01)]
    public void A_face_with_just_room_for_a_head_has_its_nails(string elements, double end, double at)
    {
        (NailLayout layout, Finding[] told) = Build(Project(elements, end));
        Assert.Empty(told);
        Assert.Equal(4, layout.Nails.Count(n => Math.Abs(n.Along - at) < 0.02 && n.Kind == NailKind.Production));
    }

    /// <summary>The engineer may accept it by its stations; then it is no error any more, but is still told.</summary>
    [Fact]
    public void A_bare_face_can_be_accepted()
    {
        (_, Finding[] told) = Build(Project("{line: 40}", 1, blocks: "accept: [{code: cover, wall: W, stations: [0, 1], reason: shotcrete spans to the abutment, by: A. B.}]"));
        Assert.Equal(Severity.Accepted, Assert.Single(told).Severity);
    }

    [Fact]
    public void A_section_that_is_closed_or_too_low_is_told_and_only_the_closed_one_is_uncovered()
    {
        string sections = string.Join(", ", new[] { ("A", 0, 20), ("B", 20, 40), ("C", 40, 60) }.Select(s => $"{{name: {s.Item1}, stations: [{s.Item2}, {s.Item3}], {Section}}}"));
        WallProject project = Project("{line: 60}", 60, "no_nails: [{stations: [40, 60], reason: future drain}]", sections: sections);
        Wall low = project.Walls[0] with { Top = new Profile([new(0, 115), new(20, 115), new(20, 101.9), new(40, 101.9), new(40, 115), new(60, 115)]) };
        (NailLayout layout, Finding[] told) = Build(project with { Walls = [low] });
        Assert.DoesNotContain(layout.Nails, n => n.Section.Name != "A");
        Finding closed = Assert.Single(told, f => f.Code == FindingCode.Cover), tooLow = Assert.Single(told, f => f.Code == FindingCode.NoNailHeight);
        Assert.Equal((40.0, 60.0), (closed.Station!.Value, closed.ToStation!.Value));
        Assert.EndsWith("no nails are allowed there (future drain)", closed.Message);
        Assert.Equal((Severity.Notice, 20.0, 40.0), (tooLow.Severity, tooLow.Station!.Value, tooLow.ToStation!.Value));
    }

    /// <summary>A wall that a long run of random walls came upon: 1.00 ft between its ends, at the end of a line with another wall.</summary>
    [Fact]
    public void The_random_wall_of_a_foot_is_told()
    {
        BuiltWall built = BuiltWall.Of(Walls.RandomWall.Scenario(703463, new Walls.RandomWallOptions { Nails = 20 + 703463 % 50, Satisfiable = false }));
        RandomWallTests.AssertTold(built);
        Assert.Equal(LengthUnit.Foot, built.Project.Unit);
        Assert.Equal("Wall 2", Assert.Single(built.Report.Findings, f => f.Code == FindingCode.Cover).Wall!.Name);
    }
}

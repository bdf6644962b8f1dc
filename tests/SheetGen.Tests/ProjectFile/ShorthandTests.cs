using SheetGen.Model;
using SheetGen.ProjectFile.Building;
using SheetGen.ProjectFile.Keys;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>Less typing: what is said in short is the same wall as what is written out.</summary>
public sealed class ShorthandTests
{
    private const string Rest = "        horizontal_spacing: 5\n        vertical_spacing: 5\n        top_row_depth: 2\n        inclination: 15\n        lengths: 24\n        bar: {size: \"#8\", grade: 75}\n        hole: 6 in\n";

    [Theory]
    [InlineData("    section_defaults: {horizontal_spacing: 5, vertical_spacing: 5, top_row_depth: 2, inclination: 15, lengths: 24, bar: {size: \"#8\", grade: 75}, hole: 6 in}\n    sections:\n", "")]
    [InlineData("    section_defaults: {horizontal_spacing: 6, vertical_spacing: 5, top_row_depth: 2, inclination: 15, lengths: 24, bar: \"#8 Gr 75\", hole: 6 in}\n    sections:\n", "        horizontal_spacing: 5\n")]
    [InlineData("    section_defaults: {horizontal_spacing: 5, vertical_spacing: 5, top_row_depth: 2, inclination: 15, lengths: 24, bar: {grade: 75}, hole: 6 in}\n    sections:\n", "        bar: {size: \"#8\"}\n")]
    [InlineData("    section_defaults: {horizontal_spacing: 5, vertical_spacing: 5, top_row_depth: 2, inclination: 15, lengths: 24, bar: [8, Gr 75], hole: 6 in}\n    sections:\n", "")]
    public void A_section_takes_what_it_lacks_from_the_defaults(string defaults, string own)
    {
        WallProject written = BaseWall.Read(BaseWall.Text);
        string text = BaseWall.With("    sections:\n", defaults);

        WallProject shorter = BaseWall.Read(BaseWall.Replace(text, "        stations: [10+60, 11+00]\n" + Rest, "        stations: [10+60, 11+00]\n" + own));

        Section a = written.Walls[0].Sections[1], b = shorter.Walls[0].Sections[1];
        Assert.Equal(a with { Lengths = b.Lengths }, b);
        Assert.Equal(a.Lengths, b.Lengths);
    }

    [Fact]
    public void Defaults_of_all_walls_come_behind_those_of_one_wall()
    {
        string text = BaseWall.With("    sections:\n", "    section_defaults: {hole: 5 in}\n    sections:\n");
        text = BaseWall.Replace(text, "layout_lines:\n", "section_defaults: {hole: 7 in, stage: \"2\"}\nlayout_lines:\n");
        text = BaseWall.Replace(text, "        stations: [10+60, 11+00]\n" + Rest, "        stations: [10+60, 11+00]\n" + Rest.Replace("        hole: 6 in\n", "", StringComparison.Ordinal));

        Section b = BaseWall.Read(text).Walls[0].Sections[1];

        Assert.Equal(5.0 / 12, b.HoleDiameter);
        Assert.Equal("2", b.Stage);
    }

    [Fact]
    public void A_fault_of_a_default_is_told_once_where_it_stands() => Assert.Equal(
        ["wall.yaml:20:30: error R14: \"hole\" is not a length: \"6 inks\" (unknown unit \"inks\"; lengths take ft, us-ft, in, m, cm, mm)"],
        BaseWall.Problems(BaseWall.With("    sections:\n", "    section_defaults: {hole: 6 inks}\n    sections:\n").Replace("        hole: 6 in\n", "", StringComparison.Ordinal)));

    [Fact]
    public void An_obstruction_is_repeated_along_the_line_and_counted_on()
    {
        string text = BaseWall.With("{name: S1, kind: shaft, at: {station: 10+32, offset: 8}", "{name: S1, kind: drilled shaft, repeat: {count: 3, every: 7 ft}, at: {station: 10+32, offset: 8}");
        WallProject project = BaseWall.Read(text);
        LayoutLine line = project.LayoutLines[0];

        Obstruction[] shafts = [.. project.Obstructions.Where(o => o.Kind == ObstructionKind.Shaft)];

        Assert.Equal(["S1", "S2", "S3"], shafts.Select(s => s.Name));
        Assert.Equal([line.PointAt(32, 8), line.PointAt(39, 8), line.PointAt(46, 8)], shafts.Select(s => s.Shape[0].Plan));
    }

    [Fact]
    public void A_repeated_name_must_stay_unique_and_points_need_stations()
    {
        string text = BaseWall.With("{name: S1, kind: shaft, at: {station: 10+32, offset: 8}", "{name: S1, kind: shaft, repeat: {count: 2, every: 7}, at: {northing: 4992, easting: 2032}");

        Assert.Equal(
            [
                "wall.yaml:40:63: error R25: repeat moves points along the layout line: this one has northing and easting (give station and offset)",
                "wall.yaml:41:12: error R20: the name \"S2\" is used twice; the first obstruction of that name is in line 40 (rename one of them)",
            ],
            BaseWall.Problems(BaseWall.Replace(text, "{name: Cap, kind", "{name: S2, kind")));
    }

    [Theory]
    [InlineData("right", "left", 12)]
    [InlineData("left", "left", 12)]
    [InlineData("right", "right", -20)]
    public void A_line_at_an_offset_keeps_it_through_arcs_and_corners(string arc, string corner, double offset)
    {
        string elements = $"elements:\n      - line: 40\n      - arc: {{radius: 200, length: 60, turn: {arc}}}\n      - line: 30\n      - corner: {{turn: {corner}, angle: 25}}\n      - line: 60\n";
        LayoutLine line = BaseWall.Read(OneWall(elements, "[10+00, 11+90]", FormattableString.Invariant($"{{name: ROW, kind: boundary, in_front: {(offset < 0 ? "true" : "false")}, offset_line: {offset}, stations: [9+90, 12+00]}}"))).LayoutLines[0];
        Obstruction row = BaseWall.Read(OneWall(elements, "[10+00, 11+90]", FormattableString.Invariant($"{{name: ROW, kind: boundary, in_front: {(offset < 0 ? "true" : "false")}, offset_line: {offset}, stations: [9+90, 12+00]}}"))).Obstructions[0];

        // Each point between the ends of the pieces lies at the offset from the layout line, or beyond the mitre of a corner.
        double[] offsets = [.. row.Shape.Zip(row.Shape.Skip(1)).SelectMany(p => Enumerable.Range(0, 9).Select(k => (p.First + (p.Second - p.First) * (k / 8.0)).Plan))
            .Select(p => LayoutProjection.Locate(line, p)).Where(p => Math.Abs(p.Along - 130) > 6).Select(p => p.Right)];
        Assert.True(offsets.Length > 100);
        Assert.All(offsets, o => Assert.Equal(offset, o, 0.0101));
        Assert.Equal(line.PointAt(-10, offset), row.Shape[0].Plan);
        Assert.Equal(line.PointAt(200, offset), row.Shape[^1].Plan);
    }

    /// <summary>Two chords of 30 ft along an arc lie 0.6 ft off it at most; one warning says so, not one for each.</summary>
    [Fact]
    public void An_obstruction_straight_beside_a_curve_is_warned_of_once()
    {
        string elements = "elements:\n      - line: 40\n      - arc: {radius: 200, length: 60, turn: right}\n";
        string text = OneWall(elements, "[10+00, 11+00]", "{name: ROW, kind: boundary, points: [{station: 10+40, offset: 20}, {station: 10+70, offset: 20}, {station: 11+00, offset: 20}]}");

        string warning = Assert.Single(BaseWall.Problems(text), p => p.Contains("R58", StringComparison.Ordinal));
        Assert.Contains("ROW runs straight in 2 stretches between its points from 10+40.00 to 11+00.00, where the layout line bends: it lies 20.00 to 20.51 ft from it", warning, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_would_cross_itself_is_refused()
    {
        string text = OneWall("elements:\n      - line: 40\n      - arc: {radius: 30, length: 40, turn: right}\n      - line: 40\n", "[10+00, 10+40]", "{name: ROW, kind: boundary, offset_line: 42}");

        Assert.Equal(["wall.yaml:27:46: error R39: at an offset of 42 the line crosses itself: an arc's centre is nearer, or a leg between two corners is too short (give points)"], BaseWall.Problems(text));
    }

    [Fact]
    public void A_leg_too_short_for_the_offset_is_refused()
    {
        string text = OneWall("elements:\n      - line: 60\n      - corner: {turn: right, angle: 80}\n      - line: 20\n      - corner: {turn: right, angle: 80}\n      - line: 60\n", "[10+00, 10+60]", "{name: ROW, kind: boundary, offset_line: 42}");

        Assert.Contains("the line crosses itself", Assert.Single(BaseWall.Problems(text)));
    }

    [Fact]
    public void A_cap_follows_the_line_with_one_width()
    {
        string elements = "elements:\n      - line: 40\n      - arc: {radius: 200, length: 60, turn: right}\n";
        WallProject project = BaseWall.Read(OneWall(elements, "[10+00, 11+00]", "{name: Cap, kind: cap, offset_line: 3, width: 4, bottom: 115, top: 119, stations: [10+20, 10+80]}"));

        // The area of the strip: 20 ft of tangent and 40 ft of arc at the mean radius 200 - 5 (Pappus).
        double area = Footprints.Area([.. project.Obstructions[0].Shape.Select(p => p.Plan)]);
        Assert.Equal(20 * 4 + 40 * (195.0 / 200) * 4, area, 0.5);
        Assert.True(project.Obstructions[0].Solids.Count > 3);
    }

    [Theory]
    [InlineData("points: [{station: 10+00, offset: 14, elevation: 108}, {station: 10+55, offset: 14}], grade: -2 %", 108, 106.9)]
    [InlineData("points: [{station: 10+00, offset: 14}, {station: 10+55, offset: 14, elevation: 107}], grade: 1 %", 106.45, 107)]
    [InlineData("points: [{station: 10+00, offset: 14}, {station: 10+55, offset: 14}], invert: 107, bore: 18 in, grade: 1:100", 107.75, 108.3)]
    [InlineData("offset_line: 14, stations: [10+00, 10+55], elevation: 108, grade: -2 %", 108, 106.9)]
    [InlineData("offset_line: 14, stations: [10+00, 10+55], elevation: 108", 108, 108)]
    public void A_pipe_falls_by_its_grade_from_one_elevation(string given, double first, double last)
    {
        Obstruction pipe = BaseWall.Read(BaseWall.With("points: [{station: 10+00, offset: 14, elevation: 108}, {station: 10+55, offset: 14, elevation: 107}]", given)).Obstructions.Single(o => o.Kind == ObstructionKind.Pipe);

        Assert.Equal(first, pipe.Shape[0].Z, 9);
        Assert.Equal(last, pipe.Shape[^1].Z, 9);
    }

    [Theory]
    [InlineData("points: [{station: 10+00, offset: 14}, {station: 10+55, offset: 14}], grade: -2 %", "43:105: error R19: a pipe with a grade or offset_line takes one elevation: none is given (give elevation or invert once, at the pipe or at one of its points)")]
    [InlineData("points: [{station: 10+00, offset: 14, elevation: 108}, {station: 10+55, offset: 14, elevation: 107}], grade: -2 %", "43:137: error R19: a pipe with a grade or offset_line takes one elevation: 2 are given (give elevation or invert once, at the pipe or at one of its points)")]
    [InlineData("offset_line: 14, invert: 107", "43:53: error R53: the elevation is the invert: this needs \"bore\" (add bore: (inside diameter))")]
    [InlineData("stations: [10+00, 10+55], points: [{station: 10+00, offset: 14, elevation: 108}, {station: 10+55, offset: 14, elevation: 107}]", "43:28: error R25: \"stations\" goes with offset_line (remove it)")]
    [InlineData("elevation: 108", "43:5: error R11: \"points\" is missing in \"obstruction\" (give points, or offset_line: 42 for what keeps its offset along the layout line)")]
    public void A_pipe_half_given_is_named(string given, string problem) => Assert.Equal(
        [$"wall.yaml:{problem}"],
        BaseWall.Problems(BaseWall.With("points: [{station: 10+00, offset: 14, elevation: 108}, {station: 10+55, offset: 14, elevation: 107}]", given)));

    [Theory]
    [InlineData("south", null)]
    [InlineData("SE", null)]
    [InlineData("south-west", null)]
    [InlineData("north", "10:12: error R43: the face looks south, with the soil left of the layout line; \"faces\" says north (did you mean retained_side: right?)")]
    [InlineData("east", "10:12: error R43: the face looks south, with the soil left of the layout line; \"faces\" says east (correct the azimuth, or faces)")]
    public void The_side_is_checked_against_where_the_face_looks(string faces, string? problem)
    {
        string text = OneWall("elements: [{line: 100}]\n", "[10+00, 11+00]", "{name: S1, kind: shaft, at: {station: 10+50, offset: 9}, diameter: 3, top: 110, bottom: 80}");
        string[] found = BaseWall.Problems(BaseWall.Replace(text, "    retained_side: right\n", $"    retained_side: left\n    faces: {faces}\n"));

        Assert.Equal(problem is null ? [] : [$"wall.yaml:{problem}"], found);
    }

    [Fact]
    public void Every_key_with_a_usual_range_has_it_within_its_range_in_both_unit_systems()
    {
        foreach (Key key in All(KeyTable.Root).Where(k => k.Usual is not null))
        {
            foreach (var unit in new[] { SheetGen.Model.Units.LengthUnit.Foot, SheetGen.Model.Units.LengthUnit.Metre })
            {
                ValueRange usual = key.UsualFor(unit)!, range = key.RangeFor(unit)!;
                Assert.True(usual.Least >= range.Least && usual.Most <= range.Most && usual.Least < usual.Most, key.Name);
            }
        }
    }

    private static IEnumerable<Key> All(Key key) =>
        key.Children.Concat(key.Variants.Values.SelectMany(v => v)).Concat(key.Item is null ? [] : [key.Item]).SelectMany(c => All(c).Prepend(c));

    private static string OneWall(string elements, string stations, string obstruction) => $$"""
        format: 1
        project: {title: T, units: ft}
        layout_lines:
          - name: WL-1
            start: {station: 10+00, northing: 5000, easting: 2000, azimuth: 90}
            {{elements.Replace("\n      ", "\n              ", StringComparison.Ordinal).TrimEnd()}}
        walls:
          - name: W1
            retained_side: right
            stations: {{stations}}
            top: [[10+00, 118], [12+00, 118]]
            bottom: {steps: [[10+00, 102]]}
            sections:
              - name: A
                stations: {{stations}}
                horizontal_spacing: 5
                vertical_spacing: 5
                top_row_depth: 2
                inclination: 15
                lengths: 20
                bar: "#8 Gr 75"
                hole: 6 in
        obstructions:
          - {{obstruction}}
        """.ReplaceLineEndings("\n");
}

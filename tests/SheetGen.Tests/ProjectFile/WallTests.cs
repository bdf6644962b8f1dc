using FsCheck.Xunit;
using SheetGen.Model;
using SheetGen.ProjectFile.Building;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>Panel breaks, bottoms, sections and the keys of a wall.</summary>
public sealed class WallTests
{
    [Fact]
    public void Panels_restart_at_a_corner_which_is_a_break()
    {
        Wall wall = BaseWall.Read(BaseWall.With("panels: {width: 10, height: 5}", "panels: {width: 8, height: 5, first_break: 10+02}").Replace("[10+50, 102.5]", "[10+50, 102.5]", StringComparison.Ordinal)).Walls[0];

        Assert.Equal([2, 10, 18, 26, 34, 42, 50, 58, 60, 68, 76, 84, 92], wall.PanelBreaks.Select(b => Math.Round(b, 9)));
    }

    [Fact]
    public void Behind_a_face_offset_panels_start_at_the_mitre()
    {
        // retained side right, turn right by 30 degrees: an outside corner; the face stands 3 in front of the line
        Wall wall = BaseWall.Read(BaseWall.With("    retained_side: right\n", "    retained_side: right\n    face_offset: -3\n")).Walls[0];
        double reach = 3 * Math.Tan(15 * Math.PI / 180);

        Assert.Equal(60 - reach + 10, wall.PanelBreaks.First(b => b > 60), 1e-9);
        Assert.Contains(60.0, wall.PanelBreaks);
    }

    [Fact]
    public void On_an_arc_panels_count_on_their_own_face()
    {
        string text = BaseWall.With("- line: 60\n      - corner: {turn: right, angle: 30}\n      - line: 40", "- arc: {radius: 200, length: 100, turn: left}");
        text = BaseWall.Replace(text, "    retained_side: right\n", "    retained_side: right\n    face_offset: -20\n");
        text = BaseWall.Replace(text, "[[10+00, 102], [10+50, 102.5]]", "[[10+00, 102]]");
        Wall wall = BaseWall.ReadWarned(text, "R58").Walls[0];

        // the face's radius is 180: 10 on it are 10 * 200 / 180 on the line
        Assert.Equal(Enumerable.Range(1, 8).Select(k => Math.Round(k * 10 * 200 / 180.0, 9)), wall.PanelBreaks.Select(b => Math.Round(b, 9)));
        var face = new Face(wall);
        Assert.All(wall.PanelBreaks.Zip(wall.PanelBreaks.Skip(1)), p => Assert.Equal(10, face.Distance(p.First, p.Second, 110), 1e-9));
    }

    [Fact]
    public void Steps_from_grade_are_the_highest_that_keep_the_embedment_over_each_panel()
    {
        string text = BaseWall.With("{steps: [[10+00, 102], [10+50, 102.5]]}", "{from_grade: {embedment: 2 ft, rise: 1.25 ft, datum: 0.5}}");
        text = BaseWall.Replace(text, "[[10+00, 104], [11+00, 105]]", "[[10+00, 104], [10+20, 106], [10+20, 103], [10+45, 108], [11+00, 108]]");
        Wall wall = BaseWall.Read(text).Walls[0];

        double[] expected = [101.75, 103, 100.5, 103, 104.25, 105.5, 105.5, 105.5, 105.5, 105.5];
        double[] middles = [.. Enumerable.Range(0, 10).Select(k => 5.0 + 10 * k)];
        Assert.Equal(expected, middles.Select(wall.Bottom.At));
        Assert.Equal([0, 10, 20, 30, 40, 50], wall.BottomSteps.Select(s => s.Along));
    }

    [Property]
    public bool Steps_from_grade_agree_with_dense_sampling(byte[] heights, byte embedment, byte rise)
    {
        if (heights.Length < 2)
            return true;
        int n = Math.Min(heights.Length, 12);
        var grade = new Profile([.. Enumerable.Range(0, n).Select(i => new ProfilePoint(i * 96.0 / (n - 1), heights[i] / 8.0))]);
        double deep = embedment / 64.0, step = 0.25 + rise / 128.0;
        double[] breaks = [12, 24, 36, 48, 60, 72, 84];
        List<ProfilePoint> steps = GradeSteps.Of(0, 96, breaks, grade, deep, step, 3);
        for (int panel = 0; panel < 8; panel++)
        {
            double bottom = steps.Last(s => s.Along <= panel * 12 + 6).Elevation;
            double least = Enumerable.Range(0, 1201).Select(i => panel * 12 + i / 100.0).Concat(grade.Points.Select(p => p.Along).Where(a => a >= panel * 12 && a <= panel * 12 + 12)).Min(grade.At);
            double k = (bottom - 3) / step;
            if (Math.Abs(k - Math.Round(k)) > 1e-6 || bottom > least - deep + 1e-6 || bottom + step <= least - deep - 1e-6)
                return false;
        }
        return true;
    }

    [Fact]
    public void The_bottom_is_a_profile_of_vertical_steps()
    {
        Wall wall = BaseWall.Read(BaseWall.Text).Walls[0];

        Assert.Equal((102.0, 102.5, 102.5), (wall.Bottom.Before(50), wall.Bottom.At(50), wall.Bottom.At(100)));
        Assert.Equal(102, wall.Bottom.At(49.999));
    }

    [Fact]
    public void Sections_may_stand_in_any_order_and_take_their_defaults()
    {
        string text = BaseWall.With("stations: [10+00, 10+60]", "stations: [10+40, 11+00]");
        text = BaseWall.Replace(text, "stations: [10+60, 11+00]", "stations: [10+00, 10+40]");
        text = BaseWall.Replace(text, "section: A, row: 2, station: 10+30", "section: A, row: 2, station: 10+70");
        Wall wall = BaseWall.Read(text).Walls[0];

        Assert.Equal(["B", "A"], wall.Sections.Select(s => s.Name));
        Section section = wall.Sections[0];
        Assert.Equal((RowKind.Level, Pattern.Square, CornerRows.Continuous, TestNails.None), (section.Rows, section.Pattern, section.CornerRows, section.TestNails));
        Assert.Equal([24], section.Lengths);
        Assert.Equal("", section.Stage);
    }

    [Fact]
    public void A_section_names_its_stage()
    {
        string text = BaseWall.With("stations: [10+00, 10+60]", "stations: [10+00, 10+60]\n        stage: 2");

        Assert.Equal(["2", ""], BaseWall.Read(text).Walls[0].Sections.Select(s => s.Stage));
    }

    [Fact]
    public void Every_block_of_a_wall_reaches_the_model()
    {
        string text = BaseWall.With("    facing: {shotcrete: 4 in, kind: precast panels}\n", """
                face_offset: -6 in
                batter: {angle: 4 deg, elevation: 104}
                existing_ground: [[10+00, 119], [11+00, 122]]
                facing: {shotcrete: 4 in, kind: sculpted shotcrete, thickness: 6 in, gap: 0, coping: precast}
                drainage: {strip_width: 16 in}
                lifts: {below_row: 18 in, max_exposed: 4, max_hours: 24}
                openings:
                  - {name: Culvert, stations: [10+20, 10+26], bottom: 104, top: 109}
                no_nails:
                  - {stations: [10+80, 10+84], reason: future opening}
                cross_sections:
                  - {station: 10+00, ground: [[0, 118], [20, 118], [20, 110]]}
                  - {station: 11+00, ground: [[0, 119], [25 ft, 104]]}

            """);
        Wall wall = BaseWall.ReadWarned(BaseWall.Replace(text, "panels: {width: 10, height: 5}", "panels: {width: 50, height: 5}"), "R72").Walls[0];

        Assert.Equal(-0.5, wall.FaceOffset);
        Assert.Equal(new Batter(4, 104), wall.Batter);
        Assert.Equal(120.5, wall.ExistingGround!.At(50));
        Assert.Equal(new Facing { Shotcrete = 4 / 12.0, Kind = FacingKind.SculptedShotcrete, Thickness = 0.5, Gap = 0, Coping = "precast" }, wall.Facing);
        Assert.Equal(new Drainage(16 / 12.0, null), wall.Drainage);
        Assert.Equal(new Lifts(1.5, 4, 24), wall.Lifts);
        Opening opening = Assert.Single(wall.Openings);
        Assert.Equal(("Culvert", 20.0, 26.0, 104.0, 109.0), (opening.Name, opening.Start, opening.End, opening.Bottom, opening.Top));
        ClosedStretch closed = Assert.Single(wall.ClosedStretches);
        Assert.Equal([0.0, 100.0], wall.CrossSections.Select(c => c.Along));
        Assert.Equal([new(0, 118), new(20, 118), new(20, 110)], wall.CrossSections[0].Ground);
        Assert.Equal([new(0, 119), new(25, 104)], wall.CrossSections[1].Ground);
        Assert.Equal((80.0, 84.0, null, null, "future opening"), (closed.Start, closed.End, closed.Bottom, closed.Top, closed.Reason));
    }
}

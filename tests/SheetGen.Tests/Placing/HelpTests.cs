using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>
/// What would help, on a wall of two nails that cannot shift. A shaft of 3 ft, 4.05 ft straight behind the first nail, needs
/// 1.5 + 0.25 + 0.5 = 2.25 ft from the axis: 4.05 sin a is 2.03 at 30 degrees, 2.32 at 35.
/// </summary>
public sealed class HelpTests
{
    private static WallProject Wall(string maximum = "30", string clearance = "0.5", double length = 7) => PlacingWall.OneRow(length,
    [
        "obstructions:",
        "  - {name: S1, kind: shaft, at: {station: 1.75, offset: 4.05}, diameter: 3, top: 110, bottom: 80}",
        "rules:",
        $"  clearance: {{obstruction: {clearance}, nail: {clearance}, boundary: 1}}",
        $"  redirect: {{maximum: {maximum}}}",
        "  min_gap: 3.4",
    ]).Project;

    internal sealed class Stages : IProgress<string>
    {
        public List<string> Told { get; } = [];

        public void Report(string value) => Told.Add(value);
    }

    private static double Unresolved(WallProject project) => Placer.Place(project, new PlacingOptions()).Score.Unresolved.Found;

    [Fact]
    public void Help_names_the_least_relaxation_and_keeps_what_it_says()
    {
        var stages = new Stages();
        NailLayout layout = Placer.Place(Wall(), new PlacingOptions(), stages);
        Assert.Equal(2, stages.Told.Count(s => s.StartsWith("what ", StringComparison.Ordinal)));
        Assert.Equal(1, layout.Score.Unresolved.Found);
        NailHelp turn = Assert.Single(layout.Help, h => h.Relaxation == "redirect.maximum");
        NailHelp clear = Assert.Single(layout.Help, h => h.Relaxation == "clearance");
        Assert.Equal(("35 degrees", false), (turn.Value, turn.NeedsApproval));
        Assert.True(clear.NeedsApproval);
        Assert.Equal(("frees it", "frees it; only with the engineer of record's consent"), (turn.Result, clear.Result));
        Assert.Contains("0.25 ft to obstructions", clear.Value, StringComparison.Ordinal);
        Assert.Equal(0, Unresolved(Wall(maximum: "35")));
        Assert.Equal(0, Unresolved(Wall(clearance: "0.25")));
        Assert.Equal(1, Unresolved(Wall(clearance: "0.375")));
        Assert.All(layout.Help, h => Assert.Equal(["A-1-01"], h.Nails));
    }

    [Fact]
    public void Columns_that_would_free_nails_are_named_with_the_figure_that_does()
    {
        WallProject project = ColumnPhaseTests.InTheWay(28).Project;
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        NailHelp help = Assert.Single(layout.Help, h => h.Relaxation == "columns");
        Assert.True(layout.Score.Unresolved.Found > 0);
        double first = double.Parse(help.Value.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.True(Unresolved(ColumnPhases.From(project, 0, 0, first)) < layout.Score.Unresolved.Found, help.Result);
    }

    /// <summary>
    /// Behind an outside corner of 90 degrees nails of both legs that start equally far from it meet. Where rows lie half a spacing apart, 1.75 ft
    /// with 1.25 ft between the holes, they pass; those 3.5 ft further have then dropped 0.94 ft more or less and pass too.
    /// </summary>
    [Fact]
    public void Shifted_corner_rows_that_would_free_nails_are_named()
    {
        PlacingWall wall = new()
        {
            Length = 14,
            CornerAt = 7,
            Deflection = 90,
            Blocks = ["rules:", "  clearance: {nail: 0.25}", "  redirect: {maximum: 1, field_tolerance: 1}", "  shift_step: 1.75"],
        };
        NailLayout layout = Placer.Place(wall.Project, new PlacingOptions());
        NailHelp help = Assert.Single(layout.Help, h => h.Relaxation == "corner_rows");
        Assert.Equal("shifted", help.Value);
        double shifted = Unresolved((wall with { CornerRows = "shifted" }).Project);
        Assert.True(shifted < layout.Score.Unresolved.Found, $"{shifted} shifted, {layout.Score.Unresolved.Found} continuous: {help.Result}");
    }

    [Fact]
    public void What_is_not_tried_is_told()
    {
        NailLayout layout = Placer.Place(Wall(length: 2810), new PlacingOptions());
        Assert.True(layout.Rows.Sum(r => r.GridStations.Count) > 800);
        Assert.Contains(layout.Help, h => h.Relaxation == "none" && h.Result.Contains("tried up to 800", StringComparison.Ordinal));
    }

    // A shaft straight behind each of 26 nails that cannot turn by more than 5 degrees: help is worked out for the first 24.
    [Fact]
    public void Help_is_worked_out_for_so_many_nails_and_the_others_are_named()
    {
        NailLayout layout = PlacingWall.OneRow(91,
        [
            "obstructions:",
            .. Enumerable.Range(0, 26).Select(i => FormattableString.Invariant($"  - {{name: S{i}, kind: shaft, at: {{station: {1.75 + 3.5 * i}, offset: 4.05}}, diameter: 2, top: 110, bottom: 80}}")),
            "rules:",
            "  redirect: {maximum: 5, step: 5, field_tolerance: 5}",
            "  min_gap: 3.4",
        ]).Layout;
        Assert.Equal(26, layout.Score.Unresolved.Found);
        NailHelp left = Assert.Single(layout.Help, h => h.Result.StartsWith("not looked at", StringComparison.Ordinal));
        Assert.Equal(["A-1-25", "A-1-26"], left.Nails);
        Assert.Equal("not looked at: help is worked out for 24 nails", left.Result);
        // 1 + 0.25 + 0.5 = 1.75 ft from the shaft's axis: 4.05 sin a is 1.39 at 20 degrees and 1.71 at 25, too little; the others stand 3.5 ft away.
        NailHelp[] all = [.. layout.Help.Where(h => h.Nails.Count == 24)];
        Assert.All(all, h => Assert.Equal("A-1-01", h.Nails[0]));
        Assert.DoesNotContain(layout.Help, h => h.Relaxation == "redirect.maximum");
        // Shorter than the 3.05 ft to the shaft less 0.5 ft: at least half of the length is kept, so no length helps.
        Assert.DoesNotContain(layout.Help, h => h.Relaxation == "length");
        Assert.Equal("no relaxation that was tried frees them", all[0].Result);
    }

    /// <summary>Eight stations are listed, of more the first eight and how many others.</summary>
    [Theory]
    [InlineData(1, "no free direction at A-1-01")]
    [InlineData(8, "no free direction at A-1-01, A-1-02, A-1-03, A-1-04, A-1-05, A-1-06, A-1-07, A-1-08")]
    [InlineData(9, "no free direction at A-1-01, A-1-02, A-1-03, A-1-04, A-1-05, A-1-06, A-1-07, A-1-08 and 1 more")]
    public void Stations_that_must_stay_unresolved_are_listed(int count, string words)
    {
        NailLayout layout = PlacingWall.OneRow(3.5 * count,
        [
            "obstructions:",
            .. Enumerable.Range(0, count).Select(i => FormattableString.Invariant($"  - {{name: S{i}, kind: shaft, at: {{station: {1.75 + 3.5 * i}, offset: 4.05}}, diameter: 2, top: 110, bottom: 80}}")),
            "rules:",
            "  redirect: {maximum: 5, step: 5, field_tolerance: 5}",
            "  min_gap: 3.4",
        ]).Layout;
        Assert.Equal($"with all heads on their grid stations at least {count} would stay unresolved: {words}", Assert.Single(layout.Notes, n => n.StartsWith("with all heads", StringComparison.Ordinal)));
    }

    /// <summary>
    /// A shaft of 1 ft straight behind the nail at 12.25 asks for 0.5 + 0.25 + 0.5 = 1.25 ft: 4.05 sin a is 1.05 at 15 degrees and 1.39 at 20. Nails of 40 ft that turn by
    /// 5 degrees stay within 3.5 ft of their own line: those 10.5 ft beside it come near none of its own directions, but 40 sin 20 = 13.7 ft crosses them.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_only_a_relaxed_direction_reaches_is_in_its_way_too(bool beside)
    {
        double[] without = beside ? [5.25, 8.75, 15.75, 19.25] : [1.75, 5.25, 8.75, 15.75, 19.25, 22.75];
        NailLayout layout = new PlacingWall
        {
            Length = 24.5,
            Top = "[[0, 103], [END, 103]]",
            TopRowDepth = 1.5,
            Lengths = "40",
            Blocks =
            [
                "obstructions:",
                "  - {name: S1, kind: shaft, at: {station: 12.25, offset: 4.05}, diameter: 1, top: 110, bottom: 80}",
                "rules:",
                "  redirect: {maximum: 5, step: 5, field_tolerance: 5, inclination: [14.5, 15.5]}",
                "  shift_step: 2",
                "fixed:",
                .. without.Select(s => FormattableString.Invariant($"  - {{wall: Wall 1, section: A, row: 1, station: {s}, leave_out: true}}")),
            ],
        }.Layout;
        Assert.Equal(7 - without.Length, layout.Nails.Count);
        Assert.Equal(1, layout.Score.Unresolved.Found);
        NailHelp[] turned = [.. layout.Help.Where(h => h.Relaxation == "redirect.maximum")];
        Assert.Equal(beside ? [] : ["20 degrees"], turned.Select(h => h.Value));
        Assert.Equal(beside, layout.Help.Any(h => h is { Relaxation: "none", Result: "no relaxation that was tried frees it" }));
    }

    /// <summary>
    /// A block under the nail reaches from 2.55 to 5.55 ft behind the face. At 0 degrees the axis at 101.5 is 0.25 + 0.5 ft over anything up to 100.75; at 5 degrees it is at 101.01 where
    /// the block ends, at 10 at 100.52. The window is told as it must be written, not above the horizontal.
    /// </summary>
    [Theory]
    [InlineData(100.6, "[4, 20]", "[0, 25] degrees")]
    [InlineData(100, "[10, 20]", "[5, 25] degrees")]
    public void A_wider_inclination_is_told_as_a_window(double top, string window, string told)
    {
        NailLayout layout = PlacingWall.OneRow(7,
        [
            "obstructions:",
            FormattableString.Invariant($"  - {{name: S1, kind: shaft, at: {{station: 1.75, offset: 4.05}}, diameter: 3, top: {top}, bottom: 80}}"),
            "rules:",
            $"  redirect: {{maximum: 15, field_tolerance: 10, inclination: {window}}}",
            "  min_gap: 3.4",
        ]).Layout;
        Assert.Equal(1, layout.Score.Unresolved.Found);
        Assert.Equal(told, Assert.Single(layout.Help, h => h.Relaxation == "redirect.inclination").Value);
    }

    /// <summary>
    /// A block over the nail begins 2.55 ft behind the face, where the hole at 15 degrees has dropped by 0.68 ft. It needs 0.25 + 0.5 = 0.75 ft square to the axis, so the head must
    /// stand 0.75 / cos 15 - 0.68 = 0.09 ft under the block or lower: at 101.11 where the block ends at 101.2. In eighths of half a spacing, 0.219 ft, below 101.5 that is two.
    /// </summary>
    [Fact]
    public void A_nail_added_elsewhere_for_one_that_is_left_out_keeps_every_rule()
    {
        PlacingWall wall = UnderBlock(7, "station: 1.75, offset: 4.05}, diameter: 3", "  min_gap: 3.4");
        NailLayout layout = wall.Layout;
        Assert.Equal(1, layout.Score.Unresolved.Found);
        NailHelp help = Assert.Single(layout.Help, h => h.Relaxation == "leave_out");
        Assert.Equal(["A-1-01"], help.Nails);
        Assert.Equal(("add at 0+01.75, elevation 101.06 ft, splay 0, inclination 15", "frees it", false), (help.Value, help.Result, help.NeedsApproval));
        // As it says, in the project file.
        string fixedNails = "fixed:\n  - {row: 1, station: 1.75, leave_out: true}\n  - {row: 1, station: 1.75, elevation: 101.06, splay: 0, inclination: 15, add: true}\n";
        WallProject changed = PlacingWall.Read(wall.Yaml + fixedNails);
        NailLayout now = Placer.Place(changed, new PlacingOptions());
        Assert.Equal((0, 2), (now.Score.Unresolved.Found, now.Nails.Count));
        Assert.DoesNotContain(Checker.Check(changed, now).Findings, f => f.Severity == Model.Problems.Severity.Error);
    }

    /// <summary>Nails added for several of a group stand together: each is held against those added before it.</summary>
    [Fact]
    public void Nails_added_for_a_group_can_all_be_had_together()
    {
        PlacingWall wall = UnderBlock(14, "station: 7, offset: 6.05}, diameter: 7");
        NailLayout layout = wall.Layout;
        Assert.True(layout.Score.Unresolved.Found > 1);
        NailHelp help = Assert.Single(layout.Help, h => h.Relaxation == "leave_out");
        Assert.Equal("and add a nail for each", help.Value);
        var told = System.Text.RegularExpressions.Regex.Matches(help.Result, "A-1-(\\d\\d) add at 0\\+(\\d\\d\\.\\d\\d), elevation (\\d+\\.\\d\\d) ft, splay (-?\\d+), inclination (\\d+)");
        Assert.Equal(help.Nails.Count, told.Count);
        Dictionary<string, double> stations = layout.Nails.ToDictionary(n => n.Mark, n => n.GridStation);
        string fixedNails = "fixed:\n" + string.Concat(told.Select(t =>
            FormattableString.Invariant($"  - {{row: 1, station: {stations["A-1-" + t.Groups[1].Value]}, leave_out: true}}\n") +
            $"  - {{row: 1, station: {t.Groups[2].Value}, elevation: {t.Groups[3].Value}, splay: {t.Groups[4].Value}, inclination: {t.Groups[5].Value}, add: true}}\n"));
        WallProject changed = PlacingWall.Read(wall.Yaml + fixedNails);
        NailLayout now = Placer.Place(changed, new PlacingOptions());
        Assert.Equal(layout.Score.Unresolved.Found - told.Count, now.Score.Unresolved.Found);
        Assert.DoesNotContain(Checker.Check(changed, now).Findings, f => f.Code is FindingCode.Cover or FindingCode.Spacing);
    }

    /// <summary>A wall with one row of nails, 1.5 ft below its top of 103, and a block over them that ends at 101.2; nails may hardly be turned.</summary>
    private static PlacingWall UnderBlock(double length, string block, params string[] rules) => PlacingWall.OneRow(length,
    [
        "obstructions:",
        $"  - {{name: S1, kind: shaft, at: {{{block}, top: 110, bottom: 101.2}}",
        "rules:",
        "  redirect: {maximum: 5, step: 5, field_tolerance: 5, inclination: [14.5, 15.5]}",
        .. rules,
    ]);

    /// <summary>
    /// The shaft of 3.5 ft needs 1.75 + 0.25 + 0.5 = 2.5 ft: 4.05 sin a is 2.32 at 35 degrees, 2.60 at 40. The one of 3 ft is passed at 35. Both nails turn away from
    /// the one between them.
    /// </summary>
    [Fact]
    public void A_group_is_told_the_one_value_that_frees_all_and_then_what_each_needs()
    {
        string[] Blocks(string maximum) =>
        [
            "obstructions:",
            "  - {name: S1, kind: shaft, at: {station: 1.75, offset: 4.05}, diameter: 3.5, top: 110, bottom: 80}",
            "  - {name: S2, kind: shaft, at: {station: 8.75, offset: 4.05}, diameter: 3, top: 110, bottom: 80}",
            "rules:",
            $"  redirect: {{maximum: {maximum}, inclination: [14.5, 15.5]}}",
            "  min_gap: 3.4",
        ];
        NailLayout layout = PlacingWall.OneRow(10.5, Blocks("30")).Layout;
        Assert.Equal(2, layout.Score.Unresolved.Found);
        NailHelp help = Assert.Single(layout.Help, h => h.Relaxation == "redirect.maximum");
        Assert.Equal(("40 degrees", "frees all 2 together (by itself each needs 35 degrees: A-1-03; 40 degrees: A-1-01)"), (help.Value, help.Result));
        Assert.Equal(["A-1-01", "A-1-03"], help.Nails);
        Assert.Equal(1, PlacingWall.OneRow(10.5, Blocks("35")).Layout.Score.Unresolved.Found);
        Assert.Equal(0, PlacingWall.OneRow(10.5, Blocks("40")).Layout.Score.Unresolved.Found);
    }

    /// <summary>
    /// Nails 2 and 4, of 12 ft, turn by 35 degrees to pass a shaft of 3 ft and by 40 to pass one of 3.5 ft, and only towards each other, where nail 3 is left out: 1 and 5 are
    /// pinned. They start 7 ft apart and meet 3.5 / tan 35 = 5 ft behind the face. So each can be had, and not both.
    /// </summary>
    [Theory]
    [InlineData("3", "35 degrees", "frees all 2, one at a time")]
    [InlineData("3.5", "35 degrees to 40 degrees", "frees all 2, one at a time (by itself each needs 35 degrees: A-1-02; 40 degrees: A-1-04)")]
    public void Nails_that_a_value_frees_only_one_at_a_time_are_not_said_to_be_freed_together(string diameter, string value, string result)
    {
        PlacingWall wall = PlacingWall.OneRow(17.5,
        [
            "obstructions:",
            "  - {name: S1, kind: shaft, at: {station: 5.25, offset: 4.05}, diameter: 3, top: 110, bottom: 80}",
            $"  - {{name: S2, kind: shaft, at: {{station: 12.25, offset: 4.05}}, diameter: {diameter}, top: 110, bottom: 80}}",
            "rules:",
            "  redirect: {maximum: 30, inclination: [14.5, 15.5]}",
            "  min_gap: 3.4",
            "fixed:",
            "  - {row: 1, station: 1.75, splay: 0, inclination: 15}",
            "  - {row: 1, station: 8.75, leave_out: true}",
            "  - {row: 1, station: 15.75, splay: 0, inclination: 15}",
        ]) with
        { Lengths = "12" };
        NailLayout layout = wall.Layout;
        Assert.Equal(2, layout.Score.Unresolved.Found);
        NailHelp help = Assert.Single(layout.Help, h => h.Relaxation == "redirect.maximum");
        Assert.Equal((value, result), (help.Value, help.Result));
    }

    [Fact]
    public void No_help_where_nothing_is_unresolved() =>
        Assert.Empty(Placer.Place(Wall(maximum: "35"), new PlacingOptions()).Help);
}

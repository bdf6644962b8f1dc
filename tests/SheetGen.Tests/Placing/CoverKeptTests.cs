using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Properties;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Cover comes first: no layout found leaves more of a wall uncovered than the grid alone does.</summary>
public sealed class CoverKeptTests
{
    private const ulong First = 61001;

    public static IEnumerable<TheoryDataRow<ulong>> Seeds => SeedData.Of(First, 12).Select(s => new TheoryDataRow<ulong>(s));

    /// <summary>200 walls, or 1,000 with SHEETGEN_LONG=1.</summary>
    public static IEnumerable<TheoryDataRow<ulong>> ManySeeds => Enumerable.Range(0, Environment.GetEnvironmentVariable("SHEETGEN_LONG") == "1" ? 1000 : 200).Select(i => new TheoryDataRow<ulong>(First + 100 + (ulong)i));

    [Theory, MemberData(nameof(Seeds))]
    public void A_layout_covers_what_the_grid_covers(ulong seed) => AssertCovered(seed, 60);

    [Theory, MemberData(nameof(ManySeeds))]
    [Trait("Category", "Long")]
    public void Layouts_of_many_walls_cover_what_the_grid_covers(ulong seed) => AssertCovered(seed, 40);

    /// <summary>
    /// The column left of a bottom step covers to 0.18 ft before it, and no part row fits beside its nail: the row below the step moves over by a shift
    /// step, as far as the gaps ask. Nothing else of the search looks for that.
    /// </summary>
    [Fact]
    public void A_row_moves_over_where_its_last_nail_would_not_cover_up_to_a_bottom_step()
    {
        WallProject project = PlacingWall.Read(Step);
        NailLayout without = Placer.Place(project, new PlacingOptions { Without = [nameof(CoverShift)] }), with = Placer.Place(project, new PlacingOptions());
        Assert.Equal(0.18, without.Score.Cover.Found, 6);
        Assert.Equal(0, with.Score.Cover.Found);
        Assert.DoesNotContain(Checker.Check(project, with).Findings, f => f.Severity == Model.Problems.Severity.Error);
        Nail[] moved = [.. with.Nails.Where(n => n.IsMoved)];
        Assert.InRange(moved.Length, 1, 3);
        Assert.All(moved, n => Assert.Equal("moved so that the face is covered from 1+10.82 to 1+11.00, which its grid place leaves uncovered", n.Reason!.Text));
        // All others stand where they stood.
        Assert.Equal(
            without.Nails.Where(n => !moved.Any(m => m.Mark == n.Mark)).Select(n => (n.Mark, n.Along)),
            with.Nails.Where(n => !n.IsMoved).Select(n => (n.Mark, n.Along)));
    }

    /// <summary>
    /// A column stands 0.02 ft left of a bottom step: its lowest nail keeps edge_min from the step's top, too high over the bottom that it stands on. It
    /// covers the same stretch from beyond the step, where the bottom is higher.
    /// </summary>
    [Fact]
    public void A_nail_just_before_a_bottom_step_moves_beyond_it_where_it_would_stand_too_high()
    {
        WallProject project = PlacingWall.Read(BesideStep);
        NailLayout without = Placer.Place(project, new PlacingOptions { Without = [nameof(CoverShift)] }), with = Placer.Place(project, new PlacingOptions());
        Assert.Equal(1, without.Score.Cover.Found, 6);
        Assert.Equal(0, with.Score.Cover.Found);
        Assert.DoesNotContain(Checker.Check(project, with).Findings, f => f.Severity == Model.Problems.Severity.Error);
    }

    /// <summary>A pinned nail is not moved for cover: the finding then stands, because of the pin.</summary>
    [Fact]
    public void A_pinned_nail_is_not_moved_for_cover()
    {
        Nail[] moved = [.. Placer.Place(PlacingWall.Read(Step), new PlacingOptions()).Nails.Where(n => n.IsMoved)];
        Nail outermost = moved.MaxBy(n => n.Along)!;
        string pin = FormattableString.Invariant($"  - {{wall: Wall 1, row: \"{outermost.Row}\", station: {outermost.GridStation}}}");
        NailLayout layout = Placer.Place(PlacingWall.Read(Step + "fixed:\n" + pin + "\n"), new PlacingOptions());
        Assert.Equal(0.18, layout.Score.Cover.Found, 6);
        Assert.DoesNotContain(layout.Nails, n => n.IsMoved);
    }

    internal const string Step = """
        format: 1
        project: {title: Step, number: R-1, units: ft}
        layout_lines:
          - name: WL-1
            start: {station: 1+00, northing: 1000, easting: 1000, azimuth: 90}
            elements:
              - line: 15.64
        walls:
          - name: Wall 1
            layout_line: WL-1
            retained_side: right
            stations: [1+00, 1+15.64]
            top: [[1+00, 150], [1+15.64, 150]]
            bottom:
              steps: [[1+00, 142], [1+11, 145]]
            sections:
              - name: A
                stations: [1+00, 1+15.64]
                horizontal_spacing: 3
                vertical_spacing: 3.5
                rows: level
                pattern: square
                top_row_depth: 2.5
                inclination: 15
                lengths: [16]
                bar: {size: "#8", grade: 75}
                hole: 0.666666667
        rules:
          clearance: {obstruction: 4 in, nail: 4 in, boundary: 1 ft}
          drift: 2 %

        """;

    private const string BesideStep = """
        format: 1
        project: {title: Step beside a column, number: R-1, units: ft}
        layout_lines:
          - name: WL-1
            start: {station: 1+00, northing: 1000, easting: 1000, azimuth: 0}
            elements:
              - line: 34.96
        walls:
          - name: Wall 1
            layout_line: WL-1
            retained_side: left
            stations: [1+00, 1+34.96]
            top: [[1+00, 140], [1+34.96, 140.175]]
            bottom:
              steps: [[1+00, 120], [1+10, 122.5], [1+20, 125]]
            panels: {width: 10, height: 5, first_break: 1+00}
            sections:
              - name: A
                stations: [1+00, 1+34.96]
                horizontal_spacing: 3
                vertical_spacing: 3
                rows: level
                pattern: square
                top_row_depth: 2
                inclination: 10
                lengths: [30, 30, 28, 26]
                bar: {size: "#8", grade: 75}
                hole: 0.5
        rules:
          clearance: {obstruction: 6 in, nail: 6 in, boundary: 1 ft}
          drift: 2 %

        """;

    private static void AssertCovered(ulong seed, int nails)
    {
        WallProject project = PlacingWall.Read(RandomWall.Yaml(seed, new RandomWallOptions { Nails = nails, Obstructions = 12 }));
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        foreach (Bay bay in PlacingWall.Bays(project))
        {
            NailRow[] rows = [.. layout.Rows.Where(r => r.Wall == bay.Wall && r.Section == bay.Section && r.Leg == bay.Leg.Index)];
            Head[] grid = [.. rows.SelectMany(r => r.GridStations.Select(a => new Head(new Along(a), new Elevation(r.ElevationAt(a)).Rounded(project.Unit))))];
            Head[] found = [.. layout.Nails.Where(n => n.Kind != NailKind.Verification && n.Wall == bay.Wall && n.Section == bay.Section && bay.Leg.Has(n.Along)).Select(Head.Of)];
            double given = Uncovered(bay, grid), now = Uncovered(bay, found);
            Assert.True(now <= given + 1e-6, $"seed {seed}, {bay.Wall.Name} section {bay.Section.Name}: {now} uncovered, {given} by the grid alone");
        }
    }

    private static double Uncovered(Bay bay, Head[] heads) =>
        CoverRule.Breaks(bay, heads, strict: false).Select(b => (b.Start, b.End)).Distinct().Sum(b => b.End - b.Start);
}

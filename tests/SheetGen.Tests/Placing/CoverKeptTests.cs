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

    [Fact]
    public void Layouts_cover_what_the_grid_covers() => AssertCovered(First, 12, 30);

    [Fact]
    [Trait("Category", "Long")]
    public void Layouts_of_a_thousand_walls_cover_what_the_grid_covers() => AssertCovered(First + 100, 1000, 15);

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

    /// <summary>What was looked at in some walls: LackingGrids and Mended count legs of sections whose grid with its pins lacks cover somewhere, and those where the layout covers a part of that.</summary>
    private record struct Looked(int Walls, int Pinned, int Pins, int LackingGrids, int Mended, int Samples, int CoveredByGrid)
    {
        public readonly Looked Plus(Looked o) =>
            new(Walls + o.Walls, Pinned + o.Pinned, Pins + o.Pins, LackingGrids + o.LackingGrids, Mended + o.Mended, Samples + o.Samples, CoveredByGrid + o.CoveredByGrid);
    }

    private static void AssertCovered(ulong first, int walls, int nails)
    {
        Looked sum = default;
        var left = new List<string>();
        Parallel.For(0, walls, i =>
        {
            Looked one = Look(first + (ulong)i, nails, left);
            lock (left)
                sum = sum.Plus(one);
        });
        Assert.True(left.Count == 0, $"{left.Count} faults\n" + string.Join('\n', left.Order(StringComparer.Ordinal).Take(20)));
        Assert.True(
            sum.Walls == walls && sum.Pinned >= walls / 4 && sum.Pins >= walls * 3 / 4 && sum.LackingGrids >= walls / 10 && sum.Mended >= walls / 12 && sum.CoveredByGrid >= 100 * walls, $"{sum}");
    }

    /// <summary>Place by place: nothing that the grid alone covers, with the pinned nails where they are pinned, is left uncovered; and no more in all.</summary>
    private static Looked Look(ulong seed, int nails, List<string> left)
    {
        string yaml = RandomWall.Yaml(seed, new RandomWallOptions { Nails = nails, Obstructions = 12 });
        string[] pins = seed % 3 == 0 ? Pins(seed, PlacingWall.Read(yaml)) : [];
        WallProject project = PlacingWall.Read(pins.Length == 0 ? yaml : yaml + "fixed:\n" + string.Join('\n', pins) + "\n");
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        var looked = new Looked(1, pins.Length > 0 ? 1 : 0, layout.Nails.Count(n => n.IsFixed), 0, 0, 0, 0);
        foreach (CoverTwin found in CoverTwin.All(project, layout))
        {
            (double Along, double Elevation)[] heads = GridHeads(project, layout, found);
            CoverTwin grid = found.With(heads);
            double[] samples = [.. found.Samples().Concat(grid.Samples()).Distinct()];
            double[] worse = [.. samples.Where(s => found.IsBroken(s) && grid.IsHeld(s))];
            lock (left)
                left.AddRange(worse.Select(s => FormattableString.Invariant($"seed {seed}, {found.Wall.Name} section {found.Section.Name}: {s:0.###} uncovered, which the grid covers")));
            int lacking = samples.Count(grid.IsBroken);
            looked = looked.Plus(new Looked(0, 0, 0, lacking > 0 ? 1 : 0, samples.Any(s => grid.IsBroken(s) && found.IsHeld(s)) ? 1 : 0, samples.Length, samples.Count(grid.IsHeld)));
        }
        return looked;
    }

    /// <summary>The heads of the grid alone in a stretch; where a nail is pinned, its place.</summary>
    private static (double Along, double Elevation)[] GridHeads(WallProject project, NailLayout layout, CoverTwin where)
    {
        var heads = new List<(double Along, double Elevation)>();
        foreach (NailRow row in layout.Rows.Where(r => r.Wall == where.Wall && r.Section == where.Section && r.Leg == where.Leg.Index))
        {
            Nail[] pinned = [.. layout.Nails.Where(n => n.IsFixed && n.Wall == row.Wall && n.Section == row.Section && n.Row == row.Number && where.Leg.Has(n.Along))];
            foreach (double along in row.GridStations)
            {
                Nail? pin = pinned.FirstOrDefault(n => Math.Abs(n.Along - along) <= 0.5 * project.Rules.MinGap);
                heads.Add(pin is null ? (along, new Elevation(row.ElevationAt(along)).Rounded(project.Unit).Number) : (pin.Along, pin.Elevation));
            }
        }
        return [.. heads];
    }

    /// <summary>Up to four inner nails of grid rows pinned, where they stand or a little beside it, so that the grid with the pins may lack cover.</summary>
    private static string[] Pins(ulong seed, WallProject project)
    {
        var random = new WallRandom(seed * 31);
        double beside = 0.35 * project.Rules.MinGap;
        (NailRow Row, double Along)[] places =
        [
            .. from row in Placer.Place(project, new PlacingOptions { Depth = SearchDepth.Insertion }).Rows
               where !row.Number.IsPart
               from i in Enumerable.Range(1, Math.Max(0, row.GridStations.Count - 2))
               where Math.Min(row.GridStations[i] - row.GridStations[i - 1], row.GridStations[i + 1] - row.GridStations[i]) > project.Rules.MinGap + 1.5 * beside
               select (row, row.GridStations[i]),
        ];
        var pins = new List<string>();
        for (int i = 0; i < 4 && places.Length > 0; i++)
        {
            (NailRow row, double grid) = places[random.Whole(0, places.Length - 1)];
            // One pin of a row: two could stand too close together.
            places = [.. places.Where(p => p.Row != row)];
            double along = grid + random.Of(0, beside, -beside);
            string pin = FormattableString.Invariant($"  - {{wall: {row.Wall.Name}, section: {row.Section.Name}, row: \"{row.Number.Name}\", station: {Math.Round(row.Wall.StationOf(new Along(along)).Number, 4)}, splay: {random.Of(0, 0, 5, -5)}}}");
            pins.Add(pin);
        }
        return [.. pins];
    }
}

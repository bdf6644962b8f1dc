using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Tests.Placing;
using Xunit;

namespace SheetGen.Tests.Rows;

/// <summary>
/// Rows at corners, on arcs, with face offset and batter: the face's own width at each row's elevation decides. Rules: edge_min and corner_clear 1,
/// min_gap 2, top_max 2.5, bottom_max 3 ft.
/// </summary>
public sealed class CornerTests
{
    private const double Slack = 0.021;

    /// <summary>Walls in each of twenty rows of data.</summary>
    private const int Walls = 15;

    public static TheoryData<int> Blocks => [.. Enumerable.Range(0, 20)];

    /// <summary>300 walls with corners of both kinds: no head beyond a mitre, no grid that breaks its own edge, gap or spacing rule, no false cover.</summary>
    [Theory]
    [MemberData(nameof(Blocks))]
    public void Grids_keep_their_own_rules_at_every_corner(int block)
    {
        int heads = 0, covered = 0, walls = 0, outside = 0, inside = 0;
        for (ulong seed = (ulong)(1 + 100 * block); walls < Walls; seed++)
        {
            var wall = new CornerWall(seed);
            ReadResult read = ProjectReader.ReadText(wall.Yaml, "wall.yaml");
            if (read.Project is null)
            {
                // A leg that the mitres eat up is refused.
                Assert.All(read.Problems.Where(p => p.Severity == Severity.Error), p => Assert.Equal("R39", p.Code));
                continue;
            }
            walls++;
            outside += wall.Corners.Count(c => c.Deflection * wall.Side > 0);
            inside += wall.Corners.Count(c => c.Deflection * wall.Side < 0);
            Bay[] bays = PlacingWall.Bays(read.Project);
            var outline = new FaceOutline(bays[0].Face, read.Project.Rules.EdgeMin);
            foreach (IGrouping<Section, Bay> section in bays.GroupBy(b => b.Section))
            {
                List<RowHeads> rows = SectionRows.Make([.. section], outline);
                heads += rows.Sum(r => AssertRow(wall, r, seed));
                foreach (Bay bay in section)
                    covered += AssertCover(wall, bay, [.. rows.Where(r => r.Bay == bay).SelectMany(r => r.Places.Select(r.HeadAt))], seed);
            }
        }
        Assert.True(heads > 400 && covered > 800 && outside > 0 && inside > 0, $"{heads} heads, {covered} places, {outside} and {inside} corners");
    }

    private static int AssertRow(CornerWall wall, RowHeads row, ulong seed)
    {
        string at = $"seed {seed}, row {row.GridRow} at {row.Level}, ";
        foreach (double place in row.Places.Numbers())
        {
            double z = row.ElevationAt(new(place)).Number;
            int leg = wall.LegOf(place);
            Assert.True(leg == row.Bay.Leg.Index, $"{at}{place} stands on another leg");
            Assert.False(wall.IsBeyondMitre(place, z, leg, 0), $"{at}{place} stands beyond the mitre");
            (double from, double to) = wall.Leg(leg);
            (double first, double last) = wall.Cuts(z, leg);
            double before = wall.FaceLength(from, place, z, leg) - first, after = wall.FaceLength(place, to, z, leg) - last;
            Assert.True(before >= 1 - Slack && after >= 1 - Slack, $"{at}{place}: {before} and {after} from the ends of the leg");
            Assert.True(z <= wall.TopAt(place) - 1 + Slack && z >= wall.BottomAt(place) + 1 - Slack, $"{at}{place} is too near to the outline");
        }
        for (int i = 1; i < row.Places.Count; i++)
        {
            double gap = wall.FaceLength(row.Places[i - 1].Number, row.Places[i].Number, row.ElevationAt(row.Places[i]).Number, row.Bay.Leg.Index);
            Assert.True(gap >= 2 - Slack, $"{at}{row.Places[i].Number}: gap of {gap}");
        }
        if (!row.IsPart)
            AssertColumns(wall, row, at);
        return row.Places.Count;
    }

    private static void AssertColumns(CornerWall wall, RowHeads row, string at)
    {
        int leg = row.Bay.Leg.Index;
        IReadOnlyList<double> columns = row.Columns.Numbers();
        double ElevationAt(double along) => row.ElevationAt(new(along)).Number;
        for (int i = 1; i < columns.Count; i++)
        {
            double gap = wall.FaceLength(columns[i - 1], columns[i], ElevationAt(columns[i]), leg), along = columns[i] - columns[i - 1];
            Assert.True(gap >= 2 - Slack, $"{at}{columns[i]}: column gap of {gap}");
            Assert.True(Math.Max(gap, along) <= wall.Spacing + Slack, $"{at}{columns[i]}: column gap of {gap}, {along} along the line");
        }
        if (row.Bay.StartEnd == BayEnd.SectionLimit || row.Bay.EndEnd == BayEnd.SectionLimit || columns.Count == 0)
            return;
        double Reaches(double place, bool fromStart)
        {
            double z = ElevationAt(place);
            (double from, double to) = wall.Leg(leg);
            (double first, double last) = wall.Cuts(z, leg);
            return fromStart ? wall.FaceLength(from, place, z, leg) - first : wall.FaceLength(place, to, z, leg) - last;
        }
        double start = Reaches(columns[0], true), end = Reaches(columns[^1], false);
        // Where the face reaches beyond the corner's station no head can follow.
        (double cut, double other) = (wall.Cuts(ElevationAt(columns[0]), leg).Start, wall.Cuts(ElevationAt(columns[^1]), leg).End);
        Assert.True(start <= Math.Max(wall.Spacing / 2, -cut) + 2 * Slack, $"{at}the first column is {start} from the end");
        Assert.True(end <= Math.Max(wall.Spacing / 2, -other) + 2 * Slack, $"{at}the last column is {end} from the end");
        double z = ElevationAt((columns[0] + columns[^1]) / 2), scale = Math.Max(1, wall.Scale(z, leg));
        (double s, double e) = wall.FaceOf(z, leg);
        (cut, other) = wall.Cuts(z, leg);
        double width = (e - s) * scale + Math.Max(0, -cut) + Math.Max(0, -other), asked = width / wall.Spacing;
        // Staggered rows have a column less between the columns and one more at each end; a row that follows the top has no width of its own.
        if ((!wall.Staggered || row.GridRow % 2 == 1) && row.IsLevel && Math.Abs(asked - Math.Round(asked)) > 0.02 && width > 2 * wall.Spacing)
            Assert.Equal((int)Math.Ceiling(asked), columns.Count);
    }

    /// <summary>The cover rule read literally at many places; nothing is claimed where tolerances decide.</summary>
    private static int AssertCover(CornerWall wall, Bay bay, Head[] heads, ulong seed)
    {
        List<CoverBreak> breaks = CoverRule.Breaks(bay, heads, strict: false);
        int leg = bay.Leg.Index, looked = 0;
        double half = wall.Spacing / 2;
        for (Along at = bay.Start + 0.037; at < bay.End; at += 0.31)
        {
            double s = at.Number;
            double bottom = wall.BottomAt(s), top = wall.TopAt(s);
            double[] standing = [.. Enumerable.Range(0, 201).Select(i => bottom + (top - bottom) * i / 200).Where(z => wall.FaceOf(z, leg) is var f && f.Start <= s && s <= f.End)];
            double height = standing.Length == 0 ? 0 : standing[^1] - standing[0];
            bool told = breaks.Any(b => b.Start < at - 0.05 && at + 0.05 < b.End), near = breaks.Any(b => b.Start - 0.05 < at && at < b.End + 0.05);
            if (height < 2 - 0.1)
            {
                Assert.False(told, $"seed {seed}: cover is asked for at {s}, where no head could stand");
                continue;
            }
            double mild = Worst(wall, bay, heads, s, half + Slack, leg, false), harsh = Worst(wall, bay, heads, s, half - Slack, leg, true);
            looked++;
            Assert.False(told && harsh <= 0, $"seed {seed}: false cover at {s}");
            Assert.False(!near && mild > 2 * Slack && height > 2.1 && bay.HasRoom, $"seed {seed}: cover broken by {mild} at {s}, not told");
        }
        return looked;
    }

    private static double Worst(CornerWall wall, Bay bay, Head[] heads, double s, double half, int leg, bool harsh)
    {
        bool byDepth = bay.Section.Rows == RowKind.Parallel;
        double Level(Head h) => byDepth ? h.Elevation.Number - wall.TopAt(h.Along.Number) : h.Elevation.Number;
        // A nail is asked to cover the face no further than its own mitre.
        Head[] near = [.. heads.Where(h => wall.FaceOf(h.Elevation.Number, leg) is var f && Math.Abs(h.Along.Number - Math.Clamp(s, f.Start, f.End)) <= half).OrderByDescending(Level)];
        if (near.Length == 0)
            return double.PositiveInfinity;
        double Among(double level, Func<Head, double> measure) =>
            near.Where(h => Math.Abs(Level(h) - level) < 1e-6).Select(measure) is var all && harsh ? all.Max() : all.Min();
        double worst = Math.Max(
            Among(Level(near[0]), h => wall.TopAt(h.Along.Number) - h.Elevation.Number) - 2.5,
            Among(Level(near[^1]), h => h.Elevation.Number - Math.Min(wall.BottomAt(h.Along.Number), wall.BottomAt(s))) - 3);
        for (int i = 1; i < near.Length; i++)
            worst = Math.Max(worst, Level(near[i - 1]) - Level(near[i]) - wall.VerticalSpacing);
        return worst;
    }

    /// <summary>At an inside corner with offset the last columns of both legs would stand at the corner's station: each stays on its own face.</summary>
    [Fact]
    public void Last_columns_at_an_inside_corner_do_not_stand_on_one_another()
    {
        foreach (string pin in (string[])["", "fixed: [{row: \"3\", length: 12}]"])
        {
            var wall = new PlacingWall { Length = 40, CornerAt = 20, Deflection = -70, FaceOffset = 2, Lengths = "10", Blocks = pin == "" ? [] : [pin] };
            WallProject project = wall.Project;
            NailLayout layout = Placer.Place(project, new PlacingOptions());
            Assert.Empty(layout.LeftOut);
            ClearanceReport report = Checker.Check(project, layout);
            Assert.DoesNotContain(report.Findings, f => f.Severity == Severity.Error);
            Assert.All(layout.Nails, n => Assert.False(n.IsFixed));
            Assert.Equal(pin == "" ? 0 : layout.Nails.Count(n => n.Row.Whole == 3), layout.Nails.Count(n => n.Length == 12));
        }
    }

    /// <summary>
    /// A section that ends 0.8 ft before a corner leaves its neighbour's end uncovered, and that is told rightly: the first rows of both sections lie
    /// between edge_min and top_max below the top, so less than half the vertical spacing apart in elevation, and keep min_gap; the short bay's
    /// head stands no nearer than corner_clear to the mitre, and half a spacing from min_gap before it does not reach the limit.
    /// </summary>
    [Fact]
    public void A_short_bay_before_a_corner_leaves_its_neighbours_end_uncovered()
    {
        const double Corner = 17, Limit = 16.2, Top = 113.5, Offset = 1.75, Batter = 9.5, BatterElevation = 101.75, Deflection = 15;
        const double TopMax = 2.5, EdgeMin = 1, CornerClear = 1, MinGap = 2, Spacing = 3, VerticalSpacing = 4;
        string Section(string name, string stations, double horizontal) => FormattableString.Invariant($$"""
                  - {name: {{name}}, stations: [{{stations}}], horizontal_spacing: {{horizontal}}, vertical_spacing: {{VerticalSpacing}}, rows: level, top_row_depth: 2,
                     inclination: 12, lengths: 9, bar: {size: '#8', grade: 75}, hole: 4 in, test_nails: {verification: 0} }
            """);
        ReadResult read = ProjectReader.ReadText(FormattableString.Invariant($$"""
            format: 1
            project: {title: T, units: ft}
            layout_lines:
              - {name: L, start: {station: 0, northing: 0, easting: 0, azimuth: 90}, elements: [{line: {{Corner}} }, {corner: {turn: right, angle: {{Deflection}} } }, {line: 20}]}
            walls:
              - name: W
                layout_line: L
                retained_side: left
                stations: [0, 37]
                face_offset: {{Offset}}
                batter: {angle: {{Batter}}, elevation: {{BatterElevation}}}
                top: [[0, {{Top}}], [37, {{Top}}]]
                bottom: {steps: [[0, 101]]}
                sections:
            {{Section("A", "0, 16.2", Spacing)}}
            {{Section("B", "16.2, 37", 5)}}
            """), "wall.yaml");
        Assert.Empty(read.Problems.Where(p => p.Severity == Severity.Error).Select(p => p.Message));
        NailLayout layout = Placer.Place(read.Project!, new PlacingOptions());
        Finding told = Assert.Single(Checker.Check(read.Project!, layout).Findings, f => f.Code == FindingCode.Cover);
        Assert.Equal(Limit, told.ToStation!.Value, 0.011);

        Assert.True(TopMax - EdgeMin < VerticalSpacing / 2);
        // At an inside corner the offset face runs on beyond the corner's station, more so the higher up.
        double highest = Top - EdgeMin;
        double beyond = (Offset + (highest - BatterElevation) * Math.Tan(Batter * Math.PI / 180)) * Math.Tan(Deflection / 2 * Math.PI / 180);
        double reached = Corner + beyond - CornerClear - MinGap + Spacing / 2;
        Assert.True(reached < Limit - 0.1, $"{reached}");
        // Without its nails the short bay would be uncovered over more.
        Assert.True(told.ToStation - told.Station < Corner - Limit, $"{told.Station} to {told.ToStation}");
    }

    [Fact]
    public void Two_heads_at_one_place_are_told()
    {
        var wall = new PlacingWall { Length = 20, Lengths = "10" };
        WallProject project = wall.Project;
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        Nail[] twice = [.. layout.Nails, layout.Nails[3] with { Mark = "A-1-99" }];
        Finding told = Assert.Single(Checker.Check(project, layout with { Nails = twice }).Findings, f => f.Code == FindingCode.DuplicateHead);
        Assert.Equal([layout.Nails[3].Mark, "A-1-99"], told.Nails.Order(StringComparer.Ordinal));
    }
}

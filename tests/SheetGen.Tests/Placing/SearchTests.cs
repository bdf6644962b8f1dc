using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Tests.Properties;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>How good the layouts are that the search finds, and that the limits it calls proven are ones.</summary>
[Trait("Category", "Long")]
public sealed class SearchTests
{
    private static readonly RandomWallOptions Walls = new() { Nails = 40, Obstructions = 10 };

    public static IEnumerable<TheoryDataRow<ulong>> Seeds => SeedData.Of(4001, 12).Select(s => new TheoryDataRow<ulong>(s));

    public static IEnumerable<TheoryDataRow<ulong>> FewSeeds => SeedData.Of(4501, 3).Select(s => new TheoryDataRow<ulong>(s));

    [Theory]
    [InlineData(1, 200, false, false, false)]
    [InlineData(1, 60, false, false, true)]
    [InlineData(2, 40, false, false, false)]
    [InlineData(2, 40, false, false, true)]
    [InlineData(1, 60, false, true, true)]
    [InlineData(2, 20, false, true, true)]
    [InlineData(1, 60, true, false, false)]
    [InlineData(1, 40, true, true, true)]
    public void Small_walls_are_solved_as_well_as_by_enumeration(int rows, int cases, bool corner, bool pin, bool prove)
    {
        var tally = new SmallWallTally();
        ulong[] seeds = [.. SeedData.Of(1, cases)];
        foreach (ulong seed in seeds)
            tally.Look(new SmallRow(seed, rows, corner, pin).Project, SmallKinds.OneRow, prove, $"seed {seed}");
        Assert.True(tally.Asked >= seeds.Length / (pin ? 2 : 1), $"{tally.Asked} of {seeds.Length} walls have a layout");
        tally.Limits.AssertMany(tally.Asked, tally.Asked * 9 / 10, tally.Asked / 2);
        tally.AssertCount(0.95, "best");
    }

    /// <summary>Sloping tops, stepped bottoms, two rows round corners of both kinds, face offsets, batters and pins in any row.</summary>
    [Theory]
    [InlineData(1001, 400, false)]
    [InlineData(1401, 200, true)]
    public void Small_walls_of_all_kinds_are_solved_as_well_as_by_enumeration(ulong first, int cases, bool prove)
    {
        var tally = new SmallWallTally();
        ulong[] seeds = [.. SeedData.Of(first, cases)];
        foreach (ulong seed in seeds)
        {
            var wall = new SmallWall(seed);
            tally.Look(wall.Project, wall.Kinds, prove, $"seed {seed}");
        }
        Assert.True(tally.Asked >= seeds.Length * 85 / 100, $"{tally}");
        tally.AssertAllKinds();
    }

    [Theory, MemberData(nameof(Seeds))]
    public void No_nail_alone_could_stand_better(ulong seed)
    {
        WallProject project = PlacingWall.Read(RandomWall.Yaml(seed, Walls));
        AssertNoneBetter(project, Placer.Place(project, new PlacingOptions()));
    }

    [Fact]
    public void Nothing_found_is_better_than_the_limit_called_proven()
    {
        var compared = new Compared();
        foreach (ulong seed in SeedData.Of(4001, 12))
        {
            LayoutScore score = Placer.Place(PlacingWall.Read(RandomWall.Yaml(seed, Walls)), new PlacingOptions(true)).Score;
            compared.AssertLimit(score, score.Unresolved.Found, score.Noted.Found, score.Effort.Found, $"seed {seed}");
        }
        compared.AssertMany(12, 10, 8);
    }

    /// <summary>What stands at the larger clearance stands at the smaller one too, with the nails unresolved there left as they are.</summary>
    [Fact]
    public void A_layout_for_a_larger_clearance_is_not_below_the_limit_for_the_smaller()
    {
        var compared = new Compared();
        int differ = 0;
        foreach (ulong seed in SeedData.Of(4001, 12))
        {
            WallScenario scenario = RandomWall.Scenario(seed, Walls with { Plain = true });
            NailLayout Layout(string clear) => Placer.Place(
                PlacingWall.Read(ScenarioYaml.Print(scenario with { Rules = [$"clearance: {{obstruction: {clear}, nail: {clear}, boundary: 1}}"] })), new PlacingOptions(seed % 4 == 3));
            NailLayout easy = Layout("0.5"), hard = Layout("0.75");
            // At some corners the columns of the two legs stand further apart for the larger clearance.
            if (!Grid(easy).SequenceEqual(Grid(hard)))
                continue;
            compared.AssertLimit(easy.Score, hard.Score.Unresolved.Found, hard.Score.Noted.Found, hard.Score.Effort.Found, $"seed {seed}");
            differ += easy.Score != hard.Score ? 1 : 0;
        }
        compared.AssertMany(8, 5, 2);
        Assert.True(differ >= 5, $"{differ} layouts differ");
    }

    private static IEnumerable<string> Grid(NailLayout layout) => layout.Rows.Select(r => string.Join(' ', r.GridStations) + r.Level);

    [Theory, MemberData(nameof(FewSeeds))]
    public async Task The_layout_does_not_depend_on_the_number_of_threads(ulong seed)
    {
        var results = new List<string>();
        foreach (int threads in (int[])[1, 2, 7])
        {
            TaskScheduler scheduler = new ConcurrentExclusiveSchedulerPair(TaskScheduler.Default, threads).ConcurrentScheduler;
            // Read anew: what one run remembers must not help the next.
            WallProject fresh = PlacingWall.Read(RandomWall.Yaml(seed, Walls));
            NailLayout layout = await Task.Factory.StartNew(
                () => Placer.Place(fresh, new PlacingOptions()), TestContext.Current.CancellationToken, TaskCreationOptions.None, scheduler);
            results.Add(layout.Score + "\n" + string.Join('\n', layout.Nails.Select(n => $"{n.Mark} {n.Station:R} {n.Splay:R} {n.Inclination:R} {n.Length:R} {n.Status} {n.Reason?.Text}")));
        }
        Assert.Equal(results[0], results[1]);
        Assert.Equal(results[0], results[2]);
    }

    public static IEnumerable<TheoryDataRow<double, double>> Corners =>
        from angle in (double[])[15, 30, 45, 60, 75, 90, -15, -30, -45, -60, -75, -90]
        select new TheoryDataRow<double, double>(angle, angle % 2 == 0 ? 0.5 : 0);

    [Theory, MemberData(nameof(Corners))]
    public void Corners_have_no_clash_that_is_not_told(double deflection, double offset)
    {
        WallProject project = new PlacingWall
        {
            Length = 28,
            CornerAt = 14,
            Deflection = deflection,
            FaceOffset = offset,
            Top = "[[0, 107], [END, 107]]",
        }.Project;
        NailLayout layout = AssertTold(project);
        AssertOtherLegKept(project, layout, deflection, offset);
    }

    [Theory]
    [InlineData("outside-corner-batter")]
    [InlineData("corner-at-section-limit")]
    [InlineData("back-to-back")]
    public void Named_walls_have_no_clash_that_is_not_told(string name) =>
        AssertTold(PlacingWall.Read(ScenarioYaml.Print(NamedWalls.All.First(w => w.Name == name).Scenario)));

    private static NailLayout AssertTold(WallProject project)
    {
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        var told = Checker.Check(project, layout).Findings.Where(f => f.Code == FindingCode.NailNail)
            .Select(f => string.Join(' ', f.Nails.Order(StringComparer.Ordinal))).ToHashSet();
        for (int i = 0; i < layout.Nails.Count; i++)
        {
            for (int j = i + 1; j < layout.Nails.Count; j++)
            {
                Nail a = layout.Nails[i], b = layout.Nails[j];
                double clear = HoleDistance.Between(a.Hole, b.Hole).Clear;
                if (clear >= project.Rules.NailClearance - 1e-6)
                    continue;
                Assert.Contains(string.Join(' ', new[] { a.Mark, b.Mark }.Order(StringComparer.Ordinal)), told);
                Assert.True(a.Status == NailStatus.Unresolved || b.Status == NailStatus.Unresolved, $"{a.Mark} and {b.Mark} are {clear} apart, none unresolved");
            }
        }
        AssertNoneBetter(project, layout);
        return layout;
    }

    /// <summary>The other leg's face as a rectangle, by hand: no sample of a hole comes nearer than the clearance, unless unresolved and told.</summary>
    private static void AssertOtherLegKept(WallProject project, NailLayout layout, double deflection, double offset)
    {
        Wall wall = project.Walls[0];
        var told = Checker.Check(project, layout).Findings.Where(f => f.Code == FindingCode.NailFace).SelectMany(f => f.Nails).ToHashSet();
        double cut = offset * Math.Tan(deflection * Math.PI / 360);
        foreach (Nail nail in layout.Nails)
        {
            bool isFirst = nail.Along < 14;
            (double from, double to) = isFirst ? (14 + cut, 28) : (0.0, 14 - cut);
            Vector2D tangent = wall.LayoutLine.TangentAt(isFirst ? 20 : 5), normal = tangent.Right;
            Vector2D start = wall.LayoutLine.PointAt(isFirst ? 20 : 5) - tangent * (isFirst ? 20 : 5) + normal * offset;
            double least = double.PositiveInfinity;
            for (int k = 0; k <= 400; k++)
            {
                Vector3D p = nail.Hole.At(nail.Hole.Length * k / 400);
                Vector2D away = new Vector2D(p.N, p.E) - start;
                double s = away.Dot(tangent), across = away.Dot(normal);
                double ds = Math.Max(0, Math.Max(from - s, s - to)), dz = Math.Max(0, Math.Max(100 - p.Z, p.Z - 107));
                least = Math.Min(least, Math.Sqrt(across * across + ds * ds + dz * dz) - nail.Hole.RadiusAt(nail.Hole.Length * k / 400));
            }
            Assert.True(least >= 0.5 - 1e-6 || (told.Contains(nail.Mark) && nail.Status == NailStatus.Unresolved), $"{nail.Mark} comes within {least} of the other leg's face");
        }
    }

    /// <summary>With all others fixed, every direction that is cheaper at the nail's own place hits something.</summary>
    private static void AssertNoneBetter(WallProject project, NailLayout layout)
    {
        var site = new Site(project);
        Nail[] production = [.. layout.Nails.Where(n => n.Kind != NailKind.Verification)];
        foreach (Nail nail in production.Where(n => n.Status is NailStatus.Unresolved or NailStatus.Noted or NailStatus.Redirected && !n.IsFixed))
        {
            NailRow row = layout.Rows.First(r => r.Wall == nail.Wall && r.Section == nail.Section && r.Number == nail.Row && r.GridStations.Count > 0);
            Face face = site.Faces.First(f => f.Wall == nail.Wall);
            double reach = 3 * row.Length;
            Obstacle[] still = site.Near(face, face.LegAt(nail.Along).Index, nail.Hole.Head, reach);
            Nail[] others = [.. production.Where(n => n != nail && n.Status != NailStatus.Unresolved && (n.Hole.Head - nail.Hole.Head).Length < reach)];
            Turning own = Turnings.Make(nail.Section, project.Rules.Redirect, nail.Splay, nail.Inclination, nail.Inclination - nail.Section.Inclination);
            foreach (Turning turning in new Turnings(nail.Section, project.Rules).All)
            {
                if (nail.Status != NailStatus.Unresolved && (turning.IsNoted, turning.Effort).CompareTo((own.IsNoted, own.Effort)) >= 0)
                    break;
                double length = Turnings.LengthOf(turning, row.Length, project.Rules.LengthIncrement);
                Hole hole = face.HoleAt(nail.Along, nail.Elevation, turning.Splay, turning.Inclination, length, nail.HoleDiameter, project.Rules.Drift);
                bool isFree = still.All(s => HoleDistance.ToSolid(hole, s.Solid).Clear >= s.Required - 1e-9)
                    && others.All(n => HoleDistance.Between(hole, n.Hole).Clear >= project.Rules.NailClearance - 1e-9);
                Assert.False(isFree, $"{nail.Mark} ({nail.Status}, {nail.Splay}, {nail.Inclination}) could stand at {turning.Splay}, {turning.Inclination}");
            }
        }
    }
}

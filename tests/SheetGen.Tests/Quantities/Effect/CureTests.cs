using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Quantities.Effect;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using Xunit;

namespace SheetGen.Tests.Quantities.Effect;

/// <summary>What is said to cure a nail is tried here by doing it: the wall built so is clear, keeps its gaps and edges, and the nail is within the engineer's limits.</summary>
public sealed partial class CureTests
{
    private static readonly DesignValues ByArea = new() { AreaShare = 0.2 };

    public static TheoryData<string> Names => [.. Walls.Keys];

    private static IReadOnlyDictionary<string, TestWall> Walls { get; } = new Dictionary<string, TestWall>
    {
        ["straight"] = EffectWall.Exact with { Design = ByArea },
        ["two sections"] = EffectWall.Exact with { Design = ByArea, Limits = [50] },
        ["corner"] = EffectWall.Exact with { Design = ByArea, Elements = [new LayoutElement.Tangent(50), new LayoutElement.Bend(Turn.Left, 50), new LayoutElement.Tangent(50)], FaceOffset = 1 },
        ["arc"] = EffectWall.Exact with { Design = ByArea, Elements = [new LayoutElement.Arc(150, 100, Turn.Right)] },
        ["metric"] = EffectWall.Exact with { Design = ByArea, Unit = LengthUnit.Metre, Spacing = 1.5, Depth = 0.75, End = 30, Elements = [new LayoutElement.Tangent(30)], Top = [new(0, 106)], Length = 7.5, Hole = 0.15, Side = Turn.Left },
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void An_added_nail_that_is_offered_cures(string name)
    {
        (WallProject project, NailLayout layout) = Walls[name].Make();
        int offered = 0;
        foreach (Nail gone in layout.Nails.Where((n, i) => n.Column is 1 or 2 or 3 || i % 9 == 0).Concat(layout.Nails.GroupBy(n => n.Row).SelectMany(g => g.OrderBy(n => n.Along).TakeLast(2))).Distinct())
        {
            (WallProject, NailLayout Layout) without = EffectWall.Without((project, layout), gone.Mark);
            LayoutEffect effect = EffectTakeOff.Make(project, without.Layout);
            foreach (Finding finding in LoadFindings.Make(project, without.Layout, effect).Where(f => f.Severity == Severity.Warning))
            {
                Assert.Contains("beside it", finding.Message);
                Match match = Added().Match(finding.Message);
                if (!match.Success)
                    continue;
                offered++;
                Nail cured = without.Layout.Nails.Single(n => n.Mark == finding.Nails[0]);
                double station = double.Parse(match.Groups[1].Value.Replace("+", "", StringComparison.Ordinal), CultureInfo.InvariantCulture), along = cured.Wall.LayoutLine.AlongOf(station);
                double splay = match.Groups[2].Success ? double.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture) * (match.Groups[3].Value == "up" ? 1 : -1) : 0;
                var face = new Face(cured.Wall);
                Nail added = cured with
                {
                    Mark = "added",
                    Along = along,
                    Station = station,
                    GridStation = station,
                    IsAdded = true,
                    Splay = splay,
                    Hole = face.HoleAt(along, cured.Elevation, splay, cured.Section.Inclination, cured.Length, cured.HoleDiameter, project.Rules.Drift),
                };
                NailLayout built = without.Layout with { Nails = [.. without.Layout.Nails, added] };
                Finding[] wrong = [.. Checker.Check(project, built).Findings.Where(f => f.Nails.Contains("added") && f.Code is FindingCode.NailNail or FindingCode.NailFace or FindingCode.Edge or FindingCode.Spacing or FindingCode.NailObstruction)];
                Assert.True(wrong.Length == 0, $"{gone.Mark} left out, {finding.Message}: {string.Join("; ", wrong.Select(f => f.Message))}");
                Assert.True(along > cured.Section.Start && along < cured.Section.End, finding.Message);
                NailEffect now = EffectTakeOff.Make(project, built).Nails.Single(n => n.Nail.Mark == cured.Mark);
                Assert.True(now.Drawn.Area <= 1.2 * Math.Max(now.DesignArea, now.Grid!.Area) * (1 + 1e-6), $"{finding.Message}: {now.Drawn.Area}");
            }
        }
        Assert.True(offered > 5, $"only {offered} cures offered");
    }

    // Half of the distance between the neighbours in the row, at least the spacing: 7.5 beside a nail left out. Where the grid itself has no places (a closed stretch),
    // the row ends and each head keeps its spacing.
    [Fact]
    public void A_head_stands_for_half_the_distance_between_its_neighbours()
    {
        (WallProject Project, NailLayout Layout) made = EffectWall.Exact.Make();
        Dictionary<string, double> left = EffectWall.Of(EffectWall.Without(made, "A-2-07")).Nails.ToDictionary(n => n.Nail.Mark, n => n.Drawn.Width);
        Assert.Equal((7.5, 7.5, 5.0, 5.0, 5.0, 5.0), (Math.Round(left["A-2-06"], 9), Math.Round(left["A-2-08"], 9), Math.Round(left["A-2-05"], 9), Math.Round(left["A-2-09"], 9), Math.Round(left["A-1-07"], 9), Math.Round(left["A-2-01"], 9)));

        double[] gone = [32.5, 37.5];
        NailLayout interrupted = made.Layout with
        {
            Nails = [.. made.Layout.Nails.Where(n => n.Row != RowNumber.Grid(2) || !gone.Contains(n.Along))],
            Rows = [.. made.Layout.Rows.Select(r => r.Number == RowNumber.Grid(2) ? r with { GridStations = [.. r.GridStations.Where(g => !gone.Contains(g))] } : r)],
        };
        Assert.All(EffectWall.Of((made.Project, interrupted)).Nails, n => Assert.Equal(5, n.Drawn.Width, 9));

        // Moved by 2 up-station: its neighbours' own neighbours are 4 and 6 away; 12 / 2 and 8 / 2, the latter at least the spacing.
        Dictionary<string, double> moved = EffectWall.Of(EffectWall.With(made, "A-2-07", along: 2)).Nails.ToDictionary(n => n.Nail.Mark, n => n.Drawn.Width);
        Assert.Equal((6.0, 5.0, 5.0), (Math.Round(moved["A-2-06"], 9), Math.Round(moved["A-2-07"], 9), Math.Round(moved["A-2-08"], 9)));
    }

    /// <summary>Of two places of a row without a nail each names its own neighbours, with what they grew by: 25 ft2 by four, the others nothing.</summary>
    [Fact]
    public void Who_carries_a_place_without_a_nail_stands_beside_it()
    {
        IReadOnlyList<SharedArea> left = EffectWall.Of(EffectWall.Without(EffectWall.Without(EffectWall.Exact.Make(), "A-2-05"), "A-2-15")).LeftOut;
        Assert.Equal(["A-1-05 A-2-04 A-2-06 A-3-05", "A-1-15 A-2-14 A-2-16 A-3-15"], left.Select(l => string.Join(' ', l.Carriers.Select(c => c.Mark).Order(StringComparer.Ordinal))));
        Assert.All(left, l => Assert.Equal(25, l.Area, 9));
        Assert.All(left, l => Assert.Equal(25, l.Carriers.Sum(c => c.Growth), 9));
    }

    // The plate of 8 in on 4 in of shotcrete: D'c + h_c = 16 in, A_C = 1.39626 ft2, A_GC = 0.19635 ft2, 25 ft2 a nail. Factor 1: V / (1 - 1.19991 / 24.80365).
    [Theory]
    [InlineData(1, 1 / (1 - 1.1999138 / 24.8036505))]
    [InlineData(20.6, 1 / (1 - 20.6 * 1.1999138 / 24.8036505))]
    [InlineData(20.7, null)]
    public void The_soils_reaction_under_the_head_counts_as_far_as_it_can(double factor, double? times)
    {
        FacingEffect facing = Facing(EffectWall.Lrfd with { Facing = EffectWall.Lrfd.Facing with { SoilReaction = factor } });
        FacingEffect without = Facing(EffectWall.Lrfd);
        Assert.Equal(without.Punching, without.PunchingWithSoil);
        Assert.Equal(without.Punching, facing.Punching);
        if (times is null)
            Assert.Null(facing.PunchingWithSoil);
        else
            Assert.Equal(times.Value, facing.PunchingWithSoil!.Value / facing.Punching!.Value, 1e-4 * times.Value);

        static FacingEffect Facing(DesignValues design) => EffectWall.Of(EffectWall.Exact with { Design = design }).Sections[0].Facing;
    }

    // Turned by 28 degrees, a nail has to carry 1 / cos 28 of its share, at the head too.
    [Fact]
    public void A_given_head_load_grows_with_the_nails_turn()
    {
        DesignValues design = EffectWall.Lrfd with { HeadLoads = [12, 9] };
        LayoutEffect effect = EffectWall.Of(EffectWall.With((EffectWall.Exact with { Design = design }).Make(), "A-2-07", splay: 28));
        Assert.Equal(9 / Math.Cos(28 * Math.PI / 180), effect.Nails.Single(n => n.Nail.Mark == "A-2-07").Drawn.HeadLoad!.Value, 9);
        Assert.Equal(12, effect.Nails.Single(n => n.Nail.Mark == "A-1-07").Drawn.HeadLoad!.Value, 9);
    }

    /// <summary>Layers that only one boring has, in one place and equally high: they come in the order of their names, whichever boring is first.</summary>
    [Fact]
    public void Layers_of_one_boring_each_at_one_height_are_in_the_order_of_their_names()
    {
        foreach (bool swapped in (bool[])[false, true])
        {
            (WallProject project, _) = (EffectWall.Exact with { Borings = [One("B-1", 20, swapped ? "loam" : "fill"), One("B-2", 60, swapped ? "fill" : "loam")] }).Make();
            LayerStretch[] down = [.. new SoilLayers(project, project.Walls[0]).Of(Rows.Typed.HeadAt(40, 125), 0, 1, 50)];
            Assert.Equal([SoilLayers.Above, "fill", "loam", "sand", SoilLayers.Below], down.Select(l => l.Layer));
            Assert.Equal([5.0, 5, 5, 30, 5], down.Select(l => Math.Round(l.Length, 9)));
        }

        static Boring One(string name, double along, string upper) => new(name, new Vector2D(-10, along), 120, 80, null, [new BoringLayer(110, upper, null), new BoringLayer(80, "sand", null)]);
    }

    // Without bond there is no pullout to test. P L / A E with 200 GPa: the bar of a metric section, its free length 1.5 m.
    [Fact]
    public void Tests_are_for_layers_with_a_bond_and_stretch_in_millimetres()
    {
        Boring boring = new("B-1", new Vector2D(-10, 20), 130, 80, null, [new BoringLayer(110, "clay", null), new BoringLayer(80, "sand", null)]);
        TestWall wall = EffectWall.Exact with
        {
            Unit = LengthUnit.Metre,
            Tests = new TestNails(1, 0.05, false, false),
            Borings = [boring],
            Design = new DesignValues { BondByLayer = new Dictionary<string, double> { ["clay"] = 0, ["sand"] = 100 } },
            Rates = new Rates { TestBondedLength = 1.2, TestFreeLength = 1.5, ProofFreeLength = 1 },
        };
        SoilTest[] tests = [.. EffectWall.Of(wall).Tests];
        Assert.Equal([("sand", false), ("sand", true)], tests.Select(t => (t.Soil, t.IsProof)));
        Assert.Equal(Math.PI * 0.5 * 100, tests[0].Pullout, 6);
        Assert.Equal(1.2 * Math.PI * 0.5 * 100, tests[0].Load, 6);
        Assert.Equal(tests[0].Load * 1000 * 1500 / (wall.Bar.AreaSquareMillimetres * 200_000), tests[0].Stretch!.Value, 1e-6);
        Assert.Equal(tests[1].Load * 1000 * 1000 / (wall.Bar.AreaSquareMillimetres * 200_000), tests[1].Stretch!.Value, 1e-6);
    }

    [GeneratedRegex(@"a nail added in its row at station ([\d+.]+)(?:, splayed ([\d.]+) degrees (up|down)-station)?")]
    private static partial Regex Added();
}

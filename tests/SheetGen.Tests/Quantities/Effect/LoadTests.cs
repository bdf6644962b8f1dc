using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using Xunit;

namespace SheetGen.Tests.Quantities.Effect;

/// <summary>Loads and resistances of nails on the grid and as drawn, worked by hand.</summary>
public sealed class LoadTests
{
    private static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180);

    private static double Sin(double degrees) => Math.Sin(degrees * Math.PI / 180);

    private static NailEffect Nail(LayoutEffect effect, string mark) => effect.Nails.Single(n => n.Nail.Mark == mark);

    private static double Ratio(NailEffect nail, LimitState state) => nail.Drawn.Checks.Single(c => c.State == state).Ratio;

    [Fact]
    public void A_turned_nail_pulls_back_with_its_cosine()
    {
        NailEffect nail = Nail(EffectWall.Of(EffectWall.With((EffectWall.Exact with { Design = EffectWall.Lrfd }).Make(), "A-2-07", splay: 28)), "A-2-07");
        Assert.Equal(Cos(10) * Cos(28), nail.Drawn.Square, 12);
        Assert.Equal(Cos(10), nail.Grid!.Square, 12);
        Assert.Equal(1, Math.Pow(nail.Drawn.Square, 2) + Math.Pow(nail.Drawn.Across, 2), 12);
        Assert.Equal(20 / Cos(28), nail.Drawn.MaximumLoad!.Value, 9);
        Assert.True(nail.IsChanged);
    }

    [Fact]
    public void Square_to_a_leaning_face_is_square_to_its_slope()
    {
        LayoutEffect effect = EffectWall.Of(EffectWall.Exact with { Batter = new Batter(10, 100), Depth = 2.5 });
        Assert.All(effect.Nails, n => Assert.Equal(1, n.Drawn.Square, 12));
        Assert.All(effect.Nails, n => Assert.Equal(25 / Cos(10), n.DesignArea, 12));
        Assert.All(effect.Nails, n => Assert.Equal(n.DesignArea, n.Drawn.Area, 9));
    }

    [Fact]
    public void Every_ratio_of_a_nail_by_hand_in_feet()
    {
        LayoutEffect effect = EffectWall.Of(EffectWall.Exact with { Design = EffectWall.Lrfd, Inclination = 15 });
        NailEffect nail = Nail(effect, "A-1-07");
        // The head is 17.5 ft over the toe; the surface leaves the toe at 60 degrees.
        double at = 17.5 / (Cos(15) * Math.Tan(Math.PI / 3) + Sin(15));
        Assert.Equal(at, nail.Drawn.Cuts[0].At, 9);
        double pullout = Math.PI * 15 * 6 * 12 / 1000;
        Assert.Equal(pullout * at, nail.Drawn.Cuts[0].Front!.Value, 9);
        Assert.Equal(0.65 * pullout * (24 - at) / (1.35 * 20), Ratio(nail, LimitState.Pullout), 9);
        Assert.Equal(0.75 * 0.79 * 75 / (1.35 * 20), Ratio(nail, LimitState.Bar), 9);
        double head = 20 * 0.714;
        // SA-96-069R's printed sheet has this steel on 60 in: m_neg 0.98, m_pos 0.57, flexure 25 kip; punching 38.1 kip.
        double flexure = 2.0 * 8 * (0.98175 + 0.56763);
        Assert.Equal(0.9 * flexure / (1.35 * head), Ratio(nail, LimitState.Flexure), 4);
        Assert.Equal(0.9 * 38.149 / (1.35 * head), Ratio(nail, LimitState.Punching), 4);
        Assert.Equal((0.9 * flexure + 0.65 * pullout * at) / (1.35 * 20), Ratio(nail, LimitState.Front), 4);
        Assert.Equal(nail.Drawn.Checks.Min(c => c.Ratio), nail.Drawn.Lowest!.Ratio);
        Assert.Empty(effect.Sections[0].Missing);
        LayoutEffect studs = EffectWall.Of(EffectWall.Exact with { Design = EffectWall.Lrfd with { Studs = new HeadStuds(4, 0.5 / 12, 0.196, null, null, null, null, null) } });
        Assert.Equal(["flexure of the permanent facing", "punching of the permanent facing", "tension of the studs"],
            studs.Sections[0].Missing.Select(m => m[..m.IndexOf(" is not", StringComparison.Ordinal)]));
    }

    [Fact]
    public void Every_ratio_of_a_nail_by_hand_in_metres()
    {
        var design = new DesignValues
        {
            MaximumLoads = [90],
            Method = DesignMethod.Asd,
            Factors = new Dictionary<LimitState, double> { [LimitState.Pullout] = 2, [LimitState.Bar] = 1.8, [LimitState.Flexure] = 1.5, [LimitState.Punching] = 1.5, [LimitState.Studs] = 2, [LimitState.PermanentPunching] = 1.5 },
            Bond = 120,
            Surfaces = [new SlipSurface("1", [new(0, 0), new(0, 6)], null)],
            Facing = new FacingDesign { Thickness = 0.1, ConcreteStrength = 28, SteelDepth = 0.05, Mesh = 184, MeshYield = 420, PressureFactor = 2.0 },
            PermanentFacing = new FacingDesign { ConcreteStrength = 28 },
            PlateWidth = 0.2,
            PlateThickness = 0.02,
            Studs = new HeadStuds(4, 0.0127, 126.7, 0.105, 0.0254, 0.008, 0.15, 415),
        };
        var wall = new TestWall
        {
            Unit = LengthUnit.Metre,
            Elements = [new LayoutElement.Tangent(30)],
            End = 30,
            Top = [new(0, 6)],
            Steps = [new(0, 0)],
            Spacing = 1.5,
            Depth = 0.75,
            Length = 7,
            Hole = 0.1,
            Inclination = 15,
            Design = design,
            Tests = TestNails.None,
            Facing = null,
            Lifts = null,
            Drainage = null,
        };
        NailEffect nail = Nail(EffectWall.Of(wall), "A-2-07");
        Assert.Equal(0, nail.Drawn.Cuts[0].At);
        Assert.Equal(37.6991 * 7 / (2 * 90), Ratio(nail, LimitState.Pullout), 5);
        Assert.Equal(510 * 75 * 6.894757293168361 / 1000 / (1.8 * 90), Ratio(nail, LimitState.Bar), 9);
        double head = 90 * 0.70, steel = 0.184, moment = steel * 420 * (50 - steel * 420 / (1.7 * 28)) / 1000;
        Assert.Equal(2 * 8 * 2 * moment / (1.5 * head), Ratio(nail, LimitState.Flexure), 9);
        Assert.Equal(330 * Math.Sqrt(28) * Math.PI * 0.3 * 0.1 / (1.5 * head), Ratio(nail, LimitState.Punching), 9);
        double depth = 0.105 - 0.008 + 0.02;
        Assert.Equal(330 * Math.Sqrt(28) * Math.PI * 2 * depth * depth / (1.5 * head), Ratio(nail, LimitState.PermanentPunching), 9);
        Assert.Equal(4 * 126.7 * 415 / 1000 / (2 * head), Ratio(nail, LimitState.Studs), 9);
    }

    [Fact]
    public void Without_a_method_ratios_are_resistance_over_load()
    {
        DesignValues design = new() { MaximumLoads = [18, 20], Bond = 15 };
        LayoutEffect effect = EffectWall.Of(EffectWall.Exact with { Design = design });
        Assert.Equal(0.79 * 75 / 18, Nail(effect, "A-1-03").Drawn.Lowest!.Ratio, 9);
        Assert.Equal(0.79 * 75 / 20, Nail(effect, "A-4-03").Drawn.Lowest!.Ratio, 9);
        Assert.Contains("pullout is not compared: slip_surface not given", effect.Sections[0].Missing);
    }

    [Fact]
    public void A_method_without_its_factors_compares_nothing()
    {
        LayoutEffect effect = EffectWall.Of(EffectWall.Exact with { Design = EffectWall.Lrfd with { LoadFactor = null } });
        Assert.All(effect.Nails, n => Assert.Empty(n.Drawn.Checks));
        Assert.Contains("tension of the bar is not compared: load_factor not given", effect.Sections[0].Missing);
    }

    [Fact]
    public void A_gap_left_by_a_nail_widens_the_head_share_and_the_flexure()
    {
        LayoutEffect effect = EffectWall.Of(EffectWall.Without((EffectWall.Exact with { Design = EffectWall.Lrfd }).Make(), "A-2-07"));
        NailEffect beside = Nail(effect, "A-2-06");
        Assert.Equal(7.5, beside.Drawn.Width, 9);
        Assert.Equal(5, beside.Grid!.Width, 9);
        Assert.Equal(20 * beside.Drawn.Area / 25 * (0.6 + 0.057 * 4.5), beside.Drawn.HeadLoad!.Value, 9);
        LimitCheck flexure = beside.Drawn.Checks.Single(c => c.State == LimitState.Flexure), before = beside.Grid.Checks.Single(c => c.State == LimitState.Flexure);
        Assert.Equal(before.Resistance / 1.5, flexure.Resistance, 9);
    }

    [Fact]
    public void A_head_load_of_the_engineers_goes_before_the_share_of_the_tension()
    {
        LayoutEffect effect = EffectWall.Of(EffectWall.Exact with { Design = EffectWall.Lrfd with { HeadLoads = [11] } });
        Assert.All(effect.Nails, n => Assert.Equal(11, n.Drawn.HeadLoad!.Value, 9));
        LayoutEffect service = EffectWall.Of(EffectWall.Exact with { Design = new DesignValues { ServiceLoad = new ServiceLoad(0.5, 0.26, 120, 40) } });
        Assert.All(service.Nails, n => Assert.Equal(15.6, n.Drawn.HeadLoad!.Value, 9));
    }

    [Fact]
    public void Pullout_counts_each_layer_with_its_own_bond()
    {
        TestWall wall = EffectWall.Exact with
        {
            Inclination = 30,
            Design = new DesignValues { MaximumLoads = [20], BondByLayer = new Dictionary<string, double> { ["clay"] = 5, ["sand"] = 15 }, Surfaces = [new SlipSurface("plane", [new(6, 100), new(6, 120)], null)] },
            Borings = [new Boring("B-1", new Vector2D(-10, 50), 130, 90, null, [new BoringLayer(112, "clay", null), new BoringLayer(90, "sand", null)])],
        };
        NailEffect nail = Nail(EffectWall.Of(wall), "A-1-07");
        double at = 6 / Cos(30), change = 5.5 / Sin(30);
        Assert.Equal([("clay", 11.0), ("sand", 13.0)], nail.Drawn.Layers.Select(l => (l.Layer, Math.Round(l.Length, 9))));
        double clay = Math.PI * 5 * 6 * 12 / 1000;
        Assert.Equal(clay * (change - at) + 3 * clay * (24 - change), nail.Drawn.Cuts[0].Behind!.Value, 9);
        TestWall lacking = wall with { Design = wall.Design! with { BondByLayer = new Dictionary<string, double> { ["clay"] = 5 } } };
        NailEffect half = Nail(EffectWall.Of(lacking), "A-1-07");
        Assert.Null(half.Drawn.Cuts[0].Behind);
        Assert.Equal(clay * at, half.Drawn.Cuts[0].Front!.Value, 9);
        Assert.DoesNotContain(half.Drawn.Checks, c => c.State == LimitState.Pullout);
    }

    [Fact]
    public void Tests_have_loads_from_bond_and_bonded_length()
    {
        TestWall wall = EffectWall.Exact with { Design = new DesignValues { Bond = 15 }, Rates = new Rates { TestBondedLength = 20, TestFreeLength = 3, DesignBond = 1 }, Tests = new TestNails(2, 0.05, false, false) };
        IReadOnlyList<SoilTest> tests = EffectWall.Of(wall).Tests;
        Assert.Equal([false, true], tests.Select(t => t.IsProof));
        // The bar can test 15.717 ft (GEC 7 eq. 9.1, C); the proof test takes 10 ft (eq. 9.5).
        Assert.Equal(15.717, tests[0].Bonded, 3);
        Assert.Equal(0.9 * 59.25, tests[0].Load, 9);
        Assert.Equal(0.8 * tests[0].Load * 36 / (29000 * 0.79), tests[0].LeastStretch!.Value, 12);
        Assert.Equal((10.0, 33.929), (tests[1].Bonded, Math.Round(tests[1].Load, 3)));
        Assert.Null(tests[1].LeastStretch);
        // 3 ft free under 33.929 kip: 0.053315 in, of which 80 % is 0.042652 in (GEC 7 eq. 9.4, 9.8, C).
        SoilTest proof = EffectWall.Of(wall with { Rates = wall.Rates with { ProofFreeLength = 3 } }).Tests[1];
        Assert.Equal(0.053315, proof.Stretch!.Value, 6);
        Assert.Equal(0.042652, proof.LeastStretch!.Value, 6);
        // The section's own bond comes before the project's design bond, which serves sections without one.
        Assert.Equal([1.0, 1.0], EffectWall.Of(wall with { Design = null }).Tests.Select(t => t.Pullout));
        Assert.Equal([1.0, 1.0], EffectWall.Of(wall with { Design = new DesignValues { MaximumLoads = [10] } }).Tests.Select(t => t.Pullout));
        Assert.Empty(EffectWall.Of(EffectWall.Exact with { Tests = new TestNails(2, 0.05, false, false) }).Tests);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Reflection_and_reversal_change_nothing(bool reversed)
    {
        DesignValues design = EffectWall.Lrfd with { Bond = null, BondByLayer = new Dictionary<string, double> { ["clay"] = 5, ["sand"] = 15, ["fill"] = 1 }, Surfaces = [new SlipSurface("1", [new(0, 100), new(4, 108), new(9, 125)], null), new SlipSurface("2", [], 55)] };
        TestWall wall = EffectWall.Exact with { Design = design, Top = [new(0, 120), new(40, 124), new(100, 118)], Steps = [new(0, 100), new(30, 101), new(70, 99)], Borings = [Boring("B-1", 20, -8, 108), Boring("B-2", 85, -14, 113, "fill")] };
        (WallProject Project, NailLayout Layout) first = EffectWall.With(EffectWall.With(wall.Make(), "A-2-08", splay: 17, inclination: 14), "A-3-06", along: 1.25);
        // Reflected: soil on the left of a line in the same direction. Reversed: the line runs the other way, the soil lies on its left.
        double Place(double along) => reversed ? 100 - along : along;
        TestWall mirrored = wall with
        {
            Side = Turn.Left,
            Top = reversed ? [new(0, 118), new(60, 124), new(100, 120)] : wall.Top,
            Steps = reversed ? [new(0, 99), new(30, 101), new(70, 100)] : wall.Steps,
            Borings = [Boring("B-1", Place(20), 8, 108), Boring("B-2", Place(85), 14, 113, "fill")],
        };
        (WallProject Project, NailLayout Layout) second = mirrored.Make();
        Nail Twin(Nail of) => second.Layout.Nails.Single(n => n.Row == of.Row && Math.Abs(n.Along - Place(of.Along)) < 1e-6);
        (WallProject, NailLayout) plain = wall.Make();
        string turned = Twin(((NailLayout)plain.Item2).Nails.Single(n => n.Mark == "A-2-08")).Mark, moved = Twin(plain.Item2.Nails.Single(n => n.Mark == "A-3-06")).Mark;
        int sign = reversed ? -1 : 1;
        second = EffectWall.With(EffectWall.With(second, turned, splay: sign * 17, inclination: 14), moved, along: sign * 1.25);
        LayoutEffect a = EffectWall.Of(first), b = EffectWall.Of(second);
        Assert.Equal(a.Nails.Count, b.Nails.Count);
        Assert.Contains(a.Nails, n => n.Drawn.Layers.Select(l => l.Layer).Intersect(["fill", "clay", "sand"]).Count() > 1);
        foreach (NailEffect n in a.Nails)
        {
            NailEffect twin = b.Nails.Single(o => o.Nail.Row == n.Nail.Row && Math.Abs(o.Nail.Along - Place(n.Nail.Along)) < 1e-6);
            Assert.Equal(n.Drawn.Area, twin.Drawn.Area, 1e-8);
            Assert.Equal(n.Zone, twin.Zone);
            Assert.Equal(n.IsChanged, twin.IsChanged);
            Assert.Equal(n.Drawn.Layers.Select(l => (l.Layer, Math.Round(l.Length, 7))), twin.Drawn.Layers.Select(l => (l.Layer, Math.Round(l.Length, 7))));
            Assert.Equal(n.Drawn.Checks.Select(c => (c.State, c.Surface)), twin.Drawn.Checks.Select(c => (c.State, c.Surface)));
            for (int i = 0; i < n.Drawn.Checks.Count; i++)
                Assert.Equal(n.Drawn.Checks[i].Ratio, twin.Drawn.Checks[i].Ratio, 1e-8);
        }

        static Boring Boring(string name, double along, double north, double change, string? upper = null) => new(
            name, new Vector2D(north, along), 126, 90, null, upper is null ? [new BoringLayer(change, "clay", null), new BoringLayer(90, "sand", null)] : [new BoringLayer(119, upper, null), new BoringLayer(change, "clay", null), new BoringLayer(90, "sand", null)]);
    }
}

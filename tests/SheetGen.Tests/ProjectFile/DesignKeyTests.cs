using SheetGen.Model;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>The engineer's values of a section as they are read.</summary>
public sealed class DesignKeyTests
{
    private const string Place = "lengths: [24, 20]\n";

    private static Section SectionA(string design, string defaults = "") =>
        BaseWall.Read(BaseWall.Replace(BaseWall.With(Place, Place + "        design: " + design.ReplaceLineEndings("") + "\n"), "walls:\n", defaults + "walls:\n")).Walls[0].Sections[0];

    [Fact]
    public void Nothing_is_assumed()
    {
        Section section = SectionA("{bond: 15 psi}");
        Assert.Equivalent(new DesignValues { Bond = 15 }, section.Design);
        Assert.Null(BaseWall.Read(BaseWall.Text).Walls[0].Sections[0].Design);
    }

    [Fact]
    public void Values_carry_their_own_unit()
    {
        DesignValues design = SectionA("""
            {t_max: [90 kN, 20, 20000 lb], bond_by_layer: {clay: 100 kPa, sand: 2 ksf}, bar_yield: 520 MPa,
              facing: {thickness: 4 in, concrete_strength: 28 MPa, mesh: 184 mm2/m, mesh_yield: 60, waler_bars: {size: "#4", count: 2}},
              plate: {width: 8 in}, studs: {count: 4, diameter: 0.5 in, area: 126 mm2}}
            """).Design!;
        Assert.Equal(90 / 4.4482216152605, design.MaximumLoads[0], 12);
        Assert.Equal([20.0, 20.0], design.MaximumLoads.Skip(1));
        Assert.Equal(100 / 6.894757293168361, design.BondIn("clay")!.Value, 10);
        Assert.Equal(2000.0 / 144, design.BondIn("sand")!.Value, 10);
        Assert.Null(design.BondIn("gravel"));
        Assert.Equal(520 / 6.894757293168361, design.BarYield!.Value, 10);
        Assert.Equal(28000 / 6.894757293168361, design.Facing.ConcreteStrength!.Value, 8);
        Assert.Equal(184 / 645.16 * 0.3048, design.Facing.Mesh!.Value, 10);
        Assert.Equal(0.40, design.Facing.Walers!.Area, 12);
        Assert.Equal(8.0 / 12, design.PlateWidth!.Value, 12);
        Assert.Equal(126 / 645.16, design.Studs!.Area, 10);
    }

    [Fact]
    public void Bare_numbers_are_in_the_projects_own_units()
    {
        string metric = Metric("""{t_max: 90, bond: 120, bar_yield: 500, facing: {concrete_strength: 28, mesh: 184, bearing_bars: {size: "#4", count: 2}}, studs: {count: 4, diameter: 12.7 mm}}""");
        DesignValues design = BaseWall.Read(metric).Walls[0].Sections[0].Design!;
        Assert.Equal([90.0], design.MaximumLoads);
        Assert.Equal(120, design.Bond);
        Assert.Equal(500, design.BarYield);
        Assert.Equal((28.0, 184.0, 258.0), (design.Facing.ConcreteStrength, design.Facing.Mesh, design.Facing.BearingBars!.Area));
        Assert.Equal(Math.PI / 4 * 12.7 * 12.7, design.Studs!.Area, 9);
        Assert.Equal(20 * 4.4482216152605, BaseWall.Read(Metric("{t_max: 20 kip}")).Walls[0].Sections[0].Design!.MaximumLoads[0], 10);

        static string Metric(string design) => $$"""
            format: 1
            project: {title: Metric, number: M-1, units: m}
            layout_lines:
              - {name: WL-1, start: {station: 0, northing: 0, easting: 0, azimuth: 90}, elements: [{line: 20}]}
            walls:
              - name: W1
                retained_side: right
                stations: [0, 20]
                top: [[0, 106], [20, 106]]
                bottom: {steps: [[0, 100]]}
                sections:
                  - {name: A, stations: [0, 20], horizontal_spacing: 1.5, vertical_spacing: 1.5, top_row_depth: 0.75, inclination: 15, lengths: 7, bar: {size: "#8", grade: 75}, hole: 150 mm,
                     design: {{design}}}
            """;
    }

    [Fact]
    public void Defaults_fill_what_the_section_leaves_out()
    {
        DesignValues design = SectionA("{t_max: 22, factors: {pullout: 0.65}}", "section_defaults:\n  design: {t_max: 18, method: LRFD, load_factor: 1.35, factors: {bar: 0.75}, least_ratio: 1}\n").Design!;
        Assert.Equal([22.0], design.MaximumLoads);
        Assert.Equal((DesignMethod.Lrfd, 1.35, 1.0), (design.Method, design.LoadFactor, design.LeastRatio));
        Assert.Equal(0.65, Assert.Single(design.Factors).Value);
    }

    [Fact]
    public void Values_by_row_repeat_the_last()
    {
        DesignValues design = SectionA("{t_max: [18, 20], head_load: 12}").Design!;
        Assert.Equal([18.0, 20, 20], new[] { 1, 2, 7 }.Select(r => design.MaximumLoadOf(r)!.Value));
        Assert.Equal(12, design.HeadLoadOf(3));
        Assert.Equal(18, design.MaximumLoadOf(0));
    }

    [Fact]
    public void Slip_surfaces_by_angle_and_by_points()
    {
        IReadOnlyList<SlipSurface> surfaces = SectionA("{slip_surface: [{angle: 55}, {name: circle, points: [[0, 102], {behind: 6, elevation: 112}, [6, 118]]}]}").Design!.Surfaces;
        Assert.Equal(("1", 55.0), (surfaces[0].Name, surfaces[0].Angle));
        Assert.Equal("circle", surfaces[1].Name);
        Assert.Equal([new SurfacePoint(0, 102), new SurfacePoint(6, 112), new SurfacePoint(6, 118)], surfaces[1].Points);
        Assert.Equal(60, Assert.Single(SectionA("{slip_surface: {angle: 60}}").Design!.Surfaces).Angle);
    }
}

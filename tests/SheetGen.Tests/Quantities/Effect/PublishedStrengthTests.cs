using SheetGen.Layout.Quantities;
using SheetGen.Layout.Quantities.Effect;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using Xunit;

namespace SheetGen.Tests.Quantities.Effect;

/// <summary>
/// The program's formulas against published figures and against arithmetic on published formulas. Sources: GEC 7 = FHWA GEC No. 7
/// (FHWA-NHI-14-007, 2015), read in a transcription (F2); GEC 7 (2003) = FHWA0-IF-03-017, from memory (M); SA-96-069R = FHWA-SA-96-069R
/// (Byrne et al., 1998), by a printed calculation sheet (F2). Figures marked C are computed from the formula.
/// </summary>
public sealed class PublishedStrengthTests
{
    private const double FeetPerMetre = 1 / 0.3048, KilonewtonsPerKip = 4.4482216152605, MegapascalsPerKsi = 6.894757293168361;

    // GEC 7 eq. 6.1 (F2), C; q_u from GEC 7 tables 4.4 (F2)
    [Theory]
    [InlineData(6, 15, 3.39292)]
    [InlineData(6, 26, 5.88106)]
    [InlineData(4, 10, 1.50796)]
    [InlineData(8, 22, 6.63504)]
    public void Pullout_per_foot(double inches, double psi, double kipPerFoot) =>
        Assert.Equal(kipPerFoot, NailStrength.PulloutPerFoot(psi, inches), 5);

    // GEC 7 eq. 6.1 (F2), C; inputs of a textbook problem (F2) with FS 2.0
    [Fact]
    public void Pullout_per_metre()
    {
        Assert.Equal(282.743, NailStrength.PulloutPerFoot(15, 6) * 1000 / 12, 3);
        Assert.Equal(37.6991, NailStrength.PulloutPerMetre(120, 0.10), 4);
        Assert.Equal(18.8496, NailStrength.PulloutPerMetre(120, 0.10) / 2.0, 4);
    }

    // GEC 7 eq. 5.1 (F2), C
    [Theory]
    [InlineData(4, 0.657)]
    [InlineData(5, 0.714)]
    [InlineData(6, 0.771)]
    [InlineData(6.5, 0.7995)]
    public void Head_share_in_feet(double spacing, double share) => Assert.Equal(share, NailStrength.HeadShareFeet(spacing), 9);

    // GEC 7 (2003) by a second source (F2), C
    [Theory]
    [InlineData(1.0, 0.60)]
    [InlineData(1.2, 0.64)]
    [InlineData(1.5, 0.70)]
    [InlineData(1.8, 0.76)]
    [InlineData(2.0, 0.80)]
    public void Head_share_in_metres(double spacing, double share) => Assert.Equal(share, NailStrength.HeadShareMetres(spacing), 9);

    [Fact]
    public void Metric_and_customary_coefficients_are_not_converted_into_each_other()
    {
        // C: S = 5 ft = 1.524 m
        Assert.Equal(0.7048, NailStrength.HeadShareMetres(5 / FeetPerMetre), 9);
        Assert.Equal(0.714, NailStrength.HeadShareFeet(5), 9);
        // C: flexure and punching of GEC 7 (2003), M, in both systems for the same facing
        double customary = FacingStrength.FlexureCustomary2003(2.0, 0.2, 5, 5, 4.0 / 12, 60);
        double metric = FacingStrength.FlexureMetric2003(2.0, 0.2 * 645.16 * FeetPerMetre, 1.5, 1.5, 0.1016, 60 * MegapascalsPerKsi);
        Assert.Equal(30.40, customary, 2);
        Assert.Equal(134.29, metric, 1);
        Assert.Equal(30.19, metric / KilonewtonsPerKip, 2);
        double punching = FacingStrength.PunchingCustomary2003(4000, 1, 4.0 / 12);
        double punchingMetric = FacingStrength.PunchingMetric2003(4 * MegapascalsPerKsi, 0.3048, 0.1016);
        Assert.Equal(38.41, punching, 2);
        Assert.Equal(168.60, punchingMetric, 1);
        Assert.Equal(37.90, punchingMetric / KilonewtonsPerKip, 2);
        Assert.InRange(customary / (metric / KilonewtonsPerKip), 1.005, 1.0075);
        Assert.InRange(punching / (punchingMetric / KilonewtonsPerKip), 1.012, 1.0145);
    }

    // GEC 7 eq. 5.29 (F2), C
    [Fact]
    public void Facing_moment() => Assert.Equal(0.84217, FacingStrength.UnitMoment(0.00725, 60, 4.0 / 2, 4), 5);

    // GEC 7 eq. 6.3, 6.4 (F2), C; factors of GEC 7 tables 5.4 to 5.11 (F2)
    [Fact]
    public void Capacity_over_demand()
    {
        Assert.Equal(1.22522, NailStrength.Ratio(0.65, NailStrength.PulloutPerFoot(15, 6) * 15, 1.35, 20), 5);
        Bar bar = BarTable.Find("#8", 75)!;
        Assert.Equal(1.64583, NailStrength.Ratio(0.75, NailStrength.BarTension(bar.AreaSquareInches, bar.Grade), 1.35, 20), 5);
    }

    // GEC 7 (2003) ch. 5 (M), C
    [Theory]
    [InlineData(4, 8.5625, 31.264)]
    [InlineData(6, 9.125, 33.318)]
    public void Punching_at_studs(double spacing, double diameter, double kip)
    {
        (double cone, double depth) = FacingStrength.StudCone(4.125, 5.0 / 16, 0.75, spacing);
        Assert.Equal(4.5625, depth, 9);
        Assert.Equal(diameter, cone, 9);
        Assert.Equal(kip, FacingStrength.PunchingCustomary2003(4000, cone / 12, depth / 12), 3);
    }

    // GEC 7 (2003) ch. 5 (M), C; stud heads of the common stud table (M)
    [Fact]
    public void Studs_in_tension_and_their_heads()
    {
        Assert.Equal(47.04, FacingStrength.Studs(4, 0.196, 60), 9);
        Assert.True(FacingStrength.HasFullHead(0.5, 1, 5.0 / 16));
        Assert.True(FacingStrength.HasFullHead(0.625, 1.25, 5.0 / 16));
        Assert.True(FacingStrength.HasFullHead(0.75, 1.25, 3.0 / 8));
        Assert.False(FacingStrength.HasFullHead(0.75, 1.0, 3.0 / 8));
        Assert.False(FacingStrength.HasFullHead(0.5, 1.25, 5.0 / 16));
    }

    // GEC 7 (2003) ch. 5 (M): plate of 8 in on 4 in
    [Fact]
    public void Cone_under_a_plate() => Assert.Equal((12.0, 4.0), FacingStrength.PlateCone(8, 4));

    // GEC 7 eq. 9.1, 9.5 (F2), C
    [Theory]
    [InlineData("#10", 25.266)]
    [InlineData("#8", 15.717)]
    public void Bonded_length_that_the_bar_can_test(string size, double feet) =>
        Assert.Equal(feet, TestTakeOff.BarLimit(BarTable.Find(size, 75)!, LengthUnit.Foot) / NailStrength.PulloutPerFoot(15, 6), 3);

    // GEC 7 eq. 9.4, 9.7, 9.8 (F2), C
    [Fact]
    public void Proof_load_and_its_stretch()
    {
        double load = NailStrength.PulloutPerFoot(15, 6) * 10;
        Assert.Equal(33.929, load, 3);
        double stretch = NailStrength.Stretch(load, 36, NailStrength.ModulusKsi, BarTable.Find("#8", 75)!.AreaSquareInches);
        Assert.Equal(0.053315, stretch, 6);
        Assert.Equal(0.042652, NailStrength.StretchShare * stretch, 6);
    }

    // C; 130 % is the limit of GEC 7 9.3.5 (F2)
    [Fact]
    public void Grout_of_a_hole()
    {
        (WallProject project, NailLayout layout) = new TestWall { Length = 30 }.Make();
        NailQuantity nail = TakeOff.Measure(project, layout).Nails[0];
        Assert.Equal(5.89049, nail.HoleVolume, 5);
        Assert.Equal(0.218166, nail.HoleVolume / 27, 6);
        Assert.Equal(7.65763, nail.HoleVolume * 1.3, 5);
        Assert.Equal(5.72590, nail.Grout, 4);
    }

    // SA-96-069R (F2): printed 0.98, 0.57, 25; inputs f_y, f'c, b, d inferred there
    [Fact]
    public void Head_strength_sheet_flexure()
    {
        double negative = FacingStrength.UnitMoment(0.510 / 60, 60, 2, 4), positive = FacingStrength.UnitMoment(0.290 / 60, 60, 2, 4);
        Assert.Equal(0.98, negative, 2);
        Assert.Equal(0.98175, negative, 5);
        Assert.Equal(0.57, positive, 2);
        Assert.Equal(0.56763, positive, 5);
        double flexure = FacingStrength.Flexure(2.0, negative + positive, 5, 5);
        Assert.Equal(25, flexure, 0);
        Assert.Equal(24.79, flexure, 2);
        // The sheet's 0.510 in2 is its mesh of 0.290 in2 and 0.220 in2 of bars over 60 in.
        Assert.Equal(0.510 / 60, FacingStrength.EquivalentSteel(0.290 / 60, 60, 0.220, 60, 60), 12);
    }

    // SA-96-069R (F2): printed 38.1 and 44 kip; h_c, f'c and the spacing inferred there
    [Fact]
    public void Head_strength_sheet_punching()
    {
        double punching = FacingStrength.Punching(4000, 12, 4);
        Assert.Equal(38.1, punching, 1);
        Assert.Equal(38.149, punching, 3);
        double withSoil = FacingStrength.WithSoilReaction(punching, 2.5, 201, 19.6, 60 * 60);
        Assert.Equal(44, withSoil, 0);
        Assert.Equal(43.68, withSoil, 2);
        Assert.Equal(201, Math.PI / 4 * 16 * 16, 0);
    }

    // SA-96-069R (F2): printed 15.6 kip; F_F, unit weight and height inferred there
    [Fact]
    public void Head_strength_sheet_service_load() =>
        Assert.Equal(15.6, NailStrength.ServiceHeadLoad(0.5, 0.260, 0.120, 40, 5, 5), 2);

    // A second source after GEC 7 (2003) (F2): T_max 91.81 kN (C), S 1.5 m
    [Fact]
    public void Head_load_of_the_second_source() => Assert.Equal(64.27, 91.81 * NailStrength.HeadShareMetres(1.5), 2);

    // The same source (F2): mu = q_u D / (FS gamma S S) = 0.225 printed for gamma 18.5 kN/m3, S 1.5 m; q_u 125 kPa, D 0.15 m and FS 2 are
    // inferred here because they close it.
    [Fact]
    public void Pullout_of_the_second_source_without_a_unit() =>
        Assert.Equal(0.225, NailStrength.PulloutPerMetre(125, 0.15) / (Math.PI * 2 * 18.5 * 1.5 * 1.5), 3);

    // GEC 7 eq. 5.24, 5.25, 5.29 (F2): compression 0.85 f'c a and tension f_y a_s are one force; their arm gives the unit moment.
    [Theory]
    [InlineData(0.00725, 60, 2, 4)]
    [InlineData(0.0085, 60, 2, 4)]
    [InlineData(0.25, 415, 50, 28)]
    public void Compression_and_tension_of_the_facing(double steel, double yield, double depth, double concrete)
    {
        double tension = yield * steel, block = tension / (0.85 * concrete);
        Assert.Equal(tension * (depth - block / 2), FacingStrength.UnitMoment(steel, yield, depth, concrete), 12);
    }

    // C: 0.58 sqrt(psi) on ft2 is 4 sqrt(psi) written in kip, exactly 0.576; 3.8 is 8 (h/2) 0.95.
    [Fact]
    public void Coefficients_from_memory_are_those_of_the_printed_sheet()
    {
        Assert.Equal(0.576 / 0.58, FacingStrength.Punching(4000, 12, 4) / FacingStrength.PunchingCustomary2003(4000, 1, 4.0 / 12), 9);
        Assert.Equal(8 * 0.5 * 0.95, FacingStrength.FlexureCustomary2003(1, 1, 1, 1, 1, 1), 9);
    }

    // GEC 7 (2003) ch. 5 (M): C_F 2.0, 1.5, 1.0 for temporary facings of 4, 6, 8 in (100, 150, 200 mm), 1.0 for permanent ones; C_P 1.0, 1.15
    // with the soil's reaction. The program takes what the engineer gives, in proportion.
    [Theory]
    [InlineData(2.0)]
    [InlineData(1.5)]
    [InlineData(1.0)]
    public void Pressure_factors_are_the_engineers(double factor)
    {
        Assert.Equal(factor * FacingStrength.Flexure(1, 1.5, 5, 4), FacingStrength.Flexure(factor, 1.5, 5, 4), 12);
        Assert.InRange(FacingStrength.WithSoilReaction(38.149, 2.5, 201, 19.6, 3600) / 38.149, 1.14, 1.15);
    }

    // ASTM A615 table 1 by three copies (F2), C
    [Theory]
    [InlineData("#3", 6.6, 8.25, 8.8)]
    [InlineData("#4", 12.0, 15.00, 16.0)]
    [InlineData("#5", 18.6, 23.25, 24.8)]
    [InlineData("#6", 26.4, 33.00, 35.2)]
    [InlineData("#7", 36.0, 45.00, 48.0)]
    [InlineData("#8", 47.4, 59.25, 63.2)]
    [InlineData("#9", 60.0, 75.00, 80.0)]
    [InlineData("#10", 76.2, 95.25, 101.6)]
    [InlineData("#11", 93.6, 117.00, 124.8)]
    [InlineData("#14", 135.0, 168.75, 180.0)]
    public void Bars_in_tension(string size, double grade60, double grade75, double grade80)
    {
        double area = BarTable.Find(size, 60)!.AreaSquareInches;
        Assert.Equal(grade60, NailStrength.BarTension(area, 60), 9);
        Assert.Equal(grade75, NailStrength.BarTension(area, 75), 9);
        Assert.Equal(grade80, NailStrength.BarTension(area, 80), 9);
    }
}

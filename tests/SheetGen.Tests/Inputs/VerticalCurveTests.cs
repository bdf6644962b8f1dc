using SheetGen.Model;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>Vertical curves of profiles, against their formulas at many places.</summary>
public sealed class VerticalCurveTests
{
    private static string Top(string points) => BaseWall.With("top: [[10+00, 118], [11+00, 120]]", "top: " + points);

    [Fact]
    public void A_parabola_is_never_off_by_more_than_a_thousandth_of_a_foot()
    {
        Profile top = BaseWall.Read(Top("[[9+00, 114], {station: 10+50, elevation: 122, curve: 120}, [12+00, 117]]")).Walls[0].Top;
        double g1 = 8 / 150.0, g2 = -5 / 150.0;
        for (double x = 12; x <= 108; x += 0.37)
            Assert.Equal(122 - 60 * g1 + g1 * x + (g2 - g1) / 240 * x * x, top.At(-10 + x), 0.001 + 1e-9);
        // Every knot lies on the curve.
        Assert.All(top.Points.Where(p => p.Along is > -10 and < 110), p => Assert.Equal(122 - 60 * g1 + g1 * (p.Along + 10) + (g2 - g1) / 240 * Math.Pow(p.Along + 10, 2), p.Elevation, 1e-9));
    }

    [Fact]
    public void A_curve_that_is_not_symmetrical_meets_its_tangents()
    {
        Profile top = BaseWall.Read(Top("[[9+00, 114], {station: 10+50, elevation: 122, curve_in: 40, curve_out: 50}, [12+00, 117]]")).Walls[0].Top;
        double g1 = 8 / 150.0, g2 = -5 / 150.0;
        Assert.Equal(122 - 40 * g1, top.At(10), 1e-9);
        Assert.Equal(122 + 50 * g2, top.At(100), 1e-9);
        Assert.Equal(122 + 40 * 50 * (g2 - g1) / 180, top.At(50), 1e-9);
        // Grade at the middle by both sides.
        Assert.Equal((top.At(50) - top.At(49)) / 1, (g1 * 40 + g2 * 50) / 90, 2e-3);
        Assert.Equal((top.At(51) - top.At(50)) / 1, (g1 * 40 + g2 * 50) / 90, 2e-3);
    }

    [Theory]
    [InlineData(114, 117)]
    [InlineData(126, 127)]
    public void A_circular_curve_lies_on_its_circle(double before, double after)
    {
        Profile top = BaseWall.Read(Top(FormattableString.Invariant($"[[9+00, {before}], {{station: 10+50, elevation: 122, curve_radius: 700}}, [12+00, {after}]]"))).Walls[0].Top;
        double g1 = (122 - before) / 150, g2 = (after - 122) / 150, t = 700 * Math.Tan(Math.Abs(Math.Atan(g2) - Math.Atan(g1)) / 2), up = Math.Sign(g2 - g1);
        double x0 = 50 - t * Math.Cos(Math.Atan(g1)), z0 = 122 - t * Math.Sin(Math.Atan(g1));
        double cx = x0 - up * 700 * Math.Sin(Math.Atan(g1)), cz = z0 + up * 700 * Math.Cos(Math.Atan(g1)), x1 = 50 + t * Math.Cos(Math.Atan(g2));
        for (double x = x0; x <= x1; x += 0.9)
            Assert.Equal(700, Math.Sqrt(Math.Pow(x - cx, 2) + Math.Pow(top.At(x) - cz, 2)), 0.0011);
        Assert.Equal(122 + (x1 - 50) * g2, top.At(x1), 1e-6);
    }

    [Theory]
    [InlineData("[[9+00, 114], {station: 10+50, elevation: 122, curve: 320}, [12+00, 117]]", "error R47: the vertical curve 8+90.00 to 12+10.00 runs into its neighbour")]
    [InlineData("[[9+00, 114], {station: 10+20, elevation: 122, curve: 100}, {station: 10+80, elevation: 120, curve: 60}, [12+00, 117]]", "error R47")]
    [InlineData("[{station: 10+00, elevation: 114, curve: 10}, [11+00, 117]]", "the first and the last point have none")]
    [InlineData("[[10+00, 114], {station: 10+50, elevation: 116, curve: 10, curve_radius: 500}, [11+00, 117]]", "error R19")]
    [InlineData("[[10+00, 114], {station: 10+50, elevation: 116, curve_in: 10}, [11+00, 117]]", "error R11")]
    public void What_does_not_fit_is_told(string points, string message) =>
        Assert.Contains(BaseWall.Problems(Top(points)), p => p.Contains(message, StringComparison.Ordinal));
}

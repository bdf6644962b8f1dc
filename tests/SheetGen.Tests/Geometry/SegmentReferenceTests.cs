using SheetGen.Model.Geometry;
using Xunit;

namespace SheetGen.Tests.Geometry;

/// <summary>
/// Distances of two axes. The first row is published (documentation of the crate brepkit-geometry 3.2.21: 1.0 within 1e-12). The other
/// rows are arithmetic, not published: Ericson's closed form with clamping (Real-Time Collision Detection 5.1.9) and an independent grid
/// refinement agreed to 6 decimals. Axes: x along the wall, y into the ground, z up; i down, s splay to +x; lengths in feet.
/// </summary>
public class SegmentReferenceTests
{
    private const double Free = double.NaN;

    public static TheoryData<string, Hole, Hole, double, double, double> Cases => new()
    {
        { "published cross", Segment(-1, 0, 0, 1, 0, 0), Segment(0, -1, 1, 0, 1, 1), 1.000000, 0.5, 0.5 },
        { "collinear gap", Segment(0, 0, 0, 1, 0, 0), Segment(2, 0, 0, 3, 0, 0), 1.000000, 1, 0 },
        { "end to middle", Segment(0, 0, 0, 10, 0, 0), Segment(12, -1, 0, 12, 1, 0), 2.000000, 1, 0.5 },
        { "same row, parallel", Nail(0, 0, 0, 30, 15, 0), Nail(5, 0, 0, 30, 15, 0), 5.000000, Free, Free },
        { "rows 5 ft apart, parallel", Nail(0, 0, 0, 30, 15, 0), Nail(0, 0, -5, 30, 15, 0), 4.829629, Free, Free },
        { "steeper over flatter", Nail(0, 0, 0, 30, 15, 0), Nail(0, 0, -5, 30, 10, 0), 2.309366, 1, 0.967253 },
        { "steeper over flatter, 25 ft", Nail(0, 0, 0, 25, 20, 0), Nail(0, 0, -5, 25, 10, 0), 0.582834, 1, 0.950078 },
        { "converging splay, meets", Nail(0, 0, 0, 20, 15, 10), Nail(5, 0, 0, 20, 15, -10), 0.000000, 0.745240, 0.745240 },
        { "splay against straight", Nail(0, 0, 0, 30, 15, 10), Nail(5, 0, 0, 30, 15, 0), 0.113190, 0.993144, 0.979066 },
        { "skew, two rows", Nail(0, 0, 0, 30, 15, 20), Nail(6, 0, -5, 30, 15, -20), 4.808341, 0.326905, 0.278484 },
        {
            "corner, walls at 90 degrees", Segment(5, 0, 0, 5, 24.148146, -6.470476),
            Segment(0, 8, -3, 24.148146, 8, -9.470476), 2.053651, 0.352597, 0.185746
        },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void DistanceOfAxes(string name, Hole a, Hole b, double distance, double s, double t)
    {
        Nearest near = HoleDistance.Between(a, b);
        double tolerance = name == "published cross" ? 1e-12 : 6e-7;
        Assert.InRange(near.Clear + a.Radius + b.Radius, distance - tolerance, distance + tolerance);
        if (double.IsNaN(s))
            return;
        Assert.InRange(near.DepthFirst / a.Length, s - 6e-7, s + 6e-7);
        Assert.InRange(near.DepthSecond / b.Length, t - 6e-7, t + 6e-7);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void ClearDistanceIsLessTheRadii(string name, Hole a, Hole b, double distance, double s, double t)
    {
        Hole wide = a with { Radius = 0.25 }, wider = b with { Radius = 0.3 };
        Assert.True(Math.Abs(HoleDistance.Between(wide, wider).Clear - (distance - 0.55)) < 6e-7, $"{name} {s} {t}");
    }

    private static Hole Segment(double x1, double y1, double z1, double x2, double y2, double z2)
    {
        Vector3D d = new Vector3D(x2, y2, z2) - new Vector3D(x1, y1, z1);
        return new Hole(new(x1, y1, z1), d * (1 / d.Length), d.Length, 0, 0);
    }

    private static Hole Nail(double x, double y, double z, double length, double down, double splay)
    {
        double i = down * Math.PI / 180, s = splay * Math.PI / 180;
        return new Hole(new(x, y, z), new(Math.Cos(i) * Math.Sin(s), Math.Cos(i) * Math.Cos(s), -Math.Sin(i)), length, 0, 0);
    }
}

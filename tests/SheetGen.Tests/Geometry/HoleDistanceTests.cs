using SheetGen.Model.Geometry;
using Xunit;

namespace SheetGen.Tests.Geometry;

public class HoleDistanceTests
{
    [Fact]
    public void RandomHolesAgreeWithDenseSampling()
    {
        var shapes = new RandomShapes(11);
        for (int i = 0; i < 400; i++)
        {
            Hole a = shapes.Hole(), b = shapes.Hole();
            Nearest near = HoleDistance.Between(a, b);
            Assert.Equal(SlowTwin.Between(a, b), near.Clear, 1e-7);
            AssertEvidence(a, b, near);
        }
    }

    [Fact]
    public void SwappingTheHolesChangesNothing()
    {
        var shapes = new RandomShapes(12);
        for (int i = 0; i < 3000; i++)
        {
            Hole a = shapes.Hole(), b = shapes.Hole();
            Nearest one = HoleDistance.Between(a, b), two = HoleDistance.Between(b, a);
            Assert.Equal(one.Clear, two.Clear, 1e-10);
            Assert.Equal(one.DepthFirst, two.DepthSecond, 1e-5);
        }
    }

    [Fact]
    public void MirrorTurnAndShiftChangeNothing()
    {
        var shapes = new RandomShapes(13);
        for (int i = 0; i < 1000; i++)
        {
            Hole a = shapes.Hole(), b = shapes.Hole();
            double turn = shapes.Between(0, 6.28), c = Math.Cos(turn), s = Math.Sin(turn);
            Vector3D shift = shapes.Point(1000);
            Vector3D Moved(Vector3D p) => new(-(c * p.N - s * p.E), s * p.N + c * p.E, p.Z);
            Hole Image(Hole h) => h with { Head = Moved(h.Head) + shift, Direction = Moved(h.Direction) };
            Assert.Equal(HoleDistance.Between(a, b).Clear, HoleDistance.Between(Image(a), Image(b)).Clear, 1e-9);
        }
    }

    [Fact]
    public void LargeCoordinatesKeepTheDistance()
    {
        var shapes = new RandomShapes(14);
        var far = new Vector3D(1e7, -1e7, 1e7);
        for (int i = 0; i < 2000; i++)
        {
            Hole a = shapes.Hole(), b = shapes.Hole();
            Hole x = a with { Head = a.Head + far }, y = b with { Head = b.Head + far };
            Assert.InRange(Math.Abs(HoleDistance.Between(a, b).Clear - HoleDistance.Between(x, y).Clear), 0, 2e-8);
        }
    }

    [Theory]
    [InlineData("parallel")]
    [InlineData("nearly parallel 1e-5")]
    [InlineData("nearly parallel 1e-6")]
    [InlineData("nearly parallel 1e-7")]
    [InlineData("nearly parallel 1e-9")]
    [InlineData("nearly opposite 1e-6")]
    [InlineData("opposite")]
    [InlineData("zero length one")]
    [InlineData("zero length both")]
    [InlineData("coincident heads")]
    [InlineData("shared tip and head")]
    [InlineData("in one line, overlapping")]
    [InlineData("in one line, apart")]
    [InlineData("identical")]
    [InlineData("crossing")]
    [InlineData("taper steeper than the angle")]
    public void DegenerateHolesAgreeWithDenseSampling(string kind)
    {
        var shapes = new RandomShapes(15 + kind.Length);
        for (int i = 0; i < 120; i++)
        {
            Hole a = shapes.Hole(5), b = Degenerate(shapes, a, shapes.Hole(5), kind);
            Nearest near = HoleDistance.Between(a, b);
            Assert.Equal(SlowTwin.Between(a, b), near.Clear, 1e-7);
            Assert.Equal(near.Clear, HoleDistance.Between(b, a).Clear, 1e-9);
            AssertEvidence(a, b, near);
            Assert.Equal(near.Clear < 0.5, HoleDistance.CloserThan(a, b, 0.5));
        }
    }

    private static Hole Degenerate(RandomShapes shapes, Hole a, Hole b, string kind)
    {
        Vector3D Tilted(double by)
        {
            Vector3D v = a.Direction + b.Direction.Cross(a.Direction) * by;
            return v * (1 / v.Length);
        }
        return kind switch
        {
            "parallel" => b with { Direction = a.Direction },
            "nearly parallel 1e-5" => b with { Direction = Tilted(1e-5) },
            "nearly parallel 1e-6" => b with { Direction = Tilted(1e-6) },
            "nearly parallel 1e-7" => b with { Direction = Tilted(1e-7) },
            "nearly parallel 1e-9" => b with { Direction = Tilted(1e-9) },
            "nearly opposite 1e-6" => b with { Direction = -Tilted(1e-6) },
            "opposite" => b with { Direction = -a.Direction },
            "zero length one" => b with { Length = 0 },
            "zero length both" => b with { Length = 0, Head = a.At(shapes.Between(0, a.Length)) + b.Direction * 0.7 },
            "coincident heads" => b with { Head = a.Head },
            "shared tip and head" => b with { Head = a.Tip },
            "in one line, overlapping" => b with { Head = a.At(a.Length / 2), Direction = a.Direction },
            "in one line, apart" => b with { Head = a.At(a.Length + 3), Direction = a.Direction },
            "identical" => a,
            "crossing" => b with { Head = a.At(a.Length * 0.4) - b.Direction * (b.Length * 0.3) },
            "taper steeper than the angle" => b with { Direction = Tilted(0.02), Drift = 0.08 },
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };
    }

    [Fact]
    public void TheQuickDecisionIsTheExactOne()
    {
        var shapes = new RandomShapes(16);
        int closer = 0;
        for (int i = 0; i < 100_000; i++)
        {
            Hole a = shapes.Hole(), b = shapes.Hole();
            double required = shapes.Between(-0.3, 3);
            bool expected = HoleDistance.Between(a, b).Clear < required;
            Assert.Equal(expected, HoleDistance.CloserThan(a, b, required));
            closer += expected ? 1 : 0;
        }
        Assert.InRange(closer, 1000, 99_000);
    }

    [Fact]
    public void ADriftThatGrowsFasterThanTheHolesPartIsTakenAtTheTips()
    {
        var a = new Hole(new(0, 0, 0), new(1, 0, 0), 10, 0.25, 1.5);
        var b = new Hole(new(0, 5, 0), new(1, 0, 0), 10, 0.25, 0);
        Assert.Equal(5 - 0.25 - 0.25 - 15, HoleDistance.Between(a, b).Clear, 1e-12);
    }

    private static void AssertEvidence(Hole a, Hole b, Nearest near)
    {
        Assert.InRange(near.DepthFirst, 0, a.Length);
        Assert.InRange(near.DepthSecond, 0, b.Length);
        double measured = (near.OnFirst - near.OnSecond).Length - a.RadiusAt(near.DepthFirst) - b.RadiusAt(near.DepthSecond);
        Assert.Equal(measured, near.Clear, 1e-9);
    }
}

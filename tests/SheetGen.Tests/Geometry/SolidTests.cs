using SheetGen.Model.Geometry;
using Xunit;

namespace SheetGen.Tests.Geometry;

public class SolidTests
{
    public static TheoryData<int> Kinds => [0, 1, 2, 3, 4];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void NoPointOfTheSurfaceIsNearerThanTheDistance(int kind)
    {
        var shapes = new RandomShapes(100 + kind);
        for (int i = 0; i < 150; i++)
        {
            Solid solid = shapes.Solid(kind);
            Vector3D point = shapes.Point(12);
            double distance = solid.SignedDistance(point);
            Vector3D nearest = solid.NearestPoint(point);
            Assert.Equal(Math.Abs(distance), (point - nearest).Length, 1e-10);
            Assert.InRange(Math.Abs(solid.SignedDistance(nearest)), 0, 1e-10);
            Assert.Equal(SolidSamples.Contains(solid, point), distance < 0);
            double sampled = SolidSamples.Surface(solid, shapes, point.Z).Min(p => (p - point).Length);
            Assert.InRange(sampled, Math.Abs(distance) - 1e-9, double.PositiveInfinity);
            Assert.InRange(sampled, 0, Math.Abs(distance) + 1.0);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void SignedDistanceIsConvex(int kind)
    {
        var shapes = new RandomShapes(200 + kind);
        for (int i = 0; i < 3000; i++)
        {
            Solid solid = shapes.Solid(kind);
            Vector3D a = shapes.Point(12), b = shapes.Point(12);
            double t = shapes.Between(0, 1);
            double chord = solid.SignedDistance(a) * (1 - t) + solid.SignedDistance(b) * t;
            Assert.InRange(solid.SignedDistance(a * (1 - t) + b * t), double.NegativeInfinity, chord + 1e-10);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void HolesAgreeWithDenseSampling(int kind)
    {
        var shapes = new RandomShapes(300 + kind);
        for (int i = 0; i < 300; i++)
        {
            Solid solid = shapes.Solid(kind);
            Hole hole = shapes.Hole();
            Nearest near = HoleDistance.ToSolid(hole, solid);
            Assert.Equal(SlowTwin.ToSolid(hole, solid.SignedDistance), near.Clear, 1e-8);
            Assert.Equal(near.OnFirst, hole.At(near.DepthFirst));
            double gap = (near.OnFirst - near.OnSecond).Length;
            Assert.Equal(near.Clear + hole.RadiusAt(near.DepthFirst), solid.SignedDistance(near.OnFirst) < 0 ? -gap : gap, 1e-8);
            double required = shapes.Between(-1, 3);
            if (Math.Abs(required - near.Clear) > 1e-9)
                Assert.Equal(near.Clear < required, HoleDistance.CloserThan(hole, solid, required));
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void LargeCoordinatesKeepTheDistance(int kind)
    {
        var shapes = new RandomShapes(400 + kind);
        var far = new Vector3D(1e7, -1e7, 1e4);
        for (int i = 0; i < 300; i++)
        {
            Solid solid = shapes.Solid(kind);
            Hole hole = shapes.Hole();
            double here = HoleDistance.ToSolid(hole, solid).Clear;
            double there = HoleDistance.ToSolid(hole with { Head = hole.Head + far }, SolidSamples.Shift(solid, far)).Clear;
            Assert.InRange(Math.Abs(here - there), 0, 5e-8);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void BoundsHoldTheWholeBody(int kind)
    {
        var shapes = new RandomShapes(500 + kind);
        for (int i = 0; i < 50; i++)
        {
            Solid solid = shapes.Solid(kind);
            Bounds box = solid.Bounds.Grow(1e-9);
            foreach (Vector3D p in SolidSamples.Surface(solid, shapes, 0))
                Assert.True(box.Meets(new Bounds(p, p)));
        }
    }

    [Fact]
    public void ACylinderIsExactAtSideEndRimAndInside()
    {
        var shaft = new CylinderSolid(new(0, 0, 10), new(0, 0, -10), 1.5);
        Assert.Equal(2.5, shaft.SignedDistance(new(4, 0, 3)), 1e-12);
        Assert.Equal(3, shaft.SignedDistance(new(0.5, 0.5, 13)), 1e-12);
        Assert.Equal(5, shaft.SignedDistance(new(4.5, 0, 14)), 1e-12);
        Assert.Equal(-1.5, shaft.SignedDistance(new(0, 0, 0)), 1e-12);
        Assert.Equal(-0.5, shaft.SignedDistance(new(0, 0, 9.5)), 1e-12);
    }

    [Fact]
    public void ACrossedBoundaryGivesMinusTheRadiusAtTheCrossing()
    {
        var boundary = new BoundarySolid(new(10, -50), new(10, 50));
        var hole = new Hole(new(0, 0, 0), new(1, 0, 0), 20, 0.25, 0);
        Nearest near = HoleDistance.ToSolid(hole, boundary);
        Assert.Equal(-0.25, near.Clear, 1e-10);
        Assert.Equal(10, near.DepthFirst, 1e-8);
        Assert.Equal(-0.25 - 0.02 * 10, HoleDistance.ToSolid(hole with { Drift = 0.02 }, boundary).Clear, 1e-10);
        Assert.Equal(1.75, HoleDistance.ToSolid(hole with { Length = 8 }, boundary).Clear, 1e-10);
    }

    [Fact]
    public void BodiesWithoutExtentStillHaveADistance()
    {
        var p = new Vector3D(3, 4, 0);
        Assert.Equal(5 - 1, new CapsuleSolid(default, default, 1).SignedDistance(p), 1e-12);
        Assert.Equal(4, new CylinderSolid(default, default, 1).SignedDistance(p), 1e-12);
        Assert.Equal(5, new BoundarySolid(default, default).SignedDistance(p), 1e-12);
        Assert.Equal(5, new PrismSolid([default, default], 0, 0).SignedDistance(p), 1e-12);
        Assert.Equal(4, new PrismSolid([new(0, 0), new(3, 0)], -1, 1).SignedDistance(p), 1e-12);
        Assert.Equal(2, new PrismSolid([new(0, 0), new(3, 0)], -1, 1).SignedDistance(new(5, 0, 0)), 1e-12);
        Assert.Equal(5, new FaceSolid([default, default, default]).SignedDistance(p), 1e-12);
        Assert.Equal(4, new FaceSolid([default, new(3, 0, 0), new(6, 0, 0)]).SignedDistance(p), 1e-12);
    }
}

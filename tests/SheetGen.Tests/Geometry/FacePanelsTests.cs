using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Tests.Clearance;
using Xunit;

namespace SheetGen.Tests.Geometry;

public class FacePanelsTests
{
    public static TheoryData<Turn, Turn, double, double, double> Corners
    {
        get
        {
            var data = new TheoryData<Turn, Turn, double, double, double>();
            foreach (double deflection in (double[])[15, 30, 45, 60, 90])
            {
                foreach ((double offset, double batter) in ((double, double)[])[(0, 0), (1.5, 0), (-1.5, 0), (0, 6), (0.8, 6)])
                {
                    data.Add(Turn.Right, Turn.Right, deflection, offset, batter);
                    data.Add(Turn.Right, Turn.Left, deflection, offset, batter);
                    data.Add(Turn.Left, Turn.Right, deflection, offset, batter);
                    data.Add(Turn.Left, Turn.Left, deflection, offset, batter);
                }
            }
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Corners))]
    public void LegsMeetAtTheMitreAndNowhereElse(Turn side, Turn turn, double deflection, double offset, double batter)
    {
        var face = new Face(SmallProjects.Wall(side, deflection, turn, offset, batter));
        IReadOnlyList<IReadOnlyList<FaceSolid>> legs = FacePanels.Of(face);
        Assert.Equal(2, legs.Count);
        Corner corner = face.Legs[0].EndCorner!;
        foreach (double z in (double[])[100, 103, 109.5, 116, 120])
        {
            double cut = face.MitreCut(corner, z);
            Vector2D tangent = face.Wall.LayoutLine.TangentAt(30), normal = tangent.Right * face.Wall.Side;
            Vector3D mitre = (face.Wall.LayoutLine.PointAt(60) - tangent * cut + normal * face.OffsetAt(z)).At(z);
            Assert.InRange(Distance(legs[0], mitre), 0, 1e-9);
            Assert.InRange(Distance(legs[1], mitre), 0, 1e-9);
            Vector3D beyond = mitre + tangent.At(0) * 0.25;
            Assert.InRange(Distance(legs[0], beyond), 0.2, 0.3);
            Assert.InRange(Distance(legs[0], mitre - tangent.At(0) * 0.25), 0, 1e-9);
            Assert.InRange(Distance(legs[1], mitre - tangent.At(0) * 0.25), 0.25 * Math.Sin(deflection * Math.PI / 180) * 0.5, 0.26);
        }
    }

    [Fact]
    public void TheFaceLiesOnItsPanelsAndEndsAtTopAndSteps()
    {
        Wall wall = SmallProjects.Wall(batter: 4) with
        {
            Top = new Profile([new(0, 118), new(45, 124), new(80, 124), new(80, 121), new(120, 120)]),
            Bottom = new Profile([new(0, 100), new(40, 100), new(40, 102), new(120, 102)]),
        };
        var face = new Face(wall);
        IReadOnlyList<FaceSolid> panels = Assert.Single(FacePanels.Of(face));
        for (double along = 0.5; along < 120; along += 1.7)
        {
            double top = wall.Top.At(along), bottom = wall.Bottom.At(along);
            for (double t = 0; t <= 1; t += 0.125)
                Assert.InRange(Distance(panels, face.PointAt(along, bottom + (top - bottom) * t)), 0, 1e-9);
            Assert.InRange(Distance(panels, face.PointAt(along, top + 0.5)), 0.4, 0.55);
            Assert.InRange(Distance(panels, face.PointAt(along, bottom - 0.3)), 0.2, 0.35);
        }
        Assert.Equal(5, panels.Count);
    }

    [Theory]
    [InlineData(250, 0, 0)]
    [InlineData(80, 3, 0)]
    [InlineData(80, -3, 5)]
    public void ArcsBecomeChordsThatLieCloseAndAreFew(double radius, double offset, double batter)
    {
        LayoutLine line = LayoutLine.Build(
            "L", 0, default, 1, [new LayoutElement.Tangent(10), new LayoutElement.Arc(radius, 50, Turn.Left), new LayoutElement.Tangent(10)]);
        var face = new Face(SmallProjects.On(line, Turn.Right, offset, batter));
        IReadOnlyList<FaceSolid> panels = Assert.Single(FacePanels.Of(face));
        double worst = 0;
        for (double along = 0.05; along < 70; along += 0.0731)
            worst = Math.Max(worst, Distance(panels, face.PointAt(along, 100 + along / 70 * 20)));
        Assert.InRange(worst, 0, FacePanels.Sagitta);
        double longest = Math.Sqrt(8 * FacePanels.Sagitta * radius);
        Assert.InRange(panels.Count, 50 / longest, 2 + 50 / longest * 1.2 + 2);
        foreach (FaceSolid panel in panels)
        {
            Vector3D n = (panel.Corners[1] - panel.Corners[0]).Cross(panel.Corners[2] - panel.Corners[0]);
            foreach (Vector3D corner in panel.Corners)
                Assert.Equal(0, n.Dot(corner - panel.Corners[0]) / n.Length, 1e-10);
        }
    }

    public static TheoryData<Turn, Turn, double, double> Arcs
    {
        get
        {
            var data = new TheoryData<Turn, Turn, double, double>();
            foreach (Turn turn in (Turn[])[Turn.Left, Turn.Right])
            {
                foreach (Turn side in (Turn[])[Turn.Left, Turn.Right])
                {
                    foreach ((double offset, double batter) in ((double, double)[])[(-3, 0), (3, 0), (-3, 8), (3, 8)])
                        data.Add(turn, side, offset, batter);
                }
            }
            return data;
        }
    }

    /// <summary>
    /// A chord of length c leaves an arc of radius r by c^2 / 8r (the sagitta of a flat arc): of the two edges of the face the one with the greater radius is left by
    /// the most, and by nearly all that is allowed, since more chords than needed cost time.
    /// </summary>
    [Theory]
    [MemberData(nameof(Arcs))]
    public void ChordsLeaveTheFaceByNoMoreThanAllowedAndAreNoShorterThanNeeded(Turn turn, Turn side, double offset, double batter)
    {
        LayoutLine line = LayoutLine.Build("L", 0, default, 1, [new LayoutElement.Arc(60, 20, turn)]);
        var face = new Face(SmallProjects.On(line, side, offset, batter));
        FaceSolid[] panels = [.. FacePanels.Of(face).Single()];
        double worst = 0;
        for (double along = 9; along < 11; along += 0.0137)
        {
            FaceSolid[] near = [.. panels.Skip((int)(panels.Length * along / 20) - 2).Take(5)];
            foreach (double z in (double[])[100, 120])
                worst = Math.Max(worst, Distance(near, face.PointAt(along, z)));
        }
        Assert.InRange(worst, 0.9 * FacePanels.Sagitta, FacePanels.Sagitta);
    }

    /// <summary>Arcs that meet at a corner where top and bottom step too: each leg's panels hold its face and end with it.</summary>
    [Theory]
    [InlineData(Turn.Left, 0, 0)]
    [InlineData(Turn.Right, 0, 0)]
    [InlineData(Turn.Left, 2, 6)]
    [InlineData(Turn.Right, -2, 6)]
    public void CurvedLegsEndAtTheirCornerAndAtTheStepsThere(Turn turn, double offset, double batter)
    {
        LayoutLine line = LayoutLine.Build("L", 0, default, 1, [new LayoutElement.Arc(80, 30, Turn.Right), new LayoutElement.Bend(turn, 50), new LayoutElement.Spiral(90, 70, 25, Turn.Left)]);
        Wall wall = SmallProjects.On(line, Turn.Right, offset, batter) with
        {
            Top = new Profile([new(0, 118), new(30, 118), new(30, 122), new(55, 121)]),
            Bottom = new Profile([new(0, 100), new(30, 100), new(30, 102), new(55, 102)]),
            BottomSteps = [new(0, 100), new(30, 102)],
        };
        var face = new Face(wall);
        IReadOnlyList<IReadOnlyList<FaceSolid>> legs = FacePanels.Of(face);
        Assert.Equal(2, legs.Count);
        for (int k = 0; k < 2; k++)
        {
            Leg leg = face.Legs[k];
            (double low, double high) = k == 0 ? (100.0, 118.0) : (102, 121);
            for (double along = leg.Start + 0.01; along < leg.End; along += 0.217)
            {
                foreach (double z in (double[])[low + 0.001, low + 7, high - 0.001])
                {
                    if (face.ToMitre(leg, along, z) < 0.01)
                        continue;
                    Assert.InRange(Distance(legs[k], face.PointAt(along, z)), -1e-9, FacePanels.Sagitta + 1e-9);
                }
                if (face.ToMitre(leg, along, low) < 0.5)
                    continue;
                Assert.InRange(Distance(legs[k], face.PointAt(along, low) - new Vector3D(0, 0, 0.4)), 0.35, 0.45);
                double top = wall.Top.At(along);
                if (face.ToMitre(leg, along, top) > 0.5)
                    Assert.InRange(Distance(legs[k], face.PointAt(along, top) + new Vector3D(0, 0, 0.4)), 0.35, 0.45);
            }
        }
        // The mitre of both, where the lower leg's top and the higher one's bottom overlap: both reach it and neither passes it.
        Corner corner = face.Legs[0].EndCorner!;
        Vector2D tangent = Vector2D.FromAzimuth(line.AzimuthBefore(30)), normal = tangent.Right * wall.Side;
        foreach (double z in (double[])[104, 110, 117])
        {
            Vector3D mitre = (line.PointAt(30) - tangent * face.MitreCut(corner, z) + normal * face.OffsetAt(z)).At(z);
            Assert.InRange(Distance(legs[0], mitre), -1e-9, 1e-3);
            Assert.InRange(Distance(legs[1], mitre), -1e-9, 1e-3);
            Assert.InRange(Distance(legs[0], mitre + tangent.At(0) * 0.25), 0.15, 0.3);
        }
    }

    [Fact]
    public void TheAreaOfAWallBetweenItsEndsIsThatOfItsPanels()
    {
        Wall wall = SmallProjects.Wall() with { Bottom = new Profile([new(0, 100), new(30, 100), new(30, 103), new(120, 103)]) };
        double area = FacePanels.Of(new Face(wall)).SelectMany(l => l).Sum(Area);
        Assert.Equal((30 * 20) + (90 * 17), area, 1e-9);
    }

    /// <summary>A wall on a part of its layout line has no face on the rest of it, whatever pieces that has.</summary>
    [Fact]
    public void AWallOnAPartOfItsLineHasNoFaceBeside()
    {
        LayoutLine line = LayoutLine.Build("L", 0, default, 1, [new LayoutElement.Tangent(15), new LayoutElement.Arc(200, 20, Turn.Left), new LayoutElement.Tangent(60), new LayoutElement.Arc(90, 30, Turn.Right)]);
        Wall wall = SmallProjects.On(line, Turn.Right) with { Start = 40, End = 90 };
        IReadOnlyList<FaceSolid> panels = Assert.Single(FacePanels.Of(new Face(wall)));
        Assert.Equal(50 * 20, panels.Sum(Area), 1e-6);
    }

    private static double Area(FaceSolid panel)
    {
        Vector3D sum = default;
        for (int i = 1; i + 1 < panel.Corners.Count; i++)
            sum += (panel.Corners[i] - panel.Corners[0]).Cross(panel.Corners[i + 1] - panel.Corners[0]);
        return sum.Length / 2;
    }

    private static double Distance(IEnumerable<FaceSolid> panels, Vector3D point) => panels.Min(p => p.SignedDistance(point));
}

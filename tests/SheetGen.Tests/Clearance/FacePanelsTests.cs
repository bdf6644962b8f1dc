using SheetGen.Layout.Clearance;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using Xunit;

namespace SheetGen.Tests.Clearance;

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

    [Fact]
    public void TheAreaOfAWallBetweenItsEndsIsThatOfItsPanels()
    {
        Wall wall = SmallProjects.Wall() with { Bottom = new Profile([new(0, 100), new(30, 100), new(30, 103), new(120, 103)]) };
        double area = FacePanels.Of(new Face(wall)).SelectMany(l => l).Sum(Area);
        Assert.Equal((30 * 20) + (90 * 17), area, 1e-9);
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

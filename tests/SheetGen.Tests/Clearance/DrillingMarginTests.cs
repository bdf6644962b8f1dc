using SheetGen.Layout.Clearance;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Tests.Geometry;
using Xunit;

namespace SheetGen.Tests.Clearance;

public class DrillingMarginTests
{
    [Fact]
    public void MarginsOfRandomNailsAgreeWithSampling()
    {
        var random = new RandomShapes(21);
        for (int round = 0; round < 4; round++)
        {
            WallProject project = SmallProjects.Project(
                [SmallProjects.Wall()],
                SmallProjects.Obstruction("S1", ObstructionKind.Shaft, new CylinderSolid(new(-8, 22, 119), new(-8, 22.5, 60), 1.5)),
                SmallProjects.Obstruction("P", ObstructionKind.Pipe, new CapsuleSolid(new(-14, 0, 108), new(-13, 120, 106), 1)),
                SmallProjects.Obstruction("C", ObstructionKind.Solid, new PrismSolid([new(-4, 60), new(-4, 75), new(-8, 75), new(-8, 60)], 113, 119)),
                SmallProjects.Obstruction("ROW", ObstructionKind.Boundary, new BoundarySolid(new(-26, -5), new(-25.5, 125))));
            project = project with { Rules = project.Rules with { Drift = round % 2 == 0 ? 0 : 0.01 } };
            var nails = new List<Nail>();
            for (int row = 0; row < 3; row++)
            {
                for (int column = 0; column < 8; column++)
                {
                    nails.Add(SmallProjects.Nail(
                        project, $"A-{row}-{column}", 20 + 9 * column + random.Between(-1, 1), 116 - 5 * row, random.Between(-12, 12),
                        random.Between(8, 22), random.Between(12, 26)));
                }
            }
            ClearanceReport report = Checker.Check(project, SmallProjects.Layout([.. nails]));
            foreach (Nail nail in nails)
                AssertMargins(project, nails, nail, report.Nails[nail.Mark]);
        }
    }

    private static void AssertMargins(WallProject project, List<Nail> nails, Nail nail, NailClearance clearance)
    {
        Hole plain = nail.Hole with { Drift = 0 };
        double toSolids = project.Obstructions.SelectMany(o => o.Solids).Min(s => Margin(u => s.SignedDistance(plain.At(u)) - plain.Radius, plain.Length));
        double toNails = nails.Where(n => n != nail).Min(n =>
        {
            Hole other = n.Hole with { Drift = 0 };
            double ToAxis(Vector3D p) => SlowTwin.Least(v => (other.At(v) - p).Length, other.Length, 20);
            return Margin(u => ToAxis(plain.At(u)) - plain.Radius - other.Radius, plain.Length);
        });
        double solid = project.Obstructions.SelectMany(o => o.Solids).Min(s => HoleDistance.ToSolid(nail.Hole, s).Clear);
        double other = nails.Where(n => n != nail).Min(n => HoleDistance.Between(nail.Hole, n.Hole).Clear);
        // A nail that runs into something has no margin to it, drift or not.
        Assert.Equal(solid < 0 ? 0 : toSolids, clearance.MarginObstruction, 1e-5);
        Assert.Equal(other < 0 ? 0 : toNails, clearance.MarginNail, 1e-5);
        Assert.Equal(Math.Min(solid, other), clearance.LeastClear, 1e-10);
    }

    private static double Margin(Func<double, double> free, double length)
    {
        double ratio = SlowTwin.Least(u => u > 0 ? free(u) / u : free(0) > 0 ? double.PositiveInfinity : double.NegativeInfinity, length, 30);
        return Math.Asin(Math.Clamp(ratio, 0, 1)) * 180 / Math.PI;
    }

    [Fact]
    public void ALoneNailHasNothingNearAndMayStrayAnyhow()
    {
        WallProject project = SmallProjects.Project([SmallProjects.Wall()]);
        NailClearance clearance = Checker.Check(project, SmallProjects.Layout(SmallProjects.Nail(project, "A-1-01", 60, 110))).Nails["A-1-01"];
        Assert.Equal(new NailClearance("", double.PositiveInfinity, 90, 90), clearance);
    }

    [Fact]
    public void ParallelNailsMeetWhereTheTipReachesTheNeighbour()
    {
        WallProject project = SmallProjects.Project([SmallProjects.Wall()]);
        Nail a = SmallProjects.Nail(project, "A-1-01", 50, 110), b = SmallProjects.Nail(project, "A-1-02", 53.5, 110);
        NailClearance clearance = Checker.Check(project, SmallProjects.Layout(a, b)).Nails["A-1-01"];
        Assert.Equal("A-1-02", clearance.Nearest);
        Assert.Equal(3.0, clearance.LeastClear, 1e-12);
        Assert.Equal(Math.Asin(3.0 / 24) * 180 / Math.PI, clearance.MarginNail, 1e-9);
    }

    [Fact]
    public void WhatTouchesLeavesNoMargin()
    {
        WallProject project = SmallProjects.Project(
            [SmallProjects.Wall()], SmallProjects.Obstruction("S1", ObstructionKind.Shaft, new CylinderSolid(new(-8, 60, 119), new(-8, 60, 60), 1.5)));
        NailClearance clearance = Checker.Check(project, SmallProjects.Layout(SmallProjects.Nail(project, "A-1-01", 60, 110))).Nails["A-1-01"];
        Assert.Equal(0, clearance.MarginObstruction);
        Assert.Equal("S1", clearance.Nearest);
        Assert.True(clearance.LeastClear < 0);
    }
}

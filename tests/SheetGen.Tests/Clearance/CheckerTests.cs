using SheetGen.Layout.Clearance;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Clearance;

public class CheckerTests
{
    /// <summary>Findings of a few nails; that they do not cover the wall is not the matter here.</summary>
    private static IReadOnlyList<Finding> Check(WallProject project, params Nail[] nails) => Check(project, SmallProjects.Layout(nails));

    private static IReadOnlyList<Finding> Check(WallProject project, NailLayout layout) =>
        [.. Checker.Check(project, layout).Findings.Where(f => f.Code is not (FindingCode.Cover or FindingCode.NoNailHeight))];

    private static WallProject Straight(params Obstruction[] obstructions) => SmallProjects.Project([SmallProjects.Wall()], obstructions);

    [Fact]
    public void ACleanUsualLayoutHasNoFinding()
    {
        WallProject project = Straight();
        Assert.Empty(Check(project, SmallProjects.Nail(project, "A-1-01", 50, 117), SmallProjects.Nail(project, "A-1-02", 55, 117)));
    }

    [Fact]
    public void APairOfNailsIsReportedOnceAtItsLeastDistance()
    {
        WallProject project = Straight();
        Nail a = SmallProjects.Nail(project, "A-1-01", 50, 117, splay: 5), b = SmallProjects.Nail(project, "A-1-02", 55, 117, splay: -5);
        Finding finding = Assert.Single(Check(project, a, b));
        Nearest near = HoleDistance.Between(a.Hole, b.Hole);
        Assert.Equal(FindingCode.NailNail, finding.Code);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["A-1-01", "A-1-02"], finding.Nails);
        Assert.Equal(near.Clear, finding.Clear!.Value, 1e-9);
        Assert.Equal(0.5, finding.Required);
        Assert.Equal(2, finding.Points.Count);
        Assert.Equal(2, finding.Depths.Count);
        Assert.Equal("A-1-01 comes within 0.46 ft of A-1-02; 0.50 ft is required", finding.Message);
    }

    /// <summary>A rounded figure never hides which side of the rule it is on.</summary>
    [Theory]
    [InlineData(50.9995, "A-1-01 comes within just under 0.50 ft of A-1-02; 0.50 ft is required")]
    [InlineData(50.499, "A-1-01 and A-1-02 run less than 0.01 ft into each other; 0.50 ft clear is required")]
    [InlineData(50.0, "A-1-01 and A-1-02 run 0.50 ft into each other; 0.50 ft clear is required")]
    public void Messages_print_lengths_to_the_quantum(double station, string message)
    {
        WallProject project = Straight();
        Nail a = SmallProjects.Nail(project, "A-1-01", 50, 117), b = SmallProjects.Nail(project, "A-1-02", station, 117);
        Assert.Contains(message, Check(project, a, b).Select(f => f.Message));
    }

    [Fact]
    public void NailsOfTwoWallsAndTestNailsCount()
    {
        Wall front = SmallProjects.Wall(), back = SmallProjects.Wall(Turn.Left, name: "Wall 2", start: new Vector2D(-40, 0));
        WallProject project = SmallProjects.Project([front, back]);
        Nail a = SmallProjects.Nail(project, "1A-1-01", 50, 117);
        Nail b = SmallProjects.Nail(project, "2A-0-01", 50.4, 117, wall: back, kind: NailKind.Verification, row: 0);
        Finding finding = Assert.Single(Check(project, a, b));
        Assert.Equal(FindingCode.NailNail, finding.Code);
        Assert.True(finding.Clear < 0);
        Assert.Contains("into each other", finding.Message);
    }

    [Fact]
    public void AnObstructionOfTwoPiecesIsReportedOnceAtTheNearer()
    {
        WallProject project = Straight(SmallProjects.Obstruction(
            "Cap", ObstructionKind.Solid,
            new PrismSolid([new(-5, 50.8), new(-5, 52), new(-9, 52), new(-9, 50.8)], 100, 119),
            new PrismSolid([new(-9, 50.6), new(-9, 52), new(-12, 52), new(-12, 50.6)], 100, 119)));
        Finding finding = Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-01", 50, 117)));
        Assert.Equal(FindingCode.NailObstruction, finding.Code);
        Assert.Equal("Cap", finding.Obstruction);
        Assert.Equal(0.35, finding.Clear!.Value, 1e-9);
        Assert.Equal("A-1-01 comes within 0.35 ft of obstruction Cap; 0.50 ft is required", finding.Message);
        Assert.Single(finding.Depths);
    }

    [Fact]
    public void ACrossedBoundaryIsNegativeAndANearOneIsMeasured()
    {
        WallProject project = Straight(SmallProjects.Obstruction("ROW", ObstructionKind.Boundary, new BoundarySolid(new(-20, -50), new(-20, 200))));
        Finding crossed = Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-01", 50, 117)));
        Assert.Equal(FindingCode.NailBoundary, crossed.Code);
        Assert.Equal(-0.25, crossed.Clear!.Value, 1e-9);
        Assert.Equal(1, crossed.Required);
        Assert.StartsWith("A-1-01 crosses boundary ROW at a depth of 20.71 ft", crossed.Message);
        Finding near = Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-01", 50, 117, length: 20)));
        Assert.Equal(20 - 20 * Math.Cos(Math.PI / 12) - 0.25, near.Clear!.Value, 1e-9);
        Assert.Empty(Check(project, SmallProjects.Nail(project, "A-1-01", 50, 117, length: 19)));
    }

    [Fact]
    public void AtAnOutsideCornerAHoleKeepsOffTheOtherLegsFace()
    {
        WallProject project = SmallProjects.Project([SmallProjects.Wall(deflection: 90)]);
        Assert.True(new Face(project.Walls[0]).IsOutside(project.Walls[0].LayoutLine.Corners[0]));
        Assert.Empty(Check(project, SmallProjects.Nail(project, "A-1-11", 58.5, 112)));
        Finding near = Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-11", 58.5, 112, splay: 2)));
        Assert.Equal(FindingCode.NailFace, near.Code);
        Finding through = Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-11", 58.5, 112, splay: 8)));
        Assert.Equal(-0.25, through.Clear!.Value, 1e-9);
        Assert.StartsWith("A-1-11 crosses the face of Wall 1, leg 2 at a depth", through.Message);
    }

    [Fact]
    public void AHoleKeepsOffTheFaceOfAnotherWall()
    {
        Wall front = SmallProjects.Wall(), back = SmallProjects.Wall(Turn.Left, name: "Wall 2", start: new Vector2D(-20, 0));
        WallProject project = SmallProjects.Project([front, back]);
        Finding finding = Assert.Single(Check(project, SmallProjects.Nail(project, "1A-1-01", 50, 117)));
        Assert.Equal(FindingCode.NailFace, finding.Code);
        Assert.Equal("the face of Wall 2", finding.Obstruction);
        WallProject low = project with { Walls = [front, back with { Top = new Profile([new(0, 109)]) }] };
        Assert.Empty(Check(low, SmallProjects.Nail(low, "1A-1-01", 50, 117)));
    }

    [Fact]
    public void AnUnresolvedNailSaysWhatItHits()
    {
        WallProject project = Straight(
            SmallProjects.Obstruction("S1", ObstructionKind.Shaft, new CylinderSolid(new(-8, 52, 119), new(-8, 52, 60), 1.5)));
        IReadOnlyList<Finding> findings = Check(project, SmallProjects.Nail(project, "A-1-01", 50, 117, status: NailStatus.Unresolved));
        Assert.Equal([FindingCode.NailObstruction, FindingCode.Unresolved], findings.Select(f => f.Code));
        Assert.Equal("S1", findings[1].Obstruction);
        Assert.Equal(
            "A-1-01 is unresolved because of S1: 0.25 ft clear where 0.50 ft is required; it is not to be drilled until the engineer decides",
            findings[1].Message);
    }

    [Theory]
    [InlineData(Turn.Right, 12, "12 degrees to the LEFT (up-station)")]
    [InlineData(Turn.Right, -12, "12 degrees to the RIGHT (down-station)")]
    [InlineData(Turn.Left, 12, "12 degrees to the RIGHT (up-station)")]
    [InlineData(Turn.Left, -12, "12 degrees to the LEFT (down-station)")]
    public void ANotedRedirectSaysAngleAndSide(Turn side, double splay, string expected)
    {
        WallProject project = SmallProjects.Project([SmallProjects.Wall(side)]);
        Finding finding = Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-01", 50, 117, splay: splay)));
        Assert.Equal((FindingCode.NotedRedirect, Severity.Notice), (finding.Code, finding.Severity));
        Assert.Equal($"A-1-01 is turned {expected}, beyond the field tolerance of 10 degrees", finding.Message);
    }

    [Fact]
    public void AHoleThatIsNotThatOfItsFiguresIsReported()
    {
        WallProject project = Straight();
        Nail honest = SmallProjects.Nail(project, "A-1-01", 50, 117);
        Finding finding = Assert.Single(Check(project, honest with { Splay = 1 }));
        Assert.Equal((FindingCode.Hole, Severity.Error), (finding.Code, finding.Severity));
    }

    [Theory]
    [InlineData(50, 119.2, "0.80 ft from the top of the face")]
    [InlineData(50, 120.5, "0.50 ft beyond the top of the face")]
    [InlineData(50, 100.9, "0.90 ft from the bottom of the face")]
    [InlineData(0.6, 110, "0.60 ft from the end of the face")]
    [InlineData(119.5, 110, "0.50 ft from the end of the face")]
    public void AHeadNearTheOutlineIsReported(double along, double elevation, string expected)
    {
        WallProject project = Straight();
        Finding finding = Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-01", along, elevation)));
        Assert.Equal(FindingCode.Edge, finding.Code);
        Assert.Contains(expected, finding.Message);
    }

    [Fact]
    public void TheOutlineIsJudgedWithinTwoQuanta()
    {
        WallProject project = Straight();
        Assert.Empty(Check(project, SmallProjects.Nail(project, "A-1-01", 50, 119.02)));
        Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-01", 50, 119.03)));
    }

    [Fact]
    public void AStepsRiserIsPartOfTheOutline()
    {
        Wall wall = SmallProjects.Wall() with { Bottom = new Profile([new(0, 100), new(40, 100), new(40, 104), new(120, 104)]) };
        WallProject project = SmallProjects.Project([wall]);
        Assert.Equal(FindingCode.Edge, Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-01", 39.5, 102))).Code);
        Assert.Empty(Check(project, SmallProjects.Nail(project, "A-1-01", 39.5, 105.1)));
        Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-01", 39.5, 104.5)));
    }

    [Theory]
    [InlineData(Turn.Right, 59.2, false)]
    [InlineData(Turn.Right, 58.9, true)]
    [InlineData(Turn.Left, 59.2, false)]
    public void CornerClearCountsFromTheMitreAlongTheFace(Turn turn, double along, bool isClear)
    {
        WallProject project = SmallProjects.Project([SmallProjects.Wall(deflection: 30, turn: turn)]);
        IEnumerable<Finding> findings = Check(project, SmallProjects.Nail(project, "A-1-01", along, 110)).Where(f => f.Code == FindingCode.Edge);
        Assert.Equal(isClear, !findings.Any());
        WallProject offset = SmallProjects.Project([SmallProjects.Wall(deflection: 30, turn: turn, offset: 4)]);
        double cut = 4 * Math.Tan(Math.PI / 12) * (turn == Turn.Right ? 1 : -1);
        Nail shifted = SmallProjects.Nail(offset, "A-1-01", Math.Round(along - cut, 2), 110);
        Assert.Equal(turn == Turn.Right && isClear, turn == Turn.Right && !Check(offset, shifted).Any(f => f.Code == FindingCode.Edge));
    }

    [Fact]
    public void GapsUnderTheLeastAreReportedInARowAndAtALimit()
    {
        Wall whole = SmallProjects.Wall();
        Section a = whole.Sections[0] with { End = 60 }, b = whole.Sections[0] with { Name = "B", Start = 60 };
        WallProject project = SmallProjects.Project([whole with { Sections = [a, b] }]);
        Nail first = SmallProjects.Nail(project, "A-1-01", 56, 117), second = SmallProjects.Nail(project, "A-1-02", 57.9, 117);
        Assert.Equal("A-1-01 and A-1-02 stand 1.90 ft apart in their row; 2.00 ft is required", Assert.Single(Check(project, first, second)).Message);
        Nail before = SmallProjects.Nail(project, "A-1-01", 59.2, 117), after = SmallProjects.Nail(project, "B-1-01", 60.9, 116);
        Finding finding = Assert.Single(Check(project, before, after));
        Assert.Equal(FindingCode.Spacing, finding.Code);
        Assert.Contains("1.70 ft apart on two sides of a section limit", finding.Message);
        Nail deeper = SmallProjects.Nail(project, "B-1-01", 60.9, 114.5);
        Assert.Empty(Check(project, before, deeper));
    }

    [Fact]
    public void TestNailsKeepAFootFromOtherHeadsButNotTheLeastGap()
    {
        WallProject project = Straight();
        Nail a = SmallProjects.Nail(project, "A-1-01", 50, 117);
        Assert.Empty(Check(project, a, SmallProjects.Nail(project, "A-V1", 51.2, 117, row: 0, kind: NailKind.Verification)));
        Assert.Contains(
            Check(project, a, SmallProjects.Nail(project, "A-V1", 50.9, 117, row: 0, kind: NailKind.Verification)),
            f => f.Code == FindingCode.Spacing);
    }

    [Fact]
    public void LeftOutPlacesAreNoticed()
    {
        WallProject project = Straight();
        Wall wall = project.Walls[0];
        NailLayout layout = SmallProjects.Layout() with
        {
            LeftOut = [new LeftOut("A-1-03", wall, wall.Sections[0], RowNumber.Grid(1), 3, 55, 117, "shaft S1 stands behind it")],
        };
        Finding finding = Assert.Single(Check(project, layout));
        Assert.Equal((FindingCode.LeftOut, Severity.Notice, 10_055.0), (finding.Code, finding.Severity, finding.Station!.Value));
        Assert.Equal("Grid place A-1-03 has no nail: shaft S1 stands behind it", finding.Message);
    }

    [Fact]
    public void UnusualValuesAreWarnedOfWithTheirSource()
    {
        Wall wall = SmallProjects.Wall();
        Section odd = wall.Sections[0] with
        {
            HorizontalSpacing = 3.5,
            VerticalSpacing = 7,
            Inclination = 25,
            TopRowDepth = 4,
            HoleDiameter = 0.75,
            TestNails = TestNails.None,
        };
        IReadOnlyList<Finding> findings = Check(SmallProjects.Project([wall with { Sections = [odd] }]));
        Assert.Equal(6, findings.Count);
        Assert.All(findings, f => Assert.Equal((FindingCode.Guidance, Severity.Warning), (f.Code, f.Severity)));
        Assert.All(findings, f => Assert.Contains("GEC 7", f.Message));
    }

    [Fact]
    public void AnAcceptedErrorIsPrintedAsAccepted()
    {
        WallProject project = Straight(SmallProjects.Obstruction("ROW", ObstructionKind.Boundary, new BoundarySolid(new(-20, -50), new(-20, 200)))) with
        {
            Acceptances = [new Acceptance(null, null, ["A-1-01"], "ROW", null, null, "easement agreed", "the engineer", default)],
        };
        IReadOnlyList<Finding> findings = Check(
            project, SmallProjects.Nail(project, "A-1-01", 50, 117), SmallProjects.Nail(project, "A-1-02", 55, 117));
        Assert.Equal([Severity.Accepted, Severity.Error], findings.Select(f => f.Severity));
        Assert.EndsWith("(accepted by the engineer: easement agreed)", findings[0].Message);
    }

    [Fact]
    public void MirroredWallsGiveTheMirroredReport()
    {
        var shaft = new CylinderSolid(new(-8, 52, 119), new(-7, 52.3, 60), 1.5);
        WallProject project = Straight(SmallProjects.Obstruction("S1", ObstructionKind.Shaft, shaft));
        Wall mirroredWall = SmallProjects.Wall(Turn.Left);
        Vector3D Mirror(Vector3D p) => p with { N = -p.N };
        WallProject mirrored = SmallProjects.Project(
            [mirroredWall], SmallProjects.Obstruction("S1", ObstructionKind.Shaft, new CylinderSolid(Mirror(shaft.End1), Mirror(shaft.End2), 1.5)));
        Nail[] Nails(WallProject p) => [.. Enumerable.Range(0, 14).Select(i => SmallProjects.Nail(p, $"A-1-{i:00}", 4 + 8 * i, 117, i - 7))];
        ClearanceReport a = Checker.Check(project, SmallProjects.Layout(Nails(project)));
        ClearanceReport b = Checker.Check(mirrored, SmallProjects.Layout(Nails(mirrored)));
        Assert.NotEmpty(a.Findings);
        Assert.Equal(a.Findings.Select(f => f.Message), b.Findings.Select(f => f.Message));
        foreach ((string mark, NailClearance one) in a.Nails)
        {
            Assert.Equal(one.LeastClear, b.Nails[mark].LeastClear, 1e-9);
            Assert.Equal(one.MarginNail, b.Nails[mark].MarginNail, 1e-7);
            Assert.Equal(one.MarginObstruction, b.Nails[mark].MarginObstruction, 1e-7);
        }
    }
}

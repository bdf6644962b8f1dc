using SheetGen.Layout.Clearance;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using Xunit;

namespace SheetGen.Tests.Clearance;

/// <summary>Findings of test nails, turns, accepted errors, spacings and usual values: when they are told, to the limit, and in what words.</summary>
public sealed class ToldFindingsTests
{
    private static IReadOnlyList<Finding> Check(WallProject project, params Nail[] nails) =>
        [.. Checker.Check(project, SmallProjects.Layout(nails)).Findings.Where(f => f.Code is not (FindingCode.Cover or FindingCode.NoNailHeight))];

    private static Wall With(Func<Section, Section> change, string name = "Wall 1", Vector2D start = default)
    {
        Wall wall = SmallProjects.Wall(name: name, start: start);
        return wall with { Sections = [change(wall.Sections[0])] };
    }

    [Theory]
    [InlineData(1, 0, "section A asks for 1 verification test nail, none of them found a place")]
    [InlineData(3, 0, "section A asks for 3 verification test nails, none of them found a place")]
    [InlineData(3, 1, "section A asks for 3 verification test nails, 1 of them found a place")]
    [InlineData(2, 2, null)]
    [InlineData(1, 2, null)]
    public void Missing_verification_test_nails_are_told_by_section(int asked, int there, string? message)
    {
        Wall wall = With(s => s with { TestNails = new TestNails(asked, 0.05, false, false) });
        // Those of another wall's section of the same name do not count, and no production nail does.
        Wall other = SmallProjects.Wall(name: "Wall 2", start: new Vector2D(300, 0));
        WallProject project = SmallProjects.Project([wall, other]);
        Nail[] nails =
        [
            .. Enumerable.Range(0, there).Select(i => SmallProjects.Nail(project, $"A-V{i}", 20 + 10 * i, 112, kind: NailKind.Verification, row: 0)),
            SmallProjects.Nail(project, "A-1-01", 80, 112), SmallProjects.Nail(project, "B-V1", 30, 112, wall: other, kind: NailKind.Verification, row: 0),
        ];
        Finding[] told = [.. Check(project, nails).Where(f => f.Code == FindingCode.TestNail)];
        if (message is null)
        {
            Assert.Empty(told);
            return;
        }
        Finding one = Assert.Single(told);
        Assert.StartsWith(message, one.Message);
        Assert.Equal((Severity.Warning, "Wall 1", 10_000.0, 10_120.0), (one.Severity, one.Wall!.Name, one.Station!.Value, one.ToStation!.Value));
    }

    /// <summary>GEC 7 (FHWA-NHI-14-007, 2015), sections 3.2, 6.3 and 9.4: a value half a hundredth beyond its limit is told, with the figure.</summary>
    [Fact]
    public void Usual_values_are_told_with_their_figures()
    {
        Assert.Equal(["proof tests on 4 % of the production nails are under the usual 5 % (GEC 7 (FHWA-NHI-14-007), 9.4)"], Said(s => s with { TestNails = new TestNails(0, 0.04, false, false) }));
        Assert.Single(Said(s => s with { TestNails = new TestNails(0, 0.0498, false, false) }));
        Assert.Empty(Said(s => s with { TestNails = new TestNails(0, 0.05, false, false) }));
        Assert.Equal(["a first row 2.51 ft deep is deeper than half the vertical spacing (GEC 7 (FHWA-NHI-14-007), 6.3)"], Said(s => s with { TopRowDepth = 2.51 }));
        Assert.Empty(Said(s => s with { TopRowDepth = 2.5 }));
        Assert.Equal(["a bar #5 is outside the usual #6 to #10 (GEC 7 (FHWA-NHI-14-007), 3.2)"], Said(s => s with { Bar = BarTable.Find("#5", 75)! }));
        Assert.Equal(["a bar #11 is outside the usual #6 to #10 (GEC 7 (FHWA-NHI-14-007), 3.2)"], Said(s => s with { Bar = BarTable.Find("#11", 75)! }));
        Assert.Empty(Said(s => s with { Bar = BarTable.Find("#6", 75)! }));
        Assert.Empty(Said(s => s with { Bar = BarTable.Find("#10", 75)! }));
        Assert.Equal(["an inclination of 9.95 degrees is outside the usual 10 to 20 (GEC 7 (FHWA-NHI-14-007), 6.3)"], Said(s => s with { Inclination = 9.95 }));
        Assert.Single(Said(s => s with { Inclination = 20.05 }));
        Assert.Equal(["a hole of 3.98 in is outside the usual 4 to 8 in (GEC 7 (FHWA-NHI-14-007), 3.3)"], Said(s => s with { HoleDiameter = 3.98 / 12 }));

        static IEnumerable<string> Said(Func<Section, Section> change) =>
            Check(SmallProjects.Project([With(change)])).Select(f => f.Message.Replace("Section A: ", "", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(11, 15, "A-1-01 is turned 11 degrees to the LEFT (up-station), beyond the field tolerance of 10 degrees")]
    [InlineData(-11, 27, "A-1-01 is turned 11 degrees to the RIGHT (down-station) and to an inclination of 27 degrees instead of 15, beyond the field tolerance of 10 degrees")]
    [InlineData(0, 26, "A-1-01 is turned to an inclination of 26 degrees instead of 15, beyond the field tolerance of 10 degrees")]
    [InlineData(0, 1, "A-1-01 is turned to an inclination of 1 degree instead of 15, beyond the field tolerance of 10 degrees")]
    [InlineData(10, 25, null)]
    [InlineData(-10, 5, null)]
    [InlineData(0, 15, null)]
    public void Turns_beyond_the_field_tolerance_are_told(double splay, double inclination, string? message)
    {
        WallProject project = SmallProjects.Project([SmallProjects.Wall()]);
        string[] told = [.. Check(project, SmallProjects.Nail(project, "A-1-01", 50, 117, splay, inclination)).Where(f => f.Code == FindingCode.NotedRedirect).Select(f => f.Message)];
        Assert.Equal(message is null ? [] : [message], told);
    }

    [Fact]
    public void An_unresolved_nail_names_the_nail_it_hits_and_that_it_runs_into_it()
    {
        WallProject project = SmallProjects.Project([SmallProjects.Wall()]);
        Nail other = SmallProjects.Nail(project, "A-1-01", 50, 117), near = SmallProjects.Nail(project, "A-1-03", 50.8, 117);
        Nail into = SmallProjects.Nail(project, "A-1-02", 50.3, 117, status: NailStatus.Unresolved);
        Finding finding = Assert.Single(Check(project, other, into, near), f => f.Code == FindingCode.Unresolved);
        // 0.3 from centre to centre and two radii of 0.25: 0.20 into each other; the other neighbour, at 0.5, touches only.
        Assert.Equal("A-1-02 is unresolved because of A-1-01: 0.20 ft into it where 0.50 ft is required; it is not to be drilled until the engineer decides", finding.Message);
        Assert.Equal(["A-1-02", "A-1-01"], finding.Nails);
        Assert.Equal((Severity.Error, -0.2), (finding.Severity, Math.Round(finding.Clear!.Value, 9)));
        Assert.Equal(2, finding.Points.Count);

        // Clear of everything as drawn: the search's own reason tells the blocker.
        Nail alone = SmallProjects.Nail(project, "A-1-09", 90, 117, status: NailStatus.Unresolved) with { Reason = new NailReason("S7", null, null, null, [], "") };
        Finding without = Assert.Single(Check(project, alone));
        Assert.Equal("A-1-09 is unresolved because of S7; it is not to be drilled until the engineer decides", without.Message);
        Assert.Equal(["A-1-09"], without.Nails);
        Assert.Equal("A-1-09 is unresolved; it is not to be drilled until the engineer decides", Assert.Single(Check(project, alone with { Reason = null })).Message);
    }

    /// <summary>A pair of nails 0.2 apart at station 100+50 and a shaft behind a third at 100+80: which of the three errors an acceptance covers.</summary>
    [Theory]
    [InlineData(null, null, "A-1-01", null, null, null, "pair,run-out")]
    [InlineData(null, null, "A-1-02", null, null, null, "pair,run-out")]
    [InlineData(null, null, "A-1-01,A-1-02", null, null, null, "pair,run-out")]
    [InlineData(null, null, "A-1-01,A-1-03", null, null, null, "shaft")]
    [InlineData(null, null, "A-1-01,A-1-02,A-1-03", null, null, null, "pair,run-out,shaft")]
    [InlineData(FindingCode.NailNail, null, "A-1-01", null, null, null, "pair")]
    [InlineData(FindingCode.NailObstruction, null, "A-1-01", null, null, null, "")]
    [InlineData(FindingCode.NailNail, null, "", null, null, null, "")]
    [InlineData(null, "Wall 1", "", null, null, null, "")]
    [InlineData(null, "Wall 1", "A-1-01", null, null, null, "pair,run-out")]
    [InlineData(null, "Wall 2", "A-1-01", null, null, null, "")]
    [InlineData(null, null, "", "S1", null, null, "shaft")]
    [InlineData(null, null, "", "S2", null, null, "")]
    [InlineData(null, null, "A-1-03", "S1", null, null, "shaft")]
    [InlineData(null, null, "A-1-01", "S1", null, null, "")]
    [InlineData(null, null, "", null, 50.0, null, "pair,run-out,shaft")]
    [InlineData(null, null, "", null, 50.1, null, "shaft")]
    [InlineData(null, null, "", null, null, 80.0, "pair,run-out,shaft")]
    [InlineData(null, null, "", null, null, 79.9, "pair,run-out")]
    [InlineData(null, null, "", null, 60.0, 70.0, "")]
    public void An_acceptance_covers_what_all_of_its_words_fit(string? code, string? wall, string nails, string? obstruction, double? start, double? end, string covered)
    {
        WallProject plain = SmallProjects.Project([SmallProjects.Wall()], SmallProjects.Obstruction("S1", ObstructionKind.Shaft, new CylinderSolid(new(-8, 82, 119), new(-8, 82, 60), 1.5)));
        WallProject project = plain with { Acceptances = [new Acceptance(code, wall, nails.Split(',', StringSplitOptions.RemoveEmptyEntries), obstruction, start, end, "agreed.", "the engineer", default)] };
        Finding[] errors = [.. Check(project, SmallProjects.Nail(project, "A-1-01", 50, 117), SmallProjects.Nail(project, "A-1-02", 51.2, 117, splay: -1), SmallProjects.Nail(project, "A-1-03", 80, 117)).Where(f => f.Severity is Severity.Error or Severity.Accepted)];
        Assert.Equal(3, errors.Length);
        string[] accepted = [.. errors.Where(f => f.Severity == Severity.Accepted).Select(f => f.Code == FindingCode.NailNail ? "pair" : f.Code == FindingCode.Spacing ? "run-out" : "shaft").Order()];
        Assert.Equal([.. covered.Split(',', StringSplitOptions.RemoveEmptyEntries).Order()], accepted);
        Assert.All(errors, f => Assert.Equal(f.Severity == Severity.Accepted, f.Message.EndsWith("(accepted by the engineer: agreed)", StringComparison.Ordinal)));
    }

    /// <summary>Across a section limit heads less than half the lesser vertical spacing apart in height keep the least gap, of 2 ft by default.</summary>
    [Theory]
    [InlineData(117, 114.6, 60.9, true)]
    [InlineData(117, 114.45, 60.9, false)]
    [InlineData(117, 119, 60.9, true)]
    [InlineData(117, 117, 61.17, true)]
    [InlineData(117, 117, 61.3, false)]
    public void The_least_gap_holds_across_a_section_limit(double left, double right, double along, bool told)
    {
        Wall whole = SmallProjects.Wall();
        Section a = whole.Sections[0] with { End = 60, VerticalSpacing = 6 }, b = whole.Sections[0] with { Name = "B", Start = 60 };
        WallProject project = SmallProjects.Project([whole with { Sections = [a, b] }]);
        Finding[] found = [.. Check(project, SmallProjects.Nail(project, "A-1-01", 59.2, left), SmallProjects.Nail(project, "B-1-01", along, right)).Where(f => f.Code == FindingCode.Spacing)];
        Assert.Equal(told ? 1 : 0, found.Length);
        Assert.All(found, f => Assert.Equal((Math.Round(along - 59.2, 9), 2.0), (Math.Round(f.Clear!.Value, 9), f.Required!.Value)));
    }

    [Fact]
    public void Heads_on_one_place_are_told_as_such_whatever_their_rows()
    {
        WallProject project = SmallProjects.Project([SmallProjects.Wall()]);
        Finding[] found = [.. Check(project, SmallProjects.Nail(project, "A-1-01", 50, 110), SmallProjects.Nail(project, "A-2-01", 50.02, 110, row: 2), SmallProjects.Nail(project, "A-3-01", 50.05, 110, row: 3)).Where(f => f.Code == FindingCode.DuplicateHead)];
        Finding one = Assert.Single(found);
        Assert.Equal("A-1-01 and A-2-01 start at one place: their heads are 0.02 ft apart", one.Message);
        Assert.Null(one.Required);
    }

    [Fact]
    public void A_head_beside_an_opening_or_a_corner_is_told_with_its_distance()
    {
        Wall wall = SmallProjects.Wall(deflection: 90) with { Openings = [new Opening("Culvert", 20, 26, 104, 110, default)] };
        WallProject project = SmallProjects.Project([wall]);
        Assert.Equal("A-1-01 stands 0.50 ft from opening Culvert; 1.00 ft is required", Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-01", 23, 110.5))).Message);
        Assert.Equal("A-1-01 stands 2.00 ft beyond opening Culvert; 1.00 ft inside is required", Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-01", 23, 108))).Message);
        Assert.Empty(Check(project, SmallProjects.Nail(project, "A-1-01", 23, 111)));
        Finding corner = Assert.Single(Check(project, SmallProjects.Nail(project, "A-1-01", 59.4, 112)), f => f.Code == FindingCode.Edge);
        Assert.Equal("A-1-01 stands 0.60 ft from a corner; 1.00 ft is required", corner.Message);
    }

    /// <summary>Two stretches without nails, 20 ft apart, are two findings.</summary>
    [Fact]
    public void Lacks_of_one_kind_far_apart_are_told_apart()
    {
        WallProject project = SmallProjects.Project([SmallProjects.Wall()]);
        Nail[] nails = [.. Enumerable.Range(0, 24).Where(i => i is not (6 or 12)).SelectMany(i => new[] { 117.5, 112.5, 107.5, 102.5 }.Select((z, r) => SmallProjects.Nail(project, $"A-{r + 1}-{i + 1:00}", 2.5 + 5 * i, z, row: r + 1)))];
        Finding[] cover = [.. Checker.Check(project, SmallProjects.Layout(nails)).Findings.Where(f => f.Code == FindingCode.Cover)];
        Assert.Equal([(10_030.0, 10_035.0), (10_060.0, 10_065.0)], cover.Select(f => (Math.Round(f.Station!.Value, 2), Math.Round(f.ToStation!.Value, 2))));
        Assert.All(cover, f => Assert.Contains("no nail within 2.50 ft along the wall", f.Message));
    }

    [Theory]
    [InlineData(LengthUnit.Foot, 1, 0.004, "less than 0.01 ft", "0.00 ft")]
    [InlineData(LengthUnit.Foot, 0.5, 0.496, "0.50 ft", "just under 0.50 ft")]
    [InlineData(LengthUnit.Foot, 0.5, 0.504, "0.50 ft", "just over 0.50 ft")]
    [InlineData(LengthUnit.Foot, 0.5, 0.5, "0.50 ft", "0.50 ft")]
    [InlineData(LengthUnit.Metre, 0.15, 0.1499, "0.150 m", "just under 0.150 m")]
    public void Figures_do_not_hide_the_side_of_a_limit(LengthUnit unit, double limit, double value, string depth, string beside)
    {
        Assert.Equal(depth, Figures.Depth(value, unit));
        Assert.Equal(beside, Figures.Beside(value, limit, unit));
    }
}

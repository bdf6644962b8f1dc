using SheetGen.Layout.Clearance;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Records;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>The record of drilled nails: the plan itself gives no finding, a shifted nail gives those of the checker, faults have their places.</summary>
public sealed class AsBuiltTests
{
    private static readonly EditedWall Wall = EditedWall.Shared;

    private static AsBuiltNail Line(Nail n, double along = 0, double splay = 0, double inclination = 0) =>
        new(n.Mark, n.Station + along, n.Elevation, n.Splay + splay, n.Inclination + inclination, n.Length, null, "2026-01-15", "", default);

    private static AsBuiltReport Report(IEnumerable<AsBuiltNail> record) =>
        AsBuilt.Of(Wall.Project, Wall.Layout, [.. record], AsBuilt.Tolerances.Default(LengthUnit.Foot));

    [Fact]
    public void A_record_of_the_plan_itself_gives_no_finding()
    {
        AsBuiltReport report = Report(Wall.Layout.Nails.Select(n => Line(n)));
        Assert.Empty(report.Misses);
        Assert.Empty(report.NewFindings);
        Assert.Empty(report.Open);
        Assert.Equal(report.PlannedLength, report.DrilledLength, 9);
        Assert.Equal(report.PlannedProduction, report.DrilledProduction);
    }

    [Theory]
    [InlineData("A-2-03", 0.25, 2, 0)]
    [InlineData("A-4-05", 0.25, -2, 0)]
    [InlineData("A-3-04", 0, -9, 0)]
    [InlineData("A-1-02", 0.75, 0, 2)]
    public void A_shifted_nail_gives_exactly_the_checkers_findings(string mark, double along, double splay, double inclination)
    {
        Nail nail = Wall.Layout.Nails.Single(n => n.Mark == mark);
        AsBuiltReport report = Report([Line(nail, along, splay, inclination)]);
        var face = new Face(nail.Wall);
        double station = Math.Round(nail.Station + along, 2), place = nail.Wall.LayoutLine.AlongOf(station);
        Nail built = nail with
        {
            Along = place,
            Station = station,
            Splay = nail.Splay + splay,
            Inclination = nail.Inclination + inclination,
            Hole = face.HoleAt(place, nail.Elevation, nail.Splay + splay, nail.Inclination + inclination, nail.Length, nail.HoleDiameter, Wall.Project.Rules.Drift),
        };
        NailLayout layout = Wall.Layout with { Nails = [.. Wall.Layout.Nails.Select(n => n.Mark == mark ? built : n)] };
        HashSet<string> planned = [.. Checker.Check(Wall.Project, Wall.Layout).Findings.Select(f => f.Message)];
        string[] expected = [.. Checker.Check(Wall.Project, layout).Findings.Select(f => f.Message).Where(m => !planned.Contains(m)).Order(StringComparer.Ordinal)];
        // Nothing says of the drilled nail that it is not to be drilled.
        Assert.Equal(expected, report.NewFindings.Select(f => f.Message).Order(StringComparer.Ordinal));
        Assert.Equal(along > 0.5 || Math.Abs(splay) > 3, report.Misses.Count > 0);
    }

    [Fact]
    public void A_nail_that_was_not_to_be_drilled_is_told_when_it_is()
    {
        Nail nail = Wall.Layout.Nails[3];
        NailLayout plan = Wall.Layout with { Nails = [.. Wall.Layout.Nails.Select(n => n.Mark == nail.Mark ? n with { Status = NailStatus.Unresolved } : n)] };
        AsBuiltReport report = AsBuilt.Of(Wall.Project, plan, [Line(nail), Line(Wall.Layout.Nails[4])], AsBuilt.Tolerances.Default(LengthUnit.Foot));
        Assert.Equal([$"{nail.Mark} drilled, though the plan says DO NOT DRILL"], report.Misses.Select(m => $"{m.Mark} {m.What}"));
        // What the engineer has accepted may be drilled: the sheets do not say so of it either.
        WallProject accepted = Wall.Project with { Acceptances = [new("unresolved", null, [nail.Mark], null, null, null, "pipe is out of use", "A. B.", default)] };
        Assert.Empty(AsBuilt.Of(accepted, plan, [Line(nail)], AsBuilt.Tolerances.Default(LengthUnit.Foot)).Misses);
    }

    [Fact]
    public void A_planned_nail_in_the_way_is_told_where_it_could_go()
    {
        Nail nail = Wall.Layout.Nails.Single(n => n.Mark == "A-4-05");
        AsBuiltReport report = Report([Line(nail, 0, -14)]);
        Assert.Contains(report.Open, o => o.Because.Contains("A-4-05", StringComparison.Ordinal) && o.Mark != nail.Mark);
    }

    [Fact]
    public void Every_fault_of_a_record_has_its_line_and_column()
    {
        const string text = "mark,station,splay,length,date,surprise\nA-1-01,x,95,20,15/01/2026,\nB-9-99,1,0,20,,\nA-1-01,,,,,\n,1,,,,\nA-1-02,0+05.25,1.5,20,2026-01-15,\n";
        var problems = new List<Problem>();
        Assert.Null(AsBuiltRecord.Read(text, "record.csv", Wall.Project, Wall.Layout, problems));
        Assert.Equal(
            ["1:32 Warning", "2:8 Error", "2:10 Error", "2:16 Error", "3:1 Error", "4:1 Error", "5:1 Error"],
            problems.OrderBy(p => p.Spot.Line).ThenBy(p => p.Spot.Column).Select(p => $"{p.Spot.Line}:{p.Spot.Column} {p.Severity}"));
    }

    /// <summary>Such a line was once left out without a word, and a file with line ends of CR alone was one long line of heads: no nail was drilled.</summary>
    [Fact]
    public void A_remark_alone_is_told_and_every_kind_of_line_end_parts_lines()
    {
        foreach (string end in new[] { "\n", "\r\n", "\r" })
        {
            var problems = new List<Problem>();
            string text = string.Join(end, "mark,length,remarks", "A-1-01,20,\"two" + end + "lines\"", "A-1-02,,refused at 3 ft", "A-1-03,,", "");
            AsBuiltNail drilled = Assert.Single(AsBuiltRecord.Read(text, "record.csv", Wall.Project, Wall.Layout, problems)!);
            Assert.Equal(("A-1-01", 20, "two\nlines"), (drilled.Mark, drilled.Length, drilled.Remarks));
            Assert.Equal(
                "record.csv:4:9: A-1-02 has a remark alone, so that it counts as still to be drilled",
                Assert.Single(problems, p => p.Severity == Severity.Warning) is var said ? $"{said.Spot}: {said.Message}" : "");
        }
    }

    /// <summary>A quote left open in one line was closed by the next quote, and the rows between were a part of its text: half of the nails were missing.</summary>
    [Fact]
    public void A_quote_that_swallows_rows_is_told_with_its_place()
    {
        var problems = new List<Problem>();
        Assert.Null(AsBuiltRecord.Read("mark,remarks,length\nA-1-01,\"wet, caved,20\nA-1-02,\"dry\"  ,20\nA-1-03,\"a \"\"b\"\"\" ,20\n", "record.csv", Wall.Project, Wall.Layout, problems));
        Assert.Equal(["3:9 a text goes on behind its closing quote"], problems.Where(p => p.Message.Contains("quote", StringComparison.Ordinal)).Select(p => $"{p.Spot.Line}:{p.Spot.Column} {p.Message}"));
        problems.Clear();
        Assert.Equal(2, AsBuiltRecord.Read("mark,remarks,length\nA-1-02,\"dry\"  ,20\nA-1-03,\"a \"\"b\"\"\" ,20\n", "record.csv", Wall.Project, Wall.Layout, problems)!.Count);
        Assert.Empty(problems);
    }

    [Fact]
    public void The_empty_record_has_every_nail_and_says_that_none_is_drilled()
    {
        var problems = new List<Problem>();
        string text = AsBuiltRecord.Empty(Wall.Layout);
        Assert.Empty(AsBuiltRecord.Read(text, "record.csv", Wall.Project, Wall.Layout, problems)!);
        Assert.Empty(problems);
        Assert.Equal(Wall.Layout.Nails.Count + 1, text.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
    }
}

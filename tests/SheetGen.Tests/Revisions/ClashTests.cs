using SheetGen.Layout.Clearance;
using SheetGen.Layout.Quantities;
using SheetGen.Layout.Revisions;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>The clash report names the checker's pairs, worst first, and the closest that pass; the plan review answers from the project.</summary>
public sealed class ClashTests
{
    private static readonly EditedWall Wall = EditedWall.Shared;

    private static NailLayout Turned => EditedLayout.Of(Wall.Project, Wall.Layout,
        [.. Wall.Read(Wall.Drawing).Nails.Select(n => n.Was!.Mark == "A-4-05" ? n with { Splay = -14 } : n)], "by hand").Layout;

    [Fact]
    public void Clashes_are_the_checkers_pairs_worst_first()
    {
        NailLayout layout = Turned;
        (IReadOnlyList<ClashPair> clashes, _) = ClashPairs.Of(Wall.Project, layout);
        string[] found = [.. Checker.Check(Wall.Project, layout).Findings.Where(f => f.Code is FindingCode.NailNail or FindingCode.NailObstruction or FindingCode.NailBoundary or FindingCode.NailFace)
            .Select(f => $"{f.Nails[0]} {f.Obstruction ?? f.Nails[1]} {f.Clear:0.000000}")];
        Assert.NotEmpty(found);
        Assert.Equal(found.Order(StringComparer.Ordinal), clashes.Select(c => $"{c.Nail.Mark} {c.Name} {c.Clear:0.000000}").Order(StringComparer.Ordinal));
        Assert.Equal(clashes.Select(c => c.Over).Order(), clashes.Select(c => c.Over));
    }

    [Fact]
    public void The_closest_that_pass_are_those_of_all_pairs()
    {
        (IReadOnlyList<ClashPair> clashes, IReadOnlyList<ClashPair> closest) = ClashPairs.Of(Wall.Project, Wall.Layout, 12);
        Assert.Empty(clashes);
        var all = new List<double>();
        Nail[] nails = [.. Wall.Layout.Nails];
        for (int i = 0; i < nails.Length; i++)
        {
            for (int j = i + 1; j < nails.Length; j++)
                all.Add(HoleDistance.Between(nails[i].Hole, nails[j].Hole).Clear - Wall.Project.Rules.NailClearance);
            foreach (Model.Obstruction o in Wall.Project.Obstructions)
                all.Add(o.Solids.Min(s => HoleDistance.ToSolid(nails[i].Hole, s).Clear) - Wall.Project.Rules.ClearanceTo(o.Kind));
        }
        double[] expected = [.. all.Order().Take(12)];
        Assert.Equal(12, closest.Count);
        Assert.All(closest.Zip(expected), p => Assert.Equal(p.Second, p.First.Over, 9));
        Assert.All(closest, p => Assert.True(p.Margin > 0));
    }

    [Fact]
    public void The_plan_review_answers_what_the_project_tells_and_leaves_the_rest_to_a_person()
    {
        QuantityTable quantities = TakeOff.Measure(Wall.Project, Turned);
        IReadOnlyList<ReviewItem> good = PlanReview.Of(Wall.Project, Wall.Layout, Checker.Check(Wall.Project, Wall.Layout), quantities);
        IReadOnlyList<ReviewItem> bad = PlanReview.Of(Wall.Project, Turned, Checker.Check(Wall.Project, Turned), quantities);
        ReviewAnswer Of(IReadOnlyList<ReviewItem> items, string start) => items.First(i => i.Question.StartsWith(start, StringComparison.Ordinal)).Answer;
        Assert.Equal((ReviewAnswer.Yes, ReviewAnswer.No), (Of(good, "Do all holes"), Of(bad, "Do all holes")));
        Assert.Equal(ReviewAnswer.No, Of(good, "Do borings reach"));
        Assert.Equal(ReviewAnswer.NeedsPerson, Of(good, "Wall 1: is any excavation planned later"));
        Assert.Equal(ReviewAnswer.NeedsPerson, Of(good, "Is monitoring given"));
        Assert.Equal(good.Count, good.Select(i => i.Question).Distinct().Count());
        Assert.DoesNotContain(Checker.Check(Wall.Project, Wall.Layout).Findings, f => f.Severity == Severity.Error);
    }
}

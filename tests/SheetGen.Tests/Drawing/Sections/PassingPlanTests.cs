using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing.Sections;

/// <summary>The nearest approach of a section's nails to its shaft is dimensioned true in a plan beside it.</summary>
public class PassingPlanTests
{
    [Fact]
    public void The_clear_distance_of_every_cut_shaft_of_the_bridge_is_dimensioned_true()
    {
        DrawingContext context = PlacedWall.Context(Repository.Read("demo", "heron-street-bridge", "wall.yaml"));
        SheetSet set = PlacedWall.Sheets(context);
        string[] words = [.. set.Sheets.SelectMany(s => s.Paper).OfType<Text>().Select(t => t.Value)];
        int plans = 0;
        foreach (SectionCut cut in SectionCut.Choose(context))
        {
            var view = new SectionView(context, cut, default);
            // By another way: the nail's axis and the shaft's, both as lines, the shaft upright.
            (Nail Nail, double Clear)[] passing =
            [
                .. from o in view.Obstructions
                   where o.Kind == ObstructionKind.Shaft
                   from n in view.Nails
                   select (n, Across(n, o)),
            ];
            if (passing.Length == 0)
                continue;
            (Nail nail, double clear) = passing.MinBy(p => p.Clear);
            PassingPlan plan = Assert.Single(PassingPlan.All(context, view));
            Assert.Equal(clear, passing.Single(p => p.Nail == plan.Nail).Clear, 1e-6);
            Assert.Contains(words, w => w.StartsWith("PLAN AT EL ", StringComparison.Ordinal) && w.Contains(plan.Nail.Mark, StringComparison.Ordinal));
            Assert.Contains(set.Model.OfType<Dimension>().Where(d => d.Nail == plan.Nail.Mark && d.Words?.Contains("CLR", StringComparison.Ordinal) == true),
                d => Math.Abs((d.To - d.From).Length - clear) < 0.005);
            plans++;
        }
        Assert.Equal(7, plans);
    }

    /// <summary>Clear distance of a hole from an upright shaft that it passes in its depth: in plan, from the shaft's middle to the hole's axis.</summary>
    private static double Across(Nail nail, Obstruction shaft)
    {
        Vector2D way = nail.Hole.Direction.Plan * (1 / nail.Hole.Direction.Plan.Length), to = shaft.Shape[0].Plan - nail.Hole.Head.Plan;
        return Math.Abs(way.CrossRight(to)) - shaft.Diameter / 2 - nail.Hole.Radius;
    }
}

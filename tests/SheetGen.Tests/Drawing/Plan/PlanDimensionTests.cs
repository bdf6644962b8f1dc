using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Tests.Drawing.Elevation;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing.Plan;

/// <summary>The dimensions of a plan are no nails: they end in arrowheads, are thinner, and no nail lies across them.</summary>
public class PlanDimensionTests
{
    public static TheoryData<string> Walls => new(
        SampleWalls.TwoWalls, SampleWalls.Metric, MarkWalls.Corner, MarkWalls.Arc,
        Repository.Read("demo", "heron-street-bridge", "wall.yaml"), Repository.Read("templates", "starter", "curve.yaml"));

    [Theory]
    [MemberData(nameof(Walls))]
    public void Dimensions_in_plan_are_not_taken_for_nails(string yaml)
    {
        SheetSet set = SampleSheets.Compose(yaml);
        Dictionary<string, DimensionStyle> styles = set.DimensionStyles.ToDictionary(s => s.Name);
        foreach (IReadOnlyList<Primitive> space in new[] { set.Model, set.Plan })
        {
            Line[] nails = [.. space.OfType<Line>().Where(l => l.Layer is LayerRole.NailTrace)];
            Dimension[] dimensions = [.. space.OfType<Dimension>().Where(d => styles[d.Style].HasArrows)];
            Assert.NotEmpty(nails);
            Assert.DoesNotContain(dimensions, d => nails.Any(n => Meet(d.From, d.To, n.From, n.To)));
            if (space == set.Plan)
                Assert.NotEmpty(dimensions);
        }
        Assert.True(set.Templates.Layers[LayerRole.NailTrace].Weight > set.Templates.Layers[LayerRole.Dimension].Weight);
    }

    private static bool Meet(Point2 a, Point2 b, Point2 c, Point2 d) => Side(a, b, c) * Side(a, b, d) < -1e-6 && Side(c, d, a) * Side(c, d, b) < -1e-6;

    private static double Side(Point2 a, Point2 b, Point2 p) => (b.X - a.X) * (p.Y - a.Y) - (b.Y - a.Y) * (p.X - a.X);
}

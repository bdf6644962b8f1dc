using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing.Sections;

/// <summary>Where walls are cut, by another way: heights by samples, structures by the views that show them.</summary>
public class SectionCutTests
{
    private const int Walls = 20;

    [Fact]
    public void Random_walls_are_cut_at_every_greatest_height_change_structure_opening_and_pipe()
    {
        int heights = 0, corners = 0, groups = 0, pipes = 0;
        for (ulong seed = 4100; seed < 4100 + Walls; seed++)
        {
            WallProject project = SampleLayout.Read(RandomWall.Yaml(seed));
            NailLayout layout = SampleLayout.Make(project);
            var context = new DrawingContext(project, layout, SampleLayout.Report(layout), SampleLayout.Measure(project, layout), [], new RunInfo("0.1.0"), TemplateReader.Default());
            IReadOnlyList<SectionCut> cuts = SectionCut.Choose(context);
            Assert.Equal(Enumerable.Range(1, cuts.Count), cuts.Select(c => c.Number));
            foreach (Wall wall in project.Walls)
            {
                SectionCut[] here = [.. cuts.Where(c => c.Wall == wall)];
                Assert.Equal(here.OrderBy(c => c.Along), here);
                Assert.All(here, c => Assert.InRange(c.Along, wall.Start, wall.End));
                foreach (Section section in wall.Sections)
                {
                    SectionCut highest = Assert.Single(here, c => c.IsHighest && c.Section == section);
                    Assert.InRange(highest.Along, section.Start, section.End);
                    Assert.True(highest.Height > Sampled(wall, section.Start, section.End) - 0.02, $"{seed}: {section.Name} is cut at {highest.Along}, {highest.Height} high");
                    heights++;
                    double[] ends = [section.Start, .. Corners(wall).Where(a => a > section.Start && a < section.End), section.End];
                    for (int i = 0; i + 1 < ends.Length; i++)
                    {
                        if (!layout.Nails.Any(n => n.Section == section && n.Kind != NailKind.Verification && n.Along > ends[i] && n.Along < ends[i + 1]))
                            continue;
                        Assert.True(here.Any(c => c.Section == section && c.Along >= ends[i] - 1e-6 && c.Along <= ends[i + 1] + 1e-6), $"{seed}: no cut of {section.Name} from {ends[i]} to {ends[i + 1]}");
                        corners += ends.Length > 2 ? 1 : 0;
                    }
                }
                double reach = wall.Sections.Max(s => s.Lengths.Max());
                foreach (Obstruction o in project.Obstructions.Where(o => o.Kind is not (ObstructionKind.Boundary or ObstructionKind.Pipe) && IsNear(context, wall, o, reach)))
                {
                    Assert.True(here.Any(c => new SectionView(context, c, default) is var view && view.Obstructions.Contains(o) && view.Outline(o).Any()), $"{seed}: no cut of {wall.Name} shows {o.Name}");
                    groups++;
                }
                foreach (Obstruction pipe in project.Obstructions.Where(o => o.Kind == ObstructionKind.Pipe && RunsBehind(context, wall, o, reach, layout)))
                {
                    Assert.True(here.Any(c => new SectionView(context, c, default).Obstructions.Contains(pipe)), $"{seed}: no cut of {wall.Name} shows {pipe.Name}");
                    pipes++;
                }
                Assert.All(wall.Openings, o => Assert.Contains(here, c => c.Along >= o.Start && c.Along <= o.End));
            }
        }
        Assert.True(heights > Walls && corners > 0 && groups > Walls && pipes > 0, $"{heights} heights, {corners} parts between corners, {groups} structures, {pipes} pipes");
    }

    private static double Sampled(Wall wall, double from, double to) =>
        Enumerable.Range(0, 2000).Select(i => from + (to - from) * (i + 0.5) / 2000).Max(a => wall.Top.At(a) - wall.Bottom.At(a));

    /// <summary>Corners of the layout line that turn by more than the eye overlooks.</summary>
    private static IEnumerable<double> Corners(Wall wall) =>
        new Face(wall).Legs.Select(l => l.EndCorner).OfType<Corner>().Where(c => Math.Abs(c.Deflection) > 16 * Math.PI / 180).Select(c => c.Along);

    private static (double From, double To) Span(DrawingContext context, Wall wall, Obstruction o)
    {
        IReadOnlyList<LinePlace> places = context.PlacesOf(wall.LayoutLine, o);
        return (places.Min(p => p.Along) - o.Diameter / 2, places.Max(p => p.Along) + o.Diameter / 2);
    }

    /// <summary>A structure that stands wholly within the wall's stations, with some corner or axis behind the face and no farther than the longest nail.</summary>
    private static bool IsNear(DrawingContext context, Wall wall, Obstruction o, double reach)
    {
        (double from, double to) = Span(context, wall, o);
        return from > wall.Start && to < wall.End && o.Bottom < wall.Top.At((from + to) / 2)
            && context.PlacesOf(wall.LayoutLine, o).Any(p => p.Right * wall.Side > 0 && p.Right * wall.Side < reach);
    }

    /// <summary>A pipe with a stretch behind the face among the nails.</summary>
    private static bool RunsBehind(DrawingContext context, Wall wall, Obstruction pipe, double reach, NailLayout layout)
    {
        IReadOnlyList<LinePlace> places = context.PlacesOf(wall.LayoutLine, pipe);
        double lowest = layout.Nails.Where(n => n.Wall == wall).Select(n => n.Hole.Tip.Z).DefaultIfEmpty(double.PositiveInfinity).Min();
        int met = 0;
        for (int i = 0; i + 1 < places.Count; i++)
        {
            for (double t = 0.005; t < 1; t += 0.01)
            {
                double along = places[i].Along + t * (places[i + 1].Along - places[i].Along), behind = (places[i].Right + t * (places[i + 1].Right - places[i].Right)) * wall.Side;
                double z = pipe.Shape[i].Z + t * (pipe.Shape[i + 1].Z - pipe.Shape[i].Z);
                met += along > wall.Start && along < wall.End && behind > 0 && behind < 0.8 * reach && z > lowest && z < wall.Top.At(along) ? 1 : 0;
            }
        }
        return met > 4;
    }
}

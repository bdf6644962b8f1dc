using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using Xunit;

namespace SheetGen.Tests.Drawing.Sections;

/// <summary>An inclined shaft is drawn inclined: its outline in a section and in the plan of a passing nail lies on its surface.</summary>
public class InclinedShaftTests
{
    private const string Raked = """
        format: 1
        project: {title: Raked shafts, number: RS-1, units: ft}
        layout_lines:
          - name: L1
            start: {station: 1+00, northing: 700, easting: 900, azimuth: 70}
            elements: [{line: 60}]
        walls:
          - name: Wall 4
            layout_line: L1
            retained_side: left
            stations: [1+00, 1+60]
            top: [[1+00, 120], [1+60, 120]]
            bottom: {steps: [[1+00, 100]]}
            sections:
              - {name: A, stations: [1+00, 1+60], horizontal_spacing: 4, vertical_spacing: 4, rows: level, top_row_depth: 2, inclination: 12, lengths: 24, bar: {size: "#8", grade: 75}, hole: 6 in}
        obstructions:
          - {name: S1, kind: shaft, axis: [{station: 1+20, offset: 4, elevation: 125}, {station: 1+20, offset: 19, elevation: 60}], diameter: 42 in}
          - {name: S2, kind: pile, axis: [{station: 1+43, offset: 14, elevation: 118}, {station: 1+43, offset: 3, elevation: 70}], diameter: 18 in}
        """;

    [Fact]
    public void Section_and_passing_plan_show_its_surface()
    {
        DrawingContext context = PlacedWall.Context(Raked);
        int sections = 0, plans = 0;
        foreach (SectionView view in SectionCut.Choose(context).Select(c => new SectionView(context, c, default)))
        {
            foreach (Obstruction shaft in view.Obstructions)
            {
                // The wall is straight and the shafts lean across it: seen along it, their axis is a line of offset and elevation.
                (double x, double y)[] axis = [.. shaft.Shape.Select(p => (context.PlacesOf(view.Wall.LayoutLine, shaft)[Array.IndexOf([.. shaft.Shape], p)].Right * view.Wall.Side, p.Z))];
                (double ux, double uy) = (axis[1].x - axis[0].x, axis[1].y - axis[0].y);
                Line[] edges = [.. view.Outline(shaft).OfType<Line>().Where(l => Math.Abs(l.From.Y - l.To.Y) > 1)];
                Assert.Equal(2, edges.Length);
                double[] off = [.. edges.SelectMany(e => new[] { e.From, e.To }).Select(p => ((p.X - axis[0].x) * uy - (p.Y - axis[0].y) * ux) / Math.Sqrt(ux * ux + uy * uy))];
                Assert.All(off, o => Assert.Equal(shaft.Diameter / 2, Math.Abs(o), 1e-6));
                Assert.All(view.Outline(shaft).OfType<Line>(), l => Assert.True(view.Extent.Grown(1e-6).Contains(l.From) && view.Extent.Grown(1e-6).Contains(l.To)));
                sections++;
            }
            foreach (PassingPlan plan in PassingPlan.All(context, view))
            {
                Polyline outline = Assert.Single(plan.Draw(default).OfType<Polyline>());
                Vector2D tangent = view.Wall.LayoutLine.TangentAt(plan.Nail.Along), up = tangent.Right * view.Wall.Side, right = tangent * -view.Wall.Side;
                Vector3D top = plan.Obstruction.Shape[0], way = (plan.Obstruction.Shape[1] - top) * (1 / (plan.Obstruction.Shape[1] - top).Length);
                foreach (Point2 p in outline.Vertices.Select(v => v.Point))
                {
                    Vector2D at = plan.Nail.Hole.Head.Plan + right * p.X + up * p.Y;
                    Vector3D point = at.At(plan.Elevation), from = point - top, across = from - way * from.Dot(way);
                    Assert.Equal(plan.Obstruction.Diameter / 2, across.Length, 1e-6);
                }
                plans++;
            }
        }
        Assert.True(sections >= 2 && plans >= 1, $"{sections} sections, {plans} plans");
    }

    /// <summary>A driller needs to know where an inclined shaft is at every depth: plan and table give both ends, of an upright one the one place.</summary>
    [Fact]
    public void Plan_and_table_give_both_ends()
    {
        DrawingContext context = PlacedWall.Context(Raked.Replace("offset: 19, elevation: 60}], diameter: 42 in}", "offset: 19, elevation: 60}], diameter: 42 in}\n  - {name: S3, kind: shaft, at: {station: 1+52, offset: 9}, diameter: 30 in, top: 119, bottom: 80}", StringComparison.Ordinal));
        SheetSet set = PlacedWall.Sheets(context);
        string[] words = [.. set.Sheets.SelectMany(s => s.Paper).Concat(set.Model).OfType<Text>().Select(t => t.Value)];
        string all = string.Join('\n', words), cells = string.Join('\n', set.Sheets.SelectMany(s => s.Paper).OfType<BlockReference>().SelectMany(b => b.Attributes).Select(a => a.Value));
        foreach (string place in new[]
        {
            "UPPER END EL 125.00: STA 1+20.00, 4.00' BEHIND FACE", "LOWER END EL 60.00: STA 1+20.00, 19.00' BEHIND FACE",
            "UPPER END EL 118.00: STA 1+43.00, 14.00' BEHIND FACE", "LOWER END EL 70.00: STA 1+43.00, 3.00' BEHIND FACE",
        })
            Assert.Contains(place, all, StringComparison.Ordinal);
        Assert.Contains("S1, UPPER END", cells, StringComparison.Ordinal);
        Assert.Contains("S2, LOWER END", cells, StringComparison.Ordinal);
        Assert.Contains("9.00'", cells, StringComparison.Ordinal);
        Assert.DoesNotContain("S3,", cells, StringComparison.Ordinal);
    }

    [Fact]
    public void The_plan_joins_its_two_ends()
    {
        DrawingContext context = PlacedWall.Context(Raked);
        SheetSet set = PlacedWall.Sheets(context);
        Obstruction shaft = context.Project.Obstructions[0];
        double leaned = (shaft.Shape[1] - shaft.Shape[0]).Plan.Length;
        Assert.Equal(2, set.Model.OfType<Line>().Count(l => l.Layer == LayerRole.Obstruction && l.Obstruction == shaft.Name && Math.Abs((l.To - l.From).Length - leaned) < 1e-6
            && set.Model.OfType<Circle>().Count(c => Math.Abs((l.From - c.Center).Length - c.Radius) < 1e-6 || Math.Abs((l.To - c.Center).Length - c.Radius) < 1e-6) >= 2));
    }
}

using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Drawing.Elevation;

/// <summary>The panels that are drawn are those that are counted and paid.</summary>
public class PanelJointTests
{
    private const double Cell = 0.1;

    private const string Stepped = """
        format: 1
        project: {title: Depot cut, number: PJ-1, units: ft}
        layout_lines:
          - name: L
            start: {station: 1+00, northing: 0, easting: 0, azimuth: 90}
            elements: [{line: 80}]
        walls:
          - name: W
            layout_line: L
            retained_side: left
            stations: [1+03, 1+70]
            top: [[1+03, 116], [1+30, 119.5], [1+30, 118], [1+70, 113]]
            bottom: {steps: [[1+03, 101], [1+20, 100], [1+40, 102.5]]}
            panels: {width: 10, height: 5, first_break: 1+10}
            openings: [{name: Inlet, stations: [1+43, 1+47], bottom: 104, top: 108}]
            sections:
              - {name: A, stations: [1+03, 1+70], horizontal_spacing: 5, vertical_spacing: 5, rows: level, top_row_depth: 2, inclination: 15, lengths: 20, bar: {size: "#8", grade: 75}, hole: 6 in}
        """;

    /// <summary>Fields between the lines drawn are flooded from point to point; each is one panel of the take-off, and as large.</summary>
    [Theory]
    [InlineData(Stepped)]
    [InlineData(SampleWalls.Metric)]
    public void Every_field_between_the_joints_drawn_is_a_panel_of_the_take_off(string yaml)
    {
        WallProject project = SampleLayout.Read(yaml);
        NailLayout layout = SampleLayout.Make(project);
        Panel[] panels = [.. SampleLayout.Measure(project, layout).PanelPieces];
        SheetSet set = SampleSheets.Compose(project, layout);
        Wall wall = project.Walls[0];
        double scale = project.Unit == Model.Units.LengthUnit.Metre ? 0.3 : 1, cell = Cell * scale;
        (Point2 A, Point2 B)[] lines = [.. set.Model.Where(p => p.Layer is LayerRole.Panel or LayerRole.Wall).SelectMany(Segments)];
        // Stations grow to the left where the soil is on the right; none of these walls has a corner or an arc.
        int sign = project.Walls[0].Side > 0 ? -1 : 1;
        double first = wall.LayoutLine.StartStation;
        int columns = (int)((wall.End - wall.Start) / cell), rows = (int)((wall.Top.Highest(wall.Start, wall.End) - wall.Bottom.Lowest(wall.Start, wall.End)) / cell);
        double low = wall.Bottom.Lowest(wall.Start, wall.End);
        (double Along, double Z) Place(int c, int r) => (wall.Start + (c + 0.487) * cell, low + (r + 0.513) * cell);
        Point2 Drawn(int c, int r) => new(sign * (Place(c, r).Along + first), Place(c, r).Z);
        int[,] owner = new int[columns, rows];
        for (int c = 0; c < columns; c++)
        {
            for (int r = 0; r < rows; r++)
                owner[c, r] = Array.FindIndex(panels, p => Inside(p, Place(c, r)));
        }

        var fields = new List<(int Panel, int Cells)>();
        var seen = new bool[columns, rows];
        for (int c = 0; c < columns; c++)
        {
            for (int r = 0; r < rows; r++)
            {
                if (!seen[c, r] && owner[c, r] >= 0)
                    fields.Add((owner[c, r], Flood(c, r)));
            }
        }

        Assert.Equal(panels.Length, fields.Count);
        Assert.Equal(panels.Length, fields.Select(f => f.Panel).Distinct().Count());
        Assert.All(fields, f => Assert.Equal(panels[f.Panel].Area, f.Cells * cell * cell, 0.75 * cell * 2 * (panels[f.Panel].Width + panels[f.Panel].StartHeight + panels[f.Panel].EndHeight)));

        int Flood(int c0, int r0)
        {
            var open = new Stack<(int C, int R)>([(c0, r0)]);
            seen[c0, r0] = true;
            int cells = 0;
            while (open.Count > 0)
            {
                (int c, int r) = open.Pop();
                cells++;
                Assert.Equal(owner[c0, r0], owner[c, r]);
                foreach ((int x, int y) in new[] { (c + 1, r), (c - 1, r), (c, r + 1), (c, r - 1) })
                {
                    if (x < 0 || y < 0 || x >= columns || y >= rows || seen[x, y] || lines.Any(l => Cross(l.A, l.B, Drawn(c, r), Drawn(x, y))))
                        continue;
                    seen[x, y] = true;
                    open.Push((x, y));
                }
            }
            return cells;
        }
    }

    [Fact]
    public void No_joint_is_drawn_twice_nor_on_the_outline()
    {
        WallProject project = SampleLayout.Read(Stepped);
        PanelJoint[] joints = [.. PanelJoints.Of(SampleLayout.Measure(project, SampleLayout.Make(project)).PanelPieces)];
        Wall wall = project.Walls[0];

        Assert.NotEmpty(joints);
        Assert.Equal(joints.Length, joints.Select(j => (j.From, j.To)).Distinct().Count());
        Assert.All(joints.Where(j => j.From.Along == j.To.Along), j => Assert.InRange(j.From.Along, wall.Start + 0.1, wall.End - 0.1));
        Assert.All(joints.Where(j => j.From.Along != j.To.Along), j => Assert.True(j.From.Elevation > wall.Bottom.At(j.From.Along) + 0.1));
        Assert.All(joints.Where(j => j.From.Along == j.To.Along), j => Assert.Contains(wall.PanelBreaks, b => Math.Abs(b - j.From.Along) < 1e-6));
    }

    private static IEnumerable<(Point2, Point2)> Segments(Primitive primitive)
    {
        if (primitive is Line l)
            yield return (l.From, l.To);
        if (primitive is Polyline p)
        {
            for (int i = 0; i + 1 < p.Vertices.Count + (p.Closed ? 1 : 0); i++)
                yield return (p.Vertices[i].Point, p.Vertices[(i + 1) % p.Vertices.Count].Point);
        }
    }

    private static bool Cross(Point2 a, Point2 b, Point2 c, Point2 d)
    {
        double Side(Point2 p, Point2 q, Point2 r) => (q.X - p.X) * (r.Y - p.Y) - (q.Y - p.Y) * (r.X - p.X);
        return Side(a, b, c) * Side(a, b, d) < 0 && Side(c, d, a) * Side(c, d, b) < 0;
    }

    /// <summary>Inside an odd number of the panel's rings (ray casting).</summary>
    private static bool Inside(Panel panel, (double Along, double Z) at)
    {
        bool inside = false;
        foreach (IReadOnlyList<ProfilePoint> ring in panel.Outline)
        {
            for (int i = 0; i < ring.Count; i++)
            {
                ProfilePoint a = ring[i], b = ring[(i + 1) % ring.Count];
                if ((a.Elevation > at.Z) != (b.Elevation > at.Z) && at.Along < a.Along + (b.Along - a.Along) * (at.Z - a.Elevation) / (b.Elevation - a.Elevation))
                    inside = !inside;
            }
        }
        return inside;
    }
}

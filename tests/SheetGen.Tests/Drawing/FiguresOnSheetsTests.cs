using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using Xunit;

namespace SheetGen.Tests.Drawing;

/// <summary>Figures that stand on plans and sections, against computations of their own.</summary>
public class FiguresOnSheetsTests
{
    private static readonly WallProject Project = SampleLayout.Read(SampleWalls.TwoWalls);
    private static readonly NailLayout Layout = SampleLayout.Make(Project);
    private static readonly Lazy<SheetSet> Set = new(() => SampleSheets.Compose(Project, Layout));

    private static IEnumerable<string> Words => Set.Value.Sheets.SelectMany(s => SheetPicture.Of(Set.Value, s)).Select(p => p.Primitive).OfType<Text>().Select(t => t.Value);

    private static double Figure(Match match) => double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);

    /// <summary>How far nails reach behind the plumb face: length times the cosines of inclination and splay, the greatest of a zone on its leg.</summary>
    [Fact]
    public void The_limit_of_the_longest_nail_is_that_of_the_nails()
    {
        Point2[][] limits = [.. Set.Value.Model.OfType<Polyline>().Where(p => p.Layer == LayerRole.NailLimit).Select(p => p.Vertices.Select(v => v.Point).ToArray())];
        IEnumerable<double> dimensions = Set.Value.Model.OfType<Dimension>().Where(d => limits.Any(l => IsOn(l, d.To))).Select(d => (d.To - d.From).Length);
        double[] shown = [.. Words.Select(w => Regex.Match(w, @"LIMIT OF LONGEST NAIL, ([\d.]+)' FROM FACE")).Where(m => m.Success).Select(Figure).Concat(dimensions).Distinct().Order()];
        double[] reaches = [.. Layout.Nails.GroupBy(n => (n.Wall, n.Section, new Face(n.Wall).LegAt(n.Along).Index))
            .Select(g => Math.Round(g.Max(n => n.Length * Math.Cos(Angles.ToRadians(n.Inclination)) * Math.Cos(Angles.ToRadians(n.Splay))), 2)).Distinct().Order()];

        Assert.NotEmpty(shown);
        Assert.All(shown, s => Assert.Contains(reaches, r => Math.Abs(r - s) < 0.011));
        Assert.Equal(reaches[^1], shown[^1], 0.011);
    }

    private static bool IsOn(Point2[] path, Point2 at) => Enumerable.Range(0, path.Length - 1).Any(i =>
        Math.Abs((at - path[i]).Length + (at - path[i + 1]).Length - (path[i + 1] - path[i]).Length) < 1e-6);

    /// <summary>Clear distances in the sections: the hole sampled every hundredth of a foot against the shaft's cylinder.</summary>
    [Fact]
    public void The_clear_distance_to_a_shaft_in_a_section_is_the_nails()
    {
        var shown = Set.Value.Model.OfType<Text>().Where(t => t.Obstruction is "S1" or "S2")
            .Select(t => (t.Obstruction, Match: Regex.Match(t.Value, @"^([\d.]+)' CL"))).Where(t => t.Match.Success).Select(t => (t.Obstruction, Clear: Figure(t.Match))).ToArray();

        Assert.NotEmpty(shown);
        foreach ((string? name, double clear) in shown)
        {
            Obstruction shaft = Project.Obstructions.Single(o => o.Name == name);
            IEnumerable<double> sampled = Layout.Nails.Where(n => n.Wall == Project.Walls[0]).Select(n => Sampled(n, shaft));
            Assert.Contains(sampled, s => Math.Abs(s - clear) < 0.011);
        }
    }

    private static double Sampled(Nail nail, Obstruction shaft)
    {
        double least = double.PositiveInfinity;
        Vector3D head = nail.Hole.Head, way = nail.Hole.Tip - head;
        int steps = (int)(nail.Length * 100);
        for (int i = 0; i <= steps; i++)
        {
            Vector3D at = head + way * ((double)i / steps);
            double beside = (at.Plan - shaft.Shape[0].Plan).Length - shaft.Diameter / 2;
            double above = Math.Max(at.Z - shaft.Top, shaft.Bottom - at.Z);
            double out2 = above <= 0 ? beside : beside <= 0 ? above : Math.Sqrt(beside * beside + above * above);
            least = Math.Min(least, out2 - nail.Section.HoleDiameter / 2);
        }
        return least;
    }

    /// <summary>Heights and rows of each section measure true: the DXF dimension's own length is what the profile gives at the cut.</summary>
    [Fact]
    public void A_section_measures_the_height_of_the_wall_at_its_cut()
    {
        double[] stations = [.. Words.Select(w => Regex.Match(w, @"^STA (\d+)\+([\d.]+), (GREATEST|THROUGH)")).Where(m => m.Success)
            .Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture) * 100 + double.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture))];
        double[] up = [.. Set.Value.Model.OfType<Dimension>().Where(d => d.Angle == 90).Select(d => Math.Abs(d.To.Y - d.From.Y))];

        Assert.NotEmpty(stations);
        foreach (double station in stations)
        {
            Wall wall = Project.Walls.Single(w => station >= w.StationOf(w.Start) - 1e-6 && station <= w.StationOf(w.End) + 1e-6);
            double along = wall.LayoutLine.AlongOf(station);
            double[] heights = [wall.Top.At(along) - wall.Bottom.At(along), wall.Top.Before(along) - wall.Bottom.Before(along)];
            Assert.Contains(up, u => heights.Any(h => Math.Abs(u - h) < 0.011));
        }
    }
}

using SheetGen.Exchange.Common;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Exchange.Bcf;

/// <summary>A camera in metres of the model's world; direction and up are unit vectors.</summary>
internal sealed record BcfCamera((double X, double Y, double Z) Eye, (double X, double Y, double Z) Direction, (double X, double Y, double Z) Up)
{
    private const double Down = 25 * Math.PI / 180;

    /// <summary>
    /// Looks from in front of the wall, and from above, at the nearest points of a finding, else at its nails, its obstruction, its stretch, or
    /// the whole wall; from so far away that all of it is in the picture.
    /// </summary>
    public static BcfCamera Of(ExchangeInput input, Finding finding)
    {
        (Vector3D target, double reach) = Target(input, finding);
        Wall wall = finding.Wall ?? input.Project.Walls[0];
        Vector2D into = -Vector2D.FromAzimuth(WallWords.FaceAzimuth(wall.LayoutLine, wall.Side, wall.Start, wall.End));
        if (finding.Station is { } station)
            into = new Face(wall).NormalAt(wall.LayoutLine.AlongOf(station));
        var frame = new PlanFrame(input.Project);
        Vector3D direction = (into * Math.Cos(Down)).At(-Math.Sin(Down)), up = (into * Math.Sin(Down)).At(Math.Cos(Down));
        double away = Math.Max(reach * 2.2, 3 / frame.MetresPerUnit);
        return new BcfCamera(frame.WorldMetres(target - direction * away), (direction.E, direction.N, direction.Z), (up.E, up.N, up.Z));
    }

    /// <summary>The middle of what it is about, and how far that reaches from there.</summary>
    private static (Vector3D Target, double Reach) Target(ExchangeInput input, Finding finding)
    {
        Nail[] nails = [.. input.Layout.Nails.Where(n => finding.Nails.Contains(n.Mark))];
        Vector3D[] ends = [.. nails.SelectMany(n => new[] { n.Hole.Head, n.Hole.Tip })];
        if (finding.Points.Count > 0)
            return (Middle(finding.Points), Reach(Middle(finding.Points), [.. finding.Points, .. ends]));
        if (ends.Length > 0)
            return (Middle(ends), Reach(Middle(ends), ends));
        if (input.Project.Obstructions.FirstOrDefault(o => o.Name == finding.Obstruction) is { Kind: not ObstructionKind.Boundary } obstruction)
        {
            Vector3D[] corners = [.. obstruction.Solids.SelectMany(s => new[] { s.Bounds.Low, s.Bounds.High })];
            return (Middle(corners), Reach(Middle(corners), corners));
        }
        Wall wall = finding.Wall ?? input.Project.Walls[0];
        double from = finding.Station is { } start ? wall.LayoutLine.AlongOf(start) : wall.Start;
        double to = finding.ToStation is { } end ? wall.LayoutLine.AlongOf(end) : finding.Station is null ? wall.End : from;
        var face = new Face(wall);
        Vector3D[] stretch =
        [
            .. new[] { from, to }.SelectMany(a => finding.Elevation is { } z ? [face.PointAt(a, z)] : new[] { face.PointAt(a, wall.Bottom.At(a)), face.PointAt(a, wall.Top.At(a)) }),
        ];
        return (Middle(stretch), Reach(Middle(stretch), stretch));
    }

    private static Vector3D Middle(IReadOnlyList<Vector3D> points)
    {
        Vector3D low = points[0], high = points[0];
        foreach (Vector3D p in points)
        {
            low = new(Math.Min(low.N, p.N), Math.Min(low.E, p.E), Math.Min(low.Z, p.Z));
            high = new(Math.Max(high.N, p.N), Math.Max(high.E, p.E), Math.Max(high.Z, p.Z));
        }
        return (low + high) * 0.5;
    }

    private static double Reach(Vector3D from, IReadOnlyList<Vector3D> points) => points.Max(p => (p - from).Length);
}

using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>The outline of one leg of a face, in place along the layout line and elevation: top, bottom with its steps, and free ends.</summary>
internal sealed class LegOutline
{
    private readonly Face _face;
    private readonly Leg _leg;
    private readonly List<(Edge Edge, string Name)> _edges = [];

    public LegOutline(Face face, Leg leg)
    {
        _face = face;
        _leg = leg;
        Wall wall = face.Wall;
        AddProfile(wall.Top, "top");
        AddProfile(wall.Bottom, "bottom");
        if (leg.StartCorner is null)
            _edges.Add((new Edge(leg.Start, wall.Bottom.At(leg.Start), leg.Start, wall.Top.At(leg.Start)), "end"));
        if (leg.EndCorner is null)
            _edges.Add((new Edge(leg.End, wall.Bottom.Before(leg.End), leg.End, wall.Top.Before(leg.End)), "end"));
    }

    /// <summary>
    /// Distance of a head from the outline along the face, elevations as they are (a batter is not developed); negative outside of it.
    /// </summary>
    public (double Distance, string Edge) Nearest(double along, double elevation)
    {
        (double Distance, string Edge) least = (double.PositiveInfinity, "");
        foreach ((Edge edge, string name) in _edges)
        {
            double distance = DistanceTo(edge, along, elevation);
            if (distance < least.Distance)
                least = (distance, name);
        }
        bool isOutside = elevation > _face.Wall.Top.At(along) || elevation < _face.Wall.Bottom.At(along)
            || along < _leg.Start || along > _leg.End;
        return isOutside ? (-least.Distance, least.Edge) : least;
    }

    /// <summary>Distance of a head from the rectangle of an opening; 0 or less inside.</summary>
    public double ToOpening(Opening opening, double along, double elevation)
    {
        double x = Math.Max(Run(along, opening.Start, elevation), -Run(along, opening.End, elevation));
        double z = Math.Max(opening.Bottom - elevation, elevation - opening.Top);
        return x > 0 && z > 0 ? Math.Sqrt(x * x + z * z) : Math.Max(x, z);
    }

    private void AddProfile(Profile profile, string name)
    {
        double along = _leg.Start, elevation = profile.At(_leg.Start);
        foreach (ProfilePoint point in profile.Points)
        {
            if (point.Along <= _leg.Start || point.Along >= _leg.End)
                continue;
            _edges.Add((new Edge(along, elevation, point.Along, point.Elevation), name));
            (along, elevation) = (point.Along, point.Elevation);
        }
        _edges.Add((new Edge(along, elevation, _leg.End, profile.Before(_leg.End)), name));
    }

    private double DistanceTo(Edge edge, double along, double elevation)
    {
        var from = new Vector2D(Run(along, edge.Start, elevation), edge.StartElevation - elevation);
        var to = new Vector2D(Run(along, edge.End, elevation), edge.EndElevation - elevation);
        Vector2D run = to - from;
        double square = run.Dot(run);
        double t = square > 0 ? Math.Clamp(-from.Dot(run) / square, 0, 1) : 0;
        return (from + run * t).Length;
    }

    /// <summary>Distance along the face from one place to another, positive up-station.</summary>
    private double Run(double from, double to, double elevation) =>
        to >= from ? _face.Distance(from, to, elevation) : -_face.Distance(to, from, elevation);

    private readonly record struct Edge(double Start, double StartElevation, double End, double EndElevation);
}

namespace SheetGen.Model.Geometry;

/// <summary>A flat convex piece of a wall's face, corners in order around it.</summary>
/// <param name="Corners">Three or more corners in one plane; a piece without area is measured by its edges.</param>
public sealed record FaceSolid(IReadOnlyList<Vector3D> Corners) : Solid
{
    private readonly Vector3D _normal = NormalOf(Corners);
    private readonly Edge[] _edges = MakeEdges(Corners);

    public IReadOnlyList<Vector3D> Corners { get; } = Corners;

    public override Bounds Bounds { get; } = BoundsOf(Corners);

    public override bool IsSurface => true;

    internal override Vector3D Anchor => Corners[0];

    internal override double Measure(Vector3D local, out Vector3D outward)
    {
        double height = local.Dot(_normal);
        if (IsOver(local))
        {
            outward = height < 0 ? -_normal : _normal;
            return Math.Abs(height);
        }
        double least = double.PositiveInfinity;
        Vector3D nearest = default;
        foreach (Edge edge in _edges)
        {
            Vector3D away = Vectors.FromSegment(local, edge.Start, edge.Along);
            double square = away.Dot(away);
            if (square < least)
            {
                least = square;
                nearest = away;
            }
        }
        double distance = Math.Sqrt(least);
        outward = distance > 0 ? nearest * (1 / distance) : default;
        return distance;
    }

    private bool IsOver(Vector3D local)
    {
        if (_normal == default)
            return false;
        foreach (Edge edge in _edges)
        {
            if ((local - edge.Start).Dot(edge.Outward) > 0)
                return false;
        }
        return true;
    }

    private static Bounds BoundsOf(IReadOnlyList<Vector3D> corners)
    {
        Bounds box = Bounds.Of(corners[0], corners[0]);
        foreach (Vector3D corner in corners)
            box = box.With(Bounds.Of(corner, corner));
        return box;
    }

    private static Vector3D NormalOf(IReadOnlyList<Vector3D> corners)
    {
        Vector3D sum = default;
        for (int i = 1; i + 1 < corners.Count; i++)
            sum += (corners[i] - corners[0]).Cross(corners[i + 1] - corners[0]);
        return Vectors.Unit(sum, default);
    }

    private static Edge[] MakeEdges(IReadOnlyList<Vector3D> corners)
    {
        Vector3D normal = NormalOf(corners);
        var edges = new List<Edge>();
        for (int i = 0; i < corners.Count; i++)
        {
            Vector3D along = corners[(i + 1) % corners.Count] - corners[i];
            if (along.Length > 0)
                edges.Add(new Edge(corners[i] - corners[0], along, along.Cross(normal)));
        }
        if (edges.Count == 0)
            edges.Add(default);
        return edges.ToArray();
    }

    private readonly record struct Edge(Vector3D Start, Vector3D Along, Vector3D Outward);
}

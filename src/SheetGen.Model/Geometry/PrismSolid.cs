namespace SheetGen.Model.Geometry;

/// <summary>An upright prism over a convex footprint (corners in either sense) between two elevations: cap, footing, beam.</summary>
/// <param name="Footprint">Corners in order; a footprint without area (a line, a point) is a plate or a rod.</param>
/// <param name="Bottom">Lower elevation.</param>
/// <param name="Top">Upper elevation, not below the lower.</param>
public sealed record PrismSolid(IReadOnlyList<Vector2D> Footprint, double Bottom, double Top) : Solid
{
    private readonly Edge[] _edges = MakeEdges(Footprint);

    public IReadOnlyList<Vector2D> Footprint { get; } = Footprint;

    public double Bottom { get; } = Bottom;

    public double Top { get; } = Top;

    public override Bounds Bounds { get; } = BoundsOf(Footprint, Bottom, Top);

    internal override Vector3D Anchor => Footprint[0].At(Bottom + (Top - Bottom) / 2);

    internal override double Measure(Vector3D local, out Vector3D outward)
    {
        double inPlan = MeasurePlan(local.Plan, out Vector2D planOutward);
        double beyondEnd = Math.Abs(local.Z) - (Top - Bottom) / 2;
        double up = local.Z < 0 ? -1 : 1;
        if (inPlan > 0 && beyondEnd > 0)
        {
            double distance = Math.Sqrt(inPlan * inPlan + beyondEnd * beyondEnd);
            outward = (planOutward * (inPlan / distance)).At(up * beyondEnd / distance);
            return distance;
        }
        if (beyondEnd > inPlan)
        {
            outward = new Vector3D(0, 0, up);
            return beyondEnd;
        }
        outward = planOutward.At(0);
        return inPlan;
    }

    private double MeasurePlan(Vector2D local, out Vector2D outward)
    {
        double depth = double.NegativeInfinity;
        outward = default;
        foreach (Edge edge in _edges)
        {
            double beyond = (local - edge.Start).Dot(edge.Outward);
            if (beyond > depth)
            {
                depth = beyond;
                outward = edge.Outward;
            }
        }
        if (depth < 0 && _edges.Length > 2)
            return depth;
        double least = double.PositiveInfinity;
        Vector2D nearest = default;
        foreach (Edge edge in _edges)
        {
            Vector2D away = Vectors.FromSegment(local, edge.Start, edge.Along);
            double square = away.Dot(away);
            if (square < least)
            {
                least = square;
                nearest = away;
            }
        }
        double distance = Math.Sqrt(least);
        if (distance > 0)
            outward = nearest * (1 / distance);
        return distance;
    }

    private static Bounds BoundsOf(IReadOnlyList<Vector2D> footprint, double bottom, double top)
    {
        Bounds box = Bounds.Of(footprint[0].At(bottom), footprint[0].At(top));
        foreach (Vector2D corner in footprint)
            box = box.With(Bounds.Of(corner.At(bottom), corner.At(top)));
        return box;
    }

    private static Edge[] MakeEdges(IReadOnlyList<Vector2D> footprint)
    {
        double area = 0;
        for (int i = 0; i < footprint.Count; i++)
            area += (footprint[i] - footprint[0]).CrossRight(footprint[(i + 1) % footprint.Count] - footprint[0]);
        double toLeft = area < 0 ? 1 : -1;
        var edges = new List<Edge>();
        for (int i = 0; i < footprint.Count; i++)
        {
            Vector2D along = footprint[(i + 1) % footprint.Count] - footprint[i];
            double length = along.Length;
            if (length > 0)
                edges.Add(new Edge(footprint[i] - footprint[0], along, along.Right * (toLeft / length)));
        }
        if (edges.Count == 0)
            edges.Add(new Edge(default, default, new Vector2D(1, 0)));
        return edges.ToArray();
    }

    private readonly record struct Edge(Vector2D Start, Vector2D Along, Vector2D Outward);
}

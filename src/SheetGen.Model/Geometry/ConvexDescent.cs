namespace SheetGen.Model.Geometry;

/// <summary>
/// The least of sd(p(u)) - r(u) over the depth u of a hole. The function is convex, so its tangents at two depths bound it from below
/// between them: the search ends when the best value met is within <see cref="Tolerance"/> of that bound.
/// </summary>
internal static class ConvexDescent
{
    private const double Tolerance = 1e-11;
    private const int MostSteps = 200;

    /// <param name="decide">Where not NaN, the search ends as soon as it is sure on which side of this value the least lies.</param>
    /// <param name="depth">The depth of the value returned.</param>
    /// <returns>The least value; with <paramref name="decide"/> some value on the same side of it.</returns>
    public static double Least(in Hole hole, Solid solid, double decide, out double depth)
    {
        var line = new Line(solid, hole.Head - solid.Anchor, hole);
        Sample a = line.At(0);
        depth = 0;
        if (a.Slope >= 0 || a.Value < decide || a.Value - hole.Length * (1 + hole.Drift) >= decide)
            return a.Value;
        Sample b = line.At(hole.Length);
        depth = hole.Length;
        if (b.Slope <= 0 || b.Value < decide)
            return b.Value;
        double width = b.Depth - a.Depth;
        for (int step = 0; step < MostSteps; step++)
        {
            double meet = Math.Clamp((a.Value - b.Value + b.Slope * b.Depth - a.Slope * a.Depth) / (b.Slope - a.Slope), a.Depth, b.Depth);
            double bound = a.Value + a.Slope * (meet - a.Depth);
            Sample best = a.Value <= b.Value ? a : b;
            depth = best.Depth;
            if (best.Value - bound <= Tolerance || bound >= decide || best.Value < decide)
                return best.Value;
            Sample next = line.At(Next(a, b, meet, step, ref width));
            if (next.Depth <= a.Depth || next.Depth >= b.Depth)
                break;
            if (next.Slope == 0)
            {
                depth = next.Depth;
                return next.Value;
            }
            if (next.Slope < 0)
                a = next;
            else
                b = next;
        }
        depth = a.Value <= b.Value ? a.Depth : b.Depth;
        return Math.Min(a.Value, b.Value);
    }

    /// <summary>
    /// In turn where the tangents meet (finds a crease), where the slope should be 0 (finds a smooth bottom), and the middle when the
    /// two did not halve the bracket.
    /// </summary>
    private static double Next(Sample a, Sample b, double meet, int step, ref double width)
    {
        double middle = a.Depth + (b.Depth - a.Depth) / 2;
        double next = meet;
        if (step % 3 == 1)
        {
            next = a.Depth - a.Slope * (b.Depth - a.Depth) / (b.Slope - a.Slope);
        }
        else if (step % 3 == 2)
        {
            bool halved = b.Depth - a.Depth <= width / 2;
            width = b.Depth - a.Depth;
            next = halved ? meet : middle;
        }
        return next > a.Depth && next < b.Depth ? next : middle;
    }

    private readonly record struct Sample(double Depth, double Value, double Slope);

    private readonly struct Line(Solid solid, Vector3D head, in Hole hole)
    {
        private readonly Solid _solid = solid;
        private readonly Vector3D _head = head;
        private readonly Hole _hole = hole;

        public Sample At(double depth)
        {
            double distance = _solid.Measure(_head + _hole.Direction * depth, out Vector3D outward);
            return new Sample(depth, distance - _hole.RadiusAt(depth), outward.Dot(_hole.Direction) - _hole.Drift);
        }
    }
}

namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>Curves of a drawing as knots near enough to each other.</summary>
internal static class Curves
{
    private const int LeastParts = 4;
    private const int MostParts = 720;

    /// <summary>An arc in the plane of its own coordinates, counter-clockwise from one angle over a sweep (radians, negative for clockwise).</summary>
    public static Stroke Arc(Point3 center, double radius, double from, double sweep, double error) =>
        Ellipse(center, new Point3(radius, 0, 0), new Point3(0, radius, 0), from, sweep, error);

    /// <summary>An elliptic arc with two half axes.</summary>
    public static Stroke Ellipse(Point3 center, Point3 major, Point3 minor, double from, double sweep, double error)
    {
        double size = Math.Max(major.Length, minor.Length);
        // Sagitta of a part: size * (1 - cos(step / 2)), never more than size * step^2 / 8.
        int count = Parts(Math.Abs(sweep) * Math.Sqrt(size / (8 * error)));
        var knots = new List<Knot>();
        for (int i = 0; i <= count; i++)
        {
            double a = from + sweep * i / count, c = Math.Cos(a), s = Math.Sin(a);
            knots.Add(new Knot(center + major * c + minor * s, (minor * c - major * s) * Math.Sign(sweep)));
        }
        return new Stroke(knots, size * (1 - Math.Cos(sweep / count / 2)));
    }

    /// <summary>A polyline's side with a bulge: the tangent of a quarter of its angle, positive to the left.</summary>
    public static Stroke Bulged(Point3 a, Point3 b, double bulge, double error)
    {
        Point3 chord = b - a;
        if (Math.Abs(bulge) < 1e-9 || chord.PlanLength == 0)
            return Stroke.Straight(a, b);
        double radius = chord.PlanLength * (1 + bulge * bulge) / (4 * Math.Abs(bulge)), sweep = 4 * Math.Atan(bulge);
        var left = new Point3(-chord.Y, chord.X, 0);
        Point3 center = a + chord * 0.5 + left * ((1 - bulge * bulge) / (4 * bulge));
        double from = Math.Atan2(a.Y - center.Y, a.X - center.X);
        Stroke arc = Arc(center, radius, from, sweep, error);
        Knot[] knots = [.. arc.Knots];
        (knots[0], knots[^1]) = (knots[0] with { At = a }, knots[^1] with { At = b });
        return arc with { Knots = knots };
    }

    /// <summary>A spline by its control points, knots and weights (rational B-spline, de Boor's rule); null where the figures do not fit together.</summary>
    public static Stroke? Spline(int degree, IReadOnlyList<double> knots, IReadOnlyList<Point3> control, IReadOnlyList<double> weights, double error)
    {
        int n = control.Count;
        if (degree is < 1 or > 12 || n <= degree || knots.Count != n + degree + 1 || (weights.Count > 0 && weights.Count != n) || weights.Any(w => w <= 0))
            return null;
        double[] spans = [.. knots.Skip(degree).Take(n - degree + 1).Distinct().Order()];
        if (spans.Length < 2)
            return null;
        double size = control.Max(p => (p - control[0]).Length);
        int each = Math.Max(2, Parts(degree * Math.Sqrt(size / (8 * error))) / Math.Max(1, spans.Length - 1));
        List<Knot> course = Sampled(each);
        // The error is measured against twice as many knots, and the parts are doubled until it holds.
        while (true)
        {
            List<Knot> finer = Sampled(each * 2);
            double worst = 0;
            for (int i = 1; i < finer.Count; i += 2)
            {
                Point3 a = finer[i - 1].At, b = finer[i + 1].At, p = finer[i].At - a, along = b - a;
                double t = along.Length == 0 ? 0 : (p.X * along.X + p.Y * along.Y + p.Z * along.Z) / (along.Length * along.Length);
                worst = Math.Max(worst, (p - along * t).Length);
            }
            if (worst <= error || finer.Count > 20_000)
                return new Stroke(course, Math.Max(worst, 1e-12));
            (course, each) = (finer, each * 2);
        }

        List<Knot> Sampled(int parts)
        {
            var list = new List<Knot>();
            for (int s = 0; s + 1 < spans.Length; s++)
            {
                for (int i = s == 0 ? 0 : 1; i <= parts; i++)
                    list.Add(At(spans[s] + (spans[s + 1] - spans[s]) * i / parts, s + 2 == spans.Length && i == parts));
            }
            return list;
        }

        Knot At(double u, bool last)
        {
            int k = degree;
            while (k + 1 < n && knots[k + 1] <= u)
                k++;
            double h = (spans[^1] - spans[0]) * 1e-7;
            Point3 p = Value(u, k), q = last ? p : Value(Math.Min(u + h, knots[k + 1]), k), r = Value(Math.Max(u - h, knots[k]), k);
            Point3 along = last || (q - p).Length < 1e-300 ? p - r : q - p;
            return new Knot(p, along);
        }

        Point3 Value(double u, int k)
        {
            var d = new (Point3 P, double W)[degree + 1];
            for (int j = 0; j <= degree; j++)
            {
                double w = weights.Count > 0 ? weights[k - degree + j] : 1;
                d[j] = (control[k - degree + j] * w, w);
            }
            for (int r = 1; r <= degree; r++)
            {
                for (int j = degree; j >= r; j--)
                {
                    int i = k - degree + j;
                    double span = knots[i + degree - r + 1] - knots[i], a = span == 0 ? 0 : (u - knots[i]) / span;
                    d[j] = (d[j - 1].P * (1 - a) + d[j].P * a, d[j - 1].W * (1 - a) + d[j].W * a);
                }
            }
            return d[degree].P * (1 / d[degree].W);
        }
    }

    private static int Parts(double parts) => (int)Math.Clamp(Math.Ceiling(parts), LeastParts, MostParts);
}

using SheetGen.Model;

namespace SheetGen.Exchange.Scene;

/// <summary>A piece of the developed elevation between two places, with straight lower and upper edges.</summary>
internal readonly record struct Trapezoid(double From, double To, double LowFrom, double LowTo, double HighFrom, double HighTo);

/// <summary>Cuts outlines of the developed elevation into upright trapezoids.</summary>
internal static class Developed
{
    private const double Tiny = 1e-9;

    /// <param name="rings">Closed rings that do not cross; what lies inside of an odd number of them counts.</param>
    /// <param name="stops">Further places to cut at.</param>
    public static IEnumerable<Trapezoid> Cut(IReadOnlyList<IReadOnlyList<ProfilePoint>> rings, IEnumerable<double> stops)
    {
        List<(ProfilePoint A, ProfilePoint B)> edges = [.. rings.SelectMany(Edges)];
        if (edges.Count == 0)
            yield break;
        double low = edges.Min(e => e.A.Along), high = edges.Max(e => e.B.Along);
        double[] places = [.. new SortedSet<double>([.. edges.Select(e => e.A.Along), .. edges.Select(e => e.B.Along), .. stops.Where(s => s > low && s < high)])];
        for (int i = 0; i + 1 < places.Length; i++)
        {
            double from = places[i], to = places[i + 1], middle = from + (to - from) / 2;
            if (to - from < Tiny)
                continue;
            (ProfilePoint A, ProfilePoint B)[] across = [.. edges.Where(e => e.A.Along < middle && e.B.Along > middle).OrderBy(e => At(e, middle))];
            for (int k = 0; k + 1 < across.Length; k += 2)
            {
                var piece = new Trapezoid(from, to, At(across[k], from), At(across[k], to), At(across[k + 1], from), At(across[k + 1], to));
                if (Math.Max(piece.HighFrom - piece.LowFrom, piece.HighTo - piece.LowTo) > Tiny)
                    yield return piece;
            }
        }
    }

    /// <summary>Edges with their down-station end first; upright ones are left out.</summary>
    private static IEnumerable<(ProfilePoint, ProfilePoint)> Edges(IReadOnlyList<ProfilePoint> ring)
    {
        for (int i = 0; i < ring.Count; i++)
        {
            ProfilePoint a = ring[i], b = ring[(i + 1) % ring.Count];
            if (Math.Abs(a.Along - b.Along) > Tiny)
                yield return a.Along < b.Along ? (a, b) : (b, a);
        }
    }

    private static double At((ProfilePoint A, ProfilePoint B) edge, double along) =>
        edge.A.Elevation + (edge.B.Elevation - edge.A.Elevation) * ((along - edge.A.Along) / (edge.B.Along - edge.A.Along));
}

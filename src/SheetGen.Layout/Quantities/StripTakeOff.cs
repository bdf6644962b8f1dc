using NetTopologySuite.Geometries;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Drainage strips on each leg: in the middle between nail columns, no farther apart than the greatest spacing and no farther than half
/// of it from the leg's ends. Each time the last free middle within reach is taken; where none is free, the last place clear of all
/// holes; where there is none either, the farthest place within reach, and the nails touched are named.
/// </summary>
internal static class StripTakeOff
{
    /// <summary>Greatest spacing where the project file gives none: 10 ft or 3 m (common practice, no source).</summary>
    public static double DefaultSpacing(LengthUnit unit) => Lengths.IsFoot(unit) ? 10 : 3;

    public static List<DrainStrip> Measure(FaceRegions regions, IReadOnlyList<Nail> nails, LengthUnit unit)
    {
        Face face = regions.Face;
        double spacing = face.Wall.Drainage?.MaxSpacing ?? DefaultSpacing(unit);
        double half = (face.Wall.Drainage?.StripWidth ?? 0) / 2;
        var strips = new List<DrainStrip>();
        foreach (Leg leg in face.Legs)
        {
            List<(double From, double To, string Mark)> blocked =
            [
                .. nails.Where(n => leg.Has(n.Along)).OrderBy(n => n.Along).ThenBy(n => n.Mark, StringComparer.Ordinal)
                    .Select(n => (n.Along - half - n.HoleDiameter / 2, n.Along + half + n.HoleDiameter / 2, n.Mark)),
            ];
            List<(double From, double To)> free = Free(leg, half, blocked);
            Geometry net = regions.Net(leg);
            double reach = spacing / GreatestScale(face, leg);
            double limit = leg.Start + reach / 2, last = leg.Start;
            while (true)
            {
                double at = Choose(free, last, Math.Min(limit, leg.End - half));
                strips.Add(Make(regions, net, spacing, at, [.. blocked.Where(b => b.From < at - Tiny && at + Tiny < b.To).Select(b => b.Mark)]));
                if (at >= leg.End - reach / 2 - Tiny)
                    break;
                last = at;
                limit = at + reach;
            }
        }
        return strips;
    }

    private const double Tiny = 1e-9;

    private static double Choose(List<(double From, double To)> free, double after, double limit)
    {
        double? middle = null, clear = null;
        foreach ((double from, double to) in free)
        {
            double centre = (from + to) / 2;
            if (centre > after + Tiny && centre <= limit + Tiny)
                middle = centre;
            double farthest = Math.Min(to, limit);
            if (farthest >= from && farthest > after + Tiny)
                clear = farthest;
        }
        return middle ?? clear ?? Math.Max(limit, after + Tiny * 10);
    }

    private static List<(double From, double To)> Free(Leg leg, double half, List<(double From, double To, string Mark)> blocked)
    {
        var free = new List<(double From, double To)>();
        double open = leg.Start + half;
        foreach ((double from, double to, _) in blocked)
        {
            if (from > open + Tiny)
                free.Add((open, from));
            open = Math.Max(open, to);
        }
        if (leg.End - half > open + Tiny)
            free.Add((open, leg.End - half));
        return free;
    }

    private static DrainStrip Make(FaceRegions regions, Geometry net, double spacing, double at, IReadOnlyList<string> touches)
    {
        Wall wall = regions.Face.Wall;
        return new DrainStrip(wall, PanelTakeOff.SectionOf(wall, at), at, spacing, FaceRegions.HeightAt(net, at) * regions.SlopeFactor(), touches);
    }

    private static double GreatestScale(Face face, Leg leg)
    {
        double greatest = 1;
        foreach (LayoutPiece piece in face.Wall.LayoutLine.Pieces)
        {
            if (piece.End <= leg.Start || piece.Start >= leg.End)
                continue;
            foreach (double elevation in new[] { FaceRegions.Lowest(face.Wall), FaceRegions.Highest(face.Wall) })
                greatest = Math.Max(greatest, 1 - piece.Curvature * face.Wall.Side * face.OffsetAt(elevation));
        }
        return greatest;
    }
}

using NetTopologySuite.Geometries;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>Drainage strips: where <see cref="StripPlaces"/> puts them, from the bottom to the top of the face.</summary>
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
            Geometry net = regions.Net(leg);
            if (net.IsEmpty)
                continue;
            List<(double From, double To, string Mark)> blocked =
            [
                .. nails.Where(n => leg.Has(n.Along)).OrderBy(n => n.Along).ThenBy(n => n.Mark, StringComparer.Ordinal)
                    .Select(n => (n.Along - half - n.HoleDiameter / 2, n.Along + half + n.HoleDiameter / 2, n.Mark)),
            ];
            foreach (double at in StripPlaces.Of(Extent(face, leg), spacing / GreatestScale(face, leg), half, [.. blocked.Select(b => (b.From, b.To))]))
            {
                string[] touches = [.. blocked.Where(b => b.From < at - Tolerance.Rounding && at + Tolerance.Rounding < b.To).Select(b => b.Mark)];
                strips.Add(new DrainStrip(
                    face.Wall, PanelTakeOff.SectionOf(face.Wall, at), at, spacing, Outlines.HeightAt(net, at) * regions.SlopeFactor(), touches));
            }
        }
        return strips;
    }

    /// <summary>Where a leg's face starts and ends: farthest out at any elevation, and farthest in at any.</summary>
    private static StripExtent Extent(Face face, Leg leg)
    {
        double low = FaceRegions.Lowest(face.Wall), high = FaceRegions.Highest(face.Wall);
        double Cut(Corner? corner, double z) => corner is null ? 0 : face.MitreCut(corner, z);
        double startLow = leg.Start + Cut(leg.StartCorner, low), startHigh = leg.Start + Cut(leg.StartCorner, high);
        double endLow = leg.End - Cut(leg.EndCorner, low), endHigh = leg.End - Cut(leg.EndCorner, high);
        return new StripExtent(Math.Min(startLow, startHigh), Math.Max(startLow, startHigh), Math.Min(endLow, endHigh), Math.Max(endLow, endHigh));
    }

    private static double GreatestScale(Face face, Leg leg)
    {
        double greatest = 0;
        foreach (LayoutPiece piece in face.Wall.LayoutLine.Pieces)
        {
            if (piece.End <= leg.Start || piece.Start >= leg.End)
                continue;
            foreach (double elevation in new[] { FaceRegions.Lowest(face.Wall), FaceRegions.Highest(face.Wall) })
                greatest = Math.Max(greatest, 1 - Math.Min(piece.Curvature * face.Wall.Side * face.OffsetAt(elevation), piece.CurvatureAt(piece.End) * face.Wall.Side * face.OffsetAt(elevation)));
        }
        return greatest <= 0 ? 1 : greatest;
    }
}

using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// The second way to a face area: the sum of narrow columns between the bends of top, bottom and mitres, each its height times its width
/// along the face at half height. Openings are deducted column by column.
/// </summary>
internal static class ColumnSums
{
    private const int Columns = 40;

    public static double Area(Face face, Section section)
    {
        Wall wall = face.Wall;
        double low = FaceRegions.Lowest(wall), high = FaceRegions.Highest(wall), sum = 0;
        foreach (Leg leg in face.Legs)
        {
            double[] starts = leg.StartCorner is { } opens ? [leg.Start + face.MitreCut(opens, low), leg.Start + face.MitreCut(opens, high)] : [leg.Start];
            double[] ends = leg.EndCorner is { } closes ? [leg.End - face.MitreCut(closes, low), leg.End - face.MitreCut(closes, high)] : [leg.End];
            double start = section.Start <= leg.Start ? starts.Min() : section.Start, end = section.End >= leg.End ? ends.Max() : section.End;
            if (section.End <= leg.Start || section.Start >= leg.End)
                continue;
            double[] bends =
            [
                .. wall.Top.Points.Concat(wall.Bottom.Points).Select(p => p.Along).Concat(wall.LayoutLine.Pieces.Select(p => p.Start)).Concat(starts).Concat(ends)
                    .Concat(wall.Openings.SelectMany(o => new[] { o.Start, o.End })).Where(a => a > start && a < end).Append(start).Append(end).Distinct().Order(),
            ];
            for (int b = 0; b + 1 < bends.Length; b++)
            {
                double width = (bends[b + 1] - bends[b]) / Columns;
                for (int i = 0; i < Columns; i++)
                    sum += width * Column(face, leg, bends[b] + (i + 0.5) * width);
            }
        }
        double slope = wall.Batter is { } batter ? 1 / Math.Cos(Angles.ToRadians(batter.Angle)) : 1;
        return sum * slope;
    }

    /// <summary>Face along a place for one of length along the layout line.</summary>
    private static double Column(Face face, Leg leg, double along)
    {
        Wall wall = face.Wall;
        double inside = Math.Clamp(along, leg.Start, leg.End);
        bool isEnd = inside >= leg.End;
        (double Low, double High) open = (isEnd ? wall.Bottom.Before(inside) : wall.Bottom.At(inside), isEnd ? wall.Top.Before(inside) : wall.Top.At(inside));
        if (leg.StartCorner is { } opens)
            open = Within(open, face, opens, along - leg.Start);
        if (leg.EndCorner is { } closes)
            open = Within(open, face, closes, leg.End - along);
        double sum = Height(face, inside, open.Low, open.High);
        foreach (Opening opening in wall.Openings)
        {
            if (opening.Start <= along && along < opening.End)
                sum -= Height(face, inside, Math.Max(open.Low, opening.Bottom), Math.Min(open.High, opening.Top));
        }
        return sum;
    }

    private static double Height(Face face, double along, double low, double high) =>
        high <= low ? 0 : (high - low) * face.Scale(along, (low + high) / 2);

    /// <summary>The elevations at which a corner's mitre takes no more than a distance from it; the mitre is straight.</summary>
    private static (double Low, double High) Within((double Low, double High) open, Face face, Corner corner, double distance)
    {
        double at0 = face.MitreCut(corner, 0), lean = face.MitreCut(corner, 1) - at0;
        if (Math.Abs(lean) < QuantityTolerance.NoLean)
            return at0 <= distance ? open : (open.Low, open.Low);
        double limit = (distance - at0) / lean;
        return lean > 0 ? (open.Low, Math.Min(open.High, limit)) : (Math.Max(open.Low, limit), open.High);
    }
}

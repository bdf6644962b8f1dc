using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// The second way to a face area: the sum of narrow columns between the bends of top and bottom, each its middle height times its width
/// along the face at half height. Mitres are taken off at half height; openings are deducted as boxes.
/// </summary>
internal static class ColumnSums
{
    private const int Columns = 40;

    public static double Area(Face face, Section section)
    {
        Wall wall = face.Wall;
        double sum = 0;
        foreach (Leg leg in face.Legs)
        {
            double start = Math.Max(section.Start, leg.Start), end = Math.Min(section.End, leg.End);
            if (end <= start)
                continue;
            double[] bends =
            [
                .. wall.Top.Points.Concat(wall.Bottom.Points).Select(p => p.Along).Concat(wall.LayoutLine.Pieces.Select(p => p.Start))
                    .Concat(wall.Openings.SelectMany(o => new[] { o.Start, o.End })).Where(a => a > start && a < end).Append(start).Append(end).Distinct().Order(),
            ];
            for (int b = 0; b + 1 < bends.Length; b++)
            {
                double width = (bends[b + 1] - bends[b]) / Columns;
                for (int i = 0; i < Columns; i++)
                    sum += Column(face, bends[b] + (i + 0.5) * width, width);
            }
            if (start == leg.Start && leg.StartCorner is { } opens)
                sum -= Mitre(face, opens, wall.Top.At(start), wall.Bottom.At(start));
            if (end == leg.End && leg.EndCorner is { } closes)
                sum -= Mitre(face, closes, wall.Top.Before(end), wall.Bottom.Before(end));
        }
        double slope = wall.Batter is { } batter ? 1 / Math.Cos(Angles.ToRadians(batter.Angle)) : 1;
        return sum * slope;
    }

    private static double Column(Face face, double along, double width)
    {
        Wall wall = face.Wall;
        double top = wall.Top.At(along), bottom = wall.Bottom.At(along);
        double sum = (top - bottom) * face.Scale(along, (top + bottom) / 2);
        foreach (Opening opening in wall.Openings)
        {
            double high = Math.Min(top, opening.Top), low = Math.Max(bottom, opening.Bottom);
            if (opening.Start <= along && along < opening.End && high > low)
                sum -= (high - low) * face.Scale(along, (high + low) / 2);
        }
        return sum * width;
    }

    private static double Mitre(Face face, Corner corner, double top, double bottom) =>
        face.MitreCut(corner, (top + bottom) / 2) * (top - bottom);
}

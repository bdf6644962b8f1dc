using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>
/// Vertical curves of profiles, laid as chords between points on the curve that are never off it by more than 0.001 ft (0.0003 m): a tenth
/// (a third) of what elevations are rounded to.
/// </summary>
internal sealed class VerticalCurves(LengthUnit unit, ProblemList problems)
{
    private const int MostChords = 2000;

    /// <summary>Greatest distance of a chord from its curve.</summary>
    public static double Error(LengthUnit unit) => unit == LengthUnit.Metre ? 0.0003 : 0.001;

    /// <summary>The profile with its curves; null where a curve is faulty or runs into another, which is reported.</summary>
    /// <param name="points">The points of the list, in order.</param>
    /// <param name="list">The list that they were read from.</param>
    /// <param name="show">Prints the station of a place.</param>
    public List<ProfilePoint>? Lay(List<ProfilePoint> points, ListItem list, Func<double, string> show)
    {
        MapItem[] maps = [.. list.Maps];
        if (!Array.Exists(maps, HasCurve))
            return points;
        var laid = new List<ProfilePoint>();
        bool faulty = false;
        for (int i = 0; i < points.Count; i++)
        {
            if (!HasCurve(maps[i]))
            {
                laid.Add(points[i]);
                continue;
            }
            if (Curve(points, i, maps[i]) is not { } curve)
            {
                faulty = true;
                continue;
            }
            double before = laid.Count == 0 ? double.NegativeInfinity : laid[^1].Along, begin = points[i].Along - curve.In, end = points[i].Along + curve.Out;
            if (begin < before - Tolerance.Length || (!HasCurve(maps[i + 1]) && end > points[i + 1].Along + Tolerance.Length))
            {
                problems.Add(ProblemCodes.VerticalCurve, maps[i].Spot, $"the vertical curve {show(begin)} to {show(end)} runs into its neighbour", "shorten it, or correct the points", maps[begin < before - Tolerance.Length ? i - 1 : i + 1].Spot);
                faulty = true;
                continue;
            }
            laid.AddRange(curve.Points().Where(p => laid.Count == 0 || p.Along > laid[^1].Along + Tolerance.Length));
        }
        return faulty ? null : laid;
    }

    private static bool HasCurve(MapItem map) => map.Gives("curve") || map.Gives("curve_in") || map.Gives("curve_out") || map.Gives("curve_radius");

    private VerticalCurve? Curve(List<ProfilePoint> points, int i, MapItem map)
    {
        if (i == 0 || i == points.Count - 1)
        {
            problems.Add(ProblemCodes.VerticalCurve, map.Spot, "a vertical curve stands between two grades: the first and the last point have none", "remove it, or add the point beyond");
            return null;
        }
        ProfilePoint a = points[i - 1], b = points[i], c = points[i + 1];
        if (b.Along - a.Along < Tolerance.Length || c.Along - b.Along < Tolerance.Length)
        {
            problems.Add(ProblemCodes.VerticalCurve, map.Spot, "a vertical curve cannot begin or end at a vertical step", "remove it, or correct the points");
            return null;
        }
        if (new[] { map.Gives("curve"), map.Gives("curve_in") || map.Gives("curve_out"), map.Gives("curve_radius") }.Count(g => g) > 1)
        {
            problems.Add(ProblemCodes.ExactlyOne, map.Spot, "a vertical curve takes curve, or curve_in and curve_out, or curve_radius", "keep one of them");
            return null;
        }
        double one = (b.Elevation - a.Elevation) / (b.Along - a.Along), two = (c.Elevation - b.Elevation) / (c.Along - b.Along);
        if (map.Number("curve_radius") is { } radius)
            return VerticalCurve.Circular(b, one, two, radius, Error(unit), MostChords);
        if (map.Number("curve") is { } length)
            return VerticalCurve.Parabolic(b, one, two, length / 2, length / 2, Error(unit), MostChords);
        if (map.Number("curve_in") is { } before && map.Number("curve_out") is { } after)
            return VerticalCurve.Parabolic(b, one, two, before, after, Error(unit), MostChords);
        if (!map.Keys.Keys.Any(map.IsFaulty))
            problems.Add(ProblemCodes.MissingKey, map.Spot, "a vertical curve that is not symmetrical takes curve_in and curve_out", "give both, or curve alone");
        return null;
    }
}

using SheetGen.Model;

namespace SheetGen.ProjectFile.Building;

/// <summary>
/// Places of the panel breaks. Panels restart at corners (a corner is a break), and their width counts on the wall's face from mitre to
/// mitre; on a battered wall on the plumb face through the batter's elevation, since panels stand plumb.
/// </summary>
internal static class PanelJoints
{
    /// <summary>The breaks strictly inside a wall, in order of station.</summary>
    /// <param name="wall">The wall; its own panel breaks are not looked at.</param>
    public static IReadOnlyList<double> Of(Wall wall, Panels panels)
    {
        var face = new Face(wall with { Batter = null });
        var breaks = new List<double>();
        foreach (Leg leg in face.Legs)
        {
            breaks.AddRange(InLeg(face, leg, panels));
            if (leg.EndCorner is { } corner)
                breaks.Add(corner.Along);
        }
        return breaks;
    }

    private static IEnumerable<double> InLeg(Face face, Leg leg, Panels panels)
    {
        double low = leg.Start + (leg.StartCorner is null ? 0 : face.MitreCut(leg.StartCorner, 0));
        double high = leg.End - (leg.EndCorner is null ? 0 : face.MitreCut(leg.EndCorner, 0));
        if (high - low <= Tolerance.Length)
            yield break;
        List<Knot> knots = Knots(face, leg, low, high);
        double anchor = leg.Has(panels.FirstBreak) ? FaceDistance(knots, panels.FirstBreak) : 0;
        double first = anchor - Math.Floor(anchor / panels.Width) * panels.Width;
        for (int i = 0; first + i * panels.Width < knots[^1].Distance; i++)
        {
            double along = Along(knots, first + i * panels.Width);
            if (along > leg.Start + Tolerance.Length && along < leg.End - Tolerance.Length)
                yield return along;
        }
    }

    /// <summary>Where the scale between layout line and face changes, with the distance along the face from the leg's mitre.</summary>
    private static List<Knot> Knots(Face face, Leg leg, double low, double high)
    {
        IEnumerable<double> inner = face.Wall.LayoutLine.Pieces.Select(p => p.Start)
            .Where(s => s > Math.Max(low, leg.Start) && s < Math.Min(high, leg.End));
        var knots = new List<Knot> { new(low, 0) };
        foreach (double along in inner.Append(high))
        {
            Knot before = knots[^1];
            double middle = Math.Clamp((before.Along + along) / 2, leg.Start, leg.End);
            knots.Add(new Knot(along, before.Distance + (along - before.Along) * face.Scale(middle, 0)));
        }
        return knots;
    }

    private static double FaceDistance(List<Knot> knots, double along)
    {
        int i = Math.Clamp(knots.FindIndex(k => k.Along >= along), 1, knots.Count - 1);
        Knot a = knots[i - 1], b = knots[i];
        return a.Distance + (along - a.Along) * (b.Distance - a.Distance) / (b.Along - a.Along);
    }

    private static double Along(List<Knot> knots, double distance)
    {
        int i = Math.Clamp(knots.FindIndex(k => k.Distance >= distance), 1, knots.Count - 1);
        Knot a = knots[i - 1], b = knots[i];
        return a.Along + (distance - a.Distance) * (b.Along - a.Along) / (b.Distance - a.Distance);
    }

    private readonly record struct Knot(double Along, double Distance);
}

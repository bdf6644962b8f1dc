namespace SheetGen.Model;

/// <summary>
/// Edges of the columns of precast panels on a leg. Panels stand plumb on the face through the batter's elevation; there they restart at
/// the mitres of corners and their width counts.
/// </summary>
public static class PanelColumns
{
    /// <summary>The plumb face that panels stand on.</summary>
    public static Face PlumbFace(Wall wall) => new(wall with { Batter = null });

    /// <summary>
    /// Distances along the layout line of the column edges of a leg, both mitres included, which lie beyond the leg's ends at an inside
    /// corner; empty where the mitres leave nothing.
    /// </summary>
    /// <param name="plumb">The plumb face of the wall.</param>
    public static IReadOnlyList<double> Edges(Face plumb, Leg leg, Panels panels)
    {
        double low = leg.Start + (leg.StartCorner is { } opens ? plumb.MitreCut(opens, 0) : 0);
        double high = leg.End - (leg.EndCorner is { } closes ? plumb.MitreCut(closes, 0) : 0);
        if (high - low <= Tiny)
            return [];
        List<Knot> knots = Knots(plumb, leg, low, high);
        double anchor = leg.Has(panels.FirstBreak) ? FaceDistance(knots, panels.FirstBreak) : 0;
        double first = anchor - Math.Floor(anchor / panels.Width) * panels.Width;
        var edges = new List<double> { low };
        for (int i = 0; first + i * panels.Width < knots[^1].Distance - Tiny; i++)
        {
            double along = Along(knots, first + i * panels.Width);
            if (along > low + Tiny && along < high - Tiny)
                edges.Add(along);
        }
        edges.Add(high);
        return edges;
    }

    /// <summary>Length along the plumb face between two places of a leg; beyond its corners the face goes on straight.</summary>
    public static double Length(Face plumb, Leg leg, double from, double to)
    {
        List<Knot> knots = Knots(plumb, leg, Math.Min(from, leg.Start), Math.Max(to, leg.End));
        return FaceDistance(knots, to) - FaceDistance(knots, from);
    }

    private const double Tiny = 1e-6;

    /// <summary>Where the scale between layout line and face changes, with the distance along the face from the first place.</summary>
    private static List<Knot> Knots(Face plumb, Leg leg, double low, double high)
    {
        IEnumerable<double> inner = plumb.Wall.LayoutLine.Pieces.SelectMany(p => p.Stops()).Distinct()
            .Where(s => s > Math.Max(low, leg.Start) && s < Math.Min(high, leg.End));
        var knots = new List<Knot> { new(low, 0) };
        foreach (double along in inner.Append(high))
        {
            Knot before = knots[^1];
            double middle = Math.Clamp((before.Along + along) / 2, leg.Start, leg.End);
            knots.Add(new Knot(along, before.Distance + (along - before.Along) * plumb.Scale(middle, 0)));
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

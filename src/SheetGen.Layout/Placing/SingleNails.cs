using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The last step of the search: each nail by itself takes the cheapest direction at its own place that is clear of all others, until
/// none can. Stretches solved with a limited number of looks may leave such nails. Each change lowers the cost, so it comes to an end.
/// </summary>
public static class SingleNails
{
    public static void Improve(IReadOnlyList<RowState> states, PlacedIndex index, double clearance)
    {
        bool better = true;
        while (better)
        {
            better = false;
            foreach (RowState state in states)
            {
                foreach (Placed nail in state.Nails.ToList())
                {
                    if (Cheaper(nail, index, clearance) is not { } turned)
                        continue;
                    int label = nail.Choice.Label;
                    state.Replace(label, label, [.. state.Between(label, label).Select(n => ReferenceEquals(n, nail) ? turned : n)], index);
                    better = true;
                }
            }
        }
    }

    private static Placed? Cheaper(Placed nail, PlacedIndex index, double clearance)
    {
        if (nail.Choice.IsPinned || (nail.Turning.IsStraight && !nail.IsUnresolved))
            return null;
        for (int t = 0; t < nail.Choice.Turnings.Count; t++)
        {
            Turning turning = nail.Choice.Turnings[t];
            if (!(Placed.CostOf(nail.Row, nail.Choice, turning, false) < nail.Cost))
                return null;
            if (!nail.Row.IsFree(nail.Choice, t))
                continue;
            Placed turned = Placed.At(nail.Row, nail.Choice, turning, false);
            if (index.Near(turned.Hole, clearance).All(o =>
                ReferenceEquals(o, nail) || o.IsUnresolved || !HoleDistance.CloserThan(turned.Hole, o.Hole, clearance)))
                return turned;
        }
        return null;
    }
}

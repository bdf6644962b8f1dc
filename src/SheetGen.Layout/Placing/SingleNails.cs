namespace SheetGen.Layout.Placing;

/// <summary>
/// The last step of the search: each nail by itself takes the cheapest direction at its own place that is clear of all others, until
/// none can. Stretches solved with a limited number of looks may leave such nails. Each change lowers the cost, so it comes to an end.
/// </summary>
public static class SingleNails
{
    public static void Improve(LayoutState layout)
    {
        bool better = true;
        while (better)
        {
            better = false;
            foreach (RowState state in layout.Rows)
            {
                foreach (Placed nail in state.Nails.ToList())
                {
                    if (Cheaper(layout, nail) is not { } turned)
                        continue;
                    layout.Replace([nail], [turned]);
                    better = true;
                }
            }
        }
    }

    private static Placed? Cheaper(LayoutState layout, Placed nail)
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
            if (layout.ConflictsOf(turned).All(o => ReferenceEquals(o, nail)))
                return turned;
        }
        return null;
    }
}

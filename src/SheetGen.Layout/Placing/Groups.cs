namespace SheetGen.Layout.Placing;

/// <summary>
/// For each noted or unresolved nail: the column of nails it belongs to is solved at once with all others fixed, so that nails above
/// and below can give way together; then it and those that stand in its way.
/// </summary>
public sealed class Groups(LayoutState layout)
{
    private const int Greatest = 10;
    private const long Looks = 60_000;

    /// <summary>True where anything got better.</summary>
    public bool Run()
    {
        bool better = false;
        foreach (RowState state in layout.Rows)
        {
            foreach (Placed nail in state.Nails.ToList())
            {
                if (nail.Choice.IsPinned || !(nail.IsUnresolved || nail.Turning.IsNoted) || !layout.IsPlaced(nail))
                    continue;
                bool solved = Improve(Column(nail));
                if (!solved)
                    solved = Improve([nail, .. layout.Blockers(nail).Take(Greatest - 1)]);
                better |= solved;
            }
        }
        return better;
    }

    /// <summary>One nail of each row of the bay, the nearest along the wall, from the top down.</summary>
    private IReadOnlyList<Placed> Column(Placed nail)
    {
        double along = nail.Choice.Head.Along, reach = nail.Row.Bay.HalfWindow;
        var column = new List<Placed>();
        foreach (RowState state in layout.Rows.Where(r => r.Row.Bay == nail.Row.Bay))
        {
            if (state.Row == nail.Row)
                column.Add(nail);
            else if (state.Nails.MinBy(n => Math.Abs(n.Choice.Head.Along - along)) is { } nearest && Math.Abs(nearest.Choice.Head.Along - along) <= reach)
                column.Add(nearest);
        }
        return [.. column.OrderByDescending(n => n.Choice.Head.Elevation)];
    }

    private bool Improve(IReadOnlyList<Placed> nails)
    {
        if (nails.Count < 2)
            return false;
        var group = new HashSet<Placed>(nails, ReferenceEqualityComparer.Instance);
        var search = new ChainSearch(
            new GroupPlaces(layout, nails), new Surroundings(layout.Index, n => !group.Contains(n), null, []), layout.Clearance);
        Cost old = nails.Aggregate(default(Cost), (sum, n) => sum + n.Cost);
        if (!(search.Limit < old) || search.Cheapest(true, Looks) is not { } chain || !(chain.Cost < old))
            return false;
        layout.Replace(nails, chain.Nails);
        return true;
    }
}

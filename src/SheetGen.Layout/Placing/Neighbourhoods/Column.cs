namespace SheetGen.Layout.Placing;

/// <summary>The column of nails that a nail belongs to, one of each row of its bay, is solved by chain search at once.</summary>
internal sealed class Column(District district) : INeighbourhood
{
    public bool MovesSideways => false;

    public bool Propose(Slot seed)
    {
        if (seed.Nails.Length != 1)
            return false;
        double along = seed.Nails[0].Choice.Head.Along, reach = seed.Row.Bay.HalfWindow;
        var column = new List<Slot>();
        foreach (RowState row in district.Layout.Rows.Where(r => r.Row.Bay == seed.Row.Bay))
        {
            Slot? nearest = row.Row == seed.Row ? seed : row.Slots.Where(s => s.Nails.Length == 1 && district.May(s))
                .MinBy(s => Math.Abs(s.Nails[0].Choice.Head.Along - along));
            if (nearest is not null && Math.Abs(nearest.Nails[0].Choice.Head.Along - along) <= reach)
                column.Add(nearest);
        }
        column.Sort((a, b) => b.Grid.Head.Elevation.CompareTo(a.Grid.Head.Elevation));
        return column.Count > 1 && ChainRebuild.Group(district, column);
    }
}

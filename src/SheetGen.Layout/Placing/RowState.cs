namespace SheetGen.Layout.Placing;

/// <summary>The nails of a row while the search goes on.</summary>
internal sealed class RowState(RowTask row, Slot[] slots)
{
    public RowTask Row { get; } = row;

    public IReadOnlyList<Slot> Slots => slots;

    /// <summary>In order along the wall.</summary>
    public IEnumerable<Placed> Nails => slots.SelectMany(s => s.Nails);

    /// <summary>Nails that stand for a grid station, in order along the wall.</summary>
    public IReadOnlyList<Placed> At(int ordinal) => slots[ordinal].Nails;

    /// <summary>The last place with a nail before a grid station.</summary>
    public HeadChoice? Before(int first)
    {
        for (int ordinal = first - 1; ordinal >= 0; ordinal--)
        {
            if (slots[ordinal].Nails.Length > 0)
                return slots[ordinal].Nails[^1].Choice;
        }
        return null;
    }

    /// <summary>The first place with a nail after a grid station.</summary>
    public HeadChoice? After(int last)
    {
        for (int ordinal = last + 1; ordinal < slots.Length; ordinal++)
        {
            if (slots[ordinal].Nails.Length > 0)
                return slots[ordinal].Nails[0].Choice;
        }
        return null;
    }

    /// <summary>What some grid stations cost, those left out included.</summary>
    public Cost CostOf(int first, int last)
    {
        Cost sum = default;
        for (int ordinal = first; ordinal <= last; ordinal++)
            sum += slots[ordinal].Cost;
        return sum;
    }

    /// <summary>Cost of some nails that stand for the grid stations from first to last.</summary>
    public static Cost CostOf(IEnumerable<Placed> nails, int first, int last)
    {
        Cost sum = default;
        int before = -1, stations = 0;
        foreach (Placed nail in nails)
        {
            sum += nail.Cost;
            stations += nail.Choice.Ordinal == before ? 0 : 1;
            before = nail.Choice.Ordinal;
        }
        return sum + Placed.LeavingOut(last - first + 1 - stations);
    }
}

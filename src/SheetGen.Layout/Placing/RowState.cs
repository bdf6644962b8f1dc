namespace SheetGen.Layout.Placing;

/// <summary>The nails of a row while the search goes on.</summary>
internal sealed class RowState(RowTask row, Slot[] slots)
{
    public RowTask Row { get; } = row;

    public IReadOnlyList<Slot> Slots => slots;

    /// <summary>In order along the wall.</summary>
    public IEnumerable<Placed> Nails => slots.SelectMany(s => s.Nails);

    /// <summary>Nails that stand for a grid station, in order along the wall.</summary>
    public IReadOnlyList<Placed> At(int label) => slots[label].Nails;

    /// <summary>The last place with a nail before a grid station.</summary>
    public HeadChoice? Before(int first)
    {
        for (int label = first - 1; label >= 0; label--)
        {
            if (slots[label].Nails.Length > 0)
                return slots[label].Nails[^1].Choice;
        }
        return null;
    }

    /// <summary>The first place with a nail after a grid station.</summary>
    public HeadChoice? After(int last)
    {
        for (int label = last + 1; label < slots.Length; label++)
        {
            if (slots[label].Nails.Length > 0)
                return slots[label].Nails[0].Choice;
        }
        return null;
    }

    /// <summary>What some grid stations cost, those left out included.</summary>
    public Cost CostOf(int first, int last)
    {
        Cost sum = default;
        for (int label = first; label <= last; label++)
            sum += slots[label].Cost;
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
            stations += nail.Choice.Label == before ? 0 : 1;
            before = nail.Choice.Label;
        }
        return sum + Placed.LeavingOut(last - first + 1 - stations);
    }
}

namespace SheetGen.Layout.Placing;

/// <summary>The nails of a row while the search goes on.</summary>
public sealed class RowState
{
    public RowState(RowTask row)
    {
        Row = row;
        for (int label = 0; label < row.Count; label++)
        {
            HeadChoice choice = row.GridChoice(label);
            Nails.Add(Placed.At(row, choice, choice.Turnings[0], false));
        }
    }

    public RowTask Row { get; }

    /// <summary>In order along the wall.</summary>
    public List<Placed> Nails { get; } = [];

    /// <summary>Grid stations whose nail may not leave its place, because cover would break.</summary>
    public HashSet<int> PlainOnly { get; } = [];

    public IEnumerable<Placed> Between(int first, int last) =>
        Nails.Where(n => n.Choice.Label >= first && n.Choice.Label <= last);

    public HeadChoice? Before(int first) => Nails.LastOrDefault(n => n.Choice.Label < first)?.Choice;

    public HeadChoice? After(int last) => Nails.FirstOrDefault(n => n.Choice.Label > last)?.Choice;

    /// <summary>Cost of the nails of some grid stations, stations left out included.</summary>
    public static Cost CostOf(IEnumerable<Placed> nails, int first, int last)
    {
        Cost sum = default;
        var seen = new HashSet<int>();
        foreach (Placed nail in nails)
        {
            sum += nail.Cost;
            seen.Add(nail.Choice.Label);
        }
        return sum + Placed.LeavingOut(last - first + 1 - seen.Count);
    }

    public Cost Cost => CostOf(Nails, 0, Row.Count - 1);

    /// <summary>Puts other nails in the place of those of some grid stations; the index follows.</summary>
    public void Replace(int first, int last, IReadOnlyList<Placed> nails, PlacedIndex index)
    {
        foreach (Placed old in Between(first, last).ToList())
            index.Remove(old);
        Nails.RemoveAll(n => n.Choice.Label >= first && n.Choice.Label <= last);
        Nails.AddRange(nails);
        Nails.Sort((a, b) => a.Choice.Head.Along.CompareTo(b.Choice.Head.Along));
        foreach (Placed nail in nails)
            index.Add(nail);
    }
}

namespace SheetGen.Layout.Placing;

/// <summary>The nails of a row while the search goes on.</summary>
public sealed class RowState
{
    /// <summary>More grid stations than can be left out between two nails.</summary>
    private const int Reach = 4;

    private readonly IReadOnlyList<Placed>[] _at;

    public RowState(RowTask row)
    {
        Row = row;
        _at = new IReadOnlyList<Placed>[row.Count];
        for (int label = 0; label < row.Count; label++)
        {
            HeadChoice choice = row.GridChoice(label);
            _at[label] = [Placed.At(row, choice, choice.Turnings[0], false)];
        }
    }

    public RowTask Row { get; }

    /// <summary>In order along the wall.</summary>
    public IEnumerable<Placed> Nails => _at.SelectMany(nails => nails);

    /// <summary>Grid stations whose nail may not leave its place, because cover would break.</summary>
    public HashSet<int> PlainOnly { get; } = [];

    public Cost Cost => CostOf(Nails, 0, Row.Count - 1);

    /// <summary>Nails that stand for a grid station, in order along the wall.</summary>
    public IReadOnlyList<Placed> At(int label) => _at[label];

    public IEnumerable<Placed> Between(int first, int last)
    {
        for (int label = Math.Max(first, 0); label <= Math.Min(last, _at.Length - 1); label++)
        {
            foreach (Placed nail in _at[label])
                yield return nail;
        }
    }

    /// <summary>The nails of the row before and after one of its nails.</summary>
    public (Placed? Before, Placed? After) Neighbours(Placed nail)
    {
        int label = nail.Choice.Label;
        Placed[] near = [.. Between(label - Reach, label + Reach)];
        int at = Array.FindIndex(near, n => ReferenceEquals(n, nail));
        return (at > 0 ? near[at - 1] : null, at + 1 < near.Length ? near[at + 1] : null);
    }

    public HeadChoice? Before(int first)
    {
        for (int label = first - 1; label >= 0; label--)
        {
            if (_at[label].Count > 0)
                return _at[label][^1].Choice;
        }
        return null;
    }

    public HeadChoice? After(int last)
    {
        for (int label = last + 1; label < _at.Length; label++)
        {
            if (_at[label].Count > 0)
                return _at[label][0].Choice;
        }
        return null;
    }

    /// <summary>Cost of all nails of some rows.</summary>
    public static Cost CostOf(IEnumerable<RowState> rows) => rows.Aggregate(default(Cost), (sum, row) => sum + row.Cost);

    /// <summary>Cost of the nails of some grid stations, stations left out included.</summary>
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

    /// <summary>All nails as they stand now.</summary>
    public IReadOnlyList<Placed>[] Snapshot() => [.. _at];

    /// <summary>Puts all nails back as they stood; the index follows.</summary>
    public void Restore(IReadOnlyList<Placed>[] snapshot, PlacedIndex index)
    {
        for (int label = 0; label < _at.Length; label++)
        {
            if (!ReferenceEquals(_at[label], snapshot[label]))
                Replace(label, label, snapshot[label], index);
        }
    }

    /// <summary>Puts other nails in the place of those of some grid stations; the index follows.</summary>
    public void Replace(int first, int last, IReadOnlyList<Placed> nails, PlacedIndex index)
    {
        foreach (Placed old in Between(first, last))
            index.Remove(old);
        for (int label = first; label <= last; label++)
            _at[label] = [];
        foreach (IGrouping<int, Placed> station in nails.GroupBy(n => n.Choice.Label))
            _at[station.Key] = [.. station];
        foreach (Placed nail in nails)
            index.Add(nail);
    }
}

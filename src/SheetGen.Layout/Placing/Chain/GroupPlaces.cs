namespace SheetGen.Layout.Placing;

/// <summary>
/// The places of a few slots that are solved together, one after the other whatever rows they are of: a column of nails, or a nail and
/// those in its way. Each nail may shift as far as its neighbours in its row allow.
/// </summary>
public sealed class GroupPlaces : ChainPlaces
{
    private readonly List<int> _level = [];
    private readonly int _last;

    /// <param name="slots">Slots with one nail each.</param>
    public GroupPlaces(LayoutState layout, IReadOnlyList<Slot> slots)
    {
        var levels = slots.Select(_ => new List<int>()).ToList();
        for (int level = 0; level < slots.Count; level++)
        {
            foreach (HeadChoice choice in Choices(layout, slots[level], slots))
            {
                levels[level].Add(Add(slots[level].Row, choice));
                _level.Add(level);
            }
        }
        _last = slots.Count - 1;
        InOrder = [.. Enumerable.Range(0, Count)];
        for (int level = 0; level < _last; level++)
        {
            foreach (int from in levels[level])
            {
                foreach (int to in levels[level + 1])
                    Join(from, to);
            }
        }
    }

    public override Cost? Start(int place) => _level[place] == 0 ? default(Cost) : null;

    public override Cost? End(int place) => _level[place] == _last ? default(Cost) : null;

    public override Cost Between(int from, int to) => default;

    private static IEnumerable<HeadChoice> Choices(LayoutState layout, Slot slot, IReadOnlyList<Slot> group)
    {
        RowState row = layout.Rows[slot.Row.Index];
        HeadChoice own = slot.Nails[0].Choice;
        HeadChoice? before = row.Before(slot.Label), after = row.After(slot.Label);
        bool IsInGroup(HeadChoice? beside) => beside is not null && group.Contains(row.Slots[beside.Label]);
        return IsInGroup(before) || IsInGroup(after)
            ? [own]
            : slot.Row.Choices[slot.Label].Where(c => c == own || (slot.Row.FitsAsNeighbours(before, c) && slot.Row.FitsAsNeighbours(c, after)));
    }
}

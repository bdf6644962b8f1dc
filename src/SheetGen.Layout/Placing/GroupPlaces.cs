namespace SheetGen.Layout.Placing;

/// <summary>
/// The places of a few nails that are solved together, one after the other whatever rows they are of: a column of nails, or a nail and
/// those in its way. Each may shift as far as its neighbours in its row allow.
/// </summary>
public sealed class GroupPlaces : ChainPlaces
{
    private readonly List<int> _level = [];
    private readonly int _last;

    public GroupPlaces(LayoutState layout, IReadOnlyList<Placed> nails)
    {
        var group = new HashSet<Placed>(nails, ReferenceEqualityComparer.Instance);
        var levels = nails.Select(_ => new List<int>()).ToList();
        for (int level = 0; level < nails.Count; level++)
        {
            foreach (HeadChoice choice in Choices(layout, nails[level], group))
            {
                levels[level].Add(Add(nails[level].Row, choice));
                _level.Add(level);
            }
        }
        _last = nails.Count - 1;
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

    public override bool IsClosed(int place) => false;

    private static IEnumerable<HeadChoice> Choices(LayoutState layout, Placed nail, HashSet<Placed> group)
    {
        RowState state = layout.StateOf(nail);
        (Placed? before, Placed? after) = state.Neighbours(nail);
        bool stays = nail.Choice.IsPinned || state.PlainOnly.Contains(nail.Choice.Label)
            || (before is not null && group.Contains(before)) || (after is not null && group.Contains(after));
        return stays ? [nail.Choice] : nail.Row.Choices[nail.Choice.Label].Where(c => nail.Row.FitsBetween(before?.Choice, c, after?.Choice));
    }
}

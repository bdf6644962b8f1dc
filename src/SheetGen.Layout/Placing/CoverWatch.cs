using SheetGen.Layout.Rows;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Cover as the search compares it: at how many stations (as a length along the wall) the checker's rule is broken. Measured only around
/// the slots that moved.
/// </summary>
internal sealed class CoverWatch
{
    private readonly Dictionary<Bay, RowState[]> _rows = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<Bay> _broken;
    private readonly double _withoutRows;

    /// <param name="layout">The layout as it stands now; what is broken in it may stay so.</param>
    /// <param name="bays">All bays of the walls, those without rows too; null where nobody asks for the total.</param>
    public CoverWatch(LayoutState layout, IEnumerable<Bay>? bays = null)
        : this(layout, new(ReferenceEqualityComparer.Instance), 0)
    {
        HashSet<(string, Along)> withRows = [.. _rows.Keys.Select(KeyOf)];
        _withoutRows = bays?.Where(b => !withRows.Contains(KeyOf(b))).Sum(b => Length(CoverRule.Breaks(b, [], strict: false))) ?? 0;
        foreach (Bay bay in _rows.Keys)
        {
            if (WholeBroken(bay).Any())
                _broken.Add(bay);
        }
    }

    private CoverWatch(LayoutState layout, HashSet<Bay> broken, double withoutRows)
    {
        _broken = broken;
        _withoutRows = withoutRows;
        foreach (IGrouping<Bay, RowState> rows in layout.Rows.GroupBy(r => r.Row.Bay))
            _rows[rows.Key] = [.. rows];
    }

    /// <summary>The same of a copy of the layout.</summary>
    public CoverWatch Of(LayoutState copy) => new(copy, _broken, _withoutRows);

    /// <summary>Length of wall where the rule is broken.</summary>
    public double Total => _withoutRows + _rows.Keys.Sum(b => WholeBroken(b).Sum(s => s.End - s.Start));

    /// <summary>True where the rule was broken from the first somewhere in a bay of the slots.</summary>
    public bool IsBrokenAt(IReadOnlyList<Slot> slots) => slots.Any(s => _broken.Contains(s.Row.Bay));

    /// <summary>The spans where the rule is broken, up-station in each bay.</summary>
    public IEnumerable<Uncovered> Spans() =>
        _rows.Keys.Where(_broken.Contains).SelectMany(b => WholeBroken(b).Select(s => new Uncovered(b, s.Start, s.End)));

    /// <summary>Under 0 where the rule is broken at fewer stations than before the slots moved, over 0 where at more.</summary>
    public int Compare(IReadOnlyList<Slot> moved)
    {
        double change = Change(moved);
        return Math.Abs(change) < Tolerance.SameLength ? 0 : change < 0 ? -1 : 1;
    }

    /// <summary>By how much length of wall the rule is broken more than before the slots moved.</summary>
    public double Change(IReadOnlyList<Slot> moved)
    {
        double change = 0;
        foreach (Bay bay in moved.Select(s => s.Row.Bay).Distinct())
        {
            Along[] along = [.. moved.Where(s => s.Row.Bay == bay).SelectMany(s => s.Before!.Concat(s.Nails)).Select(n => n.Choice.Head.Along)];
            if (along.Length == 0)
                continue;
            Along from = along.Min() - bay.Reach, to = along.Max() + bay.Reach;
            change += Broken(bay, from, to, before: false);
            if (_broken.Contains(bay))
                change -= Broken(bay, from, to, before: true);
        }
        return change;
    }

    private IEnumerable<(Along Start, Along End)> WholeBroken(Bay bay) => BrokenAt(bay, new(double.NegativeInfinity), new(double.PositiveInfinity), before: false);

    private double Broken(Bay bay, Along from, Along to, bool before) => BrokenAt(bay, from, to, before).Sum(s => s.End - s.Start);

    private static (string Wall, Along Start) KeyOf(Bay bay) => (bay.Wall.Name, bay.Start);

    private IEnumerable<(Along Start, Along End)> BrokenAt(Bay bay, Along from, Along to, bool before)
    {
        var heads = new List<Head>();
        Along first = from - bay.Reach - bay.Section.HorizontalSpacing, last = to + bay.Reach + bay.Section.HorizontalSpacing;
        foreach (RowState row in _rows[bay])
        {
            List<Along> places = row.Row.Row.Places;
            int ordinal = places.BinarySearch(first);
            for (ordinal = ordinal < 0 ? ~ordinal : ordinal; ordinal < places.Count && places[ordinal] <= last; ordinal++)
            {
                Slot slot = row.Slots[ordinal];
                foreach (Placed nail in before && slot.Before is { } old ? old : slot.Nails)
                    heads.Add(nail.Choice.Head);
            }
        }
        return Spans(CoverRule.Breaks(bay, heads, strict: false, from, to));
    }

    /// <summary>A span is listed once for each lack.</summary>
    private static IEnumerable<(Along Start, Along End)> Spans(IEnumerable<CoverBreak> breaks) => breaks.Select(b => (b.Start, b.End)).Distinct();

    private static double Length(IEnumerable<CoverBreak> breaks) => Spans(breaks).Sum(s => s.End - s.Start);
}

/// <summary>A span of a bay where the cover rule is broken, by distance along the layout line.</summary>
internal readonly record struct Uncovered(Bay Bay, Along Start, Along End)
{
    public bool Meets(Uncovered other) => Bay == other.Bay && Start < other.End && other.Start < End;
}

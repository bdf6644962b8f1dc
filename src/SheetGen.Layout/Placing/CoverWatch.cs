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

    /// <param name="layout">The layout as it stands now; what is broken in it may stay so.</param>
    public CoverWatch(LayoutState layout)
        : this(layout, new(ReferenceEqualityComparer.Instance))
    {
        foreach (Bay bay in _rows.Keys)
        {
            if (Broken(bay, bay.Start - bay.Reach, bay.End + bay.Reach, before: false) > 0)
                _broken.Add(bay);
        }
    }

    private CoverWatch(LayoutState layout, HashSet<Bay> broken)
    {
        _broken = broken;
        foreach (IGrouping<Bay, RowState> rows in layout.Rows.GroupBy(r => r.Row.Bay))
            _rows[rows.Key] = [.. rows];
    }

    /// <summary>The same of a copy of the layout.</summary>
    public CoverWatch Of(LayoutState copy) => new(copy, _broken);

    /// <summary>Length of wall where the rule is broken.</summary>
    public double Total => _rows.Keys.Sum(b => Broken(b, b.Start - b.Reach, b.End + b.Reach, before: false));

    /// <summary>True where the rule was broken from the first somewhere in a bay of the slots.</summary>
    public bool IsBrokenAt(IReadOnlyList<Slot> slots) => _broken.Count > 0 && slots.Any(s => _broken.Contains(s.Row.Bay));

    /// <summary>Under 0 where the rule is broken at fewer stations than before the slots moved, over 0 where at more.</summary>
    public int Compare(IReadOnlyList<Slot> moved)
    {
        double change = 0;
        foreach (Bay bay in moved.Select(s => s.Row.Bay).Distinct())
        {
            double[] along = [.. moved.Where(s => s.Row.Bay == bay).SelectMany(s => s.Before!.Concat(s.Nails)).Select(n => n.Choice.Head.Along)];
            if (along.Length == 0)
                continue;
            double from = along.Min() - bay.Reach, to = along.Max() + bay.Reach;
            change += Broken(bay, from, to, before: false);
            if (change > 0 && _broken.Contains(bay))
                change -= Broken(bay, from, to, before: true);
            else if (change == 0 && _broken.Contains(bay))
                change -= Broken(bay, from, to, before: true);
        }
        return Math.Abs(change) < 1e-6 ? 0 : change < 0 ? -1 : 1;
    }

    private double Broken(Bay bay, double from, double to, bool before)
    {
        var heads = new List<Head>();
        double first = from - bay.Reach - bay.Section.HorizontalSpacing, last = to + bay.Reach + bay.Section.HorizontalSpacing;
        foreach (RowState row in _rows[bay])
        {
            List<double> places = row.Row.Row.Places;
            int label = places.BinarySearch(first);
            for (label = label < 0 ? ~label : label; label < places.Count && places[label] <= last; label++)
            {
                Slot slot = row.Slots[label];
                foreach (Placed nail in before && slot.Before is { } old ? old : slot.Nails)
                    heads.Add(nail.Choice.Head);
            }
        }
        double sum = 0, start = double.NaN;
        foreach (CoverBreak lack in CoverRule.Breaks(bay, heads, strict: false, from, to))
        {
            // A stretch is listed once for each lack.
            if (lack.Start == start)
                continue;
            start = lack.Start;
            sum += lack.End - lack.Start;
        }
        return sum;
    }
}

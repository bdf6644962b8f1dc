using SheetGen.Layout.Placing;

namespace SheetGen.Benchmarks.Twin;

/// <summary>
/// Improves a finished layout window by window: a few stations of one to three lines of rows around each nail that is not plain, unresolved nails first, then
/// noted, then those with the most effort; round after round with other nails at random, until a round gains nothing or so many windows were solved.
/// </summary>
internal sealed class TwinWindows(LayoutState layout, CoverWatch cover, Action<string>? tell = null)
{
    private const int Rounds = 4;

    /// <summary>Deterministic time of the solver for a window.</summary>
    private const double WindowSeconds = 1;

    /// <summary>Windows after which it ends: making one takes longer than solving it.</summary>
    private const int GreatestCount = 80;

    /// <summary>Lines above and below the seed's, and spacings to each side of it.</summary>
    private static readonly (int Above, int Below, int Reach)[] Shapes = [(1, 0, 3), (0, 1, 3), (1, 1, 2), (0, 0, 5)];

    private readonly List<RowTask[]> _lines = RowLines.Of(layout.Rows.Select(r => r.Row));
    private readonly SplitMix _random = new(1);
    private readonly Trial _trial = new(layout, cover);
    private int _count;

    /// <summary>Deterministic time of the solver so far.</summary>
    public double Seconds { get; private set; }

    public void Improve()
    {
        bool isBetter = true;
        for (int round = 0; round < Rounds && isBetter && _count < GreatestCount; round++)
        {
            isBetter = false;
            Slot[] seeds = [.. layout.Slots.Where(s => !s.IsPinned && !IsPlain(s)).OrderByDescending(s => s.Cost)];
            var done = new HashSet<Slot>();
            foreach (Slot seed in seeds)
            {
                // A window that was solved around a neighbour holds it too; unresolved and noted nails are looked at from every side.
                bool isHard = seed.Nails.Any(n => n.IsUnresolved || n.Turning.IsNoted);
                if (_count >= GreatestCount || IsPlain(seed) || (!isHard && done.Contains(seed)))
                    continue;
                IReadOnlyList<StretchOfRow> window = Window(seed, Shapes[(round + seed.Index) % Shapes.Length]);
                isBetter |= Try(window, seed, headsStand: false);
                done.UnionWith(window.SelectMany(w => layout.Rows[w.Row.Index].Slots.Skip(w.First + 1).Take(w.Last - w.First - 1)));
            }
        }
    }

    private static bool IsPlain(Slot slot) => slot.Nails.Length == 1 && slot.Nails[0].IsPlain;

    private List<StretchOfRow> Window(Slot seed, (int Above, int Below, int Reach) shape)
    {
        double reach = (shape.Reach + 0.25) * seed.Row.Bay.Section.HorizontalSpacing, along = seed.Grid.Head.Along.Number;
        int line = _lines.FindIndex(l => l.Contains(seed.Row));
        var window = new List<StretchOfRow>();
        foreach (RowTask row in _lines.Skip(line - shape.Above).Take(Math.Min(line, shape.Above) + 1 + shape.Below).SelectMany(l => l))
        {
            int[] ordinals = [.. Enumerable.Range(0, row.Count).Where(l => row.Bay.Wall == seed.Row.Bay.Wall && Math.Abs(row.GridChoice(l).Head.Along.Number - along) <= reach)];
            if (ordinals.Length > 0)
                window.Add(new StretchOfRow(row, ordinals[0], ordinals[^1]));
        }
        return window;
    }

    /// <summary>True where the window's best is better and breaks cover no more; where it breaks it more, the heads stay and nails are only turned.</summary>
    private bool Try(IReadOnlyList<StretchOfRow> window, Slot seed, bool headsStand)
    {
        var nodes = new WindowNodes(layout, window, _random, headsStand);
        IReadOnlyList<Placed>? found = new TwinWindow(nodes).Solve(WindowSeconds, out double used);
        Seconds += used;
        _count++;
        if (found is null)
            return false;
        ILookup<(RowTask, int), Placed> bySlot = found.OrderBy(n => n.Choice.Head.Along).ToLookup(n => (n.Row, n.Choice.Ordinal));
        Cost before = layout.Cost;
        foreach (Slot slot in nodes.Slots)
            _trial.Put(slot, [.. bySlot[(slot.Row, slot.Ordinal)]]);
        string change = tell is null ? "" : Change(nodes.Slots);
        bool costsLess = _trial.Change < default(Cost);
        if (_trial.End(orEqual: false) >= 0)
            return costsLess && !headsStand && Try(window, seed, headsStand: true);
        tell?.Invoke(FormattableString.Invariant($"around row {seed.Row.Number} station {seed.Ordinal + 1}, {before} to {layout.Cost}:{change}"));
        return true;
    }

    private static string Change(IEnumerable<Slot> slots) => string.Concat(
        from slot in slots
        let old = string.Join("+", slot.Before!.Select(Text))
        let now = string.Join("+", slot.Nails.Select(Text))
        where old != now
        select FormattableString.Invariant($" [{slot.Row.Index}/{slot.Ordinal + 1}: {old} -> {now}]"));

    private static string Text(Placed nail) => nail.IsUnresolved
        ? "unresolved"
        : FormattableString.Invariant($"shift {nail.Choice.Shift:0.##} splay {nail.Turning.Splay:0.#} incl {nail.Turning.Inclination:0.#}{(nail.Turning.IsNoted ? " noted" : "")}");
}

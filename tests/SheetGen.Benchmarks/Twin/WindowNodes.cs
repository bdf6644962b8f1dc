using SheetGen.Layout.Placing;
using SheetGen.Model.Geometry;

namespace SheetGen.Benchmarks.Twin;

/// <summary>
/// Places of some stretches, and at each of them nails that keep clear of all that stands outside: those that stand now, the cheapest, those turned about
/// as nails of the window are, and some at random. Not all of them: what is solved with them is a layout, no limit.
/// </summary>
internal sealed class WindowNodes
{
    /// <summary>Nails of a grid station: the cheapest, and of others.</summary>
    private const int Cheapest = 100, Others = 150;

    /// <summary>Directions of a place among which the cheapest are looked for.</summary>
    private const int EarlyTurnings = 60;

    /// <summary>Nails looked at for each that is taken.</summary>
    private const int Looks = 5;

    private readonly LayoutState _layout;
    private readonly SplitMix _random;
    private readonly List<Placed> _now;
    private readonly bool _headsStand;
    private readonly Dictionary<HeadChoice, int> _nodeOf = new(ReferenceEqualityComparer.Instance);
    private readonly List<(RowTask Row, HeadChoice Choice)> _nodes = [];
    private readonly Dictionary<(Turnings, Turning), int[]> _around = [];
    private readonly Dictionary<Turnings, int> _withinTolerance = [];

    /// <param name="headsStand">True where nails may only be turned.</param>
    public WindowNodes(LayoutState layout, IReadOnlyList<StretchOfRow> stretches, SplitMix random, bool headsStand)
    {
        (_layout, _random, _headsStand) = (layout, random, headsStand);
        Slots = [.. stretches.SelectMany(s => layout.Rows[s.Row.Index].Slots.Skip(s.First).Take(s.Last - s.First + 1))];
        _now = [.. Slots.SelectMany(s => s.Nails)];
        foreach (StretchOfRow where in stretches)
        {
            RowState row = layout.Rows[where.Row.Index];
            var nodes = new StretchNodes(new RowStretch(where, row.Before(where.First), row.After(where.Last), false, false));
            Chains.Add((nodes, _nodes.Count));
            for (int p = 0; p < nodes.Count; p++)
            {
                _nodeOf[nodes.ChoiceOf(p)] = _nodes.Count;
                _nodes.Add((nodes.RowOf(p), nodes.ChoiceOf(p)));
                Nails.Add([]);
            }
        }
        var inside = new HashSet<Slot>(Slots);
        foreach (Slot slot in Slots)
            Fill(slot, [.. slot.Near.Where(s => !inside.Contains(s)).SelectMany(s => s.Nails).Where(n => !n.IsUnresolved)]);
    }

    public IReadOnlyList<Slot> Slots { get; }

    public List<(StretchNodes Nodes, int First)> Chains { get; } = [];

    /// <summary>By place, none of them unresolved.</summary>
    public List<List<Placed>> Nails { get; } = [];

    public int Count => _nodes.Count;

    public bool MayStayUnresolved(int node) => _nodes[node].Choice is { IsAtGrid: true, IsPinned: false } choice && IsOpen(choice);

    public Placed UnresolvedAt(int node) => Placed.Unresolved(_nodes[node].Row, _nodes[node].Choice.Ordinal);

    public bool StandsNow(Placed nail) => _now.Exists(n => IsSame(n, nail));

    public bool IsUnresolvedNow(int node) => _now.Exists(n => n.IsUnresolved && n.Choice == _nodes[node].Choice);

    private static bool IsSame(Placed a, Placed b) => !a.IsUnresolved && !b.IsUnresolved && a.Choice == b.Choice && a.Turning == b.Turning;

    /// <summary>A box around the nails of a place and half the distance that others keep; null where it has none.</summary>
    public Bounds? ReachOf(int node)
    {
        if (Nails[node].Count == 0)
            return null;
        Bounds reach = Nails[node][0].Box;
        foreach (Placed nail in Nails[node])
            reach = reach.With(nail.Box);
        return reach.Grow(_layout.Clearance / 2);
    }

    private bool IsOpen(HeadChoice choice) => !_headsStand || _now.Exists(n => n.Choice == choice);

    private void Fill(Slot slot, Placed[] outside)
    {
        RowTask row = slot.Row;
        foreach (Placed nail in slot.Nails.Where(n => !n.IsUnresolved))
            Nails[_nodeOf[nail.Choice]].Add(nail);
        if (slot.IsPinned)
            return;
        HeadChoice[] places = [.. row.Choices[slot.Ordinal].Where(c => _nodeOf.ContainsKey(c) && IsOpen(c))];
        if (places.Length == 0)
            return;
        Take(places.SelectMany(c => Enumerable.Range(0, Math.Min(EarlyTurnings, c.Turnings.Count)).Select(t => (c, t))).OrderBy(x => Placed.CostOf(row, x.c, x.c.Turnings[x.t], false)), Cheapest);
        Take(Random(places), Others);

        void Take(IEnumerable<(HeadChoice Choice, int Turning)> from, int most)
        {
            int looks = Looks * most;
            foreach ((HeadChoice choice, int turning) in from)
            {
                if (looks-- == 0 || most == 0)
                    return;
                if (!row.IsFree(choice, turning))
                    continue;
                Placed nail = row.FreeOf(choice).NailAt(turning);
                List<Placed> there = Nails[_nodeOf[choice]];
                if (there.Exists(n => IsSame(n, nail)) || Array.Exists(outside, n => AreTooClose(n, nail)))
                    continue;
                there.Add(nail);
                most--;
            }
        }
    }

    /// <summary>Half of them turned about as some nail of the window, on its shift or another.</summary>
    private IEnumerable<(HeadChoice, int)> Random(HeadChoice[] places)
    {
        while (true)
        {
            HeadChoice choice = places[_random.Below(places.Length)];
            int turning = _random.Below(2) == 0 ? _random.Below(WithinTolerance(choice.Turnings)) : _random.EarlyBelow(choice.Turnings.Count);
            if (_now.Count > 0 && _random.Below(2) == 0)
            {
                Placed like = _now[_random.Below(_now.Count)];
                if (_random.Below(2) == 0)
                    choice = places.MinBy(c => Math.Abs(c.Shift - like.Choice.Shift))!;
                int[] around = Around(choice.Turnings, like.Turning);
                turning = around.Length == 0 ? turning : around[_random.Below(around.Length)];
            }
            yield return (choice, turning);
        }
    }

    /// <summary>Directions that are not noted; they come first.</summary>
    private int WithinTolerance(Turnings turnings)
    {
        if (!_withinTolerance.TryGetValue(turnings, out int count))
            _withinTolerance[turnings] = count = turnings.All.Count(t => !t.IsNoted);
        return count;
    }

    /// <summary>Numbers of the directions that are two steps at most from another; none where it is of a section that turns otherwise.</summary>
    private int[] Around(Turnings turnings, Turning like)
    {
        if (_around.TryGetValue((turnings, like), out int[]? known))
            return known;
        int number = turnings.NumberOf(like);
        return _around[(turnings, like)] = number < 0 ? [] : turnings.Around([turnings[number]], 2);
    }

    public bool AreTooClose(Placed a, Placed b) =>
        !(a.Choice.IsPinned && b.Choice.IsPinned) && a.Box.Grow(_layout.Clearance).Meets(b.Box) && _layout.AreTooClose(a.Hole, b.Hole);
}

using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Tightens the limit that stands for rows by themselves with what rows do to each other. Where the best chains of two stretches run into
/// each other, a ball is laid around the place that at most one hole may pass, and each hole through it is charged. The least charged
/// costs of all stretches less the charges of all balls are again a lower limit, whatever the charges (the Lagrangian dual, from
/// memory); they are raised where too many holes pass and lowered where too few, a number of times.
/// </summary>
internal sealed class ConflictPrices
{
    private const int Rounds = 24;
    private const int GreatestGroup = 16;
    private const int PlainMargin = 2;
    private const long Looks = 300_000;

    private readonly LayoutState _found;
    private readonly Stretch?[][] _stretchAt;
    private readonly ClusterLimits _clusters;
    private readonly PlacedIndex _index;
    private readonly double _thinnest;

    private ConflictPrices(LayoutState found, IReadOnlyList<StretchLimit> limits, ClusterLimits clusters)
    {
        _found = found;
        _clusters = clusters;
        _thinnest = found.Rows.Select(r => r.Row.Radius).DefaultIfEmpty(1).Min();
        _stretchAt = [.. found.Rows.Select(r => new Stretch?[r.Row.Count])];
        _index = new PlacedIndex(Math.Max(found.Rows.Select(r => r.Row.LongestNail).DefaultIfEmpty(1).Max() / 4, SearchTolerance.LeastCell));
        foreach (StretchLimit limit in limits)
            Cover(new Stretch(limit.Where, limit.Cost, limit.Nails));
        foreach (RowState state in found.Rows)
        {
            for (int ordinal = 0; ordinal < state.Row.Count; ordinal++)
            {
                if (_stretchAt[state.Row.Index][ordinal] is null)
                    _index.Add(Plain(state.Row, ordinal));
            }
        }
    }

    /// <summary>A stretch that is charged, and its cheapest nails under the present charges.</summary>
    private sealed class Stretch(StretchOfRow where, Cost alone, IReadOnlyList<Placed> nails)
    {
        public StretchOfRow Where { get; } = where;

        /// <summary>What it costs at least without charges.</summary>
        public Cost Alone { get; } = alone;

        public Cost Charged { get; set; } = alone;

        public IReadOnlyList<Placed> Nails { get; set; } = nails;

        /// <summary>Cheapest nails of the last solving, not placed yet.</summary>
        public IReadOnlyList<Placed> Next { get; set; } = nails;

        public bool IsInGroup { get; set; }
    }

    /// <summary>What is to be added to the limit of the rows by themselves, stations that clusters count left out.</summary>
    public static Cost Gain(LayoutState found, IReadOnlyList<StretchLimit> limits, ClusterLimits clusters)
    {
        var prices = new ConflictPrices(found, limits, clusters);
        Cost gain = default;
        foreach (StretchLimit limit in limits)
            gain += prices.GainAround(limit.Where);
        return gain;
    }

    private static Placed Plain(RowTask row, int ordinal)
    {
        HeadChoice choice = row.GridChoice(ordinal);
        return Placed.At(row, choice, choice.Turnings[0], false);
    }

    private void Cover(Stretch stretch)
    {
        for (int ordinal = stretch.Where.First; ordinal <= stretch.Where.Last; ordinal++)
            _stretchAt[stretch.Where.Row.Index][ordinal] = stretch;
        foreach (Placed nail in stretch.Nails)
            _index.Add(nail);
    }

    /// <summary>The gain of the group of stretches that run into each other around one of them; each group counts once.</summary>
    private Cost GainAround(StretchOfRow where)
    {
        Stretch first = _stretchAt[where.Row.Index][where.First]!;
        if (first.IsInGroup || _clusters.Counts(where.Row, where.First))
            return default;
        first.IsInGroup = true;
        var group = new List<Stretch> { first };
        var prices = new List<Price>();
        Cost best = default;
        double pace = 1;
        for (int round = 0, idle = 0; round < Rounds; round++)
        {
            AddPrices(group, prices);
            Cost alone = group.Aggregate(default(Cost), (sum, s) => sum + s.Alone);
            if (prices.Count == 0)
                return default;
            Cost limit = group.Aggregate(default(Cost), (sum, s) => sum + s.Charged) - prices.Aggregate(default(Cost), (sum, p) => sum + p.Charge);
            Cost found = group.Aggregate(default(Cost), (sum, s) => sum + CostFound(s.Where));
            idle = limit - alone > best ? 0 : idle + 1;
            if (limit - alone > best)
                best = limit - alone;
            if (idle >= 3)
            {
                pace /= 2;
                idle = 0;
            }
            if (!(limit < found) || !Raise(group, prices, (found - limit).Times(pace)))
                break;
            Parallel.ForEach(group, s => Solve(s, prices));
            foreach (Stretch s in group)
                Place(s);
        }
        return best;
    }

    private Cost CostFound(StretchOfRow where) =>
        _found.Rows[where.Row.Index].CostOf(where.First, where.Last);

    /// <summary>A ball wherever two nails of the group, or one and a plain nail, come too close; what is hit joins the group.</summary>
    private void AddPrices(List<Stretch> group, List<Price> prices)
    {
        for (int i = 0; i < group.Count; i++)
        {
            foreach (Placed nail in group[i].Nails.Where(IsCharged).ToList())
            {
                foreach (Placed other in _index.Near(nail.Hole, _found.Clearance))
                {
                    if (ReferenceEquals(other, nail) || !IsCharged(other) || !_found.AreTooClose(nail.Hole, other.Hole) || !Join(group, other))
                        continue;
                    if (prices.Any(p => p.IsPassedBy(nail.Hole) && p.IsPassedBy(other.Hole)))
                        continue;
                    Price price = Around(nail.Hole, other.Hole);
                    if (price.IsPassedBy(nail.Hole) && price.IsPassedBy(other.Hole))
                        prices.Add(price);
                }
            }
        }
    }

    /// <summary>The ball half way between two holes: two of the thinnest holes through it would be too close, thicker ones all the more.</summary>
    private Price Around(in Hole a, in Hole b)
    {
        Nearest nearest = HoleDistance.Between(a, b);
        return new Price((nearest.OnFirst + nearest.OnSecond) * 0.5, _thinnest + _found.Clearance / 2 - SearchTolerance.BallRadius);
    }

    private static bool IsCharged(Placed nail) => !nail.IsUnresolved && !nail.Choice.IsPinned;

    private void Place(Stretch stretch)
    {
        foreach (Placed nail in stretch.Nails)
            _index.Remove(nail);
        stretch.Nails = stretch.Next;
        foreach (Placed nail in stretch.Nails)
            _index.Add(nail);
    }

    /// <summary>True where a nail's stretch is in the group, or could be taken in.</summary>
    private bool Join(List<Stretch> group, Placed nail)
    {
        RowTask row = nail.Row;
        Stretch?[] at = _stretchAt[row.Index];
        int ordinal = nail.Choice.Ordinal;
        if (at[ordinal] is { } known)
        {
            if (group.Contains(known))
                return true;
            if (known.IsInGroup || group.Count >= GreatestGroup || _clusters.Counts(row, ordinal))
                return false;
            known.IsInGroup = true;
            group.Add(known);
            return true;
        }
        if (group.Count >= GreatestGroup || _clusters.Counts(row, ordinal))
            return false;
        int first = ordinal, last = ordinal;
        while (first > 0 && ordinal - first < PlainMargin && at[first - 1] is null && !_clusters.Counts(row, first - 1))
            first--;
        while (last < row.Count - 1 && last - ordinal < PlainMargin && at[last + 1] is null && !_clusters.Counts(row, last + 1))
            last++;
        Placed[] plain = [.. _index.Around(nail.Choice.Point, row.LongestNail + row.Bay.Section.HorizontalSpacing * (PlainMargin + 1))
            .Where(new StretchOfRow(row, first, last).Holds)];
        foreach (Placed old in plain)
            _index.Remove(old);
        var stretch = new Stretch(new StretchOfRow(row, first, last), RowState.CostOf(plain, first, last), plain) { IsInGroup = true };
        Cover(stretch);
        group.Add(stretch);
        return true;
    }

    /// <summary>Raises and lowers the charges by how many holes pass; false where just one passes each charged ball.</summary>
    private static bool Raise(List<Stretch> group, List<Price> prices, Cost gap)
    {
        int[] over = [.. prices.Select(p => group.Sum(s => s.Nails.Count(n => IsCharged(n) && p.IsPassedBy(n.Hole))) - 1)];
        double square = 0;
        for (int i = 0; i < over.Length; i++)
            square += over[i] < 0 && !(prices[i].Charge > default(Cost)) ? 0 : over[i] * over[i];
        if (square == 0)
            return false;
        for (int i = 0; i < over.Length; i++)
        {
            Cost charge = prices[i].Charge + gap.Times(over[i] / square);
            prices[i].Charge = charge > default(Cost) ? charge : default;
        }
        return true;
    }

    private static void Solve(Stretch stretch, List<Price> prices)
    {
        double clearance = stretch.Where.Row.Bay.Rules.NailClearance;
        var search = new ChainSearch(new StretchNodes(RowStretch.Open(stretch.Where)), Surroundings.Charged(prices), clearance);
        Chain? chain = search.Cheapest(false, Looks);
        stretch.Next = chain?.Nails ?? stretch.Nails;
        stretch.Charged = chain is { IsExact: true } ? chain.Cost : search.Limit.IsInfinite ? default : search.Limit;
    }
}

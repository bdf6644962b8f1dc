using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Places of a row that keep the gaps.</summary>
/// <param name="AtLeast">What their nails cost if there were no others, grid stations left out included.</param>
/// <param name="LeftOut">What the grid stations left out cost.</param>
internal sealed record RowChain(Place[] Places, long AtLeast, long LeftOut);

/// <summary>
/// All that a row's nails may do, worked out from the contract: the lattice of places that keep edges, mitres and corners, at each the directions that are
/// clear of what stands still, and the chains of places that keep the gaps. Its level, and the stations of a part row, are given; the columns of a grid row are
/// worked out and must be the given ones.
/// </summary>
internal sealed class EveryRow
{
    private readonly WallProject _project;
    private readonly SmallLeg[] _legs;
    private readonly EveryTurn _turns;
    private readonly IReadOnlyList<double> _grid;
    private readonly Place[] _places;
    private readonly Run[] _runs;
    private readonly List<RowChain> _chains = [];

    /// <param name="ofLeg">All rows of the leg.</param>
    public EveryRow(WallProject project, SmallLeg[] legs, NailRow given, NailRow[] ofLeg, EveryTurn turns)
    {
        (_project, _legs, Given, Leg, _turns, _grid) = (project, legs, given, legs[given.Leg], turns, given.GridStations);
        Assert.True(given.IsLevel);
        if (!given.Number.IsPart)
            Assert.Equal(Leg.Columns(given.Level).Where(c => Leg.IsOnFace(c, given.Level)), _grid, (a, b) => Math.Abs(a - b) < 1e-6);
        _places = [.. Places().Where(p => p.Choices.Length > 0).OrderBy(p => p.Along)];
        _runs = [.. Runs(ofLeg)];
        AddChains([], 0);
    }

    public NailRow Given { get; }

    public SmallLeg Leg { get; }

    /// <summary>None where no places keep the gaps beside a pinned nail.</summary>
    public IReadOnlyList<RowChain> Chains => _chains;

    private Rules Rules => _project.Rules;

    private Section Section => _project.Walls[0].Sections[0];

    private double GreatestGap => Section.HorizontalSpacing + SmallLeg.Placed;

    /// <summary>Neighbours of the grid within the spacing; the first nail stands no further than a place, the last no nearer than another.</summary>
    private sealed record Run(int First, int Last, double LatestFirst, double EarliestLast)
    {
        public bool Has(Place place) => place.Label >= First && place.Label <= Last;

        public bool IsCovered(IEnumerable<Place> chain)
        {
            Place[] own = [.. chain.Where(Has)];
            return own.Length > 0 && own[0].Along <= LatestFirst + 1e-9 && own[^1].Along >= EarliestLast - 1e-9;
        }
    }

    /// <summary>The runs of the row: each goes on covering what would be uncovered without its first or last nail, all others on their grid stations.</summary>
    private IEnumerable<Run> Runs(NailRow[] ofLeg)
    {
        double half = Section.HorizontalSpacing / 2;
        for (int first = 0, last = 0; first < _grid.Count; first = last = last + 1)
        {
            while (last + 1 < _grid.Count && _grid[last + 1] - _grid[last] <= GreatestGap)
                last++;
            double from = Lacking(first).Select(s => s.From).Append(_grid[first]).Min(), to = Lacking(last).Select(s => s.To).Append(_grid[last]).Max();
            yield return new Run(first, last, Math.Max(_grid[first], from + half), Math.Min(_grid[last], to - half));
        }

        IEnumerable<(double From, double To)> Lacking(int without) =>
            from span in Leg.UncoveredSpans(ofLeg.SelectMany(r => r.GridStations.Where((_, i) => r != Given || i != without).Select(s => (s, r.Level))), SmallLeg.Placed)
            where span.From < _grid[without] + half && span.To > _grid[without] - half
            select (Math.Max(span.From, _grid[without] - half), Math.Min(span.To, _grid[without] + half));
    }

    /// <summary>All chains of places: gaps from min_gap to the spacing, wider ones only where the grid's are, no pinned nail left out.</summary>
    private void AddChains(List<Place> chain, int from)
    {
        if (!_places.Skip(from).Any(p => p.IsPinned) && _runs.All(r => r.IsCovered(chain)))
        {
            long leftOut = 3 * (_grid.Count - chain.Select(p => p.Label).Distinct().Count()), least = _turns.Least([.. chain], SmallFigures.NoCost);
            if (least < SmallFigures.NoCost)
                _chains.Add(new RowChain([.. chain], least + leftOut, leftOut));
        }
        for (int next = from; next < _places.Length; next++)
        {
            if (chain.Count == 0 || Fits(chain[^1], _places[next]))
                AddChains([.. chain, _places[next]], next + 1);
            if (_places[next].IsPinned)
                return;
        }
    }

    private bool Fits(Place a, Place b)
    {
        double gap = b.Along - a.Along;
        return gap >= Rules.MinGap - SmallLeg.Placed && (gap <= GreatestGap || _runs.All(r => !(r.Has(a) && r.Has(b))));
    }

    private IEnumerable<Place> Places()
    {
        FixedNail? pin = _project.FixedNails.SingleOrDefault(p => p.Row == Given.Number.ToString() && Leg.Has(p.Along!.Value));
        int pinned = pin is null ? -1 : Enumerable.Range(0, _grid.Count).MinBy(i => Math.Round(Math.Abs(_grid[i] - pin.Along!.Value), 6));
        int steps = (int)Math.Floor(Section.HorizontalSpacing / 2 / Rules.ShiftStep);
        for (int label = 0; label < _grid.Count; label++)
        {
            if (label == pinned)
            {
                double stated = pin!.Along!.Value;
                yield return new Place(stated, label, [Turned(stated, Math.Abs(stated - _grid[label]) < 1e-6, pin.Splay ?? 0, pin.Inclination ?? Section.Inclination)], true);
                continue;
            }
            for (int k = -steps; k <= steps; k++)
            {
                double along = SmallLeg.Rounded(_grid[label] + k * Rules.ShiftStep);
                if (k == 0 || Leg.Holds(along, Given.Level))
                    yield return new Place(along, label, [.. Choices(along, k == 0).OrderBy(c => c.Cost)], false);
            }
        }
    }

    private IEnumerable<Choice> Choices(double along, bool isGrid)
    {
        RedirectRules turn = Rules.Redirect;
        for (double splay = -turn.Maximum; splay <= turn.Maximum; splay += turn.Step)
        {
            for (double inclination = turn.LeastInclination; inclination <= turn.GreatestInclination; inclination += turn.Step)
            {
                Choice choice = Turned(along, isGrid, splay, inclination);
                if (IsClearOfAll(choice))
                    yield return choice;
                if (isGrid && splay == 0 && inclination == Section.Inclination)
                    yield return choice with { IsUnresolved = true, Cost = SmallFigures.CostOf(1, 0, 0) };
            }
        }
    }

    private Choice Turned(double along, bool isGrid, double splay, double inclination)
    {
        double change = inclination - Section.Inclination, length = Given.Length;
        bool isNoted = Math.Abs(splay) > Rules.Redirect.FieldTolerance || Math.Abs(change) > Rules.Redirect.FieldTolerance;
        if (isNoted)
            length = Math.Ceiling(Math.Max(length, length * Cos(Section.Inclination) / (Cos(inclination) * Cos(splay))) / Rules.LengthIncrement - 1e-9) * Rules.LengthIncrement;
        Vector3D head = Leg.Point(along, Given.Level);
        return new Choice(head, head + Leg.Direction(splay, inclination) * length, SmallFigures.CostOf(0, isNoted ? 1 : 0, Math.Abs(splay) + Math.Abs(change) + (isGrid ? 0 : 2)), false);
    }

    private static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180);

    private bool IsClearOfAll(Choice hole)
    {
        double least = Rules.ObstructionClearance + Section.HoleDiameter / 2 - 1e-9;
        return _project.Obstructions.All(o => Small3.LeastAlong(hole.Head, hole.Tip, p => Small3.ToShaft(p, o.Shape[0], o.Shape[1], o.Diameter / 2)) >= least)
            && _legs.All(l => l == Leg || l.ToFace(hole.Head, hole.Tip) >= least);
    }
}

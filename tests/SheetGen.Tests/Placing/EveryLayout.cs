using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>
/// All layouts of a small wall that are searched, worked out from the contract and not by the program: every chain of places of each row, how much of the face
/// they leave uncovered together, every direction of each nail, all pairs checked. Level rows on tangents; shafts behind them.
/// </summary>
internal sealed class EveryLayout
{
    private readonly SmallLeg[] _legs;
    private readonly EveryRow[] _rows;
    private readonly EveryTurn _turns;
    private readonly double _apart;

    /// <param name="rows">The rows that the grid gives.</param>
    public EveryLayout(WallProject project, IEnumerable<NailRow> rows)
    {
        _apart = project.Rules.NailClearance + project.Walls[0].Sections[0].HoleDiameter;
        _turns = new EveryTurn(_apart);
        _legs = SmallLeg.Of(project, new Vector2D(5000, 2000), 90);
        NailRow[] given = [.. rows];
        _rows = [.. given.Select(r => new EveryRow(project, _legs, r, [.. given.Where(o => o.Leg == r.Leg)], _turns))];
    }

    /// <summary>The layouts on the rows that the program makes before it searches.</summary>
    public static EveryLayout Of(WallProject project) => new(project, Placer.Place(project, new PlacingOptions { Depth = SearchDepth.Insertion }).Rows);

    /// <summary>True where no places of a row keep the gaps beside a pinned nail: then nothing is said of the layouts.</summary>
    public bool IsImpossible => _rows.Any(r => r.Chains.Count == 0);

    /// <summary>Length of the face that the grid alone leaves uncovered, pinned nails not looked at.</summary>
    public double UncoveredByGrid => Uncovered(_rows.SelectMany(r => r.Given.GridStations.Select(s => (s, r.Given.Level))));

    /// <summary>Length of the face that heads leave uncovered.</summary>
    public double Uncovered(IEnumerable<(double Along, double Elevation)> heads) => _legs.Sum(l => l.Uncovered(heads.Where(h => l.Has(h.Along))));

    /// <summary>The best figures of all layouts; of those that count no cover, the least of the others.</summary>
    public SmallFigures Best(bool isCoverCounted = true)
    {
        Heads[][] legs = [.. _legs.Select(l => HeadsOf(l, isCoverCounted))];
        SmallFigures best = SmallFigures.None;
        Combine(legs, [], default, ref best);
        return best;
    }

    /// <summary>A layout's own figures, which must be one of these layouts: its nails stand at the places of a chain, in a choice's direction and length, all clear.</summary>
    public SmallFigures FiguresOf(NailLayout layout)
    {
        var chosen = new List<Choice>();
        long cost = 0;
        foreach (EveryRow row in _rows)
        {
            Nail[] nails = [.. layout.Nails.Where(n => n.Row == row.Given.Number && row.Leg.Has(n.Along)).OrderBy(n => n.Along)];
            RowChain? chain = row.Chains.FirstOrDefault(c => c.Places.Length == nails.Length && c.Places.Zip(nails).All(p => Math.Abs(p.First.Along - p.Second.Along) < 1e-6));
            Assert.True(chain is not null, $"row {row.Given.Number}: no chain at {string.Join(' ', nails.Select(n => n.Along))}");
            foreach ((Place place, Nail nail) in chain.Places.Zip(nails))
            {
                Choice? choice = place.Choices.FirstOrDefault(c => c.IsUnresolved == (nail.Status == NailStatus.Unresolved) && (c.Tip - nail.Hole.Tip).Length < 1e-6);
                Assert.True(choice is not null, $"{nail.Mark}: no such direction that is clear");
                Assert.True(choice.IsUnresolved || chosen.All(c => c.IsUnresolved || Small3.Between(c.Head, c.Tip, choice.Head, choice.Tip) >= _apart - 1e-6), $"{nail.Mark}: too close to another nail");
                chosen.Add(choice);
                cost += choice.Cost;
            }
            cost += chain.LeftOut;
        }
        Assert.Equal(layout.Nails.Count, chosen.Count);
        return new SmallFigures(Uncovered(layout.Nails.Select(n => (n.Along, n.Elevation))), cost);
    }

    /// <summary>Chains of all rows of a leg.</summary>
    private sealed class Heads(Place[] places, double uncovered, long leftOut, long atLeast)
    {
        public Place[] Places => places;

        public long LeftOut => leftOut;

        /// <summary>True where what it costs at least is what it costs if there were no other leg.</summary>
        public bool IsExact { get; private set; }

        public SmallFigures AtLeast { get; private set; } = new(uncovered, atLeast);

        public void MakeExact(EveryTurn turns)
        {
            if (!IsExact)
                AtLeast = new SmallFigures(uncovered, turns.Least(places, SmallFigures.NoCost - leftOut) + leftOut);
            IsExact = true;
        }
    }

    /// <summary>All heads of a leg, the cheapest first.</summary>
    private Heads[] HeadsOf(SmallLeg leg, bool isCoverCounted)
    {
        EveryRow[] rows = [.. _rows.Where(r => r.Leg == leg)];
        var all = new List<Heads>();
        Add([]);
        return [.. all.OrderBy(h => h.AtLeast)];

        void Add(RowChain[] chains)
        {
            if (chains.Length < rows.Length)
            {
                foreach (RowChain chain in rows[chains.Length].Chains)
                    Add([.. chains, chain]);
                return;
            }
            double uncovered = isCoverCounted ? leg.Uncovered(chains.SelectMany((c, r) => c.Places.Select(p => (p.Along, rows[r].Given.Level)))) : 0;
            all.Add(new Heads([.. chains.SelectMany(c => c.Places)], uncovered, chains.Sum(c => c.LeftOut), chains.Sum(c => c.AtLeast)));
        }
    }

    /// <summary>All heads of the legs together, as long as they may be better than the best.</summary>
    private void Combine(Heads[][] legs, Heads[] chosen, SmallFigures cost, ref SmallFigures best)
    {
        if (chosen.Length == legs.Length)
        {
            long leftOut = chosen.Sum(h => h.LeftOut), most = best.Cover > cost.Cover + SmallFigures.SameCover ? SmallFigures.NoCost : best.Cost;
            long least = _turns.Least([.. chosen.SelectMany(h => h.Places)], most - leftOut) + leftOut;
            if (least < most)
                best = new SmallFigures(cost.Cover, least);
            return;
        }
        SmallFigures later = legs.Skip(chosen.Length + 1).Aggregate(default(SmallFigures), (sum, l) => sum + l[0].AtLeast);
        foreach (Heads heads in legs[chosen.Length])
        {
            // In order of what they cost at least before one was looked at more closely.
            if (!heads.IsExact && !(cost + heads.AtLeast + later < best))
                break;
            heads.MakeExact(_turns);
            if (cost + heads.AtLeast + later < best)
                Combine(legs, [.. chosen, heads], cost + heads.AtLeast, ref best);
        }
    }
}

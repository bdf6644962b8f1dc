using SheetGen.Layout.Placing;
using SheetGen.Model.Geometry;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Chains of nails over a stretch of a row against all of them, and what of a row may stand next to what.</summary>
public sealed class ChainTests
{
    private static StretchOfRow[] Stretches(int rows, bool pin, int seed)
    {
        List<RowTask> tasks = RowTasks.Make(new Site(new SmallRow((ulong)(200 + seed), rows, pin && rows == 1, pin).Project));
        return [.. tasks.SelectMany(t => new[] { new StretchOfRow(t, 0, t.Count - 1), new StretchOfRow(t, 0, Math.Min(1, t.Count - 1)), new StretchOfRow(t, Math.Min(1, t.Count - 1), t.Count - 1) })];
    }

    /// <summary>A direction of a place, or the grid's nail left unresolved.</summary>
    private sealed record Nail(HeadChoice Choice, Hole Hole, bool IsUnresolved, Cost Cost);

    private static Nail[] Options(RowTask row, HeadChoice choice)
    {
        var options = new List<Nail>();
        for (int t = 0; t < choice.Turnings.Count; t++)
        {
            Hole hole = row.HoleOf(choice, choice.Turnings[t]);
            if (choice.IsPinned || Array.TrueForAll(row.Near(choice), o => HoleDistance.ToSolid(hole, o.Solid).Clear >= o.Required - 1e-9))
                options.Add(new Nail(choice, hole, false, Placed.CostOf(row, choice, choice.Turnings[t], false)));
        }
        if (choice is { IsAtGrid: true, IsPinned: false })
            options.Add(new Nail(choice, row.HoleOf(choice, choice.Turnings[0]), true, Placed.CostOf(row, choice, choice.Turnings[0], true)));
        return [.. options];
    }

    private static bool SkipsPin(RowTask row, int from, int to) => Enumerable.Range(0, row.Count).Any(l => l > from && l < to && row.Choices[l][0].IsPinned);

    /// <summary>The cheapest chain by every pair of nails, neighbours' conflicts kept or left out; null where none fits.</summary>
    private static Cost? Cheapest(StretchOfRow where, bool conflicts)
    {
        (RowTask row, int first, int last) = where;
        HeadChoice[] places = [.. Enumerable.Range(first, last - first + 1).SelectMany(l => row.Choices[l]).OrderBy(c => c.Head.Along)];
        var best = new List<(Nail Nail, Cost Cost)>();
        Cost? least = null;
        foreach (HeadChoice place in places)
        {
            var here = new List<(Nail Nail, Cost Cost)>();
            foreach (Nail nail in Options(row, place))
            {
                Cost? cost = null;
                void Take(Cost before)
                {
                    if (cost is not { } known || before + nail.Cost < known)
                        cost = before + nail.Cost;
                }
                int skipped = place.Ordinal - first;
                if (skipped < 3 && !SkipsPin(row, first - 1, place.Ordinal) && (first > 0 || (row.Ends.RunOf(place.Ordinal) == 0 && row.Ends.CoversStart(place.Ordinal, place.Head.Along))))
                    Take(Placed.LeavingOut(skipped));
                foreach ((Nail other, Cost before) in best)
                {
                    int step = place.Ordinal - other.Choice.Ordinal;
                    if (step < 0 || step > 3 || other.Choice.Head.Along >= place.Head.Along || SkipsPin(row, other.Choice.Ordinal, place.Ordinal) || !row.Ends.SkipsNoRun(other.Choice.Ordinal, place.Ordinal) || !row.Fits(other.Choice, place)
                        || (step == 0 && place.IsPinned))
                        continue;
                    if (conflicts && !other.IsUnresolved && !nail.IsUnresolved && HoleDistance.Between(other.Hole, nail.Hole).Clear < row.Bay.Rules.NailClearance - 1e-9)
                        continue;
                    Take(before + Placed.LeavingOut(Math.Max(0, step - 1)));
                }
                if (cost is { } found)
                    here.Add((nail, found));
            }
            best.AddRange(here);
            int left = last - place.Ordinal;
            if (left >= 3 || SkipsPin(row, place.Ordinal, last + 1) || !(last < row.Count - 1 || (row.Ends.RunOf(place.Ordinal) == row.Ends.LastRun && row.Ends.CoversEnd(place.Ordinal, place.Head.Along))))
                continue;
            foreach ((_, Cost cost) in here)
            {
                if (least is not { } known || cost + Placed.LeavingOut(left) < known)
                    least = cost + Placed.LeavingOut(left);
            }
        }
        return least;
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, true)]
    [InlineData(1, true)]
    public void The_cheapest_chain_is_the_cheapest_of_all(int rows, bool pin)
    {
        int stretches = 0, solved = 0, conflicts = 0;
        for (int seed = 1; seed <= 8; seed++)
        {
            foreach (StretchOfRow where in Stretches(rows, pin, seed))
            {
                var search = new ChainSearch(new StretchNodes(RowStretch.Open(where)), Surroundings.Empty, where.Row.Bay.Rules.NailClearance);
                Chain? chain = search.Cheapest(false, 1_000_000_000);
                Cost? expected = Cheapest(where, conflicts: true), free = Cheapest(where, conflicts: false);
                Assert.Equal(expected, chain?.Cost);
                Assert.Equal(free is null, search.Limit.IsInfinite);
                stretches++;
                // Beside a pin a stretch may have no chain at all; both say so.
                if (chain is null)
                    continue;
                AssertChain(where, search, chain, free!.Value);
                solved++;
                conflicts += free.Value < chain.Cost ? 1 : 0;
            }
        }
        Assert.True(solved >= stretches * 2 / 3 && conflicts > 0, $"{stretches} stretches, {solved} with a chain, {conflicts} where neighbours conflict");
    }

    private static void AssertChain(StretchOfRow where, ChainSearch search, Chain chain, Cost free)
    {
        Assert.True(chain.IsExact);
        Assert.Equal(free, search.Limit);
        Assert.Equal(chain.Cost, RowState.CostOf(chain.Nails, where.First, where.Last));
        Assert.Equal(chain.Nails.Select(n => n.Choice.Head.Along).Order(), chain.Nails.Select(n => n.Choice.Head.Along));
        StretchLimit limit = RowsAlone.LowerLimit(where, 1_000_000_000);
        Assert.Equal((chain.Cost, chain.Nails.Count), (limit.Cost, limit.Nails.Count));
        // With few looks the limit may only be lower.
        Assert.False(RowsAlone.LowerLimit(where, 0).Cost > chain.Cost);
        // Where earlier nails count too, no two of the chain are too close.
        Chain strict = search.Cheapest(true, 1_000_000_000)!;
        Assert.False(strict.Cost < chain.Cost);
        Placed[] nails = [.. strict.Nails.Where(n => !n.IsUnresolved)];
        for (int i = 0; i < nails.Length; i++)
        {
            for (int j = i + 1; j < nails.Length; j++)
                Assert.True(HoleDistance.Between(nails[i].Hole, nails[j].Hole).Clear >= where.Row.Bay.Rules.NailClearance - 1e-8);
        }
    }

    // Grid stations at 1.75, 5.25 ... 19.25 with places a foot apart up to 1 ft away; min_gap 2, spacing 3.5, quantum 0.01.
    private static RowTask Plain(string rules = "  shift_step: 1", string[]? fixedNails = null) => RowTasks.Make(new Site(new PlacingWall
    {
        Length = 21,
        Top = "[[0, 103], [END, 103]]",
        TopRowDepth = 1.5,
        Blocks = [.. fixedNails is null ? [] : (string[])["fixed:", .. fixedNails], "rules:", rules],
    }.Project))[0];

    private static HeadChoice At(RowTask row, double along, int ordinal) =>
        new(row.Bay.Face, row.Row.HeadAt(new(along)), ordinal, along - row.Row.Places[ordinal].Number, row.Choices[ordinal][0].Turnings, false, null);

    [Theory]
    [InlineData(5.25, 1, 7.25, 2, true)]
    [InlineData(5.25, 1, 7.24, 2, true)]
    [InlineData(5.25, 1, 7.235, 2, false)]
    [InlineData(5.25, 1, 8.75, 2, true)]
    [InlineData(5, 1, 8.512, 2, true)]
    [InlineData(5, 1, 8.5121, 2, false)]
    [InlineData(5, 1, 8.51, 3, true)]
    [InlineData(8.75, 2, 5.25, 1, false)]
    public void Neighbours_keep_the_least_gap_and_the_spacing(double from, int fromLabel, double to, int toLabel, bool fits)
    {
        RowTask row = Plain();
        Assert.Equal(fits, row.Fits(At(row, from, fromLabel), At(row, to, toLabel)));
        Assert.Equal(fits, row.FitsAsNeighbours(At(row, from, fromLabel), At(row, to, toLabel)));
    }

    // On an arc of 30 ft with the face 3 ft off it a length along the face is 1.1 or 0.9 of that along the line: the least gap is kept on the face, the spacing on both.
    [Theory]
    [InlineData("left", 1.1)]
    [InlineData("right", 0.9)]
    public void Gaps_on_an_arc_are_those_of_its_face(string turn, double factor)
    {
        string yaml = new PlacingWall { FaceOffset = 3 }.Yaml.Replace("[{line: 21}]", $"[{{arc: {{radius: 30, length: 21, turn: {turn}}}}}]", StringComparison.Ordinal);
        RowTask row = RowTasks.Make(new Site(PlacingWall.Read(yaml)))[0];
        double from = row.Row.Places[1].Number;
        int fit = 0;
        for (double gap = 1.5; gap < 4.5; gap += 0.013)
        {
            double face = gap * factor;
            bool expected = face >= row.LeastGap && Math.Max(gap, face) <= 3.512;
            Assert.Equal(expected, row.Fits(At(row, from, 1), At(row, from + gap, 2)));
            fit += expected ? 1 : 0;
        }
        Assert.InRange(fit, 40, 200);
    }

    // Half a spacing of 1.75 ft at each end is covered by the first and the last nail, with the rounding that placing allows.
    [Fact]
    public void The_ends_of_a_row_are_covered()
    {
        RowTask row = Plain();
        Assert.True(row.FitsAsNeighbours(null, At(row, 1.75, 0)));
        Assert.False(row.FitsAsNeighbours(null, At(row, 1.8, 0)));
        Assert.True(row.FitsAsNeighbours(null, At(row, 1.25, 0)));
        Assert.True(row.FitsAsNeighbours(At(row, 19.25, 5), null));
        Assert.False(row.FitsAsNeighbours(At(row, 19.2, 5), null));
        Assert.True(row.FitsAsNeighbours(At(row, 19.75, 5), null));
        Assert.False(row.FitsAsNeighbours(null, null));
    }

    // Where moved nails may stand 4.5 ft apart, those at their grid stations still may not, unless the grid itself has such a gap.
    [Fact]
    public void Moved_nails_may_stand_further_apart_where_the_rules_say_so()
    {
        RowTask row = Plain("  shift_step: 1\n  moved_gap_max: 4.5");
        Assert.True(row.Fits(At(row, 5.25, 1), At(row, 9.75, 2)));
        Assert.False(row.Fits(At(row, 5.25, 1), At(row, 9.77, 2)));
        Assert.False(row.Fits(At(row, 5.25, 1), At(row, 12.25, 3)));
    }

    // A pinned nail may not be left out: no chain begins behind it, ends before it or steps over it, and none has a second nail beside it.
    [Fact]
    public void A_pinned_nail_is_in_every_chain()
    {
        RowTask row = Plain(fixedNails: ["  - {wall: Wall 1, row: 1, station: 5.25, splay: 5}", "  - {wall: Wall 1, row: 1, station: 15.75, splay: 5}"]);
        Assert.Equal([1, 4], Enumerable.Range(0, row.Count).Where(l => row.Choices[l][0].IsPinned));
        var nodes = new StretchNodes(RowStretch.Open(new StretchOfRow(row, 1, 4)));
        int[] all = [.. Enumerable.Range(0, nodes.Count)];
        Assert.Equal([1], all.Where(p => nodes.Start(p) is not null).Select(p => nodes.ChoiceOf(p).Ordinal));
        Assert.Equal([4], all.Where(p => nodes.End(p) is not null).Select(p => nodes.ChoiceOf(p).Ordinal));
        var whole = new StretchNodes(RowStretch.Open(new StretchOfRow(row, 0, 5)));
        foreach (int node in Enumerable.Range(0, whole.Count))
        {
            int ordinal = whole.ChoiceOf(node).Ordinal;
            Assert.All(whole.Next(node), n => Assert.False((ordinal < 1 && whole.ChoiceOf(n).Ordinal > 1) || (ordinal < 4 && whole.ChoiceOf(n).Ordinal > 4), $"{ordinal} to {whole.ChoiceOf(n).Ordinal}"));
            Assert.All(whole.Next(node), n => Assert.Contains(node, whole.Before(n)));
            if (whole.ChoiceOf(node).IsPinned)
                Assert.DoesNotContain(whole.Next(node), n => whole.ChoiceOf(n).Ordinal == ordinal);
        }
    }

    // Leaving out a station costs 3 points of effort, a place off the grid 2, a nail counts as one, and 1 ft of shift is a hundred quanta.
    [Fact]
    public void Costs_of_places_and_of_stations_left_out()
    {
        RowTask row = Plain();
        Assert.Equal(new Cost(0, 0, 0, 1, 0), Placed.OfPlace(row, row.GridChoice(2)));
        Assert.Equal(new Cost(0, 0, 20_000, 1, 100), Placed.OfPlace(row, row.Choices[2].Single(c => c.Shift == -1)));
        Assert.Equal(new Cost(0, 0, 60_000, 0, 0), Placed.LeavingOut(2));
        Placed[] two = [.. row.Choices[2].Where(c => Math.Abs(c.Shift) == 1).Select(c => Placed.At(row, c, c.Turnings[0], false))];
        // Two nails of one station, the other two stations left out.
        Assert.Equal(new Cost(0, 0, 100_000, 2, 200), RowState.CostOf(two, 1, 3));
        Assert.Equal(new Cost(1, 0, 0, 1, 0), Placed.Unresolved(row, 2).Cost);
        Assert.False(Placed.Unresolved(row, 2).IsPlain);
    }
}

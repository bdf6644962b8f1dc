using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>The pieces of the lower limits, each against all cases of small walls.</summary>
public sealed class BoundTests
{
    private static RowTask Row(ulong seed, bool pin = false) => RowTasks.Make(new Site(new SmallRow(seed, 1, false, pin).Project))[0];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 12)];

    /// <summary>Each node at random free or not and needed or not, each station at random one that needs a nail.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_least_unresolved_nails_of_a_chain_are_those_of_the_best_of_all_chains(int seed)
    {
        RowTask row = Row((ulong)seed, pin: seed % 2 == 0);
        var where = new StretchOfRow(row, seed % 3 == 0 ? Math.Min(1, row.Count - 1) : 0, row.Count - 1);
        var chain = new ClusterChain(where);
        var nodes = new StretchNodes(RowStretch.Open(where));
        var random = new WallRandom((ulong)seed * 53);
        int some = 0, none = 0;
        for (int i = 0; i < 60; i++)
        {
            bool[] free = [.. Enumerable.Range(0, nodes.Count).Select(_ => random.Chance(0.4))], needed = [.. Enumerable.Range(0, nodes.Count).Select(_ => random.Chance(0.6))];
            bool[] needs = [.. Enumerable.Range(0, chain.Stations).Select(_ => random.Chance(0.4))];
            int least = Least(nodes, where.First, free, needed, needs);
            Assert.Equal(least, chain.Least(free, needed, needs));
            some += least is > 0 and < ClusterChain.None ? 1 : 0;
            none += least == ClusterChain.None ? 1 : 0;
        }
        Assert.True(some + none > 5, $"{some} with unresolved nails, {none} impossible");
    }

    /// <summary>What rows do to each other raises the limit of the rows alone, and never above a layout that stands.</summary>
    [Fact]
    public void Charged_balls_raise_the_limit_up_to_what_is_found()
    {
        int raised = 0;
        for (ulong seed = 1; seed <= 10; seed++)
        {
            var site = new Site(RecordedBoundTests.Close(seed).Project);
            var search = new LayoutSearch(site, RowTasks.Make(site), new PlacingOptions(), null);
            search.Run();
            IReadOnlyList<StretchLimit> alone = RowsAlone.Solve(search.Layout, true);
            var clusters = new ClusterLimits(search.Layout, alone, prove: false);
            Cost gain = ConflictPrices.Gain(search.Layout, alone, clusters), limit = alone.Aggregate(clusters.Gain + gain, (sum, l) => sum + l.Cost);
            Assert.False(gain < default(Cost) || search.Layout.Cost < limit, $"seed {seed}: gain {gain}, limit {limit}, found {search.Layout.Cost}");
            raised += gain > default(Cost) ? 1 : 0;
        }
        Assert.True(raised >= 5, $"{raised} raised");
    }

    /// <summary>Every chain of nodes in turn.</summary>
    private static int Least(StretchNodes nodes, int first, bool[] free, bool[] needed, bool[] needs)
    {
        int least = ClusterChain.None;
        void Walk(int node, int unresolved, HashSet<int> met)
        {
            HeadChoice choice = nodes.ChoiceOf(node);
            if (!free[node] && !(choice.IsAtGrid && !choice.IsPinned))
                return;
            unresolved += free[node] ? 0 : 1;
            HashSet<int> now = free[node] && needed[node] ? [.. met, choice.Ordinal - first] : met;
            if (nodes.End(node) is not null && Enumerable.Range(0, needs.Length).All(s => !needs[s] || now.Contains(s)))
                least = Math.Min(least, unresolved);
            foreach (int next in nodes.Next(node))
                Walk(next, unresolved, now);
        }
        foreach (int start in Enumerable.Range(0, nodes.Count).Where(p => nodes.Start(p) is not null))
            Walk(start, 0, []);
        return least;
    }

    [Fact]
    public void Clusters_meet_where_they_share_a_station()
    {
        List<RowTask> rows = RowTasks.Make(new Site(new PlacingWall { Length = 28 }.Project));
        var cluster = new Cluster([new StretchOfRow(rows[0], 2, 4), new StretchOfRow(rows[1], 0, 0)]);
        Assert.Equal([false, true, true, true, false], Enumerable.Range(1, 5).Select(l => cluster.Holds(rows[0], l)));
        Assert.True(cluster.Meets(new StretchOfRow(rows[0], 0, 2)) && cluster.Meets(new StretchOfRow(rows[0], 4, 6)) && cluster.Meets(new StretchOfRow(rows[0], 3, 3)) && cluster.Meets(new StretchOfRow(rows[1], 0, 5)));
        Assert.False(cluster.Meets(new StretchOfRow(rows[0], 0, 1)) || cluster.Meets(new StretchOfRow(rows[0], 5, 6)) || cluster.Meets(new StretchOfRow(rows[1], 1, 5)) || cluster.Meets(new StretchOfRow(rows[2], 2, 4)));
    }

    // Rows up to 3.5 ft apart; those of the next section lie lower. Each goes on with the nearest one, at most half of that away, that has none nearer itself.
    [Theory]
    [InlineData(0, 0)]
    [InlineData(1.4, 1.2)]
    [InlineData(2.4, 1)]
    public void A_row_goes_on_with_the_nearest_of_the_next_section(double lower, double least)
    {
        WallProject project = new PlacingWall { Length = 28 }.Project;
        Wall wall = project.Walls[0];
        Section section = wall.Sections[0];
        project = project with { Walls = [wall with { Sections = [section with { End = 14 }, section with { Name = "B", Start = 14, TopRowDepth = section.TopRowDepth + lower }] }] };
        RowTask[] rows = [.. RowTasks.Make(new Site(project)).Where(r => !r.Row.IsPart)], first = [.. rows.Where(r => r.Bay.Section.Name == "A")], second = [.. rows.Where(r => r.Bay.Section.Name == "B")];
        double Apart(RowTask a, RowTask b) => Math.Abs(a.Row.Level - b.Row.Level);
        (RowTask, RowTask)[] expected = [.. from a in first from b in second where Apart(a, b) <= 1.75 && first.All(o => Apart(o, b) >= Apart(a, b)) && second.All(o => Apart(a, o) >= Apart(a, b)) select (a, b)];
        List<RowTask[]> lines = RowLines.Of(rows);
        Assert.Equal(rows.Length, lines.Sum(l => l.Length));
        Assert.Equal(expected, lines.Where(l => l.Length > 1).Select(l => (l[0], l[1])));
        Assert.True(expected.Length > 2 && expected.Max(p => Apart(p.Item1, p.Item2)) >= least, string.Join(' ', expected.Select(p => Apart(p.Item1, p.Item2))));
    }

    // A hole from the origin, 10 ft to the east: a ball of 0.625 ft is passed where its middle is no further than that from the axis, or from one of its ends.
    [Theory]
    [InlineData(0.625, 4, true)]
    [InlineData(0.6251, 4, false)]
    [InlineData(0, -0.625, true)]
    [InlineData(0, -0.63, false)]
    [InlineData(0.375, 10.5, true)]
    [InlineData(0.375, 10.51, false)]
    [InlineData(0.375, -0.51, false)]
    public void A_ball_is_passed_by_holes_near_its_middle(double north, double east, bool passed) =>
        Assert.Equal(passed, new Price(new Vector3D(north, east, 0), 0.625).IsPassedBy(new Hole(default, new Vector3D(0, 1, 0), 10, 0.25, 0)));

    /// <summary>Blocked stations, pairs without two clear directions and the least set that meets them, by every direction and every set.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void What_is_proven_at_the_grid_is_what_all_directions_say(int seed)
    {
        WallProject project = new SmallRow((ulong)seed + 40, 1, corner: true, pin: seed % 3 == 0).Project;
        var site = new Site(project);
        var search = new LayoutSearch(site, RowTasks.Make(site), new PlacingOptions { Depth = SearchDepth.Insertion }, null);
        search.Run();
        Slot[] slots = [.. search.Layout.Slots];
        var holes = slots.ToDictionary(s => s, s => Enumerable.Range(0, s.Grid.Turnings.Count).Where(t => s.Row.IsFree(s.Grid, t)).Select(t => s.Row.HoleAt(s.Grid, t)).ToArray());
        Slot[] blocked = [.. slots.Where(s => !s.IsPinned && holes[s].Length == 0)];
        Slot[] open = [.. slots.Where(s => !s.IsPinned && holes[s].Length > 0)];
        (Slot, Slot)[] pairs = [.. from a in open from b in open where a.Index < b.Index && !holes[a].Any(x => holes[b].Any(y => HoleDistance.Between(x, y).Clear >= project.Rules.NailClearance - 1e-9)) select (a, b)];
        int least = Enumerable.Range(0, 1 << open.Length).Where(set => pairs.All(p => (set >> Array.IndexOf(open, p.Item1) & 1) != 0 || (set >> Array.IndexOf(open, p.Item2) & 1) != 0)).Min(set => System.Numerics.BitOperations.PopCount((uint)set));
        GridHeads found = GridHeads.Of(search.Layout);
        Assert.Equal(blocked.Select(s => s.Index), found.Blocked.Select(s => s.Index));
        Assert.Equal(pairs.Select(p => (p.Item1.Index, p.Item2.Index)).Order(), found.Pairs.Select(p => p.First.Index < p.Second.Index ? (p.First.Index, p.Second.Index) : (p.Second.Index, p.First.Index)).Order());
        Assert.Equal(blocked.Length + least, found.Least);
    }

    /// <summary>Random pairs of eight stations: the least set by trying all sets; in too few steps pairs that share no station, none of the others being clear of them all.</summary>
    [Fact]
    public void The_least_set_of_stations_meets_all_pairs_and_has_a_limit_without_a_search()
    {
        Slot[] slots = [.. new LayoutState(RowTasks.Make(new Site(new PlacingWall { Length = 7 }.Project)), 0.5).Slots.Take(8)];
        Assert.Equal(8, slots.Length);
        int below = 0;
        for (ulong seed = 1; seed <= 60; seed++)
        {
            var random = new Walls.WallRandom(seed);
            double share = random.Of(0.15, 0.3, 0.6);
            List<(Slot First, Slot Second)> pairs = [.. from a in slots from b in slots where a.Index < b.Index && random.Chance(share) select (a, b)];
            int least = Enumerable.Range(0, 256).Where(set => pairs.All(p => (set >> p.First.Index & 1) != 0 || (set >> p.Second.Index & 1) != 0)).Min(set => System.Numerics.BitOperations.PopCount((uint)set));
            Assert.Equal(least, GridHeads.LeastOf(pairs, 20_000));
            var used = new HashSet<Slot>();
            int apart = pairs.Count(p => !used.Contains(p.First) && !used.Contains(p.Second) && used.Add(p.First) | used.Add(p.Second));
            Assert.Equal(apart, GridHeads.LeastOf(pairs, 0));
            Assert.InRange(least, apart, 2 * apart);
            below += apart < least ? 1 : 0;
        }
        Assert.True(below > 5);
    }

    // 0 to under 3.5 ft: in half feet where steps are 0.25, since there would be more than twelve in quarters; in twelfths where a step is more than two of them.
    [Theory]
    [InlineData(3.5, 0.25, 7, 0.5)]
    [InlineData(3.5, 0.5, 7, 0.5)]
    [InlineData(3.502, 0.5, 8, 0.5)]
    [InlineData(3.5, 0.7, 12, 0.29)]
    [InlineData(3.5, 1.75, 12, 0.29)]
    [InlineData(6, 0.5, 12, 0.5)]
    [InlineData(6, 1, 6, 1)]
    public void First_columns_that_are_tried(double spacing, double step, int count, double second)
    {
        WallProject project = new PlacingWall().Project;
        double?[] places = [.. ColumnPhases.FirstColumnsOf(project with { Rules = project.Rules with { ShiftStep = step } }, project.Walls[0].Sections[0] with { HorizontalSpacing = spacing })];
        Assert.Equal((null, 0.0, second, count), (places[0], places[1], Math.Round(places[2]!.Value, 2), places.Length - 1));
        Assert.True(places[^1] < spacing);
    }

    // Five rows of 200 stations: in even rounds two districts of 500 slots; in odd ones a half, a whole and a half. Neighbours along the wall are never searched at once.
    [Fact]
    public void Districts_are_cut_evenly_and_elsewhere_in_the_next_round()
    {
        WallProject project = new PlacingWall { Length = 700 }.Project;
        var layout = new LayoutState(RowTasks.Make(new Site(project)), project.Rules.NailClearance);
        var cover = new CoverWatch(layout);
        Assert.Equal(1000, layout.Slots.Count);
        Assert.False(Districts.IsOne(layout));
        List<List<District>> even = Districts.Cut(layout, cover, 0), odd = Districts.Cut(layout, cover, 1);
        Assert.Equal([500, 500], even.SelectMany(g => g).OrderBy(d => d.Number).Select(d => d.Slots.Count));
        Assert.Equal([250, 500, 250], odd.SelectMany(g => g).OrderBy(d => d.Number).Select(d => d.Slots.Count));
        Assert.All(odd, g => Assert.All(g, a => Assert.All(g, b => Assert.True(a == b || Math.Abs(a.Number - b.Number) > 1))));
        Assert.Equal([2, 1], odd.Select(g => g.Count));
        District[] all = [.. odd.SelectMany(g => g).OrderBy(d => d.Number)];
        Assert.All(all, d => Assert.All(d.Slots, s => Assert.Equal(d.Number, s.District)));
        Assert.True(all[0].Slots.Max(s => s.Grid.Head.Along) <= all[1].Slots.Min(s => s.Grid.Head.Along));
        Assert.Equal(layout.Slots.Count, all.SelectMany(d => d.Slots).Distinct().Count());
        // Ranges end at the district's limits.
        Slot slot = all[1].Slots[250];
        (int first, int last) = all[1].RangeAround(slot);
        Assert.Equal((true, false, true, false), (all[1].May(layout.Rows[slot.Row.Index].Slots[first]), first > 0 && all[1].May(layout.Rows[slot.Row.Index].Slots[first - 1]), all[1].May(layout.Rows[slot.Row.Index].Slots[last]), all[1].May(layout.Rows[slot.Row.Index].Slots[last + 1])));
        Assert.InRange(last - first + 1, 99, 101);
        Assert.True(Districts.IsOne(new LayoutState(RowTasks.Make(new Site(new PlacingWall { Length = 350 }.Project)), 0.5)));
    }

    // Rest that no layout can have counts as one more of the figure before: 2 ft nails of at most 30 degrees each.
    [Fact]
    public void A_limit_is_raised_to_whole_figures()
    {
        Assert.Equal(new Cost(1, 0, 0, 0, 0), new Cost(0, 11, 5, 0, 0).RoundedUp(10, 300));
        Assert.Equal(new Cost(0, 3, 0, 0, 0), new Cost(0, 2, 3001, 0, 0).RoundedUp(10, 300));
        Assert.Equal(new Cost(0, 10, 3000, 7, 8), new Cost(0, 10, 3000, 7, 8).RoundedUp(10, 300));
        Assert.True(new Cost(1, 2, 3, 4, 5).HasFiguresOf(new Cost(1, 2, 3, 9, 9)));
        Assert.False(new Cost(1, 2, 3, 4, 5).HasFiguresOf(new Cost(1, 2, 4, 4, 5)) || new Cost(1, 2, 3, 4, 5).HasFiguresOf(new Cost(1, 3, 3, 4, 5)) || new Cost(1, 2, 3, 4, 5).HasFiguresOf(new Cost(2, 2, 3, 4, 5)));
        Assert.True(Cost.Infinite.IsInfinite && (Cost.Infinite - new Cost(1000, 0, 0, 0, 0)).IsInfinite && !new Cost(1_000_000, 9, 9, 9, 9).IsInfinite);
        Assert.Equal((12_345, 10_000), (Cost.Degrees(1.23449999), Cost.Degrees(1)));
        Assert.Equal("unresolved 1, noted 2, effort 0.5, nails 3, shift 4", new Cost(1, 2, 5000, 3, 4).ToString());
    }
}

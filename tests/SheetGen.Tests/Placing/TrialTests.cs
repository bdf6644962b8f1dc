using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>The one transaction of the search, and what each neighbourhood may put into it.</summary>
public sealed class TrialTests
{
    private static (LayoutState Layout, District Whole) Make(WallProject project, ulong seed = 5)
    {
        var layout = new LayoutState(RowTasks.Make(new Site(project)), project.Rules.NailClearance);
        foreach (Slot slot in layout.Slots)
            slot.District = 0;
        return (layout, new District(layout, new CoverWatch(layout), 0, layout.Slots, seed));
    }

    // One row of six nails, 3.5 ft apart.
    private static (LayoutState Layout, District Whole) Six() => Make(new PlacingWall { Length = 21, Top = "[[0, 103], [END, 103]]", TopRowDepth = 1.5, Blocks = ["rules:", "  shift_step: 1"] }.Project);

    private static Placed Turned(Slot slot, double splay) => Placed.At(slot.Row, slot.Grid, slot.Grid.Turnings.All.Single(t => t.Splay == splay && t.Inclination == 15), false);

    private static Placed Moved(Slot slot, double shift) => slot.Row.Choices[slot.Ordinal].Single(c => c.Shift == shift) is var choice ? Placed.At(slot.Row, choice, choice.Turnings[0], false) : null!;

    [Fact]
    public void What_is_worse_is_undone_and_what_is_better_is_kept()
    {
        (LayoutState layout, District whole) = Six();
        Slot slot = layout.Slots[2];
        Placed[] plain = slot.Nails;
        Placed turned = Turned(slot, 5);
        whole.Trial.Put(slot, [turned]);
        Assert.True(layout.Stands(turned) && !layout.Stands(plain[0]));
        Assert.Equal(Cost.Degrees(5), whole.Trial.Change.Effort);
        Assert.Equal([slot], whole.Trial.Touched);
        Assert.True(whole.Trial.End(orEqual: true) > 0);
        Assert.Same(plain, slot.Nails);
        Assert.True(layout.Stands(plain[0]) && !layout.Stands(turned));
        Assert.Empty(whole.Trial.Touched);
        Assert.Null(slot.Before);
        // Kept where it is accepted whatever it costs; then the plain nail is better.
        whole.Trial.Put(slot, [turned]);
        whole.Trial.Accept();
        Assert.Same(turned, slot.Nails[0]);
        whole.Trial.Free(slot);
        Assert.Empty(slot.Nails);
        whole.Trial.Put(slot, plain);
        Assert.Single(whole.Trial.Touched);
        Assert.True(whole.Trial.End(orEqual: false) < 0);
        Assert.Same(plain, slot.Nails);
    }

    [Fact]
    public void What_is_equal_is_kept_only_where_that_is_asked_for()
    {
        (LayoutState layout, District whole) = Six();
        Slot slot = layout.Slots[2];
        whole.Trial.Put(slot, [Turned(slot, 5)]);
        whole.Trial.Accept();
        Placed[] up = slot.Nails, down = [Turned(slot, -5)];
        whole.Trial.Put(slot, down);
        Assert.Equal(0, whole.Trial.End(orEqual: false));
        Assert.Same(up, slot.Nails);
        whole.Trial.Put(slot, down);
        Assert.Equal(0, whole.Trial.End(orEqual: true));
        Assert.Same(down, slot.Nails);
    }

    // A nail moved by 1 ft: the gap of 4.5 ft behind it is too wide; with its neighbours moved too, the row's end is left uncovered.
    [Fact]
    public void A_cheaper_layout_that_breaks_the_row_is_undone()
    {
        (LayoutState layout, District whole) = Six();
        foreach (Slot slot in layout.Slots)
            whole.Trial.Put(slot, [Turned(slot, 20)]);
        whole.Trial.Accept();
        (Slot third, Slot fourth, Slot last) = (layout.Slots[2], layout.Slots[3], layout.Slots[5]);
        Placed[] before = third.Nails;
        whole.Trial.Put(third, [Moved(third, 1)]);
        Assert.True(whole.Trial.End(orEqual: true) > 0);
        Assert.Same(before, third.Nails);
        // A nail left out: 7 ft between its neighbours.
        whole.Trial.Free(fourth);
        Assert.True(whole.Trial.End(orEqual: true) > 0);
        whole.Trial.Free(last);
        Assert.True(whole.Trial.End(orEqual: true) > 0);
        // Only a nail at its grid place may be left unresolved.
        whole.Trial.Put(third, [Placed.At(third.Row, third.Row.Choices[2].Single(c => c.Shift == 1), third.Grid.Turnings[0], true)]);
        Assert.True(whole.Trial.End(orEqual: true) > 0);
        // One nail more between two is allowed, and dearer.
        HeadChoice beside = third.Row.Choices[2].Single(c => c.Shift == -1);
        whole.Trial.Put(third, [Placed.At(third.Row, beside, beside.Turnings[0], false), Moved(third, 1)]);
        Assert.True(whole.Trial.End(orEqual: false) < 0);
        Assert.Equal(2, third.Nails.Length);
    }

    /// <summary>The grid's nail of the third station, turned although nothing asks for it, and one that does not fit.</summary>
    [Fact]
    public void Each_nail_by_itself_takes_its_cheapest_direction()
    {
        (LayoutState layout, District whole) = Six();
        whole.Trial.Put(layout.Slots[2], [Turned(layout.Slots[2], 20)]);
        whole.Trial.Put(layout.Slots[4], [Placed.Unresolved(layout.Slots[4].Row, 4)]);
        whole.Trial.Accept();
        LayoutSearch.EachByItself(whole);
        Assert.All(layout.Slots, s => Assert.True(s.Nails is [{ IsPlain: true }]));
    }

    // Two nails 7 ft apart that are both turned by 20 degrees toward each other cross: 2 x 20 sin 20 = 13.7 ft.
    [Fact]
    public void A_row_alone_is_proposed_only_where_its_nails_are_clear_of_each_other()
    {
        (LayoutState layout, District whole) = Six();
        var alone = new RowAlone(whole);
        RowTask row = layout.Slots[0].Row;
        Placed[] Nails(double second, double fourth) => [.. layout.Slots.Select(s => s.Index == 1 ? Turned(s, second) : s.Index == 3 ? Turned(s, fourth) : s.Nails[0])];
        Assert.False(alone.Propose(new StretchLimit(new StretchOfRow(row, 0, 5), default, Nails(20, -20))));
        Assert.Empty(whole.Trial.Touched);
        Assert.False(alone.Propose(new StretchLimit(new StretchOfRow(row, 0, 5), default, [])));
        Assert.Empty(whole.Trial.Touched);
        // Nails that only touch the stretch are put; what they hit beside it is put elsewhere.
        Placed up = Turned(layout.Slots[2], 20);
        Assert.True(alone.Propose(new StretchLimit(new StretchOfRow(row, 2, 2), default, [up])));
        Assert.Same(up, layout.Slots[2].Nails[0]);
        Assert.Equal([2, 3], whole.Trial.Touched.Select(s => s.Index).Order().Take(2));
        Assert.All(layout.Slots, s => Assert.All(layout.Slots.Where(o => o != s), o => Assert.False(layout.AreTooClose(s.Nails[0].Hole, o.Nails[0].Hole))));
        whole.Trial.Undo();
        // One of another district stays, and nothing is proposed.
        layout.Slots[3].District = 1;
        Assert.False(alone.Propose(new StretchLimit(new StretchOfRow(row, 2, 2), default, [up])));
        whole.Trial.Undo();
        Assert.All(layout.Slots, s => Assert.True(s.Nails is [{ IsPlain: true }]));
    }

    // Others keep clear of the nails of a slot that are not left unresolved, however many it has.
    [Fact]
    public void Nails_that_others_keep_clear_of()
    {
        (LayoutState layout, _) = Six();
        Slot slot = layout.Slots[2];
        Placed left = Placed.Unresolved(slot.Row, 2), down = Moved(slot, -1), up = Moved(slot, 1);
        foreach (Placed[] nails in (Placed[][])[[], [left], [up], [left, up], [down, left], [down, up], [down, left, up]])
        {
            slot.Nails = nails;
            Assert.Equal([false, nails.Contains(down), nails.Contains(up)], new[] { left, down, up }.Select(layout.Stands));
            Hole hole = layout.Slots[3].Grid.HoleOf(layout.Slots[3].Grid.Turnings.All.Single(t => t is { Splay: -20, Inclination: 15 }), 20, 0.25, 0);
            Placed[] hit = [.. nails.Where(n => !n.IsUnresolved && layout.AreTooClose(hole, n.Hole))];
            Placed? first = layout.FirstHit(layout.Slots[3], hole);
            Assert.True(hit.Length == 0 ? first is null || first.SlotNumber != 2 : first is not null && (first.SlotNumber != 2 || hit.Contains(first)));
            var around = new List<Placed>();
            layout.AddAround(layout.Slots[3], slot.Row.FreeOf(layout.Slots[3].Grid).Reach, around);
            Assert.Equal(nails.Where(n => !n.IsUnresolved), around.Where(n => n.SlotNumber == 2));
        }
    }

    // A section that falls by 30 degrees, from 25 to 35: wider by 15 at both ends it ends at 45, and one wider by 40 at the horizontal.
    [Fact]
    public void A_wider_window_stays_between_the_horizontal_and_45_degrees()
    {
        string text = new PlacingWall { Length = 21, Blocks = ["rules:", "  redirect: {maximum: 40, step: 5, field_tolerance: 5, inclination: [25, 35]}"] }.Yaml.Replace("inclination: 15", "inclination: 30", StringComparison.Ordinal);
        Slot slot = Make(PlacingWall.Read(text)).Layout.Slots[0];
        double[] Inclinations(double wider) => [.. Relaxed.Inclination(slot, wider).Choice.Turnings.All.Select(t => t.Inclination).Distinct().Order()];
        Assert.Equal([20, 25, 30, 35, 40], Inclinations(5));
        Assert.Equal([10, 15, 20, 25, 30, 35, 40, 45], Inclinations(15));
        Assert.Equal([0, 5, 10, 15, 20, 25, 30, 35, 40, 45], Inclinations(40));
        Assert.Equal([-45, 45], Relaxed.Maximum(slot, 45).Choice.Turnings.All.Select(t => t.Splay).Order().ToArray() is var all ? new[] { all[0], all[^1] } : []);
        Assert.Equal(12, Relaxed.Length(slot, 12).HoleAt(0)!.Value.Length);
        Assert.Equal(0.15, Relaxed.Clearance(slot, 0.1).HoleAt(0)!.Value.Radius, 1e-12);
    }

    /// <summary>A short search leaves no more than insertion alone, and fewer on some.</summary>
    [Fact]
    public void A_short_search_is_better_than_insertion()
    {
        int better = 0;
        foreach (string name in (string[])["crowded 9206", "crowded 9220", "crowded 9224", "random 9013"])
        {
            WallProject project = PlacingWall.Read(RecordedWalls.All.First(w => w.Name == name).Yaml);
            int order = ColumnPhases.Figures.Of(project, SearchDepth.Short).CompareTo(ColumnPhases.Figures.Of(project, SearchDepth.Insertion));
            Assert.True(order <= 0, name);
            better += order < 0 ? 1 : 0;
        }
        Assert.True(better >= 2, $"better on {better}");
    }

    /// <summary>A nail that was turned for something says how far it is clear of it now.</summary>
    [Fact]
    public void A_turned_nail_says_what_it_is_clear_of()
    {
        Model.Results.NailLayout layout = new PlacingWall
        {
            Blocks = ["obstructions:", "  - {name: S1, kind: shaft, at: {station: 8.75, offset: 6}, diameter: 3, top: 120, bottom: 80}"],
        }.Layout;
        Model.Results.Nail[] turned = [.. layout.Nails.Where(n => n.Reason?.Blocker == "S1")];
        Assert.Equal(5, turned.Length);
        Assert.All(turned, n => Assert.True(n.Reason!.ClearBefore < 0 && n.Reason.ClearAfter >= 0.5 - 1e-9 && n.Reason.Required == 0.5));
        Assert.All(turned, n => Assert.StartsWith("grid place runs ", n.Reason!.Text, StringComparison.Ordinal));
        Assert.All(turned, n => Assert.EndsWith(" clear of it", n.Reason!.Text, StringComparison.Ordinal));
        // Cheaper directions that fail, cheapest first, six at most, each with what it hits first.
        Assert.All(turned.Where(n => !n.IsMoved), n => Assert.InRange(n.Reason!.Failed.Count, 1, 6));
        Assert.All(turned, n => Assert.Equal((0.0, 15.0, "S1"), (n.Reason!.Failed[0].Splay, n.Reason.Failed[0].Inclination, n.Reason.Failed[0].Blocker)));
    }

    [Fact]
    public void Ways_that_go_sideways_keep_layouts_that_are_as_good()
    {
        (_, District whole) = Six();
        INeighbourhood[] ways = [new Blockers(whole), new NewHeads(whole), new Ejection(whole), new Stretch(whole), new SingleNail(whole)];
        Assert.Equal([true, true, true, false, false], ways.Select(w => w.MovesSideways));
    }

    public static TheoryData<string, int> Ways
    {
        get
        {
            var data = new TheoryData<string, int>();
            foreach (string way in (string[])["Blockers", "NewHeads", "Ejection", "Stretch", "SingleNail"])
            {
                for (int seed = 1; seed <= 3; seed++)
                    data.Add(way, seed);
            }
            return data;
        }
    }

    /// <summary>
    /// Whatever a neighbourhood proposes: it touches few slots of its district and no pinned one, no nails that stand are too close to each other or to what stands
    /// still, and when the trial ends the layout is better or the same.
    /// </summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void A_neighbourhood_keeps_the_rules(string name, int seed)
    {
        WallProject project = PlacingWall.Read(RecordedWalls.All.First(w => w.Name == (seed == 1 ? "crowded 9216" : seed == 2 ? "crowded 9224" : "by the designer's hand")).Yaml);
        (LayoutState layout, District whole) = Make(project, (ulong)seed);
        var insertion = new Insertion(whole);
        foreach (Slot slot in whole.Slots)
            insertion.Take(slot);
        Assert.True(insertion.PutBack(Insertion.Order.FewestFirst, 0, 0, int.MaxValue));
        whole.Trial.Accept();
        // A part of the wall is another district's.
        foreach (Slot slot in layout.Slots.Where(s => s.Index % 11 == 3))
            slot.District = 1;
        INeighbourhood way = name switch { "Blockers" => new Blockers(whole), "NewHeads" => new NewHeads(whole), "Ejection" => new Ejection(whole), "Stretch" => new Stretch(whole), _ => new SingleNail(whole) };
        int most = name switch { "Blockers" => 14, "NewHeads" => 21, "SingleNail" => 1, _ => int.MaxValue };
        Slot[] seeds = [.. layout.Slots.Where(s => whole.May(s) && (s.Nails.Length != 1 || !s.Nails[0].IsPlain))];
        int proposed = 0, greatest = 0, kept = 0;
        for (int i = 0; i < (name is "Ejection" or "Stretch" ? 15 : 60); i++)
        {
            Slot at = seeds[whole.Random.Below(seeds.Length)];
            Placed[][] before = [.. layout.Slots.Select(s => s.Nails)];
            Cost cost = layout.Cost;
            bool isProposed = way.Propose(at);
            Slot[] touched = [.. whole.Trial.Touched];
            // A stretch takes a pinned nail out and puts it back where it stood.
            Assert.All(touched, s => Assert.True(whole.May(s) || (name == "Stretch" && s.IsPinned && (!isProposed || s.Nails is [{ Choice.IsPinned: true }]))));
            Assert.True(touched.Length <= most, $"{touched.Length} slots");
            Assert.All(layout.Slots.Except(touched), s => Assert.Same(before[s.Index], s.Nails));
            if (!isProposed)
            {
                whole.Trial.Undo();
                Assert.All(layout.Slots, s => Assert.Same(before[s.Index], s.Nails));
                continue;
            }
            proposed++;
            greatest = Math.Max(greatest, touched.Length);
            AssertClear(project, layout, touched);
            if (name is "Blockers" or "NewHeads")
                Assert.True(touched.Sum(s => s.Nails.Count(n => n.IsUnresolved)) <= touched.Sum(s => before[s.Index].Count(n => n.IsUnresolved)));
            Assert.All(touched, s => Assert.All(s.Nails.Zip(s.Nails.Skip(1)), p => Assert.True(p.First.Choice.Head.Along < p.Second.Choice.Head.Along)));
            int order = whole.Trial.End(way.MovesSideways);
            Assert.Empty(whole.Trial.Touched);
            bool isKept = order < 0 || (order == 0 && way.MovesSideways);
            if (!isKept)
                Assert.All(layout.Slots, s => Assert.Same(before[s.Index], s.Nails));
            Assert.False(layout.Cost > cost && order >= 0, "worse and kept");
            kept += order < 0 ? 1 : 0;
        }
        Assert.True(proposed > 0 || name == "Ejection", $"{proposed} proposed, {kept} kept");
        if (name is "Blockers" && seed != 3)
            Assert.True(greatest >= 8, $"at most {greatest} slots");
    }

    private static void AssertClear(WallProject project, LayoutState layout, Slot[] touched)
    {
        Placed[] all = [.. layout.Slots.SelectMany(s => s.Nails).Where(n => !n.IsUnresolved)];
        foreach (Placed nail in touched.SelectMany(s => s.Nails).Where(n => !n.IsUnresolved && !n.Choice.IsPinned))
        {
            Assert.True(nail.Row.IsFree(nail.Choice, nail.Choice.Turnings.All.ToList().IndexOf(nail.Turning)));
            foreach (Placed other in all)
            {
                if (!ReferenceEquals(other, nail) && nail.Box.Grow(project.Rules.NailClearance).Meets(other.Box))
                    Assert.False(HoleDistance.CloserThan(nail.Hole, other.Hole, project.Rules.NailClearance - 1e-8), $"{nail.SlotNumber} and {other.SlotNumber}");
            }
        }
    }
}

using SheetGen.Layout.Placing;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>A few small walls of each kind, one by one, against all of their layouts by enumeration (many more are in <see cref="SearchTests"/> and <see cref="ClusterTests"/>).</summary>
public sealed class SmallWallTests
{
    public static TheoryData<int, bool, bool, int> Walls
    {
        get
        {
            var data = new TheoryData<int, bool, bool, int>();
            foreach ((int rows, bool corner, bool pin) in ((int, bool, bool)[])[(1, false, false), (2, false, false), (1, true, false), (1, false, true), (1, true, true)])
            {
                for (int seed = 1; seed <= 5; seed++)
                    data.Add(rows, corner, pin, seed);
            }
            return data;
        }
    }

    /// <summary>The layout found is as good as the best there is, covers the face, and no limit that is told is above it; with and without proving.</summary>
    [Theory]
    [MemberData(nameof(Walls))]
    public void The_best_layout_is_found_and_no_limit_exceeds_it(int rows, bool corner, bool pin, int seed)
    {
        var wall = new SmallRow((ulong)seed, rows, corner, pin);
        SmallRow.Figures best = wall.Best();
        foreach (bool prove in (bool[])[false, true])
        {
            NailLayout layout = Placer.Place(wall.Project, new PlacingOptions(prove));
            Assert.Equal(corner ? 2 : rows, layout.Rows.Count);
            // No row keeps its spacing beside the pinned nail.
            if (best.Unresolved == int.MaxValue)
                continue;
            Assert.False(wall.IsUncovered(layout.Nails));
            (FoundAndBound unresolved, FoundAndBound noted, FoundAndBound effort) = (layout.Score.Unresolved, layout.Score.Noted, layout.Score.Effort);
            Assert.Equal((best.Unresolved, best.Noted, Math.Round(best.Effort, 6)), ((int)unresolved.Found, (int)noted.Found, Math.Round(effort.Found, 6)));
            Assert.True(unresolved.Bound is null || unresolved.Bound <= best.Unresolved, $"{unresolved}");
            if (unresolved.Bound == best.Unresolved)
                Assert.True(noted.Bound is null || noted.Bound <= best.Noted, $"{noted}");
            if (unresolved.Bound == best.Unresolved && noted.Bound == best.Noted)
                Assert.True(effort.Bound is null || effort.Bound <= best.Effort + 1e-6, $"{effort}");
            Assert.Equal((int)unresolved.Found, layout.Nails.Count(n => n.Status == NailStatus.Unresolved));
            Assert.Equal((int)noted.Found, layout.Nails.Count(n => n.Status == NailStatus.Noted));
        }
    }

    /// <summary>A cluster of all stations proves exactly as many unresolved nails as the best layout has.</summary>
    [Theory]
    [MemberData(nameof(Walls))]
    public void A_cluster_proves_what_enumeration_finds(int rows, bool corner, bool pin, int seed)
    {
        var wall = new SmallRow((ulong)seed, rows, corner, pin);
        int best = wall.Best().Unresolved;
        if (best == int.MaxValue)
            return;
        RowTask[] tasks = [.. RowTasks.Make(new Site(wall.Project))];
        var search = new ClusterSearch([.. tasks.Select(t => new StretchOfRow(t, 0, t.Count - 1))], wall.Project.Rules.NailClearance, 50_000_000);
        for (int count = 0; count <= best; count++)
            Assert.Equal(count < best, search.NeedsMoreThan(count));
    }
}

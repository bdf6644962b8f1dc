using SheetGen.Layout.Placing;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>A few small walls of each kind, one by one, against all of their layouts by enumeration (many more are in <see cref="SearchTests"/> and <see cref="ClusterTests"/>).</summary>
public sealed class SmallWallTests
{
    private const int Seeds = 5;

    /// <summary>Rows, whether round a corner, whether with a pin, and how many of the walls have a layout at least: beside a pin a row may find no place for its neighbours.</summary>
    public static TheoryData<int, bool, bool, int> Kinds => new()
    {
        { 1, false, false, Seeds },
        { 2, false, false, Seeds },
        { 1, true, false, Seeds },
        { 1, false, true, 3 },
        { 1, true, true, 3 },
    };

    /// <summary>The layout found is as good as the best there is, covers the face, and no limit that is told is above it; with and without proving.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_best_layout_is_found_and_no_limit_exceeds_it(int rows, bool corner, bool pin, int least)
    {
        int asked = 0;
        var compared = new Compared();
        for (ulong seed = 1; seed <= Seeds; seed++)
        {
            var wall = new SmallRow(seed, rows, corner, pin);
            SmallRow.Figures best = wall.Best();
            asked += best.Unresolved == int.MaxValue ? 0 : 1;
            foreach (bool prove in (bool[])[false, true])
            {
                NailLayout layout = Placer.Place(wall.Project, new PlacingOptions(prove));
                Assert.Equal(corner ? 2 : rows, layout.Rows.Count);
                LayoutScore score = layout.Score;
                Assert.Equal((int)score.Unresolved.Found, layout.Nails.Count(n => n.Status == NailStatus.Unresolved));
                Assert.Equal((int)score.Noted.Found, layout.Nails.Count(n => n.Status == NailStatus.Noted));
                // No row keeps its spacing beside the pinned nail.
                if (best.Unresolved == int.MaxValue)
                    continue;
                Assert.False(wall.IsUncovered(layout.Nails));
                Assert.Equal((best.Unresolved, best.Noted, Math.Round(best.Effort, 6)), ((int)score.Unresolved.Found, (int)score.Noted.Found, Math.Round(score.Effort.Found, 6)));
                compared.AssertLimit(score, best.Unresolved, best.Noted, best.Effort, $"seed {seed}");
            }
        }
        Assert.True(asked >= least, $"{asked} walls have a layout");
        compared.AssertMany(2 * asked, 2 * asked - 2, 3);
    }

    /// <summary>A cluster of all stations proves exactly as many unresolved nails as the best layout has.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_cluster_proves_what_enumeration_finds(int rows, bool corner, bool pin, int least)
    {
        int asked = 0;
        for (ulong seed = 1; seed <= Seeds; seed++)
        {
            var wall = new SmallRow(seed, rows, corner, pin);
            int best = wall.Best().Unresolved;
            if (best == int.MaxValue)
                continue;
            RowTask[] tasks = [.. RowTasks.Make(new Site(wall.Project))];
            var search = new ClusterSearch([.. tasks.Select(t => new StretchOfRow(t, 0, t.Count - 1))], wall.Project.Rules.NailClearance, 50_000_000);
            for (int count = 0; count <= best; count++)
                Assert.Equal(count < best, search.NeedsMoreThan(count));
            asked++;
        }
        Assert.True(asked >= least, $"{asked} walls have a layout");
    }
}

using SheetGen.Layout.Placing;
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
        var tally = new SmallWallTally();
        for (ulong seed = 1; seed <= Seeds; seed++)
        {
            foreach (bool prove in (bool[])[false, true])
                tally.Look(new SmallRow(seed, rows, corner, pin).Project, SmallKinds.OneRow, prove, $"seed {seed}");
        }
        Assert.True(tally.Asked >= 2 * least, $"{tally.Asked / 2} walls have a layout");
        tally.AssertCount(1, "best");
        tally.Limits.AssertMany(tally.Asked, tally.Asked - 2, 3);
    }

    /// <summary>Sloping tops, stepped bottoms, two rows round corners of both kinds, face offsets, batters and pins in any row, all by chance together.</summary>
    [Fact]
    public void Walls_of_all_kinds_are_solved_as_well_as_by_enumeration()
    {
        var tally = new SmallWallTally();
        for (ulong seed = 1; seed <= 40; seed++)
        {
            var wall = new SmallWall(seed);
            tally.Look(wall.Project, wall.Kinds, prove: seed % 4 == 0, $"seed {seed}");
        }
        Assert.True(tally.Asked >= 35, $"{tally}");
        tally.AssertAllKinds();
    }

    /// <summary>What the grid leaves uncovered is covered by one nail more in a row where no nail of it can move there.</summary>
    [Theory]
    [InlineData(410)]
    [InlineData(645)]
    public void A_nail_more_covers_what_no_moved_one_can(int seed)
    {
        var wall = new SmallWall((ulong)seed);
        var tally = new SmallWallTally();
        tally.Look(wall.Project, wall.Kinds, prove: false, $"seed {seed}");

        Assert.Equal(1, tally.Asked);
        tally.AssertCount(1, "best");
    }

    /// <summary>
    /// A nail that would be too deep below a rising top, or too high over a lower bottom, if it were the highest or lowest may stand there under or over another
    /// row's: layouts without that are not the best, and limits without it are none.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_nail_between_other_rows_may_move_where_it_could_not_stand_alone(bool top)
    {
        PlacingWall wall = top
            ? new()
            {
                FaceOffset = -0.75,
                Top = "[[0, 103], [END, 104]]",
                Bottom = "[[0, 100], [5, 99]]",
                WallKeys = ["batter: {angle: 5, elevation: 100}"],
                Blocks = Blocks("0.5", "station: 3.5, offset: 6.5}, diameter: 2", "station: 4.75, offset: 6}, diameter: 1"),
            }
            : new()
            {
                Top = "[[0, 103], [END, 103]]",
                Bottom = "[[0, 95.5], [5, 94.5]]",
                Lengths = "12",
                Blocks = Blocks("1.5", "station: 7.25, offset: 9.25}, diameter: 1", "station: 4, offset: 7.5}, diameter: 3"),
            };
        var tally = new SmallWallTally();
        tally.Look((wall with { Length = 9.5, TopRowDepth = 1.5 }).Project, SmallKinds.SteppedBottom, prove: false, $"top {top}");
        tally.AssertCount(1, "unresolved");

        static string[] Blocks(string clear, params string[] shafts) =>
        [
            "obstructions:",
            .. shafts.Select((s, i) => $"  - {{name: S{i + 1}, kind: shaft, at: {{{s}, top: 110, bottom: 80}}"),
            "rules:",
            $"  clearance: {{obstruction: 0.5, nail: {clear}, boundary: 1}}",
            "  redirect: {field_tolerance: 10, step: 5, maximum: 20, inclination: [10, 20]}",
            "  shift_step: 1",
        ];
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
            var every = EveryLayout.Of(wall.Project);
            if (every.IsImpossible)
                continue;
            int best = every.Best().Unresolved;
            RowTask[] tasks = [.. RowTasks.Make(new Site(wall.Project))];
            var search = new ClusterSearch([.. tasks.Select(t => new StretchOfRow(t, 0, t.Count - 1))], wall.Project.Rules.NailClearance, 50_000_000);
            for (int count = 0; count <= best; count++)
                Assert.Equal(count < best, search.NeedsMoreThan(count));
            asked++;
        }
        Assert.True(asked >= least, $"{asked} walls have a layout");
    }
}

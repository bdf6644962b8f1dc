using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Tests.Properties;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Clusters: how many nails of stations that are looked at together must stay unresolved.</summary>
[Trait("Category", "Long")]
public sealed class ClusterTests
{
    private const long Looks = 50_000_000;

    [Theory]
    [InlineData(1, false, false, 60)]
    [InlineData(2, false, false, 40)]
    [InlineData(1, true, false, 60)]
    [InlineData(1, true, true, 40)]
    public void A_cluster_of_all_stations_proves_as_many_as_enumeration_finds(int rows, bool corner, bool pin, int cases)
    {
        int asked = 0, unresolved = 0;
        foreach (ulong seed in SeedData.Of(1, cases))
        {
            var wall = new SmallRow(seed, rows, corner, pin);
            WallProject project = wall.Project;
            var every = EveryLayout.Of(project);
            if (every.IsImpossible)
                continue;
            int best = every.Best().Unresolved;
            RowTask[] tasks = [.. RowTasks.Make(new Site(project))];
            var search = new ClusterSearch([.. tasks.Select(t => new StretchOfRow(t, 0, t.Count - 1))], project.Rules.NailClearance, Looks);
            int proven = 0;
            while (proven <= best && search.NeedsMoreThan(proven))
                proven++;
            Assert.True(proven == best, $"seed {seed}: proven {proven}, by enumeration {best}");
            asked++;
            unresolved += best;
        }
        Assert.True(asked >= cases / 2 && unresolved > cases / 20, $"{asked} walls, {unresolved} unresolved");
    }

    [Fact]
    public void Lines_of_rows_go_on_through_a_corner()
    {
        WallProject project = new PlacingWall { Length = 28, CornerAt = 14, Deflection = 90 }.Project;
        List<RowTask[]> lines = RowLines.Of(RowTasks.Make(new Site(project)));
        Assert.Equal(5, lines.Count);
        Assert.All(lines, line =>
        {
            Assert.Equal(2, line.Length);
            Assert.Equal(line[0].Number, line[1].Number);
            Assert.Equal([0, 1], line.Select(r => r.Bay.Leg.Index));
        });
    }
}

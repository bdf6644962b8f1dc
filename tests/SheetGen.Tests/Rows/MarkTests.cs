using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Tests.Placing;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Rows;

/// <summary>Marks are unique in a project, wherever nails are added, and no nail's mark depends on nails elsewhere.</summary>
public sealed class MarkTests
{
    // Crowded part rows, where two grid stations share a column, are what makes letters meet; they must occur for the test to tell.
    [Fact]
    public void Marks_are_unique_however_many_nails_stand_for_a_grid_station()
    {
        bool crowded = false;
        for (ulong seed = 7901; seed < 7913; seed++)
        {
            WallProject project = PlacingWall.Read(RandomWall.Yaml(seed, new RandomWallOptions { Nails = 120 }));
            List<RowTask> rows = RowTasks.Make(new Site(project));
            crowded |= rows.Any(r => r.Columns.Any(c => c.Further > 0));
            var names = new Marks(project);
            string[] marks = [.. rows.SelectMany(r => names.Of(WithNails(r, ordinal => ordinal % 4)).Values)];
            string[] stations = [.. rows.SelectMany(r => Enumerable.Range(0, r.Count).Where(ordinal => ordinal % 4 == 0).Select(ordinal => names.OfStation(r, ordinal)))];
            string[] all = [.. marks, .. stations];
            Assert.Equal([], all.GroupBy(m => m).Where(g => g.Count() > 1).Select(g => $"{seed}: {g.Key}"));
        }
        Assert.True(crowded);
    }

    [Fact]
    public void An_added_nail_renames_no_nail_of_a_grid_station()
    {
        for (ulong seed = 7901; seed < 7905; seed++)
        {
            WallProject project = PlacingWall.Read(RandomWall.Yaml(seed, new RandomWallOptions { Nails = 80 }));
            var names = new Marks(project);
            foreach (RowTask row in RowTasks.Make(new Site(project)))
            {
                string[] own = [.. Enumerable.Range(0, row.Count).Select(ordinal => names.OfStation(row, ordinal))];
                Assert.Equal(own, names.Of(Plain(row)).Values);
                Assert.Superset(own.ToHashSet(), names.Of(WithNails(row, _ => 3)).Values.ToHashSet());
            }
        }
    }

    [Fact]
    public void A_column_has_letters_beyond_the_alphabet()
    {
        string[] names = [.. Enumerable.Range(0, 800).Select(i => new ColumnName(7, i).ToString())];
        Assert.Equal(["07", "07a", "07z", "07aa", "07ab", "07az", "07ba"], new[] { 0, 1, 26, 27, 28, 52, 53 }.Select(i => names[i]));
        Assert.Equal(names.Length, names.Distinct().Count());
    }

    [Theory]
    [InlineData("Wall 1", "Wall 2", "W1-", "W2-")]
    [InlineData("North", "Nave", "North-", "Nave-")]
    [InlineData("A 1", "A-1", "A 1-", "A-1-")]
    [InlineData("+", "++", "+-", "++-")]
    public void Prefixes_tell_walls_apart(string first, string second, string firstPrefix, string secondPrefix)
    {
        WallProject one = new PlacingWall().Project;
        WallProject two = one with { Walls = [one.Walls[0] with { Name = first }, one.Walls[0] with { Name = second }] };
        var names = new Marks(two);
        Assert.Equal(
            [firstPrefix + "A-V-1", secondPrefix + "A-V-1"],
            two.Walls.Select(w => names.Verification(w, w.Sections[0], 1)));
    }

    /// <summary>A row with the grid's nails.</summary>
    private static RowState Plain(RowTask row)
    {
        var standing = new Standing(row.Count);
        return new(row, [.. Enumerable.Range(0, row.Count).Select(ordinal => new Slot(ordinal, row, ordinal, standing))]);
    }

    /// <summary>A row with so many nails at each grid station, whatever the rules say.</summary>
    private static RowState WithNails(RowTask row, Func<int, int> count)
    {
        RowState state = Plain(row);
        for (int ordinal = 0; ordinal < row.Count; ordinal++)
        {
            Placed[] nails = [.. row.Choices[ordinal].Take(count(ordinal)).Select(c => Placed.At(row, c, c.Turnings[0], false))];
            state.Slots[ordinal].Nails = nails;
        }
        return state;
    }
}

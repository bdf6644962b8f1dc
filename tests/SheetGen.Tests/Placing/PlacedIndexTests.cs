using SheetGen.Layout.Placing;
using SheetGen.Model.Geometry;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Nails found by where they lie, and stretches of stations, against a look at every one.</summary>
public sealed class PlacedIndexTests
{
    // Cells much smaller than a nail, about as small as the search has them, and larger than the wall, which runs to the east and west of the origin.
    [Theory]
    [InlineData(1.3, 1)]
    [InlineData(5, 2)]
    [InlineData(200, 3)]
    public void The_nails_near_a_hole_are_those_whose_boxes_meet_its_own(double cell, int seed)
    {
        string yaml = new PlacingWall { Length = 21, Top = "[[0, 108], [END, 108]]", Blocks = ["rules:", "  shift_step: 1", "  redirect: {step: 5, maximum: 20}"] }.Yaml
            .Replace("northing: 5000, easting: 2000", "northing: 3, easting: -9", StringComparison.Ordinal);
        List<RowTask> rows = RowTasks.Make(new Site(PlacingWall.Read(yaml)));
        var random = new WallRandom((ulong)seed);
        Placed Any()
        {
            RowTask row = rows[random.Whole(0, rows.Count - 1)];
            IReadOnlyList<HeadChoice> places = row.Choices[random.Whole(0, row.Count - 1)];
            HeadChoice place = places[random.Whole(0, places.Count - 1)];
            return Placed.At(row, place, place.Turnings[random.Whole(0, place.Turnings.Count - 1)], false);
        }
        var index = new PlacedIndex(cell);
        var there = new List<Placed>();
        int some = 0, others = 0;
        for (int i = 0; i < 300; i++)
        {
            if (there.Count > 20 && random.Chance(0.45))
            {
                Placed gone = there[random.Whole(0, there.Count - 1)];
                index.Remove(gone);
                there.Remove(gone);
            }
            else
            {
                Placed put = Any();
                index.Add(put);
                there.Add(put);
            }
            Placed asked = Any();
            double far = random.Of(0, 0.5, 3);
            void AssertFound(Bounds box, List<Placed> found)
            {
                Assert.Equal(there.Count(n => n.Box.Meets(box)), found.Count);
                Assert.All(found, n => Assert.True(there.Contains(n) && n.Box.Meets(box)));
                Assert.Equal(found.Count, found.Distinct().Count());
                Assert.Equal(found.OrderBy(n => n.Row.Index).ThenBy(n => n.Choice.Head.Along).Select(n => (n.Row.Index, n.Choice.Head.Along)), found.Select(n => (n.Row.Index, n.Choice.Head.Along)));
                some += found.Count;
                others += there.Count - found.Count;
            }
            AssertFound(Bounds.Of(asked.Hole).Grow(far), index.Near(asked.Hole, far));
            AssertFound(new Bounds(asked.Choice.Point, asked.Choice.Point).Grow(far), index.Around(asked.Choice.Point, far));
        }
        Assert.True(some > 500 && others > 500, $"{some} found, {others} not");
    }

    // A stretch is solved with three stations more on each side: two share a neighbour where they are up to seven apart.
    [Theory]
    [InlineData(new[] { 4 }, "4-4")]
    [InlineData(new[] { 0, 7 }, "0-7")]
    [InlineData(new[] { 0, 8 }, "0-0 8-8")]
    [InlineData(new[] { 1, 2, 9, 17, 20, 30 }, "1-9 17-20 30-30")]
    [InlineData(new int[0], "")]
    public void Stations_that_are_solved_together(int[] ordinals, string stretches) =>
        Assert.Equal(stretches, string.Join(' ', Troubles.Join([.. ordinals]).Select(s => $"{s.First}-{s.Last}")));
}

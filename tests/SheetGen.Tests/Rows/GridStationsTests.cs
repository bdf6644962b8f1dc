using SheetGen.Layout.Rows;
using SheetGen.Tests.Placing;
using Xunit;

namespace SheetGen.Tests.Rows;

/// <summary>Grid stations of a run: n = ceil(width / spacing), the rest shared by the ends. Spacing 3.5; expected values worked by hand.</summary>
public sealed class GridStationsTests
{
    [Theory]
    [InlineData(21, "edge_min: 1", new[] { 1.75, 5.25, 8.75, 12.25, 15.75, 19.25 })]
    [InlineData(20, "edge_min: 1", new[] { 1.25, 4.75, 8.25, 11.75, 15.25, 18.75 })]
    [InlineData(18, "edge_min: 1", new[] { 1, 3.75, 7.25, 10.75, 14.25, 17 })]
    [InlineData(17.6, "edge_min: 1", new[] { 1, 3.55, 7.05, 10.55, 14.05, 16.6 })]
    [InlineData(18, "edge_min: 2", new[] { 2, 4.8, 7.6, 10.4, 13.2, 16 })]
    [InlineData(3.5, "edge_min: 1", new[] { 1.75 })]
    [InlineData(2.5, "edge_min: 1", new[] { 1.25 })]
    [InlineData(7, "edge_min: 1", new[] { 1.75, 5.25 })]
    [InlineData(4, "edge_min: 1", new[] { 1.0, 3 })]
    public void Columns_share_the_rest_at_the_ends(double width, string rule, double[] expected)
    {
        GridStations grid = Grid(width, "square", rule);
        Assert.Equal(expected.Length, (int)Math.Ceiling(width / 3.5));
        AssertPlaces(expected, grid.Square);
        AssertPlaces(expected, grid.OfRow(2));
    }

    [Theory]
    [InlineData(21, new[] { 1, 3.5, 7, 10.5, 14, 17.5, 20 })]
    [InlineData(20, new[] { 1, 3, 6.5, 10, 13.5, 17, 19 })]
    [InlineData(18, new[] { 1, 3, 5.5, 9, 12.5, 15, 17 })]
    public void A_moved_row_has_a_nail_at_each_end(double width, double[] expected)
    {
        GridStations grid = Grid(width, "staggered", "edge_min: 1");
        AssertPlaces(expected, grid.Staggered);
        AssertPlaces(expected, grid.OfRow(2));
        Assert.Equal(grid.Square, grid.OfRow(1));
        Assert.Equal(grid.Square, grid.OfRow(3));
    }

    [Fact]
    public void Gaps_and_ends_keep_the_rule_at_every_width()
    {
        for (int tenths = 40; tenths <= 400; tenths += 3)
        {
            double width = tenths / 10.0;
            GridStations grid = Grid(width, "staggered", "edge_min: 1");
            foreach (IReadOnlyList<double> places in (IReadOnlyList<double>[])[grid.Square.Numbers(), grid.Staggered.Numbers()])
            {
                Assert.InRange(places[0], 1 - 0.01, 1.75 + 0.01);
                Assert.InRange(width - places[^1], 1 - 0.01, 1.75 + 0.01);
                for (int i = 1; i < places.Count; i++)
                    Assert.InRange(places[i] - places[i - 1], 2 - 0.011, 3.5 + 0.011);
            }
        }
    }

    [Theory]
    [InlineData(21, "1.75", new[] { 1.75, 5.25, 8.75, 12.25, 15.75, 19.25 })]
    [InlineData(20, "1.5", new[] { 1.5, 5, 8.5, 12, 15.5, 19 })]
    [InlineData(20, "1", new[] { 1, 4.5, 8, 11.5, 15, 18.5 })]
    [InlineData(20, "0", new[] { 1, 3.5, 7, 10.5, 14, 16.5, 19 })]
    [InlineData(6.5, "1.25", new[] { 1.25, 4.75 })]
    [InlineData(3, "1.5", new[] { 1.5 })]
    [InlineData(20, "3", new[] { 1, 3, 6.5, 10, 13.5, 17, 19 })]
    [InlineData(21, "2", new[] { 1, 3.25, 5.5, 9, 12.5, 16, 19.5 })]
    public void A_first_column_that_is_given_starts_the_count(double width, string first, double[] expected) =>
        AssertPlaces(expected, Grid(width, "square", "edge_min: 1", first).Square);

    /// <summary>Whatever the first column, gaps and ends keep the rule, and the first column stands where it is given.</summary>
    [Fact]
    public void Gaps_and_ends_keep_the_rule_from_every_first_column()
    {
        for (int tenths = 60; tenths <= 400; tenths += 7)
        {
            foreach (string first in new[] { "1", "1.25", "1.5", "1.75", "2", "2.6", "3.25" })
            {
                double width = tenths / 10.0, given = double.Parse(first, System.Globalization.CultureInfo.InvariantCulture);
                GridStations grid = Grid(width, "staggered", "edge_min: 1", first);
                Assert.Equal(given > 1.75 ? 1 : given, grid.Square[0].Number, 2);
                foreach (IReadOnlyList<double> places in (IReadOnlyList<double>[])[grid.Square.Numbers(), grid.Staggered.Numbers()])
                {
                    Assert.InRange(places[0], 1 - 0.01, 1.75 + 0.01);
                    Assert.InRange(width - places[^1], 1 - 0.01, 1.75 + 0.01);
                    for (int i = 1; i < places.Count; i++)
                        Assert.InRange(places[i] - places[i - 1], 2 - 0.011, 3.5 + 0.011);
                }
            }
        }
    }

    [Fact]
    public void A_wall_laid_out_from_its_first_column_is_covered()
    {
        Model.WallProject project = new PlacingWall { Length = 33, Columns = "1.25" }.Project;
        Model.Results.NailLayout layout = SheetGen.Layout.Placing.Placer.Place(project, new SheetGen.Layout.Placing.PlacingOptions());
        Assert.All(layout.Nails.GroupBy(n => n.Row), r => Assert.Equal(1.25, r.Min(n => n.Along), 2));
        Assert.DoesNotContain(SheetGen.Layout.Clearance.Checker.Check(project, layout).Findings, f => f.Code is "cover" or "spacing" or "edge");
    }

    private static GridStations Grid(double width, string pattern, string rule, string first = "") => GridStations.At(Assert.Single(PlacingWall.Bays(
        new PlacingWall { Length = width, Pattern = pattern, Columns = first, Blocks = ["rules: {" + rule + "}"] }.Project)), new Elevation(100));

    private static void AssertPlaces(double[] expected, IReadOnlyList<Along> places)
    {
        Assert.Equal(expected.Length, places.Count);
        for (int i = 0; i < expected.Length; i++)
            Assert.Equal(expected[i], places[i].Number, 0.0051);
    }
}

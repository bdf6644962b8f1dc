using SheetGen.Model;
using Xunit;

namespace SheetGen.Tests.Drawing.Plan;

public class LayoutProjectionTests
{
    [Theory]
    [InlineData(5)]
    [InlineData(69.5)]
    [InlineData(92)]
    [InlineData(150)]
    [InlineData(-12)]
    [InlineData(185)]
    public void A_point_beside_the_line_is_found_where_it_was_put(double along)
    {
        LayoutLine line = SampleLayout.Read(SampleWalls.TwoWalls).LayoutLines[0];
        foreach (double right in new[] { -6.0, 0, 3, 8 })
        {
            LinePlace place = LayoutProjection.Locate(line, line.PointAt(along, right));

            Assert.Equal(along, place.Along, 6);
            Assert.Equal(right, place.Right, 6);
        }
    }
}

using SheetGen.Layout.Clearance;
using SheetGen.Model.Geometry;
using Xunit;

namespace SheetGen.Tests.Clearance;

public sealed class SolidIndexTests
{
    /// <summary>Whatever the number of solids, each whose box meets the one asked about is named once, and no other.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(9)]
    [InlineData(64)]
    [InlineData(301)]
    public void Every_solid_near_a_box_is_named_once(int count)
    {
        var random = new Random(count);
        double Any(double most) => random.NextDouble() * most;
        Solid[] solids =
        [
            .. Enumerable.Range(0, count).Select(i => new CapsuleSolid(new(Any(100), Any(100), Any(30)), new(Any(100), Any(100), Any(30)), 0.1 + Any(1))),
        ];
        var index = new SolidIndex(solids);
        int met = 0;
        for (int round = 0; round < 300; round++)
        {
            var low = new Vector3D(Any(110) - 5, Any(110) - 5, Any(35) - 2);
            var box = new Bounds(low, low + new Vector3D(Any(6), Any(6), Any(6)));
            var found = new List<int>();
            index.Near(box, found);
            int[] slow =
            [
                .. Enumerable.Range(0, count).Where(i => solids[i].Bounds is var b && b.Low.N <= box.High.N && box.Low.N <= b.High.N && b.Low.E <= box.High.E && box.Low.E <= b.High.E
                    && b.Low.Z <= box.High.Z && box.Low.Z <= b.High.Z),
            ];
            Assert.Equal(slow, found.Order());
            met += slow.Length;
        }
        Assert.True(met >= 2 * count, $"{met} solids met");
    }
}

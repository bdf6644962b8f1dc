using FsCheck;
using FsCheck.Xunit;
using SheetGen.Dxf;
using Xunit;

namespace SheetGen.Tests.Dxf;

public class BoundsTests
{
    [Property(MaxTest = 100)]
    public void Arc_and_bulge_reach_as_far_as_their_points(short from, short to)
    {
        var (start, end) = (from / 50.0, to / 50.0);
        var arc = new DxfArc("0", new(3, 4), 5, start, end);
        var sweep = (end - start) % 360;
        if (sweep <= 0)
            sweep += 360;
        var points = Enumerable.Range(0, 4_001).Select(i => arc.Center + new DxfPoint(5, 0).Rotated(start + (sweep * i / 4_000))).ToList();

        AssertNear(points, DxfBounds.Of([arc], new()));
        // Near a full turn the two ends of a bulge fall together.
        if (sweep is < 1 or > 350)
            return;
        var ahead = new DxfPolyline("0", [new(points[0], DxfBulge.OfSweep(sweep)), points[^1]]);
        var back = new DxfPolyline("0", [new(points[^1], DxfBulge.OfSweep(-sweep)), points[0]]);
        AssertNear(points, DxfBounds.Of([ahead], new()));
        AssertNear(points, DxfBounds.Of([back], new()));
    }

    [Fact]
    public void Inserts_carry_their_block()
    {
        var document = new DxfDocument();
        document.Blocks.Add(new("B") { BasePoint = new(1, 1), Entities = { new DxfLine("0", new(1, 1), new(3, 2)) } });

        var extents = DxfBounds.Of([new DxfInsert("0", "B", new(10, 10)) { ScaleX = 2, ScaleY = 3, Rotation = 90 }], document);

        Assert.Equal(new DxfExtents(new(7, 10), new(10, 14)), extents);
    }

    [Fact]
    public void Nothing_has_no_extents() => Assert.Null(DxfBounds.Of([], new()));

    [Fact]
    public void File_opens_on_its_content()
    {
        var text = System.Text.Encoding.ASCII.GetString(SampleDocument.Write(SampleDocument.WithEntities(new DxfLine("0", new(100, 200), new(140, 210)))));

        Assert.Contains("$EXTMIN\r\n 10\r\n100.0\r\n 20\r\n200.0\r\n 30\r\n0.0\r\n  9\r\n$EXTMAX\r\n 10\r\n140.0\r\n 20\r\n210.0\r\n", text);
        // The active view: its centre, and a height that shows all of a drawing twice as wide as high, with a margin.
        Assert.Matches("\\*Active\r\n 70(.*\r\n){10} 12\r\n120.0\r\n 22\r\n205.0\r\n(.*\r\n)* 40\r\n22.0\r\n 41\r\n2.0\r\n", text);
    }

    private static void AssertNear(List<DxfPoint> points, DxfExtents? extents)
    {
        var box = Assert.NotNull(extents);
        Assert.Equal(points.Min(p => p.X), box.Min.X, 3);
        Assert.Equal(points.Min(p => p.Y), box.Min.Y, 3);
        Assert.Equal(points.Max(p => p.X), box.Max.X, 3);
        Assert.Equal(points.Max(p => p.Y), box.Max.Y, 3);
    }
}

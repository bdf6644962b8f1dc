using SheetGen.Layout.Placing;
using SheetGen.Model;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>What is remembered to be in the way of a direction, which loops side by side share.</summary>
public sealed class InWayTests
{
    /// <summary>A layout and the first nails that stand in it.</summary>
    private static (LayoutState Layout, Placed[] Nails) Standing(int count)
    {
        WallProject wall = new SmallRow(31, 1, false, false).Project;
        var layout = new LayoutState([.. RowTasks.Make(new Site(wall))], wall.Rules.NailClearance);
        return (layout, [.. layout.Slots.SelectMany(s => s.Nails).Where(layout.Stands).Take(count)]);
    }

    [Fact]
    public void One_nail_is_never_told_twice_whoever_writes_between()
    {
        (LayoutState layout, Placed[] nails) = Standing(2);
        var inWay = new InWay();
        bool isOver = false;
        int twice = 0, told = 0;
        var writers = nails.Select(n => new Thread(() =>
        {
            while (!Volatile.Read(ref isOver))
                inWay.Add(5, n);
        })).ToArray();
        foreach (Thread writer in writers)
            writer.Start();
        while (told < 200_000)
        {
            (Placed? last, Placed? earlier) = inWay.Standing(5, layout);
            if (last is null && earlier is null)
                continue;
            told++;
            twice += ReferenceEquals(last, earlier) ? 1 : 0;
        }
        Volatile.Write(ref isOver, true);
        foreach (Thread writer in writers)
            writer.Join();
        Assert.Equal(2, nails.Length);
        Assert.Equal(0, twice);
    }

    [Fact]
    public void The_last_two_that_stand_are_told()
    {
        (LayoutState layout, Placed[] nails) = Standing(3);
        var inWay = new InWay();
        Assert.Equal((null, null), inWay.Standing(5, layout));
        foreach (Placed nail in nails.Append(nails[2]))
            inWay.Add(5, nail);
        Assert.Equal((nails[2], nails[1]), inWay.Standing(5, layout));
        Assert.Equal((null, null), inWay.Standing(4, layout));
        layout.SlotOf(nails[2]).Nails = [];
        Assert.Equal((null, nails[1]), inWay.Standing(5, layout));
        Assert.True(inWay.IsBlocked(5, layout));
    }
}

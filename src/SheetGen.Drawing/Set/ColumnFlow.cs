using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Set;

/// <summary>Gives places down the columns of sheets, one below the other.</summary>
internal sealed class ColumnFlow(Box area, int columns, double gap)
{
    public double Width { get; } = (area.Width - gap * (columns - 1)) / columns;

    /// <summary>The sheet reached, from 0.</summary>
    public int Page { get; private set; }

    /// <summary>Height of a column.</summary>
    public double Height => area.Height;

    /// <summary>Height that is left of the column reached.</summary>
    public double Room => Y - area.Bottom;

    private int Column { get; set; }

    private double Y { get; set; } = area.Top;

    private double X => area.Left + Column * (Width + gap);

    /// <summary>The upper left corner for something of a height; in the next column where this one has no room for it.</summary>
    /// <param name="with">Height that must follow in the same column, such as that of the first line below a heading.</param>
    public (int Page, Point2 At) Take(double height, double with = 0)
    {
        if (Y - height - with < area.Bottom && Y < area.Top)
            NextColumn();
        var at = new Point2(X, Y);
        Y -= height;
        return (Page, at);
    }

    public void Skip(double height) => Y = Math.Max(area.Bottom, Y - height);

    private void NextColumn()
    {
        Y = area.Top;
        if (++Column == columns)
            NextPage();
    }

    /// <summary>Leaves what remains of the sheet reached.</summary>
    public void NextPage()
    {
        (Column, Y) = (0, area.Top);
        Page++;
    }
}

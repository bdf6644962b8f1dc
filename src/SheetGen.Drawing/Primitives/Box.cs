namespace SheetGen.Drawing.Primitives;

/// <summary>A rectangle along the axes.</summary>
public readonly record struct Box(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;

    public double Height => Top - Bottom;

    public Point2 Center => new((Left + Right) / 2, (Bottom + Top) / 2);

    public static Box Around(IEnumerable<Point2> points)
    {
        double left = double.PositiveInfinity, bottom = left, right = double.NegativeInfinity, top = right;
        foreach (Point2 p in points)
        {
            left = Math.Min(left, p.X);
            right = Math.Max(right, p.X);
            bottom = Math.Min(bottom, p.Y);
            top = Math.Max(top, p.Y);
        }
        return new(left, bottom, right, top);
    }

    public static Box At(Point2 center, double width, double height) =>
        new(center.X - width / 2, center.Y - height / 2, center.X + width / 2, center.Y + height / 2);

    public Box Grown(double by) => new(Left - by, Bottom - by, Right + by, Top + by);

    public bool Overlaps(Box other) => Left < other.Right && other.Left < Right && Bottom < other.Top && other.Bottom < Top;

    public bool Contains(Box other) => other.Left >= Left && other.Right <= Right && other.Bottom >= Bottom && other.Top <= Top;

    public bool Contains(Point2 p) => p.X >= Left && p.X <= Right && p.Y >= Bottom && p.Y <= Top;

    public Box Union(Box other) =>
        new(Math.Min(Left, other.Left), Math.Min(Bottom, other.Bottom), Math.Max(Right, other.Right), Math.Max(Top, other.Top));

    /// <summary>The part of the box inside another; null where there is none.</summary>
    public Box? Within(Box other)
    {
        var part = new Box(Math.Max(Left, other.Left), Math.Max(Bottom, other.Bottom), Math.Min(Right, other.Right), Math.Min(Top, other.Top));
        return part.Width < 0 || part.Height < 0 ? null : part;
    }

    /// <summary>The point of the box nearest to a point.</summary>
    public Point2 Nearest(Point2 p) => new(Math.Clamp(p.X, Left, Right), Math.Clamp(p.Y, Bottom, Top));

    /// <summary>True where a segment runs through the box (clipping by its four sides).</summary>
    public bool Crosses(Point2 a, Point2 b)
    {
        (double low, double high) = (0, 1);
        return Clip(a, b, ref low, ref high);
    }

    /// <summary>The part of a segment that lies in the box; null where it runs past it.</summary>
    public (Point2 From, Point2 To)? Part(Point2 a, Point2 b)
    {
        (double low, double high) = (0, 1);
        return Clip(a, b, ref low, ref high) ? (low == 0 ? a : a + (b - a) * low, high == 1 ? b : a + (b - a) * high) : null;
    }

    private bool Clip(Point2 a, Point2 b, ref double low, ref double high) =>
        Clip(a.X - b.X, a.X - Left, ref low, ref high) && Clip(b.X - a.X, Right - a.X, ref low, ref high)
            && Clip(a.Y - b.Y, a.Y - Bottom, ref low, ref high) && Clip(b.Y - a.Y, Top - a.Y, ref low, ref high) && low < high;

    private static bool Clip(double p, double q, ref double low, ref double high)
    {
        if (p == 0)
            return q > 0;
        double t = q / p;
        if (p < 0)
            low = Math.Max(low, t);
        else
            high = Math.Min(high, t);
        return low < high;
    }
}

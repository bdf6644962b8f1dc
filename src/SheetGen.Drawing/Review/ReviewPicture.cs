using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Review;

/// <summary>A window of a page into a plane, to one scale both ways; what does not fit is cut.</summary>
public sealed class ReviewPicture
{
    private readonly ReviewBook _book;
    private readonly Point2 _center;

    /// <param name="frame">On the page, mm.</param>
    /// <param name="shown">What of the plane has to be seen.</param>
    public ReviewPicture(ReviewBook book, Box frame, Box shown)
    {
        _book = book;
        Frame = frame;
        Scale = Math.Min(frame.Width / Math.Max(shown.Width, 1e-6), frame.Height / Math.Max(shown.Height, 1e-6));
        _center = shown.Center;
    }

    public Box Frame { get; }

    /// <summary>Millimetres of paper per unit of the plane.</summary>
    public double Scale { get; }

    public Point2 At(Point2 p) => Frame.Center + (p - _center) * Scale;

    /// <summary>A line as far as it runs in the frame.</summary>
    public void Line(LayerRole layer, Point2 from, Point2 to) => Clipped(layer, At(from), At(to));

    public void Path(LayerRole layer, IEnumerable<Point2> points, bool closed = false)
    {
        Point2[] at = [.. points.Select(At)];
        for (int i = 0; i + 1 < at.Length + (closed ? 1 : 0); i++)
            Clipped(layer, at[i], at[(i + 1) % at.Length]);
    }

    public void Circle(LayerRole layer, Point2 center, double radius)
    {
        const int Steps = 48;
        Path(layer, Enumerable.Range(0, Steps).Select(i => center + new Point2(radius, 0).Turned(i * 2 * Math.PI / Steps)), true);
    }

    /// <summary>A circle of a size on paper, where its middle lies in the frame.</summary>
    public void Dot(LayerRole layer, Point2 center, double millimetres, bool filled = false)
    {
        Point2 at = At(center);
        if (Frame.Contains(at))
            _book.Add(filled ? Fill.Disc(layer, at, millimetres) : new Circle(layer, at, millimetres));
    }

    public void Text(string text, Point2 at, double up = 0, double height = 2, HorizontalAlign align = HorizontalAlign.Left, double right = 0)
    {
        Point2 place = At(at) + new Point2(right, up);
        if (Frame.Grown(1).Contains(place))
            _book.Write(text, place.X, place.Y, height, align: align);
    }

    public void Border() => _book.Add(Polyline.Rectangle(LayerRole.Border, Frame));

    private void Clipped(LayerRole layer, Point2 a, Point2 b)
    {
        double low = 0, high = 1;
        if (Clip(a.X - b.X, a.X - Frame.Left, ref low, ref high) && Clip(b.X - a.X, Frame.Right - a.X, ref low, ref high)
            && Clip(a.Y - b.Y, a.Y - Frame.Bottom, ref low, ref high) && Clip(b.Y - a.Y, Frame.Top - a.Y, ref low, ref high) && low < high)
            _book.Add(new Line(layer, a + (b - a) * low, a + (b - a) * high));
    }

    /// <summary>Clipping of a segment by one side (Liang and Barsky).</summary>
    private static bool Clip(double p, double q, ref double low, ref double high)
    {
        if (p == 0)
            return q >= 0;
        double t = q / p;
        if (p < 0)
            low = Math.Max(low, t);
        else
            high = Math.Min(high, t);
        return low <= high;
    }
}

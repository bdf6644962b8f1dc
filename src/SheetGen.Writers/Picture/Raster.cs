using SheetGen.Drawing.Primitives;

namespace SheetGen.Writers.Picture;

/// <summary>A grey canvas on which areas are painted with soft edges. Coordinates are pixels, y down.</summary>
internal sealed class Raster
{
    private const int Sub = 4;
    private readonly float[] _row;

    public Raster(int width, int height)
    {
        (Width, Height) = (width, height);
        Pixels = new byte[width * height];
        Array.Fill(Pixels, (byte)255);
        _row = new float[width + 2];
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>Rows from the top, 0 black to 255 white.</summary>
    public byte[] Pixels { get; }

    /// <summary>Paints the area that the outlines wind round, within a window.</summary>
    public void Paint(IReadOnlyList<IReadOnlyList<Point2>> outlines, byte grey, Box window)
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (Point2 p in outlines.SelectMany(o => o))
            (low, high) = (Math.Min(low, p.Y), Math.Max(high, p.Y));
        int first = (int)Math.Max(Math.Max(0, Math.Floor(window.Bottom)), Math.Floor(low)), last = (int)Math.Min(Math.Min(Height, Math.Ceiling(window.Top)), Math.Ceiling(high));
        var crossings = new List<(double X, int Turn)>();
        for (int y = first; y < last; y++)
        {
            (int from, int to) = (Width, 0);
            for (int sub = 0; sub < Sub; sub++)
            {
                double at = y + (sub + 0.5) / Sub;
                if (at < window.Bottom || at > window.Top)
                    continue;
                Cross(outlines, at, crossings);
                int winding = 0;
                for (int i = 0; i + 1 < crossings.Count; i++)
                {
                    winding += crossings[i].Turn;
                    if (winding != 0)
                        Span(Math.Max(crossings[i].X, window.Left), Math.Min(crossings[i + 1].X, window.Right), ref from, ref to);
                }
            }
            for (int x = from; x < to; x++)
            {
                float share = Math.Min(1, _row[x] / Sub);
                ref byte pixel = ref Pixels[y * Width + x];
                pixel = (byte)Math.Round(pixel + (grey - pixel) * share);
                _row[x] = 0;
            }
        }
    }

    private static void Cross(IReadOnlyList<IReadOnlyList<Point2>> outlines, double y, List<(double X, int Turn)> crossings)
    {
        crossings.Clear();
        foreach (IReadOnlyList<Point2> outline in outlines)
        {
            for (int i = 0; i < outline.Count; i++)
            {
                Point2 a = outline[i], b = outline[i + 1 == outline.Count ? 0 : i + 1];
                if (a.Y <= y != b.Y <= y)
                    crossings.Add((a.X + (b.X - a.X) * (y - a.Y) / (b.Y - a.Y), b.Y > a.Y ? 1 : -1));
            }
        }
        crossings.Sort();
    }

    private void Span(double left, double right, ref int from, ref int to)
    {
        left = Math.Max(0, left);
        right = Math.Min(Width, right);
        if (right <= left)
            return;
        int a = (int)left, b = (int)right;
        from = Math.Min(from, a);
        to = Math.Max(to, Math.Min(Width, b + 1));
        if (a == b)
        {
            _row[a] += (float)(right - left);
            return;
        }
        _row[a] += (float)(a + 1 - left);
        for (int x = a + 1; x < b; x++)
            _row[x] += 1;
        _row[b] += (float)(right - b);
    }
}

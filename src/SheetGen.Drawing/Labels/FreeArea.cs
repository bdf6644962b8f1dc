using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Labels;

/// <summary>Finds the room that a title block of unknown form leaves for the drawing.</summary>
public static class FreeArea
{
    private const double Cell = 3;

    /// <summary>Characters for which an attribute keeps room: its value differs from sheet to sheet.</summary>
    private const int Expected = 14;

    /// <summary>The largest rectangle of a sheet on which nothing of the title block stands, mm; empty (all 0) where there is none.</summary>
    public static Box Largest(TitleBlock block, SheetSize size, double margin, Func<TextRole, TextStyle> styleOf)
    {
        int columns = (int)((size.Width - 2 * margin) / Cell), rows = (int)((size.Height - 2 * margin) / Cell);
        var taken = new bool[columns, rows];
        foreach (Point2 p in Points(block, styleOf))
        {
            int x = (int)Math.Floor((p.X - margin) / Cell), y = (int)Math.Floor((p.Y - margin) / Cell);
            if (x >= 0 && x < columns && y >= 0 && y < rows)
                taken[x, y] = true;
        }
        (int left, int bottom, int right, int top) = LargestEmpty(taken, columns, rows);
        return new(margin + left * Cell, margin + bottom * Cell, margin + right * Cell, margin + top * Cell);
    }

    /// <summary>For each row the free cells below every column, and from each of them the widest stretch at least as deep.</summary>
    private static (int Left, int Bottom, int Right, int Top) LargestEmpty(bool[,] taken, int columns, int rows)
    {
        (int, int, int, int) best = default;
        int most = 0;
        int[] depth = new int[columns];
        for (int y = 0; y < rows; y++)
        {
            for (int x = 0; x < columns; x++)
                depth[x] = taken[x, y] ? 0 : depth[x] + 1;
            for (int x = 0; x < columns; x++)
            {
                int least = depth[x];
                for (int right = x; right < columns && least > 0; right++)
                {
                    least = Math.Min(least, depth[right]);
                    int cells = least * (right - x + 1);
                    if (cells > most)
                        (most, best) = (cells, (x, y + 1 - least, right + 1, y + 1));
                }
            }
        }
        return best;
    }

    private static IEnumerable<Point2> Points(TitleBlock block, Func<TextRole, TextStyle> styleOf)
    {
        IEnumerable<Text> fields = block.Fields.Where(f => f.Visible).Select(f =>
            new Text(f.Layer, f.Role, f.Position, f.Height, new string('0', Expected), f.Align, f.Rotation));
        IEnumerable<(Point2 From, Point2 To)> written = block.Lines.OfType<Text>().Concat(fields).Select(f => Zigzag(TextMeasure.BoxOf(f, styleOf(f.Role)))).SelectMany(z => z.Zip(z.Skip(1)));
        foreach ((Point2 from, Point2 to) in block.Lines.SelectMany(Extents.Segments).Concat(written))
        {
            int steps = Math.Max(1, (int)Math.Ceiling((to - from).Length));
            for (int k = 0; k <= steps; k++)
                yield return from + (to - from) * ((double)k / steps);
        }
    }

    private static List<Point2> Zigzag(Box box)
    {
        var path = new List<Point2>();
        for (double y = box.Bottom; y < box.Top + Cell; y += Cell)
            path.AddRange([new(box.Left, Math.Min(y, box.Top)), new(box.Right, Math.Min(y, box.Top))]);
        return path;
    }
}

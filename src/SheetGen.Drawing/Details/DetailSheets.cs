using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Details;

/// <summary>Lays the typical details out in cells, sheet by sheet.</summary>
public static class DetailSheets
{
    private const double Band = 20;

    /// <summary>Share of its full size below which a detail is not drawn.</summary>
    private const double SmallestScale = 0.6;

    /// <summary>Number of sheets that the details take.</summary>
    public static int Count(DrawingContext context, Box area)
    {
        int details = DetailViews.All(context).Count;
        (int columns, int rows) = Grid(area, details);
        return (details + columns * rows - 1) / (columns * rows);
    }

    public static IReadOnlyList<IReadOnlyList<Primitive>> Compose(
        DrawingContext context, Box area, Func<int, string> sheetName, List<Finding> findings)
    {
        IReadOnlyList<(string Title, Action<DetailPen> Draw)> details = DetailViews.All(context);
        (int columns, int rows) = Grid(area, details.Count);
        double label = context.StyleOf(TextRole.Label).Height;
        double width = area.Width / columns, height = area.Height / rows;
        var pages = new List<List<Primitive>>();
        for (int i = 0; i < details.Count; i++)
        {
            int place = i % (columns * rows);
            if (place == 0)
                pages.Add([]);
            double left = area.Left + place % columns * width, top = area.Top - place / columns * height;
            var cell = new Box(left + 2, top - height + Band, left + width - 4, top - 2);
            var pen = new DetailPen(context, cell, sheetName(pages.Count - 1));
            details[i].Draw(pen);
            pages[^1].AddRange(pen.Paper);
            findings.AddRange(pen.Findings);
            Point2 at = new(cell.Left + 2, cell.Bottom - 6);
            pages[^1].Add(context.Write(LayerRole.Title, TextRole.Heading, at, FormattableString.Invariant($"DETAIL {i + 1}, {details[i].Title}")));
            pages[^1].Add(new Line(LayerRole.Title, at - new Point2(0, 1.2), at + new Point2(80, -1.2)));
            pages[^1].Add(context.Write(LayerRole.Title, TextRole.Label, at - new Point2(0, 2.4 + label), "NOT TO SCALE"));
            IEnumerable<string> notes = pen.Notes.SelectMany((n, k) =>
                TextMeasure.Wrap(FormattableString.Invariant($"({k + 1}) {n}"), cell.Width - 32, label, context.StyleOf(TextRole.Label)));
            pages[^1].AddRange(notes.Select((n, k) =>
                context.Write(LayerRole.Note, TextRole.Label, at - new Point2(-28, 2.4 + label + k * label * TextMeasure.LinePitch), n)));
        }
        return pages;
    }

    /// <summary>Columns and rows of cells on a sheet: the fewest sheets whose cells are large enough to be read, then the largest cells.</summary>
    private static (int Columns, int Rows) Grid(Box area, int count)
    {
        var grids = Enumerable.Range(1, 6).SelectMany(c => Enumerable.Range(1, 6).Select(r => (Columns: c, Rows: r,
            Scale: Math.Min(area.Width / c / DetailPen.FullWidth, (area.Height / r - Band) / DetailPen.FullHeight)))).ToList();
        double least = Math.Min(SmallestScale, grids.Max(g => g.Scale));
        return grids.Where(g => g.Scale >= least)
            .OrderBy(g => (count + g.Columns * g.Rows - 1) / (g.Columns * g.Rows)).ThenByDescending(g => g.Scale).ThenBy(g => g.Columns * g.Rows)
            .Select(g => (g.Columns, g.Rows)).First();
    }
}

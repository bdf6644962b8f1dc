using SheetGen.Drawing.Primitives;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Composing;

/// <summary>Lays the typical details out in cells, sheet by sheet.</summary>
public static class DetailSheets
{
    private const double Band = 20;

    public static IReadOnlyList<IReadOnlyList<Primitive>> Compose(
        DrawingContext context, Box area, Func<int, string> sheetName, List<Finding> findings)
    {
        int columns = Math.Max(2, (int)(area.Width / (DetailPen.FullWidth + 10)));
        double width = Math.Min(area.Width / columns, DetailPen.FullWidth * 1.25);
        double height = width * DetailPen.FullHeight / DetailPen.FullWidth + Band;
        int rows = Math.Max(1, (int)(area.Height / height));
        var pages = new List<List<Primitive>>();
        IReadOnlyList<(string Title, Action<DetailPen> Draw)> details = DetailViews.All(context);
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
            pages[^1].Add(context.Write(LayerRole.Title, TextRole.Label, at - new Point2(0, 4.6), "NOT TO SCALE"));
            pages[^1].AddRange(pen.Notes.Select((n, k) => context.Write(LayerRole.Note, TextRole.Label, at - new Point2(-40, 4.6 + k * 3.4), FormattableString.Invariant($"({k + 1}) {n}"))));
        }
        return pages;
    }
}

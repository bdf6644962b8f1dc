using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Details;

/// <summary>The typical details as parts of sheets, all in cells of one size.</summary>
public static class DetailSheets
{
    private const double Band = 22;

    /// <summary>Share of its full size below which a detail is not drawn.</summary>
    private const double SmallestScale = 0.6;

    public static IEnumerable<SheetPart> Parts(DrawingContext context, Box area)
    {
        IReadOnlyList<DetailView> details = DetailViews.All(context);
        TextStyle head = context.StyleOf(TextRole.Heading);
        double widest = details.Select((d, i) => TextMeasure.Measure(TitleOf(context, d, i + 1), head.Height, head)).Max();
        (int columns, int rows) = Grid(area, details.Count, widest + 8);
        double width = area.Width / columns, height = area.Height / rows;
        return details.Select((d, i) => new SheetPart(PartKind.Detail, width, height, (at, sheet) => Draw(context, d, i + 1, at, width, height, sheet)));
    }

    private static SheetContent Draw(
        DrawingContext context, DetailView detail, int number, Point2 at, double width, double height, string sheet)
    {
        TextStyle style = context.StyleOf(TextRole.Label);
        var cell = new Box(at.X + 2, at.Y - height + Band, at.X + width - 4, at.Y - 2);
        var pen = new DetailPen(context, cell, sheet) { Lean = detail.Lean };
        detail.Draw(pen);
        Point2 place = new(cell.Left + 2, cell.Bottom - 6);
        TextStyle head = context.StyleOf(TextRole.Heading);
        string words = TitleOf(context, detail, number);
        IEnumerable<string> notes = new[] { context.Say(Phrase.NotToScale) }.Concat(pen.Notes.Select((n, k) => FormattableString.Invariant($"({k + 1}) {n}")));
        IEnumerable<string> lines = TextMeasure.Wrap(string.Join("  ", notes), cell.Width - 4, style.Height, style);
        return new SheetContent
        {
            Findings = pen.Findings,
            Paper =
            [
                .. pen.Paper,
                context.Write(LayerRole.Title, TextRole.Heading, place, words),
                new Line(LayerRole.Title, place - new Point2(0, 1.2), place + new Point2(TextMeasure.Measure(words, head.Height, head), -1.2)),
                .. lines.Select((l, k) => context.Write(LayerRole.Note, TextRole.Label, place - new Point2(0, 2.4 + style.Height + k * style.Height * TextMeasure.LinePitch), l)),
            ],
        };
    }

    private static string TitleOf(DrawingContext context, DetailView detail, int number) =>
        context.Say(Phrase.DetailTitle, number.ToString(CultureInfo.InvariantCulture), detail.Title);

    /// <summary>Columns and rows of cells on a sheet: the fewest sheets whose cells are large enough to be read, then the largest cells.</summary>
    private static (int Columns, int Rows) Grid(Box area, int count, double width)
    {
        var grids = Enumerable.Range(1, 6).SelectMany(c => Enumerable.Range(1, 6).Select(r => (Columns: c, Rows: r,
            Scale: Math.Min(area.Width / c / DetailPen.FullWidth, (area.Height / r - Band) / DetailPen.FullHeight)))).Where(g => g.Columns == 1 || area.Width / g.Columns >= width).ToList();
        double least = Math.Min(SmallestScale, grids.Max(g => g.Scale));
        return grids.Where(g => g.Scale >= least)
            .OrderBy(g => (count + g.Columns * g.Rows - 1) / (g.Columns * g.Rows)).ThenByDescending(g => Math.Min(g.Scale, 1.1)).ThenByDescending(g => g.Columns * g.Rows)
            .Select(g => (g.Columns, g.Rows)).First();
    }
}

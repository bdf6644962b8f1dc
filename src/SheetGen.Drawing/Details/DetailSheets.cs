using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Details;

/// <summary>The details as parts of sheets, all in cells of one size, each with a view into model space at a customary scale.</summary>
public static class DetailSheets
{
    /// <summary>Width and height of a cell at full size, in heights of a letter.</summary>
    private const double FullWidth = 97, FullHeight = 78;

    /// <summary>Share of its full size below which a cell is not taken.</summary>
    private const double SmallestScale = 0.6;

    /// <summary>Lines of words below a title for which room is kept.</summary>
    private const int Lines = 4;

    /// <param name="origin">Upper right corner of the details in model space.</param>
    public static IEnumerable<SheetPart> Parts(DrawingContext context, Box area, Point2 origin)
    {
        IReadOnlyList<DetailView> details = DetailViews.All(context);
        TextStyle head = context.StyleOf(TextRole.Heading);
        double widest = details.Select((d, i) => TextMeasure.Measure(TitleOf(context, d, i + 1), head.Height, head)).Max();
        (int columns, int rows) = Grid(context, area, details.Count, widest + 8);
        double width = area.Width / columns, height = area.Height / rows, right = origin.X;
        for (int i = 0; i < details.Count; i++)
        {
            (DetailView detail, int number) = (details[i], i + 1);
            Box cell = Cell(context, default, width, height);
            DetailScale scale = ScaleFor(context, detail, cell);
            var place = new Point2(right - cell.Width * scale.UnitsPerMillimetre, origin.Y - cell.Height * scale.UnitsPerMillimetre);
            right = place.X - 1.5 * cell.Width * scale.UnitsPerMillimetre;
            yield return new SheetPart(PartKind.Detail, width, height, (at, sheet) => Draw(context, detail, number, Cell(context, at, width, height), scale, place, sheet));
        }
    }

    /// <summary>Room for the title and what stands below it, mm.</summary>
    private static double Band(DrawingContext context) =>
        8 + context.StyleOf(TextRole.Heading).Height + Lines * context.StyleOf(TextRole.Label).Height * TextMeasure.LinePitch;

    private static Box Cell(DrawingContext context, Point2 at, double width, double height) => new(at.X + 2, at.Y - height + Band(context), at.X + width - 4, at.Y - 2);

    /// <summary>The largest customary scale at which a detail leaves room for its words.</summary>
    private static DetailScale ScaleFor(DrawingContext context, DetailView detail, Box cell)
    {
        double letter = context.StyleOf(TextRole.Label).Height, wide = cell.Width - 2 * detail.Beside * letter, high = cell.Height - 2 * detail.Above * letter;
        IReadOnlyList<DetailScale> scales = DetailScale.All(context.Templates, context.Project.Unit);
        return scales.Where(s => detail.Extent.Width <= wide * s.UnitsPerMillimetre && detail.Extent.Height <= high * s.UnitsPerMillimetre)
            .Append(scales[^1]).First();
    }

    private static SheetContent Draw(DrawingContext context, DetailView detail, int number, Box cell, DetailScale scale, Point2 place, string sheet)
    {
        TextStyle style = context.StyleOf(TextRole.Label), head = context.StyleOf(TextRole.Heading);
        var pen = new DetailPen(context, detail, cell, scale, place, sheet);
        detail.Draw(pen);
        Point2 below = new(cell.Left + 2, cell.Bottom - 2 - head.Height);
        string words = TitleOf(context, detail, number);
        string[] notes =
        [
            context.Say(Phrase.ScaleIs, scale.Words(context)),
            .. pen.HasUnsized ? [context.Say(Phrase.DashedUnsized)] : Array.Empty<string>(),
            .. pen.Remarks,
            .. pen.Notes.Select((n, k) => FormattableString.Invariant($"({k + 1}) {n}")),
        ];
        IEnumerable<string> lines = TextMeasure.Wrap(string.Join("  ", notes), cell.Width - 4, style.Height, style);
        return new SheetContent
        {
            Viewports = [pen.Viewport],
            Model = [.. pen.Model],
            Paper =
            [
                context.Write(LayerRole.Title, TextRole.Heading, below, words),
                new Line(LayerRole.Title, below - new Point2(0, 1.2), below + new Point2(TextMeasure.Measure(words, head.Height, head), -1.2)),
                .. lines.Select((l, k) => context.Write(LayerRole.Note, TextRole.Label, below - new Point2(0, 2.4 + style.Height + k * style.Height * TextMeasure.LinePitch), l)),
            ],
        };
    }

    private static string TitleOf(DrawingContext context, DetailView detail, int number) =>
        context.Say(Phrase.DetailTitle, number.ToString(CultureInfo.InvariantCulture), detail.Title);

    /// <summary>Columns and rows of cells on a sheet: the fewest sheets whose cells hold a picture with its words, then the largest cells.</summary>
    private static (int Columns, int Rows) Grid(DrawingContext context, Box area, int count, double width)
    {
        double letter = context.StyleOf(TextRole.Label).Height;
        var grids = Enumerable.Range(1, 6).SelectMany(c => Enumerable.Range(1, 6).Select(r => (Columns: c, Rows: r,
            Scale: Math.Min(area.Width / c / letter / FullWidth, (area.Height / r - Band(context)) / letter / FullHeight)))).Where(g => g.Columns == 1 || area.Width / g.Columns >= width).ToList();
        double least = Math.Min(SmallestScale, grids.Max(g => g.Scale));
        return grids.Where(g => g.Scale >= least)
            .OrderBy(g => (count + g.Columns * g.Rows - 1) / (g.Columns * g.Rows)).ThenByDescending(g => Math.Min(g.Scale, 1.1)).ThenByDescending(g => g.Columns * g.Rows)
            .Select(g => (g.Columns, g.Rows)).First();
    }
}

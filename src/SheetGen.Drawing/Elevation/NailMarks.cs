using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>Writes the nails' marks beside them.</summary>
public static class NailMarks
{
    /// <summary>Room between two marks of a row, mm.</summary>
    private const double Gap = 1;

    /// <summary>Distance of a mark from the nail's middle, mm.</summary>
    private const double Off = 2.1;

    /// <summary>
    /// Marks of the first and the last nail of each row, then of the others where the scale leaves room for them, each in the place with
    /// the fewest lines under it: where one is missing, the eye counts on from the last.
    /// </summary>
    public static void Write(ElevationView view)
    {
        double width = Width(view.Context, view.Nails);
        double pitch = view.Wall.Sections.Min(s => s.HorizontalSpacing) / view.Viewport.UnitsPerMillimetre;
        Nail[][] rows = [.. NailLabels.RowGroups(view.Nails, new Face(view.Wall))];
        IEnumerable<Nail> ends = rows.SelectMany(r => r.Length == 1 ? r : [r[0], r[^1]]), others = rows.SelectMany(r => r.Skip(1).SkipLast(1));
        foreach (Nail nail in pitch > 0.8 * width ? ends.Concat(others) : ends)
        {
            // The others' callouts begin with their marks.
            if (nail.Status is not (NailStatus.Noted or NailStatus.Unresolved))
                Write(view, nail, width);
        }
    }

    /// <summary>True where the nails of every row stand far enough apart for their marks.</summary>
    public static bool HaveRoom(DrawingContext context, SheetScale scale) =>
        context.Project.Walls.SelectMany(w => w.Sections).Min(s => s.HorizontalSpacing) / scale.UnitsPerMillimetre > Width(context, context.Layout.Nails) + Gap;

    private static double Width(DrawingContext context, IEnumerable<Nail> nails)
    {
        TextStyle style = context.StyleOf(TextRole.Label);
        return nails.Where(n => n.Kind != NailKind.Verification).Select(n => TextMeasure.Measure(n.Mark, style.Height, style)).DefaultIfEmpty(0).Max();
    }

    private static void Write(ElevationView view, Nail nail, double width)
    {
        double height = view.Context.StyleOf(TextRole.Label).Height;
        Point2 at = view.At(nail.Along, nail.Elevation);
        IEnumerable<Text> texts = Places(width, height)
            .Select(p => new Text(LayerRole.Label, TextRole.Label, at + p, height, nail.Mark, HorizontalAlign.Center) { Nail = nail.Mark });
        foreach (Text text in texts.OrderBy(t => view.Labels.LinesUnder(t)))
        {
            if (view.Labels.TryWrite(text))
                return;
        }
    }

    /// <summary>Places about a nail, the best-liked first: above, below, pushed aside, beside.</summary>
    private static IEnumerable<Point2> Places(double width, double height)
    {
        double beside = 1.6 + width / 2, below = -Off - height;
        foreach (double aside in new[] { 0, -1.5, 1.5, -3, 3, beside, -beside })
        {
            yield return new(aside, Off);
            yield return new(aside, below);
        }
        yield return new(beside + 0.6, -height / 2);
        yield return new(-beside - 0.6, -height / 2);
    }
}

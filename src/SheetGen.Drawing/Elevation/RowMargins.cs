using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>Row numbers, elevations and lengths beside both ends of an elevation.</summary>
public static class RowMargins
{
    private const double Lead = 5;

    /// <summary>Width that the longest words of a project's rows need beside an elevation, mm.</summary>
    public static double Width(DrawingContext context)
    {
        TextStyle style = context.StyleOf(TextRole.Label);
        return ElevationScale.Width(context) + Lead + 1 + context.Layout.Nails.Select(n => Words(context, n)).Distinct()
            .Select(w => TextMeasure.Measure(w, style.Height, style)).DefaultIfEmpty(30).Max();
    }

    private static string Words(DrawingContext context, Nail n) =>
        context.Say(Phrase.RowAt, MarkForms.RowOf(n), context.Print.Elevation(n.Elevation), context.Print.Short(context.RowLengths.Of(n)));

    public static IEnumerable<Primitive> Draw(ElevationView view, NailLabels labels)
    {
        Nail[][] rows = [.. NailLabels.RowGroups(view.Nails, new Face(view.Wall))];
        foreach (bool left in new[] { true, false })
        {
            bool atStart = left == view.Sign > 0;
            var ends = rows.Select(r => atStart ? r[0] : r[^1])
                .Where(n => labels.NearEdge(n) && IsAtEnd(view, n, atStart))
                .OrderByDescending(n => n.Elevation).ToList();
            foreach (Primitive p in Side(view, ends, left))
                yield return p;
        }
    }

    private static bool IsAtEnd(ElevationView view, Nail nail, bool atStart) =>
        atStart ? nail.Along - view.Window.Start < view.Window.End - nail.Along : nail.Along - view.Window.Start > view.Window.End - nail.Along;

    private static IEnumerable<Primitive> Side(ElevationView view, List<Nail> nails, bool left)
    {
        if (nails.Count == 0)
            yield break;
        DrawingContext context = view.Context;
        double height = context.StyleOf(TextRole.Label).Height;
        double[] wanted = [.. nails.Select(n => view.At(n.Along, n.Elevation).Y)];
        double[] places = Spread(wanted, height * 1.7);
        int away = left ? -1 : 1;
        double edge = (left ? view.Viewport.Frame.Left : view.Viewport.Frame.Right) + away * ElevationScale.Width(context);
        for (int i = 0; i < nails.Count; i++)
        {
            Nail n = nails[i];
            yield return Polyline.Of(LayerRole.RowLine, [new(edge + away * 0.5, wanted[i]), new(edge + away * 2, wanted[i]), new(edge + away * (Lead - 1), places[i])]);
            yield return context.Write(LayerRole.Label, TextRole.Label, new(edge + away * Lead, places[i] - height / 2), Words(context, n),
                left ? HorizontalAlign.Right : HorizontalAlign.Left);
        }
    }

    /// <summary>Places in falling order, at least a pitch apart, moved as little as a single sweep down and up can.</summary>
    private static double[] Spread(double[] wanted, double pitch)
    {
        double[] places = [.. wanted];
        for (int i = 1; i < places.Length; i++)
            places[i] = Math.Min(places[i], places[i - 1] - pitch);
        double over = (places.Sum() - wanted.Sum()) / places.Length;
        double[] lifted = [.. places.Select(p => p - over)];
        for (int i = lifted.Length - 2; i >= 0; i--)
            lifted[i] = Math.Max(lifted[i], lifted[i + 1] + pitch);
        return lifted;
    }
}

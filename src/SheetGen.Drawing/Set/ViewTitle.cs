using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Set;

/// <summary>The title below a plan or elevation, with its scale in words and as a bar.</summary>
public static class ViewTitle
{
    /// <param name="place">Left end of the title's baseline.</param>
    public static IEnumerable<Primitive> Draw(DrawingContext context, string title, string below, SheetScale scale, Point2 place)
    {
        TextStyle head = context.StyleOf(TextRole.ViewTitle), style = context.StyleOf(TextRole.Label);
        string words = $"{below}. {context.Say(Phrase.ScaleIs, scale.Words(context))}";
        yield return context.Write(LayerRole.Title, TextRole.ViewTitle, place, title);
        yield return context.Write(LayerRole.Title, TextRole.Label, place - new Point2(0, 2.5 + style.Height), words);
        double right = place.X + Math.Max(TextMeasure.Measure(title, head.Height, head), TextMeasure.Measure(words, style.Height, style));
        yield return new Line(LayerRole.Title, place - new Point2(0, 1.4), new(right, place.Y - 1.4));
        foreach (Primitive p in scale.Bar(context, new(right + 14, place.Y - 3)))
            yield return p;
    }
}

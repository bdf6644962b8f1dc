using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Set;

/// <summary>What the abbreviations of the sheets mean.</summary>
public static class Abbreviations
{
    public static double Height(DrawingContext context) => List(context).Length * Pitch(context) + 4 * context.StyleOf(TextRole.Heading).Height;

    public static IEnumerable<Primitive> Draw(DrawingContext context, Point2 at)
    {
        double head = context.StyleOf(TextRole.Heading).Height, pitch = Pitch(context);
        yield return context.Write(LayerRole.Note, TextRole.Heading, at - new Point2(0, head), context.Say(Phrase.Abbreviations));
        double y = at.Y - 1.8 * head;
        foreach (string[] pair in List(context))
        {
            y -= pitch;
            yield return context.Write(LayerRole.Note, TextRole.Table, new(at.X, y), pair[0]);
            yield return context.Write(LayerRole.Note, TextRole.Table, new(at.X + 11 * context.StyleOf(TextRole.Table).Height, y), pair[^1]);
        }
    }

    private static double Pitch(DrawingContext context) => context.StyleOf(TextRole.Table).Height * 1.6;

    private static string[][] List(DrawingContext context) => [.. context.Say(Phrase.AbbreviationList).Split(';').Select(p => p.Split('='))];
}

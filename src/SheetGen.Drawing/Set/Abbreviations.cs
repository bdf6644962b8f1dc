using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Set;

/// <summary>What the abbreviations of the sheets mean.</summary>
public static class Abbreviations
{
    /// <summary>Its entries, one below the other.</summary>
    public static IEnumerable<ListEntry> Entries(DrawingContext context)
    {
        double pitch = Pitch(context), indent = 11 * context.StyleOf(TextRole.Table).Height;
        return List(context).Select(pair => new ListEntry(pitch, at =>
        [
            context.Write(LayerRole.Note, TextRole.Table, at - new Point2(0, pitch), pair[0]),
            context.Write(LayerRole.Note, TextRole.Table, at + new Point2(indent, -pitch), pair[^1]),
        ]));
    }

    private static double Pitch(DrawingContext context) => context.StyleOf(TextRole.Table).Height * 1.6;

    private static string[][] List(DrawingContext context) => [.. context.Say(Phrase.AbbreviationList).Split(';').Select(p => p.Split('='))];
}

using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Set;

/// <summary>What the symbols and lines mean.</summary>
public static class Legend
{
    private const double PitchInHeights = 2.3;

    private static readonly (NailKind Kind, NailStatus Status, LayerRole Layer, string Words)[] Nails =
    [
        (NailKind.Production, NailStatus.Grid, LayerRole.Nail, "NAIL AT ITS GRID PLACE, SQUARE TO THE FACE"),
        (NailKind.Production, NailStatus.Moved, LayerRole.Nail, "NAIL MOVED ALONG ITS ROW OR ADDED, SQUARE TO THE FACE"),
        (NailKind.Production, NailStatus.Redirected, LayerRole.Nail, "NAIL TURNED WITHIN THE FIELD TOLERANCE, FILLED TOWARD ITS TIP: SEE SCHEDULE"),
        (NailKind.Production, NailStatus.Noted, LayerRole.NailNoted, "NAIL TURNED BEYOND THE FIELD TOLERANCE, ARROW TOWARD ITS TIP: SEE CALLOUT"),
        (NailKind.Production, NailStatus.Unresolved, LayerRole.NailUnresolved, "DO NOT DRILL: NO CLEAR PLACE FOUND, ASK THE ENGINEER"),
        (NailKind.Proof, NailStatus.Grid, LayerRole.NailTest, "PROOF TEST NAIL (SECOND RING AROUND ANY OF THE ABOVE)"),
        (NailKind.Verification, NailStatus.Grid, LayerRole.NailTest, "VERIFICATION TEST NAIL, SACRIFICIAL (DIAMOND)"),
    ];

    private static readonly (LayerRole Layer, string Words)[] Lines =
    [
        (LayerRole.Wall, "TOP, BOTTOM AND ENDS OF WALL"),
        (LayerRole.Panel, "PANEL JOINT OF THE PERMANENT FACING"),
        (LayerRole.SectionLimit, "LIMIT OF A DESIGN SECTION"),
        (LayerRole.ExistingGround, "EXISTING GROUND"),
        (LayerRole.FinishedGrade, "FINISHED GRADE"),
        (LayerRole.Drainage, "DRAINAGE STRIP BEHIND THE SHOTCRETE"),
        (LayerRole.Obstruction, "STRUCTURE BEHIND THE FACE"),
        (LayerRole.Utility, "PIPE BEHIND THE FACE"),
        (LayerRole.Boundary, "RIGHT OF WAY OR EASEMENT"),
        (LayerRole.LayoutLine, "LAYOUT LINE"),
        (LayerRole.MatchLine, "MATCH LINE"),
        (LayerRole.Boring, "BORING, LAYERS AND WATER"),
    ];

    public static double Height(DrawingContext context) => (Nails.Length + Lines.Length) * Pitch(context) + 14;

    private static double Pitch(DrawingContext context) => context.StyleOf(TextRole.Table).Height * PitchInHeights;

    public static IEnumerable<Primitive> Draw(DrawingContext context, Point2 at, double width)
    {
        yield return context.Write(LayerRole.Note, TextRole.Heading, new(at.X, at.Y - 3.2), "LEGEND");
        double y = at.Y - 11, pitch = Pitch(context);
        double symbol = at.X + 8, words = at.X + 20;
        foreach ((NailKind kind, NailStatus status, LayerRole layer, string text) in Nails)
        {
            BlockDefinition block = NailSymbols.All.First(b => b.Name == NailSymbols.BlockOf(kind, status));
            // Drawn as lines: only nails of the elevation are references of a nail block.
            var reference = new BlockReference(layer, block.Name, new(symbol, y + 1), 1.2, 0, [.. block.Attributes.Select(a => KeyValuePair.Create(a.Tag, ""))]);
            foreach (Primitive p in block.Expand(reference))
                yield return p;
            foreach (Primitive p in Words(context, text, new(words, y), width - 20))
                yield return p;
            y -= pitch;
        }
        foreach ((LayerRole layer, string text) in Lines)
        {
            yield return new Line(layer, new(at.X, y + 1), new(at.X + 16, y + 1));
            foreach (Primitive p in Words(context, text, new(words, y), width - 20))
                yield return p;
            y -= pitch;
        }
    }

    private static IEnumerable<Primitive> Words(DrawingContext context, string text, Point2 at, double width)
    {
        double height = context.StyleOf(TextRole.Table).Height;
        IReadOnlyList<string> lines = TextMeasure.Wrap(text, width, height, context.StyleOf(TextRole.Table));
        for (int i = 0; i < lines.Count; i++)
            yield return context.Write(LayerRole.Note, TextRole.Table, at + new Point2(0, ((lines.Count - 1) / 2.0 - i) * height * 1.4), lines[i]);
    }
}

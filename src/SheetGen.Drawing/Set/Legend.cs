using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Set;

/// <summary>What the symbols and lines mean.</summary>
public static class Legend
{
    private const double PitchInHeights = 2.15;

    private static readonly (NailKind Kind, NailStatus Status, bool IsPinned, LayerRole Layer, Phrase Words)[] Nails =
    [
        (NailKind.Production, NailStatus.Grid, false, LayerRole.Nail, Phrase.LegendGrid),
        (NailKind.Production, NailStatus.Moved, false, LayerRole.Nail, Phrase.LegendMoved),
        (NailKind.Production, NailStatus.Redirected, false, LayerRole.Nail, Phrase.LegendTurned),
        (NailKind.Production, NailStatus.Noted, false, LayerRole.NailNoted, Phrase.LegendNoted),
        (NailKind.Production, NailStatus.Unresolved, false, LayerRole.NailUnresolved, Phrase.LegendUnresolved),
        (NailKind.Proof, NailStatus.Grid, false, LayerRole.NailTest, Phrase.LegendProof),
        (NailKind.Verification, NailStatus.Grid, false, LayerRole.NailTest, Phrase.LegendVerification),
        (NailKind.Production, NailStatus.Grid, true, LayerRole.Nail, Phrase.LegendPinned),
    ];

    private static readonly (LayerRole Layer, Phrase Words)[] Lines =
    [
        (LayerRole.Wall, Phrase.LegendWall),
        (LayerRole.Panel, Phrase.LegendPanel),
        (LayerRole.SectionLimit, Phrase.LegendZone),
        (LayerRole.ExistingGround, Phrase.LegendExisting),
        (LayerRole.FinishedGrade, Phrase.LegendFinished),
        (LayerRole.Drainage, Phrase.LegendDrain),
        (LayerRole.Obstruction, Phrase.LegendObstruction),
        (LayerRole.Utility, Phrase.LegendPipe),
        (LayerRole.Boundary, Phrase.LegendBoundary),
        (LayerRole.LayoutLine, Phrase.LegendLayoutLine),
        (LayerRole.MatchLine, Phrase.LegendMatchLine),
        (LayerRole.Boring, Phrase.LegendBoring),
        (LayerRole.NailLimit, Phrase.LegendNailLimit),
    ];

    private static bool HasClosed(DrawingContext context) => context.Project.Walls.Any(w => w.ClosedStretches.Count > 0);

    public static double Height(DrawingContext context) => (Nails.Length + Lines.Length + (HasClosed(context) ? 2 : 1)) * Pitch(context) + 14;

    private static double Pitch(DrawingContext context) => context.StyleOf(TextRole.Table).Height * PitchInHeights;

    public static IEnumerable<Primitive> Draw(DrawingContext context, Point2 at, double width)
    {
        yield return context.Write(LayerRole.Note, TextRole.Heading, new(at.X, at.Y - context.StyleOf(TextRole.Heading).Height), context.Say(Phrase.Legend));
        double y = at.Y - 11, pitch = Pitch(context);
        double symbol = at.X + 8, words = at.X + 20;
        foreach ((NailKind kind, NailStatus status, bool isPinned, LayerRole layer, Phrase text) in Nails)
        {
            BlockDefinition block = NailSymbols.All.First(b => b.Name == NailSymbols.BlockOf(kind, status, isPinned));
            // Drawn as lines: only nails of the elevation are references of a nail block.
            var reference = new BlockReference(layer, block.Name, new(symbol, y + 1), 1.2, 0, [.. block.Attributes.Select(a => KeyValuePair.Create(a.Tag, ""))]);
            foreach (Primitive p in block.Expand(reference))
                yield return p;
            foreach (Primitive p in Words(context, context.Say(text), new(words, y), width - 20))
                yield return p;
            y -= pitch;
        }
        foreach ((LayerRole layer, Phrase text) in Lines)
        {
            yield return new Line(layer, new(at.X, y + 1), new(at.X + 16, y + 1));
            foreach (Primitive p in Words(context, context.Say(text), new(words, y), width - 20))
                yield return p;
            y -= pitch;
        }
        if (HasClosed(context))
        {
            Point2[] corners = [new(at.X, y - 0.6), new(at.X + 16, y - 0.6), new(at.X + 16, y + 2.6), new(at.X, y + 2.6)];
            yield return Fill.Of(LayerRole.Fill, corners) with { Spacing = 2, Angle = 45 };
            foreach (Primitive p in Words(context, context.Say(Phrase.LegendNoNails), new(words, y), width - 20))
                yield return p;
            y -= pitch;
        }
        foreach (Primitive p in Bubble.Arrow(new(symbol, y - 1), context.Project.Sheets.FromBehind))
            yield return p;
        foreach (Primitive p in Words(context, context.Say(Phrase.LegendCut), new(words, y), width - 20))
            yield return p;
    }

    private static IEnumerable<Primitive> Words(DrawingContext context, string text, Point2 at, double width)
    {
        double height = context.StyleOf(TextRole.Table).Height;
        IReadOnlyList<string> lines = TextMeasure.Wrap(text, width, height, context.StyleOf(TextRole.Table));
        for (int i = 0; i < lines.Count; i++)
            yield return context.Write(LayerRole.Note, TextRole.Table, at + new Point2(0, ((lines.Count - 1) / 2.0 - i) * height * 1.4), lines[i]);
    }
}

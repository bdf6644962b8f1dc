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

    private static double Pitch(DrawingContext context) => context.StyleOf(TextRole.Table).Height * PitchInHeights;

    /// <summary>Its entries, one below the other.</summary>
    /// <param name="width">Of the column, mm.</param>
    public static IEnumerable<ListEntry> Entries(DrawingContext context, double width)
    {
        double symbol = 8, pitch = Pitch(context);
        foreach ((NailKind kind, NailStatus status, bool isPinned, LayerRole layer, Phrase text) in Nails)
        {
            BlockDefinition block = NailSymbols.All.First(b => b.Name == NailSymbols.BlockOf(kind, status, isPinned));
            // Drawn as lines: only nails of the elevation are references of a nail block.
            yield return Entry(text, y => block.Expand(new(layer, block.Name, new(y.X + symbol, y.Y + 1), 1.2, 0, [.. block.Attributes.Select(a => KeyValuePair.Create(a.Tag, ""))])));
        }
        foreach ((LayerRole layer, Phrase text) in Lines)
            yield return Entry(text, at => [new Line(layer, new(at.X, at.Y + 1), new(at.X + 16, at.Y + 1))]);
        if (context.Project.Walls.Any(w => w.ClosedStretches.Count > 0))
        {
            yield return Entry(Phrase.LegendNoNails, at =>
                [Fill.Of(LayerRole.Fill, new(at.X, at.Y - 0.6), new(at.X + 16, at.Y - 0.6), new(at.X + 16, at.Y + 2.6), new(at.X, at.Y + 2.6)) with { Spacing = 2, Angle = 45 }]);
        }
        yield return Entry(Phrase.LegendCut, at => Bubble.Arrow(new(at.X + symbol, at.Y - 1), context.Project.Sheets.FromBehind));

        ListEntry Entry(Phrase text, Func<Point2, IEnumerable<Primitive>> picture)
        {
            double letters = context.StyleOf(TextRole.Table).Height;
            IReadOnlyList<string> lines = TextMeasure.Wrap(context.Say(text), width - 20, letters, context.StyleOf(TextRole.Table));
            double high = pitch + (lines.Count - 1) * letters * TextMeasure.LinePitch;
            return new(high, top =>
            {
                Point2 at = top - new Point2(0, high / 2 + letters / 2);
                return [.. picture(at), .. lines.Select((l, i) => context.Write(
                    LayerRole.Note, TextRole.Table, at + new Point2(20, ((lines.Count - 1) / 2.0 - i) * letters * TextMeasure.LinePitch), l))];
            });
        }
    }
}

/// <summary>An entry of a list: its height, mm, and what it draws below its upper left corner.</summary>
public sealed record ListEntry(double Height, Func<Point2, IEnumerable<Primitive>> Draw);

using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Set;

/// <summary>Notes of a sheet that have no room on it: they stand on a further sheet.</summary>
/// <param name="Sheet">What stands for the name of the sheet to which they belong.</param>
public sealed record NotesLeft(string Sheet, IReadOnlyList<string> Notes);

/// <summary>The notes at the bottom of a sheet, and what of them needs a further sheet.</summary>
public static class SheetNotes
{
    private const string Between = "     ";

    /// <summary>Writes notes one after the other over the width of a room; a note wider than that takes lines of its own.</summary>
    /// <param name="key">How the marks of the sheet are read: it comes first and always stays; empty for none.</param>
    /// <param name="further">What stands for the name of the sheet on which notes without room stand.</param>
    public static (IReadOnlyList<Primitive> Paper, IReadOnlyList<string> Left) Write(DrawingContext context, Box room, string key, IReadOnlyList<string> notes, string further)
    {
        TextStyle style = context.StyleOf(TextRole.Label);
        double pitch = style.Height * TextMeasure.LinePitch, top = room.Top - style.Height;
        int rows = (int)((top - room.Bottom) / pitch) + 1;
        List<string> lines = [.. TextMeasure.Wrap(key, room.Width, style.Height, style).Where(l => l.Length > 0)];
        (IReadOnlyList<string> Lines, int Notes)[] blocks = [.. Blocks(notes, room.Width, style)];
        bool fits = lines.Count + blocks.Sum(b => b.Lines.Count) <= rows;
        int told = 0;
        foreach ((IReadOnlyList<string> block, int count) in blocks)
        {
            if (!fits && lines.Count + block.Count > rows - 1)
                break;
            lines.AddRange(block);
            told += count;
        }
        if (!fits)
            lines.Add(context.Say(Phrase.MoreNotes, further));
        return ([.. lines.Select((l, i) => context.Write(LayerRole.Note, TextRole.Label, new(room.Left, top - i * pitch), l))], [.. notes.Skip(told)]);
    }

    /// <summary>All notes of a sheet one below the other in the largest room beside its views that holds them; null where none does.</summary>
    public static IReadOnlyList<Primitive>? Column(DrawingContext context, IReadOnlyList<Box> rooms, IReadOnlyList<string> notes)
    {
        TextStyle head = context.StyleOf(TextRole.Heading), style = context.StyleOf(TextRole.Label);
        double pitch = style.Height * TextMeasure.LinePitch, first = head.Height * 1.8;
        foreach (Box free in rooms.Where(r => r.Width >= NarrowestColumn * style.Height))
        {
            double width = Math.Min(free.Width, WidestColumn * style.Height);
            // What goes on in a further line is set in, so that each note is seen to begin.
            (string Line, double In)[] lines = [.. notes.SelectMany(n => TextMeasure.Wrap(n, width - style.Height, style.Height, style).Select((l, i) => (l, i > 0 ? style.Height : 0)))];
            if (first + lines.Length * pitch > free.Height || lines.Any(l => TextMeasure.Measure(l.Line, style.Height, style) > width - style.Height))
                continue;
            return
            [
                context.Write(LayerRole.Note, TextRole.Heading, new(free.Left, free.Top - head.Height), context.Say(Phrase.TitleNotes)),
                .. lines.Select((l, i) => context.Write(LayerRole.Note, TextRole.Label, new(free.Left + l.In, free.Top - first - (i + 1) * pitch), l.Line)),
            ];
        }
        return null;
    }

    /// <summary>Widths of a column of notes, in heights of a letter.</summary>
    private const double NarrowestColumn = 20, WidestColumn = 55;

    /// <summary>Lines that are shown together or not at all, with the number of notes in them.</summary>
    private static IEnumerable<(IReadOnlyList<string> Lines, int Notes)> Blocks(IReadOnlyList<string> notes, double width, TextStyle style)
    {
        string line = "";
        int count = 0;
        foreach (string note in notes)
        {
            string longer = line.Length == 0 ? note : line + Between + note;
            if (count > 0 && TextMeasure.Measure(longer, style.Height, style) > width)
            {
                yield return (TextMeasure.Wrap(line, width, style.Height, style), count);
                (line, count) = (note, 1);
            }
            else
            {
                (line, count) = (longer, count + 1);
            }
        }
        if (count > 0)
            yield return (TextMeasure.Wrap(line, width, style.Height, style), count);
    }

    /// <summary>The notes that sheets have no room for, as parts of further sheets: a heading that names the sheet, and the notes below it.</summary>
    public static IReadOnlyList<SheetPart> Parts(DrawingContext context, IReadOnlyList<NotesLeft> left, double width)
    {
        TextStyle style = context.StyleOf(TextRole.Note);
        double wide = Math.Min(width, 180 * style.Height / 2.6);
        return [.. left.Select(l => PartOf(context, l.Sheet, [.. l.Notes.SelectMany(n => TextMeasure.Wrap(n, wide - 10, style.Height, style))], wide, false))];
    }

    private static SheetPart PartOf(DrawingContext context, string sheet, IReadOnlyList<string> lines, double width, bool goesOn)
    {
        const double Gap = 8;
        TextStyle head = context.StyleOf(TextRole.Heading), style = context.StyleOf(TextRole.Note);
        double pitch = style.Height * TextMeasure.LinePitch, first = head.Height * 1.8;
        string title = context.Say(Phrase.NotesOfSheet, sheet);
        return new(PartKind.Notes, width, first + lines.Count * pitch + Gap, (at, _) => SheetContent.Of(
        [
            context.Write(LayerRole.Note, TextRole.Heading, at - new Point2(0, head.Height), goesOn ? context.Say(Phrase.Continued, title) : title),
            .. lines.Select((l, i) => context.Write(LayerRole.Note, TextRole.Note, at - new Point2(0, first + (i + 1) * pitch), l)),
        ]))
        {
            Of = sheet,
            Cut = room =>
            {
                int count = (int)((room - first - Gap) / pitch);
                return count < Math.Min(4, lines.Count) || count >= lines.Count ? null
                    : (PartOf(context, sheet, [.. lines.Take(count)], width, goesOn), PartOf(context, sheet, [.. lines.Skip(count)], width, true));
            },
        };
    }
}

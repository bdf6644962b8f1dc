using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Set;

/// <summary>The border and the title block at the right edge, as one block with attributes.</summary>
public sealed class SheetFrame(DrawingContext context, SheetSize size)
{
    private const LayerRole On = LayerRole.TitleBlock;
    private const double Margin = 12;

    /// <summary>Room at the left edge for binding.</summary>
    private const double Binding = 20;

    private readonly TitleBlock? _own = context.Templates.TitleBlock?.On(size);

    /// <summary>True where the sheets are issued at half size, which full-size sheets only are.</summary>
    public static bool IsForHalfSize(DrawingContext context, SheetSize size) => context.Project.Sheets.IsForHalfSize && size.TextFactor > 1;

    /// <summary>Factor on the sizes of the title block: larger sheets carry larger letters.</summary>
    private double Size => IsForHalfSize(context, size) ? 2 : size.TextFactor > 1 ? 1.25 : 1;

    private double Strip => (size.Width > 500 ? 78 : 58) * (IsForHalfSize(context, size) ? 1.45 : 1);

    public string BlockName => "SHEET-" + size.Name.ToUpperInvariant().Replace(' ', '-');

    /// <summary>What a sheet's title block must say, each by any of these tags.</summary>
    private static readonly string[][] Needed =
        [["SHEET"], ["SHEET_TITLE", "SHEET_TITLE_1"], ["PROJECT", "PROJECT_1"], ["SCALE"], ["DATE"], ["REVISION", "REV_1_A"]];

    /// <summary>Tags of fields that the user's own title block lacks, so that its sheets do not say them.</summary>
    public IReadOnlyList<string> Missing => _own is null
        ? []
        : [.. Needed.Where(tags => !_own.Fields.Any(f => tags.Contains(f.Tag))).Select(tags => tags[0])];

    /// <summary>The area left for drawing.</summary>
    public Box Area => _own is null ? OwnArea : FreeArea.Largest(_own, size, Margin, context.StyleOf).Grown(-3);

    /// <summary>True where the user's title block is larger than the sheet, so that the program's own is drawn.</summary>
    public bool IsTooSmall => context.Templates.TitleBlock is not null && _own is null;

    private Box OwnArea => new(Binding + 3, Margin + 3, size.Width - Margin - Strip - 3, size.Height - Margin - 3);

    private Box Border => new(Binding, Margin, size.Width - Margin, size.Height - Margin);

    private double StripLeft => size.Width - Margin - Strip;

    public BlockDefinition Block()
    {
        if (_own is not null)
            return new(BlockName, _own.Lines, _own.Fields, false);
        var lines = new List<Primitive>
        {
            Polyline.Rectangle(LayerRole.Border, Border),
            new Line(LayerRole.Border, new(StripLeft, Border.Bottom), new(StripLeft, Border.Top)),
        };
        var attributes = new List<BlockAttribute>();
        double y = Border.Bottom;
        y = Cell(lines, attributes, y, 7 * Size, Phrase.FrameOf, ("SHEET_COUNT", 2.6, TextRole.TitleBlock), 2, beside: 8);
        y = Cell(lines, attributes, y, 24, Phrase.FrameSheet, ("SHEET", 9, TextRole.SheetTitle), 7);
        y = Cell(lines, attributes, y, 10 * Size, Phrase.FrameScale, ("SCALE", 2.6, TextRole.TitleBlock), 2);
        y = Stack(lines, attributes, y, Phrase.FrameTitle, ["SHEET_TITLE_1", "SHEET_TITLE_2", "SHEET_TITLE_3"], TextRole.SheetTitle, 3.2);
        y = Stack(lines, attributes, y, Phrase.FrameProject, ["PROJECT_1", "PROJECT_2", "PROJECT_3"], TextRole.TitleBlock, 3);
        y = Cell(lines, attributes, y, 10 * Size, Phrase.FrameNumber, ("NUMBER", 2.6, TextRole.TitleBlock), 2);
        y = Cell(lines, attributes, y, 10 * Size, Phrase.FrameDate, ("DATE", 2.6, TextRole.TitleBlock), 2);
        y = Cell(lines, attributes, y, 10 * Size, Phrase.FrameRevision, ("REVISION", 2.6, TextRole.TitleBlock), 2);
        foreach ((string who, Phrase word) in new[] { ("APPROVED", Phrase.FrameApproved), ("CHECKED", Phrase.FrameChecked), ("DRAWN", Phrase.FrameDrawn), ("DESIGNED", Phrase.FrameDesigned) })
            y = Cell(lines, attributes, y, 7 * Size, word, (who, 2.6, TextRole.TitleBlock), 2, beside: 24);
        y = Revisions(lines, attributes, y);
        lines.Add(Small(context.Say(Phrase.FrameSeal), new(StripLeft + 2, Border.Top - 2 - SmallHeight)));
        IReadOnlyList<string> cautions = TextMeasure.Wrap(context.Say(Phrase.FrameNotSealed), Strip - 4, SmallHeight, context.StyleOf(TextRole.TitleBlock));
        for (int i = 0; i < cautions.Count; i++)
            lines.Add(Small(cautions[i], new(StripLeft + 2, y + 2 + (cautions.Count - 1 - i) * SmallHeight * TextMeasure.LinePitch)));
        return new(BlockName, lines, attributes, false);
    }

    private double Cell(List<Primitive> lines, List<BlockAttribute> attributes, double y, double height, Phrase label,
        (string Tag, double Height, TextRole Role) field, double up, double beside = 0)
    {
        lines.Add(new Line(On, new(StripLeft, y + height), new(Border.Right, y + height)));
        lines.Add(Small(context.Say(label), new(StripLeft + 2, beside > 0 ? y + 2 : y + height - 1.2 - SmallHeight)));
        attributes.Add(new(field.Tag, context.Say(label), new(StripLeft + (beside > 0 ? beside * Size : 3), y + up), field.Height * (field.Height < 5 ? Size : 1), true, field.Role, On));
        return y + height;
    }

    private double Stack(List<Primitive> lines, List<BlockAttribute> attributes, double y, Phrase label, string[] tags, TextRole role, double letters)
    {
        double height = letters * Size;
        double total = tags.Length * height * 1.7 + 5 + SmallHeight;
        for (int i = 0; i < tags.Length; i++)
        {
            double at = y + total - 4 - SmallHeight - (i + 1) * height * 1.7 + height * 0.5;
            attributes.Add(new(tags[i], context.Say(label), new(StripLeft + 3, at), height, true, role, On));
        }
        lines.Add(Small(context.Say(label), new(StripLeft + 2, y + total - 1.2 - SmallHeight)));
        lines.Add(new Line(On, new(StripLeft, y + total), new(Border.Right, y + total)));
        return y + total;
    }

    private int RevisionRows => size.Height > 400 ? 6 : 2;

    private double Revisions(List<Primitive> lines, List<BlockAttribute> attributes, double y)
    {
        double[] columns = [StripLeft + 2, StripLeft + RevisionNumberWidth, StripLeft + RevisionTextAt];
        double row5 = 5 * Size;
        for (int row = 0; row < RevisionRows; row++)
        {
            double at = y + (RevisionRows - 1 - row) * row5;
            lines.Add(new Line(On, new(StripLeft, at + row5), new(Border.Right, at + row5)));
            for (int c = 0; c < 3; c++)
            {
                string tag = string.Create(CultureInfo.InvariantCulture, $"REV_{row + 1}_{"ABC"[c]}");
                attributes.Add(new(tag, context.Say(Phrase.FrameRevision), new(columns[c], at + 1.5), SmallHeight, true, TextRole.TitleBlock, On));
            }
        }
        double head = y + RevisionRows * row5;
        lines.Add(new Line(On, new(StripLeft, head + row5), new(Border.Right, head + row5)));
        lines.Add(Small(context.Say(Phrase.FrameRevisions), new(StripLeft + 2, head + row5 + 1.5)));
        lines.Add(new Line(On, new(StripLeft, head + 2 * row5), new(Border.Right, head + 2 * row5)));
        string[] heads = [context.Say(Phrase.RevisionNumber), context.Say(Phrase.FrameDate), context.Say(Phrase.RevisionText)];
        for (int c = 0; c < 3; c++)
            lines.Add(Small(heads[c], new(columns[c], head + 1.5)));
        return head + 2 * row5;
    }

    private Text Small(string value, Point2 at) => new(On, TextRole.TitleBlock, at, SmallHeight, value);

    private double SmallHeight => 2.4 * Size;

    private double RevisionNumberWidth => 12 * Size;

    private double RevisionTextAt => 34 * Size;

    /// <summary>The title block of a sheet with its values.</summary>
    public BlockReference Reference(string sheet, int count, string title, string scale)
    {
        Dictionary<string, string> values = Values(sheet, count, title, scale);
        if (_own is not null)
        {
            // The user's block may ask for any fact of the project by its name, and keeps its own words for what is not known.
            return new(LayerRole.TitleBlock, BlockName, default, 1, 0,
                [.. _own.Fields.Select(f => KeyValuePair.Create(f.Tag, values.GetValueOrDefault(f.Tag) ?? (Fact(f.Tag.ToLowerInvariant()) is { Length: > 0 } fact ? fact : f.Default)))]);
        }
        return new(LayerRole.TitleBlock, BlockName, default, 1, 0,
            [.. Block().Attributes.Select(a => KeyValuePair.Create(a.Tag, Fitted(values.GetValueOrDefault(a.Tag, ""), a)))]);
    }

    private string Fact(string key) => context.Project.Info.Facts.TryGetValue(key, out string? v) ? v : "";

    private Dictionary<string, string> Values(string sheet, int count, string title, string scale)
    {
        var values = new Dictionary<string, string>
        {
            ["SHEET"] = sheet,
            ["SHEET_COUNT"] = count.ToString(CultureInfo.InvariantCulture),
            ["SCALE"] = scale,
            ["NUMBER"] = context.Project.Info.Number,
            ["DATE"] = context.Project.Sheets.Date,
            ["REVISION"] = context.Project.Sheets.Revision,
            ["DESIGNED"] = Fact("designed"),
            ["DRAWN"] = Fact("drawn"),
            ["CHECKED"] = Fact("checked"),
            ["APPROVED"] = Fact("approved"),
        };
        values["SHEET_TITLE"] = title;
        values["PROJECT"] = context.Project.Info.Title.ToUpperInvariant();
        Spread(values, "SHEET_TITLE_", 3, title, 3.2 * Size, TextRole.SheetTitle);
        Spread(values, "PROJECT_", 3, context.Project.Info.Title.ToUpperInvariant(), 3 * Size, TextRole.TitleBlock);
        IReadOnlyList<string>[] revisions = _own is null ? [.. RevisionsShown.SelectMany(r => r.Lines)] : [.. context.Project.Sheets.Revisions];
        for (int r = 0; r < revisions.Length; r++)
        {
            for (int c = 0; c < Math.Min(3, revisions[r].Count); c++)
                values[string.Create(CultureInfo.InvariantCulture, $"REV_{r + 1}_{"ABC"[c]}")] = revisions[r][c];
        }
        return values;
    }

    /// <summary>The revisions that the program's own title block has rows for, the latest first taken, with what stands in each row: long words go on in the next.</summary>
    private IReadOnlyList<(IReadOnlyList<string> Revision, IReadOnlyList<IReadOnlyList<string>> Lines)> RevisionsShown
    {
        get
        {
            var shown = new List<(IReadOnlyList<string>, IReadOnlyList<IReadOnlyList<string>>)>();
            int rows = RevisionRows;
            foreach (IReadOnlyList<string> revision in context.Project.Sheets.Revisions.Reverse())
            {
                IReadOnlyList<string> words = TextMeasure.Wrap(revision.ElementAtOrDefault(2) ?? "", Border.Right - 1 - RevisionTextAt - StripLeft, SmallHeight, context.StyleOf(TextRole.TitleBlock));
                // Of one that has too few rows the last takes the rest, and is named as cut short.
                IReadOnlyList<IReadOnlyList<string>> lines = words.Count > rows && shown.Count == 0
                    ? [.. words.Take(rows - 1).Append(string.Join(" ", words.Skip(rows - 1))).Select(Row)]
                    : [.. words.Select(Row)];
                if (lines.Count > rows)
                    break;
                rows -= lines.Count;
                shown.Insert(0, (revision, lines));

                IReadOnlyList<string> Row(string line, int i) => i == 0 ? [revision.ElementAtOrDefault(0) ?? "", revision.ElementAtOrDefault(1) ?? "", line] : ["", "", line];
            }
            return shown;
        }
    }

    /// <summary>Values that the program's own title block cuts short for want of room.</summary>
    public IEnumerable<string> CutShort(IReadOnlyList<string> titles)
    {
        if (_own is not null)
            return [];
        Dictionary<string, BlockAttribute> cells = Block().Attributes.ToDictionary(a => a.Tag);
        return titles.SelectMany(t => Values("", 0, t, "")).Where(v => cells.TryGetValue(v.Key, out BlockAttribute? cell) && Fitted(v.Value, cell) != v.Value)
            .Select(v => v.Value).Concat(context.Project.Sheets.Revisions.SkipLast(RevisionsShown.Count).Select(r => string.Join(" ", r))).Distinct();
    }

    private void Spread(Dictionary<string, string> values, string tag, int count, string text, double height, TextRole role)
    {
        IReadOnlyList<string> lines = TextMeasure.Wrap(text, Strip - 6, height, context.StyleOf(role));
        for (int i = 0; i < count; i++)
        {
            string line = i < lines.Count ? lines[i] : "";
            if (i == count - 1 && lines.Count > count)
                line = string.Join(" ", lines.Skip(i));
            values[tag + (i + 1).ToString(CultureInfo.InvariantCulture)] = line;
        }
    }

    /// <summary>A value cut to the room of its cell.</summary>
    private string Fitted(string value, BlockAttribute attribute)
    {
        TextStyle style = context.StyleOf(attribute.Role);
        double room = Border.Right - 1 - attribute.Position.X;
        if (attribute.Tag.EndsWith("_A", StringComparison.Ordinal))
            room = RevisionNumberWidth - 3;
        if (attribute.Tag.EndsWith("_B", StringComparison.Ordinal))
            room = RevisionTextAt - RevisionNumberWidth - 1;
        string fitted = value;
        while (fitted.Length > 1 && TextMeasure.Measure(fitted, attribute.Height, style) > room)
            fitted = fitted[..^1];
        return fitted;
    }
}

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

    private double Strip => size.Width > 500 ? 74 : 58;

    public string BlockName => "SHEET-" + size.Name.ToUpperInvariant().Replace(' ', '-');

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
        y = Cell(lines, attributes, y, 24, "SHEET", ("SHEET", 9, TextRole.SheetTitle), 8);
        y = Cell(lines, attributes, y, 8, "OF", ("SHEET_COUNT", 2.6, TextRole.TitleBlock), 2.4, beside: 8);
        y = Cell(lines, attributes, y, 10, "SCALE", ("SCALE", 2.6, TextRole.TitleBlock), 2);
        y = Stack(lines, attributes, y, "TITLE", ["SHEET_TITLE_1", "SHEET_TITLE_2", "SHEET_TITLE_3"], TextRole.SheetTitle, 3.2);
        y = Stack(lines, attributes, y, "PROJECT", ["PROJECT_1", "PROJECT_2", "PROJECT_3"], TextRole.TitleBlock, 3);
        y = Cell(lines, attributes, y, 10, "PROJECT NO.", ("NUMBER", 2.6, TextRole.TitleBlock), 2);
        y = Cell(lines, attributes, y, 10, "DATE", ("DATE", 2.6, TextRole.TitleBlock), 2);
        y = Cell(lines, attributes, y, 10, "REVISION", ("REVISION", 2.6, TextRole.TitleBlock), 2);
        foreach (string who in new[] { "CHECKED", "DRAWN", "DESIGNED" })
            y = Cell(lines, attributes, y, 8, who, (who, 2.4, TextRole.TitleBlock), 2.4, beside: 24);
        y = Revisions(lines, attributes, y);
        lines.Add(Small("SPACE FOR SEAL", new(StripLeft + 2, Border.Top - 4)));
        lines.Add(Small("NOT SEALED. FOR REVIEW BY THE", new(StripLeft + 2, y + 5.5)));
        lines.Add(Small("ENGINEER OF RECORD.", new(StripLeft + 2, y + 2)));
        return new(BlockName, lines, attributes, false);
    }

    private double Cell(List<Primitive> lines, List<BlockAttribute> attributes, double y, double height, string label,
        (string Tag, double Height, TextRole Role) field, double up, double beside = 0)
    {
        lines.Add(new Line(On, new(StripLeft, y + height), new(Border.Right, y + height)));
        lines.Add(Small(label, new(StripLeft + 2, beside > 0 ? y + 2.4 : y + height - 3.6)));
        attributes.Add(new(field.Tag, label, new(StripLeft + (beside > 0 ? beside : 3), y + up - 0.6), field.Height, true, field.Role, On));
        return y + height;
    }

    private double Stack(List<Primitive> lines, List<BlockAttribute> attributes, double y, string label, string[] tags, TextRole role, double height)
    {
        double total = tags.Length * height * 1.7 + 7;
        for (int i = 0; i < tags.Length; i++)
        {
            double at = y + total - 6 - (i + 1) * height * 1.7 + height * 0.5;
            attributes.Add(new(tags[i], label, new(StripLeft + 3, at), height, true, role, On));
        }
        lines.Add(Small(label, new(StripLeft + 2, y + total - 3.6)));
        lines.Add(new Line(On, new(StripLeft, y + total), new(Border.Right, y + total)));
        return y + total;
    }

    private int RevisionRows => size.Height > 400 ? 6 : 2;

    private double Revisions(List<Primitive> lines, List<BlockAttribute> attributes, double y)
    {
        double[] columns = [StripLeft + 2, StripLeft + 12, StripLeft + 32];
        for (int row = 0; row < RevisionRows; row++)
        {
            double at = y + (RevisionRows - 1 - row) * 5;
            lines.Add(new Line(On, new(StripLeft, at + 5), new(Border.Right, at + 5)));
            for (int c = 0; c < 3; c++)
            {
                string tag = string.Create(CultureInfo.InvariantCulture, $"REV_{row + 1}_{"ABC"[c]}");
                attributes.Add(new(tag, "REVISION", new(columns[c], at + 1.5), 2.1, true, TextRole.TitleBlock, On));
            }
        }
        double head = y + RevisionRows * 5;
        lines.Add(new Line(On, new(StripLeft, head + 5), new(Border.Right, head + 5)));
        string[] heads = ["NO.", "DATE", "CHANGE"];
        for (int c = 0; c < 3; c++)
            lines.Add(Small(heads[c], new(columns[c], head + 1.5)));
        return head + 5;
    }

    private Text Small(string value, Point2 at) => new(On, TextRole.TitleBlock, at, 2, value);

    /// <summary>The title block of a sheet with its values.</summary>
    public BlockReference Reference(string sheet, int count, string title, string scale)
    {
        IReadOnlyDictionary<string, string> facts = context.Project.Info.Facts;
        string Fact(string key) => facts.TryGetValue(key, out string? v) ? v : "";
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
        };
        values["SHEET_TITLE"] = title;
        values["PROJECT"] = context.Project.Info.Title.ToUpperInvariant();
        Spread(values, "SHEET_TITLE_", 3, title, 3.2, TextRole.SheetTitle);
        Spread(values, "PROJECT_", 3, context.Project.Info.Title.ToUpperInvariant(), 3, TextRole.TitleBlock);
        IReadOnlyList<IReadOnlyList<string>> revisions = context.Project.Sheets.Revisions;
        for (int r = 0; r < Math.Min(RevisionRows, revisions.Count); r++)
        {
            for (int c = 0; c < Math.Min(3, revisions[r].Count); c++)
                values[string.Create(CultureInfo.InvariantCulture, $"REV_{r + 1}_{"ABC"[c]}")] = revisions[r][c];
        }
        if (_own is not null)
        {
            // The user's block may ask for any fact of the project by its name, and keeps its own words for what is not known.
            return new(LayerRole.TitleBlock, BlockName, default, 1, 0,
                [.. _own.Fields.Select(f => KeyValuePair.Create(f.Tag, values.GetValueOrDefault(f.Tag) ?? (Fact(f.Tag.ToLowerInvariant()) is { Length: > 0 } fact ? fact : f.Default)))]);
        }
        return new(LayerRole.TitleBlock, BlockName, default, 1, 0,
            [.. Block().Attributes.Select(a => KeyValuePair.Create(a.Tag, Fitted(values.GetValueOrDefault(a.Tag, ""), a)))]);
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
            room = 9;
        if (attribute.Tag.EndsWith("_B", StringComparison.Ordinal))
            room = 19;
        string fitted = value;
        while (fitted.Length > 1 && TextMeasure.Measure(fitted, attribute.Height, style) > room)
            fitted = fitted[..^1];
        return fitted;
    }
}

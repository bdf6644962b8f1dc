using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Labels;

/// <summary>
/// Width of texts by the published advance widths of Helvetica (core font metrics), beyond ASCII by those of the sheet font, so that a layout is the same on
/// every machine.
/// </summary>
public static class TextMeasure
{
    /// <summary>Height of a capital letter as a share of the font size (Helvetica: 0.718).</summary>
    public const double CapHeight = 0.718;

    /// <summary>Depth below the baseline as a share of the capital height, with slack.</summary>
    public const double Descent = 0.30;

    /// <summary>Distance of baselines as a multiple of the capital height.</summary>
    public const double LinePitch = 1.6;

    /// <summary>Room left for fonts that run wider.</summary>
    public const double Slack = 1.04;

    /// <summary>Letters of private use, as wide as digits, that stand for those of names which are not known yet.</summary>
    internal const char FirstStandIn = '\uE000', LastStandIn = '\uF8FF';

    private const string Narrow = "'.,:;!/\\|I[]fijlt ";

    /// <summary>The widths of ASCII, in which nearly all texts are.</summary>
    private static readonly int[] PlainWidths = Widths(bold: false), BoldWidths = Widths(bold: true);

    /// <summary>Advance of the text as it is drawn (<see cref="SheetFont.Shown(string)"/>), without slack, in the unit of the height.</summary>
    public static double Advance(string text, double height, TextStyle style)
    {
        int[] known = style.Bold ? BoldWidths : PlainWidths;
        double sum = 0;
        foreach (char c in SheetFont.Shown(text, r => IsStandIn(r.Value) || SheetFont.Has(r)))
            sum += c < known.Length ? known[c] : Width(c, style.Bold);
        return sum / 1000 * height / CapHeight * style.WidthFactor;
    }

    /// <summary>Width that a layout keeps free for the text.</summary>
    public static double Measure(string text, double height, TextStyle style) => Advance(text, height, style) * Slack;

    /// <summary>Box of a text on paper: 0 and 90 degrees exactly, other turns by their bounding box.</summary>
    public static Box BoxOf(Text text, TextStyle style)
    {
        double width = Measure(text.Value, text.Height, style);
        double left = text.Align switch
        {
            HorizontalAlign.Left => 0,
            HorizontalAlign.Center => -width / 2,
            _ => -width,
        };
        double turn = text.Rotation * Math.PI / 180;
        double below = -Descent * text.Height;
        Point2[] corners = [new(left, below), new(left + width, below), new(left + width, text.Height), new(left, text.Height)];
        return Box.Around(corners.Select(c => text.Position + c.Turned(turn)));
    }

    /// <summary>The text broken into lines no wider than a width, at spaces.</summary>
    public static IReadOnlyList<string> Wrap(string text, double width, double height, TextStyle style)
    {
        var lines = new List<string>();
        string line = "";
        foreach (string word in text.Split(' '))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Measure(longer, height, style) > width)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }
        lines.Add(line);
        return lines;
    }

    private static int[] Widths(bool bold)
    {
        var widths = new int[128];
        for (int c = 0; c < widths.Length; c++)
            widths[c] = Width((char)c, bold);
        return widths;
    }

    private static bool IsStandIn(int sign) => sign is >= FirstStandIn and <= LastStandIn;

    private static int FontWidth(TrueTypeFace face, char c) => (int)Math.Round(1000.0 * face.Advance(c) / face.Em);

    private static int Width(char c, bool bold)
    {
        if (IsStandIn(c))
            return Width('0', bold);
        if (!SheetFont.IsPlain(c))
            return FontWidth(SheetFont.Face(bold), c);
        if (bold)
            return BoldWidth(c);
        return c switch
        {
            'i' or 'j' or 'l' => 222,
            '\'' => 191,
            '|' => 260,
            '-' or '(' or ')' or 'r' or '`' => 333,
            '*' => 389,
            '"' => 355,
            '°' => 400,
            _ when Narrow.Contains(c) => 278,
            'c' or 'k' or 's' or 'v' or 'x' or 'y' or 'z' or 'J' => 500,
            '+' or '<' or '=' or '>' or '~' or '±' or '×' => 584,
            'F' or 'T' or 'Z' => 611,
            'A' or 'B' or 'E' or 'K' or 'P' or 'S' or 'V' or 'X' or 'Y' or '&' => 667,
            'C' or 'D' or 'H' or 'N' or 'R' or 'U' or 'w' => 722,
            'G' or 'O' or 'Q' => 778,
            'M' or 'm' => 833,
            'W' => 944,
            '%' => 889,
            '@' => 1015,
            _ => 556,
        };
    }

    private static int BoldWidth(char c) => c switch
    {
        '\'' => 238,
        'I' or 'i' or 'j' or 'l' or '.' or ',' or ' ' or '/' or '|' or '\\' => 278,
        '-' or '(' or ')' or ':' or ';' or '!' or 'f' or 't' or '[' or ']' or '`' => 333,
        'r' or '*' => 389,
        '"' => 474,
        '°' => 400,
        'z' => 500,
        '+' or '<' or '=' or '>' or '~' or '±' or '×' => 584,
        'F' or 'L' or 'T' or 'Z' or 'b' or 'd' or 'g' or 'h' or 'n' or 'o' or 'p' or 'q' or 'u' => 611,
        'E' or 'P' or 'S' or 'V' or 'X' or 'Y' => 667,
        'A' or 'B' or 'C' or 'D' or 'H' or 'K' or 'N' or 'R' or 'U' or '&' => 722,
        'G' or 'O' or 'Q' or 'w' => 778,
        'M' => 833,
        'W' => 944,
        'm' or '%' => 889,
        '@' => 975,
        _ => 556,
    };
}

using System.Globalization;
using System.Text;

namespace SheetGen.Drawing.Labels;

/// <summary>
/// The sheet font, Arimo Regular and Bold, carried in the program: the same sheets on every machine, whatever fonts it has. Its letters are as wide as those
/// of Helvetica, by which the sheets are laid out.
/// </summary>
public static class SheetFont
{
    /// <summary>What face is used, for a file's metadata.</summary>
    public const string Name = "Arimo";

    private static readonly Lazy<TrueTypeFace> RegularFace = new(() => Read("Arimo-Regular.ttf")), BoldFace = new(() => Read("Arimo-Bold.ttf"));

    /// <summary>The letters of one weight.</summary>
    public static TrueTypeFace Face(bool bold) => (bold ? BoldFace : RegularFace).Value;

    /// <summary>The signs of a text that the font has no picture of, as code points, each once.</summary>
    public static IEnumerable<int> Lacking(string text) => IsPlain(text) ? [] : text.EnumerateRunes().Where(r => !Has(r)).Select(r => r.Value).Distinct();

    /// <summary>A text as the PDF and the pictures draw it: a sign that the font lacks is written as its code point, <c>[U+4E2D]</c>.</summary>
    public static string Shown(string text) => Shown(text, Has);

    /// <summary>The signs that draw a text, from left to right: <see cref="Shown(string)"/> in <see cref="ReadingOrder"/>.</summary>
    public static string Drawn(string text) => ReadingOrder.Drawn(Shown(text));

    internal static string Shown(string text, Func<Rune, bool> has)
    {
        if (IsPlain(text))
            return text;
        var shown = new StringBuilder();
        foreach (Rune sign in text.EnumerateRunes())
            shown.Append(has(sign) ? sign.ToString() : string.Create(CultureInfo.InvariantCulture, $"[U+{sign.Value:X4}]"));
        return shown.ToString();
    }

    /// <summary>True of ASCII and the few signs beyond it whose widths are known without the font. Nearly all texts have these only.</summary>
    internal static bool IsPlain(char c) => c <= 127 || c is '°' or '±' or '×';

    private static bool IsPlain(string text)
    {
        foreach (char c in text)
        {
            if (!IsPlain(c))
                return false;
        }
        return true;
    }

    internal static bool Has(Rune sign) => sign.IsBmp && Face(false).Has((char)sign.Value);

    private static TrueTypeFace Read(string name)
    {
        using Stream stream = typeof(SheetFont).Assembly.GetManifestResourceStream("fonts/" + name)
            ?? throw new InvalidOperationException($"the program lacks its font {name}");
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return new TrueTypeFace(memory.ToArray());
    }
}

using System.Buffers.Binary;
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

    private static readonly Lazy<Face> RegularFace = new(() => new Face("Arimo-Regular.ttf")), BoldFace = new(() => new Face("Arimo-Bold.ttf"));

    /// <summary>The TrueType file of a face.</summary>
    public static byte[] File(bool bold) => Of(bold).File;

    /// <summary>The signs of a text that the font has no picture of, as code points, each once.</summary>
    public static IEnumerable<int> Lacking(string text) => IsPlain(text) ? [] : text.EnumerateRunes().Where(r => !Has(r)).Select(r => r.Value).Distinct();

    /// <summary>A text as the PDF and the pictures draw it: a sign that the font lacks is written as its code point, <c>[U+4E2D]</c>.</summary>
    public static string Shown(string text) => Shown(text, Has);

    internal static string Shown(string text, Func<Rune, bool> has)
    {
        if (IsPlain(text))
            return text;
        var shown = new StringBuilder();
        foreach (Rune sign in text.EnumerateRunes())
            shown.Append(has(sign) ? sign.ToString() : string.Create(CultureInfo.InvariantCulture, $"[U+{sign.Value:X4}]"));
        return shown.ToString();
    }

    /// <summary>Nearly all texts have these signs only; the font need not be asked for them.</summary>
    private static bool IsPlain(string text)
    {
        foreach (char c in text)
        {
            if (c > 127 && c is not ('°' or '±' or '×'))
                return false;
        }
        return true;
    }

    internal static bool Has(Rune sign) => sign.IsBmp && Of(false).Advances[sign.Value] >= 0;

    /// <summary>Advance of a sign that the font has, in thousandths of the font size.</summary>
    internal static int Advance(char sign, bool bold) => Of(bold).Advances[sign];

    private static Face Of(bool bold) => (bold ? BoldFace : RegularFace).Value;

    /// <summary>A face with the advance of each character: tables head, hhea, hmtx, and cmap in format 4 (ISO/IEC 14496-22).</summary>
    private sealed class Face
    {
        public Face(string name)
        {
            using Stream stream = typeof(SheetFont).Assembly.GetManifestResourceStream("fonts/" + name)
                ?? throw new InvalidOperationException($"the program lacks its font {name}");
            using var memory = new MemoryStream();
            stream.CopyTo(memory);
            File = memory.ToArray();
            Array.Fill(Advances, (short)-1);
            int cmap = Table("cmap"), head = Table("head"), hmtx = Table("hmtx"), metrics = U16(Table("hhea") + 34);
            for (int i = 0; i < U16(cmap + 2); i++)
            {
                int table = cmap + (int)BinaryPrimitives.ReadUInt32BigEndian(File.AsSpan(cmap + 8 + 8 * i));
                if (U16(table) != 4)
                    continue;
                int doubled = U16(table + 6), ends = table + 14, starts = ends + doubled + 2, deltas = starts + doubled, ranges = deltas + doubled;
                for (int s = 0; s < doubled; s += 2)
                {
                    for (int c = U16(starts + s); c <= U16(ends + s); c++)
                    {
                        int range = U16(ranges + s), glyph = range == 0 ? c : U16(ranges + s + range + 2 * (c - U16(starts + s)));
                        glyph = range != 0 && glyph == 0 ? 0 : (glyph + U16(deltas + s)) & 0xFFFF;
                        if (glyph != 0)
                            Advances[c] = (short)Math.Round(1000.0 * U16(hmtx + 4 * Math.Min(glyph, metrics - 1)) / U16(head + 18));
                    }
                }
            }
        }

        public byte[] File { get; }

        /// <summary>By character; -1 where the face has no picture of it.</summary>
        public short[] Advances { get; } = new short[char.MaxValue + 1];

        private int Table(string name)
        {
            for (int entry = 12; entry < 12 + 16 * U16(4); entry += 16)
            {
                if (Encoding.ASCII.GetString(File, entry, 4) == name)
                    return (int)BinaryPrimitives.ReadUInt32BigEndian(File.AsSpan(entry + 8));
            }
            throw new InvalidOperationException($"the font lacks its table {name}");
        }

        private ushort U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(File.AsSpan(at));
    }
}

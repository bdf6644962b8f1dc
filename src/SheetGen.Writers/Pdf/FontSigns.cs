using System.Buffers.Binary;

namespace SheetGen.Writers.Pdf;

/// <summary>The characters that a TrueType font has a picture for: its table <c>cmap</c>, formats 4 and 12 (ISO/IEC 14496-22).</summary>
internal static class FontSigns
{
    private static readonly Dictionary<byte[], HashSet<int>> Known = [];

    /// <summary>All code points of a font that the program carries; read once.</summary>
    public static IReadOnlySet<int> Of(byte[] font)
    {
        lock (Known)
            return Known.TryGetValue(font, out HashSet<int>? signs) ? signs : Known[font] = Read(font);
    }

    private static HashSet<int> Read(byte[] font)
    {
        var signs = new HashSet<int>();
        int tables = U16(font, 4);
        for (int i = 0; i < tables; i++)
        {
            int record = 12 + 16 * i;
            if (!font.AsSpan(record, 4).SequenceEqual("cmap"u8))
                continue;
            int cmap = U32(font, record + 8);
            for (int k = 0; k < U16(font, cmap + 2); k++)
            {
                int table = cmap + U32(font, cmap + 4 + 8 * k + 4);
                if (U16(font, table) == 4)
                    Segments(font, table, signs);
                else if (U16(font, table) == 12)
                    Groups(font, table, signs);
            }
        }
        return signs;
    }

    private static void Segments(byte[] font, int table, HashSet<int> signs)
    {
        int doubled = U16(font, table + 6), ends = table + 14, starts = ends + doubled + 2, deltas = starts + doubled, offsets = deltas + doubled;
        for (int s = 0; s < doubled; s += 2)
        {
            int delta = U16(font, deltas + s), offset = U16(font, offsets + s);
            for (int c = U16(font, starts + s); c <= U16(font, ends + s) && c < 0xFFFF; c++)
            {
                int glyph = offset == 0 ? c : U16(font, offsets + s + offset + 2 * (c - U16(font, starts + s)));
                if (glyph != 0 && ((glyph + delta) & 0xFFFF) != 0)
                    signs.Add(c);
            }
        }
    }

    private static void Groups(byte[] font, int table, HashSet<int> signs)
    {
        for (int g = 0; g < U32(font, table + 12); g++)
        {
            int at = table + 16 + 12 * g;
            for (int c = U32(font, at); c <= U32(font, at + 4); c++)
                signs.Add(c);
        }
    }

    private static int U16(byte[] font, int at) => BinaryPrimitives.ReadUInt16BigEndian(font.AsSpan(at));

    private static int U32(byte[] font, int at) => (int)BinaryPrimitives.ReadUInt32BigEndian(font.AsSpan(at));
}

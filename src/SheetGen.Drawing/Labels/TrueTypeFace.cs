using System.Buffers.Binary;
using System.Text;

namespace SheetGen.Drawing.Labels;

/// <summary>A TrueType font file: its tables, the glyph of each character, and their advances (tables head, hhea, hmtx, and cmap in format 4 of ISO/IEC 14496-22).</summary>
public sealed class TrueTypeFace
{
    private readonly byte[] _bytes;
    private readonly ushort[] _glyphs = new ushort[char.MaxValue + 1];
    private readonly int _advances;
    private readonly int _advanceCount;

    /// <param name="file">The font file.</param>
    /// <exception cref="InvalidOperationException">The file lacks a table.</exception>
    public TrueTypeFace(byte[] file)
    {
        _bytes = file;
        Em = U16(Table("head") + 18);
        _advances = Table("hmtx");
        _advanceCount = U16(Table("hhea") + 34);
        int cmap = Table("cmap");
        for (int i = 0; i < U16(cmap + 2); i++)
        {
            int table = cmap + (int)U32(cmap + 8 + 8 * i);
            if (U16(table) == 4)
                ReadGlyphs(table);
        }
    }

    /// <summary>The font file.</summary>
    public ReadOnlySpan<byte> Bytes => _bytes;

    /// <summary>Size of the em square in the font's own units.</summary>
    public int Em { get; }

    /// <summary>True where the font has a picture of the character.</summary>
    public bool Has(char c) => _glyphs[c] != 0;

    /// <summary>Number of a character's glyph; 0, the stand-in, where the font has none.</summary>
    public int GlyphOf(char c) => _glyphs[c];

    /// <summary>How far the pen goes on after a character, in the font's own units; after the stand-in where the font has none.</summary>
    public int Advance(char c) => U16(_advances + 4 * Math.Min(_glyphs[c], _advanceCount - 1));

    /// <summary>Where a table begins in the file.</summary>
    /// <param name="name">Of four letters.</param>
    /// <exception cref="InvalidOperationException">The file lacks it.</exception>
    public int Table(string name)
    {
        for (int entry = 12; entry < 12 + 16 * U16(4); entry += 16)
        {
            if (Encoding.ASCII.GetString(_bytes, entry, 4) == name)
                return (int)U32(entry + 8);
        }
        throw new InvalidOperationException($"the font lacks its table {name}");
    }

    /// <summary>The unsigned number of two bytes at a place of the file.</summary>
    public ushort U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_bytes.AsSpan(at));

    /// <summary>The signed number of two bytes at a place of the file.</summary>
    public short S16(int at) => BinaryPrimitives.ReadInt16BigEndian(_bytes.AsSpan(at));

    /// <summary>The unsigned number of four bytes at a place of the file.</summary>
    public uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(_bytes.AsSpan(at));

    private void ReadGlyphs(int table)
    {
        int doubled = U16(table + 6), ends = table + 14, starts = ends + doubled + 2, deltas = starts + doubled, ranges = deltas + doubled;
        for (int s = 0; s < doubled; s += 2)
        {
            for (int c = U16(starts + s); c <= U16(ends + s); c++)
            {
                int range = U16(ranges + s), glyph = range == 0 ? c : U16(ranges + s + range + 2 * (c - U16(starts + s)));
                _glyphs[c] = (ushort)(range != 0 && glyph == 0 ? 0 : glyph + U16(deltas + s));
            }
        }
    }
}

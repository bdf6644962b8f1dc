using System.Buffers.Binary;
using System.Text;
using SheetGen.Tests.ProjectFile;

namespace SheetGen.Tests.Drawing.Labels;

/// <summary>
/// Advance widths and capital height as the file of a TrueType font has them (tables head, hhea, hmtx, OS/2 and cmap format 4 of the OpenType
/// specification, from memory), to measure texts with nothing of the program's own widths.
/// </summary>
internal sealed class FontWidths
{
    private readonly byte[] _file;
    private readonly Dictionary<string, int> _tables = [];
    private readonly int _full;
    private readonly int _capital;

    private FontWidths(string path)
    {
        _file = File.ReadAllBytes(path);
        for (int i = 0; i < Word(4); i++)
            _tables.Add(Encoding.ASCII.GetString(_file, 12 + 16 * i, 4), BinaryPrimitives.ReadInt32BigEndian(_file.AsSpan(20 + 16 * i)));
        _full = Word(_tables["hhea"] + 34);
        _capital = Word(_tables["OS/2"] + 88);
    }

    public static FontWidths Plain { get; } = new(Repository.PathOf("src", "SheetGen.Drawing", "Fonts", "Arimo-Regular.ttf"));

    public static FontWidths Bold { get; } = new(Repository.PathOf("src", "SheetGen.Drawing", "Fonts", "Arimo-Bold.ttf"));

    /// <summary>Width of a text whose capitals are so high.</summary>
    public double Of(string text, double height) => text.Sum(c => Word(_tables["hmtx"] + 4 * Math.Min(Glyph(c), _full - 1))) * height / _capital;

    private int Word(int at) => BinaryPrimitives.ReadUInt16BigEndian(_file.AsSpan(at));

    private int Glyph(char letter)
    {
        int cmap = _tables["cmap"];
        int map = Enumerable.Range(0, Word(cmap + 2)).Select(i => cmap + BinaryPrimitives.ReadInt32BigEndian(_file.AsSpan(cmap + 8 + 8 * i))).First(t => Word(t) == 4);
        int twice = Word(map + 6), ends = map + 14, starts = ends + twice + 2, steps = starts + twice, ranges = steps + twice;
        for (int i = 0; i < twice; i += 2)
        {
            if (letter > Word(ends + i))
                continue;
            if (letter < Word(starts + i))
                return 0;
            int range = Word(ranges + i);
            int glyph = range == 0 ? letter : Word(ranges + i + range + 2 * (letter - Word(starts + i)));
            return glyph == 0 ? 0 : (glyph + Word(steps + i)) & 0xffff;
        }
        return 0;
    }
}

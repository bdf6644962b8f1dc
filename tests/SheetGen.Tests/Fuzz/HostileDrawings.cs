using System.Globalization;
using System.Text;

namespace SheetGen.Tests.Fuzz;

/// <summary>
/// Broken and hostile drawings, made from a good one by number: cut off, wrong codes and values, doubled and missing parts, blocks that hold themselves, each other,
/// thousands of copies or chains without end, endless lines, other forms of file. The same number gives the same bytes.
/// </summary>
internal sealed class HostileDrawings(byte[] good)
{
    private static readonly string[] Values =
    [
        "", "0", "-1", "1e308", "-1e308", "1e400", "NaN", "nan", "Infinity", "-Infinity", "1,5", "0x10", "99999999999999999999", "2147483648", "-2147483649", "x", "*Model_Space", "{", "}", "{SHEETGEN",
        "\\U+0000", "\\U+D800", "%%999", "\u0001", "\u202e", "SECTION", "EOF", "ENDSEC", "BLOCK", "ENDBLK", "SEQEND",
    ];

    private static readonly (string Name, Func<HostileDrawings, Random, byte[]> Make)[] Kinds =
    [
        ("cut off", (d, r) => d._good[..r.Next(d._good.Length)]),
        ("cut off by lines", (d, r) => d.Of(l => [.. l.Take(r.Next(l.Count))])),
        ("wrong codes", (d, r) => d.Of(l => Changed(l, r, 0, x => r.Next(3) switch { 0 => r.Next(-9, 1200).ToString(CultureInfo.InvariantCulture), 1 => Values[r.Next(Values.Length)], _ => x + x }))),
        ("wrong values", (d, r) => d.Of(l => Changed(l, r, 1, _ => Values[r.Next(Values.Length)]))),
        ("numbers of no size", (d, r) => d.Of(l => Numbers(l, r))),
        ("a line lost", (d, r) => d.Of(l => { l.RemoveAt(r.Next(l.Count)); return l; })),
        ("parts doubled", (d, r) => d.Of(l => { int at = 2 * r.Next(l.Count / 2), count = Math.Min(2 * r.Next(1, 200), l.Count - at); l.InsertRange(2 * r.Next(l.Count / 2), l.GetRange(at, count)); return l; })),
        ("parts lost", (d, r) => d.Of(l => { int at = 2 * r.Next(l.Count / 2); l.RemoveRange(at, Math.Min(2 * r.Next(1, 400), l.Count - at)); return l; })),
        ("parts elsewhere", (d, r) => d.Of(l => { int at = 2 * r.Next(l.Count / 2), count = Math.Min(2 * r.Next(1, 200), l.Count - at); List<string> part = l.GetRange(at, count); l.RemoveRange(at, count); l.InsertRange(2 * r.Next(l.Count / 2), part); return l; })),
        ("no end of sections", (d, r) => d.Of(l => [.. l.Where((x, i) => !(i % 2 == 1 && x == "ENDSEC") && !(i % 2 == 0 && i + 1 < l.Count && l[i + 1] == "ENDSEC"))])),
        ("a block in itself", (d, r) => d.WithBlocks(Block("LOOP", Insert("LOOP", 1, 1)), Insert("LOOP", 1, 1))),
        ("blocks in each other", (d, r) => d.WithBlocks(Block("A", Insert("B", 1, 1)) + Block("B", Insert("C", 1, 1)) + Block("C", Insert("A", 1, 1)), Insert("A", 1, 1))),
        ("blocks that grow tenfold", (d, r) => d.WithBlocks(Tower(r.Next(6, 14), 10), Insert("T0", 1, 1))),
        ("a chain of blocks", (d, r) => d.WithBlocks(Tower(r.Next(100, 3000), 1), Insert("T0", 1, 1))),
        ("arrays", (d, r) => d.WithBlocks(Block("ONE", "0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n"), Insert("ONE", 32767, 32767) + Insert("ONE", -5, 0) + Insert("ONE", 1000000, 2))),
        ("nails arrayed", (d, r) => d.WithBlocks("", Insert("NAIL-GRID", r.Next(1, 32767), r.Next(1, 32767)))),
        ("a block that is not there", (d, r) => d.WithBlocks("", Insert("NOWHERE", 1, 1) + Insert("", 1, 1) + "0\nINSERT\n8\n0\n")),
        ("attributes without end", (d, r) => d.WithBlocks("", "0\nINSERT\n8\n0\n66\n1\n2\nNAIL-GRID\n10\n5\n20\n105\n" + Repeated(r.Next(10, 3000), "0\nATTRIB\n8\n0\n10\n0\n20\n0\n40\n1\n1\nx\n2\nMARK\n"))),
        ("vertices without end", (d, r) => d.WithBlocks("", "0\nLWPOLYLINE\n8\n0\n90\n2147483647\n70\n1\n" + Repeated(r.Next(10, 30000), "10\n1\n20\n2\n42\n1e300\n") + "0\nPOLYLINE\n8\n0\n66\n1\n70\n64\n71\n32767\n72\n32767\n0\nVERTEX\n8\n0\n10\n0\n20\n0\n")),
        ("extended data", (d, r) => d.WithBlocks("", "0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n1001\nSHEETGEN\n" + Repeated(r.Next(10, 5000), r.Next(2) == 0 ? "1002\n{\n" : "1000\nwall=W\n1000\nsign=1\n1000\norigin=1e300,nan\n1000\ndeveloped=0,line=0\n"))),
        ("hatches", (d, r) => d.WithBlocks("", "0\nHATCH\n8\n0\n10\n0\n20\n0\n30\n0\n2\nSOLID\n70\n1\n71\n0\n91\n" + r.Next(int.MaxValue) + "\n92\n1\n93\n" + r.Next(int.MaxValue) + "\n72\n" + r.Next(9) + "\n10\n1\n20\n1\n")),
        ("the frame lies", (d, r) => d.Of(l => [.. l.Select(x => x.StartsWith("developed=", StringComparison.Ordinal) ? $"developed={Values[r.Next(Values.Length)]},line={Values[r.Next(Values.Length)]}" : x.StartsWith("origin=", StringComparison.Ordinal) && r.Next(2) == 0 ? "origin=1e308,-1e308" : x)])),
        ("nails far away", (d, r) => d.Of(l => Shifted(l, r))),
        ("every nail twice", (d, r) => d.Of(l => { int at = l.IndexOf("ENTITIES") + 1; int end = l.FindIndex(at, x => x == "ENDSEC") - 1; l.InsertRange(at, l.GetRange(at, end - at)); return l; })),
        ("an endless line", (d, r) => [.. Encoding.ASCII.GetBytes("0\nSECTION\n2\nENTITIES\n0\nTEXT\n1\n"), .. Enumerable.Repeat((byte)'A', r.Next(1 << 20, 1 << 23)), .. "\n0\nENDSEC\n0\nEOF\n"u8]),
        ("noise", (d, r) => Noise(r.Next(1, 60000), r)),
        ("noise in the middle", (d, r) => { byte[] b = [.. d._good]; r.NextBytes(b.AsSpan(r.Next(b.Length - 300), 300)); return b; }),
        ("two bytes a sign", (d, r) => Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes(Encoding.UTF8.GetString(d._good))).ToArray()),
        ("old line ends", (d, r) => Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(d._good).ReplaceLineEndings("\r"))),
        ("nulls", (d, r) => { byte[] b = [.. d._good]; for (int i = 0; i < 50; i++) b[r.Next(b.Length)] = 0; return b; }),
        ("binary head, other body", (d, r) => [.. "AutoCAD Binary DXF\r\n\x1a\0"u8, .. Noise(r.Next(0, 20000), r)]),
        ("binary without end", (d, r) => [.. "AutoCAD Binary DXF\r\n\x1a\0"u8, .. Enumerable.Repeat((byte)1, r.Next(1, 1 << 20))]),
        ("another form", (d, r) => r.Next(4) switch { 0 => [.. "AC1032"u8, .. Noise(500, r)], 1 => "PK\x03\x04"u8.ToArray(), 2 => "%PDF-1.7\n"u8.ToArray(), _ => "<?xml version=\"1.0\"?>\n<a/>\n"u8.ToArray() }),
        ("nearly nothing", (d, r) => r.Next(5) switch { 0 => [], 1 => "\n"u8.ToArray(), 2 => "0\nEOF\n"u8.ToArray(), 3 => "0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n"u8.ToArray(), _ => [0] }),
        ("many kinds that nobody knows", (d, r) => d.WithBlocks("", string.Concat(Enumerable.Range(0, r.Next(100, 20000)).Select(i => FormattableString.Invariant($"0\nKIND{i}\n8\n0\n5\nFFFF\n"))))),
    ];

    private readonly byte[] _good = good;

    public static int KindCount => Kinds.Length;

    /// <summary>A drawing and what was done to it.</summary>
    public (string Name, byte[] Bytes) Make(int number)
    {
        (string name, Func<HostileDrawings, Random, byte[]> make) = Kinds[number % Kinds.Length];
        return (FormattableString.Invariant($"{name} ({number})"), make(this, new Random(number)));
    }

    private byte[] Of(Func<List<string>, List<string>> change)
    {
        List<string> lines = [.. Encoding.UTF8.GetString(_good).ReplaceLineEndings("\n").TrimEnd('\n').Split('\n').Select(x => x.Trim())];
        return Encoding.UTF8.GetBytes(string.Join("\r\n", change(lines)) + "\r\n");
    }

    /// <summary>The good drawing with blocks and entities added.</summary>
    private byte[] WithBlocks(string blocks, string entities) => Of(lines =>
    {
        lines.InsertRange(lines.IndexOf("ENTITIES") + 1, Lines(entities));
        lines.InsertRange(lines.IndexOf("BLOCKS") + 1, Lines(blocks));
        return lines;
    });

    private static IEnumerable<string> Lines(string text) => text.Length == 0 ? [] : text.TrimEnd('\n').Split('\n');

    private static string Block(string name, string entities) => $"0\nBLOCK\n8\n0\n2\n{name}\n70\n0\n10\n0\n20\n0\n{entities}0\nENDBLK\n8\n0\n";

    private static string Insert(string block, int columns, int rows) =>
        FormattableString.Invariant($"0\nINSERT\n8\n0\n2\n{block}\n10\n1\n20\n1\n70\n{columns}\n71\n{rows}\n44\n0.1\n45\n0.1\n");

    private static string Tower(int height, int copies) => string.Concat(Enumerable.Range(0, height).Select(i => Block(FormattableString.Invariant($"T{i}"),
        i + 1 == height ? "0\nPOINT\n8\n0\n10\n0\n20\n0\n" : Repeated(copies, Insert(FormattableString.Invariant($"T{i + 1}"), 1, 1)))));

    private static string Repeated(int times, string text) => new StringBuilder().Insert(0, text, times).ToString();

    private static byte[] Noise(int length, Random random)
    {
        byte[] bytes = new byte[length];
        random.NextBytes(bytes);
        return bytes;
    }

    /// <param name="parity">0 for codes, 1 for values.</param>
    private static List<string> Changed(List<string> lines, Random random, int parity, Func<string, string> change)
    {
        for (int n = 1 + random.Next(12); n > 0; n--)
        {
            int at = Math.Min(lines.Count - 1, 2 * random.Next(lines.Count / 2) + parity);
            lines[at] = change(lines[at]);
        }
        return lines;
    }

    /// <summary>Each coordinate with some chance another.</summary>
    private static List<string> Numbers(List<string> lines, Random random)
    {
        for (int i = 0; i + 1 < lines.Count; i += 2)
        {
            if (lines[i] is "10" or "20" or "11" or "40" or "41" or "50" && random.Next(40) == 0)
                lines[i + 1] = random.Next(4) switch { 0 => "1e308", 1 => "-1e308", 2 => "1e-308", _ => "0" };
        }
        return lines;
    }

    private static List<string> Shifted(List<string> lines, Random random)
    {
        double shift = Math.Pow(10, random.Next(3, 300));
        for (int i = lines.IndexOf("ENTITIES"); i + 1 < lines.Count; i++)
        {
            if (lines[i] == "10" && double.TryParse(lines[i + 1], CultureInfo.InvariantCulture, out double x) && random.Next(2) == 0)
                lines[i + 1] = (x + shift).ToString("R", CultureInfo.InvariantCulture);
        }
        return lines;
    }
}

using System.Globalization;
using System.Text;

namespace SheetGen.Tests.Fuzz;

/// <summary>Changes good files with regard to their structure: what comes out is mostly well-formed and wrong in one place or a few.</summary>
/// <param name="random">Decides what changes.</param>
/// <param name="idle">Whether the files stay as they are, which shows that they are good.</param>
internal sealed partial class Mutator(Random random, bool idle = false)
{
    private static readonly string[] Values =
    [
        "0", "-0", "-1", "1", "1e308", "-1e308", "1e400", "1e-300", "1e15", "99999999999999999999", ".nan", ".inf", "nan", "NaN", "0x10", "1_000", "1,5", "1.5.2",
        "5'-6\"", "6 in", "6 ftt", "3 m", "45 deg", "200 %", "10+00", "0+000", "1+2", "-5+00", "99999+99", "true", "null", "~", "", "\"\"", "[]", "{}", "[[]]", "[1, 2, 3]",
        "\"\\u202e\"", "\"\\e[2J\"", "\"\\0\"", "\u00e9\u0301", "\u6f22", "\ud83d\ude00", "\"#8\"", "'x'", "*", "/", "..", "/dev/null", "=1+1", "@x", "<<", "2026-13-45",
    ];

    /// <summary>A text of lines and blocks, such as YAML.</summary>
    public string Yaml(string text)
    {
        List<string> lines = [.. text.Split('\n')];
        for (int n = Changes(4); n > 0 && lines.Count > 1; n--)
        {
            int at = random.Next(lines.Count), other = random.Next(lines.Count);
            switch (random.Next(9))
            {
                case 0 or 1 or 2:
                    lines[at] = WithValue(lines[at]);
                    break;
                case 3:
                    lines.RemoveAt(at);
                    break;
                case 4:
                    lines.Insert(at, lines[other]);
                    break;
                case 5:
                    (lines[at], lines[other]) = (lines[other], lines[at]);
                    break;
                case 6:
                    lines[at] = new string(' ', random.Next(10)) + lines[at].TrimStart();
                    break;
                case 7:
                    lines[at] = Characters(lines[at]);
                    break;
                default:
                    int colon = lines[at].IndexOf(':', StringComparison.Ordinal), from = lines[other].IndexOf(':', StringComparison.Ordinal);
                    if (colon >= 0 && from >= 0)
                        lines[at] = lines[at][..colon] + lines[other][from..];
                    break;
            }
        }
        return string.Join('\n', lines);
    }

    /// <summary>A table: cells change, rows and columns are left out, doubled or exchanged, the mark between cells becomes another.</summary>
    public string Csv(string text)
    {
        List<string[]> rows = [.. text.Split('\n').Select(l => l.Split(','))];
        for (int n = Changes(4); n > 0 && rows.Count > 1; n--)
        {
            int at = random.Next(rows.Count), other = random.Next(rows.Count), cell = random.Next(rows[at].Length);
            switch (random.Next(9))
            {
                case 0 or 1 or 2:
                    rows[at] = [.. rows[at].Select((c, i) => i == cell ? Values[random.Next(Values.Length)] : c)];
                    break;
                case 3:
                    rows.RemoveAt(at);
                    break;
                case 4:
                    rows.Insert(at, rows[other]);
                    break;
                case 5:
                    (rows[at], rows[other]) = (rows[other], rows[at]);
                    break;
                case 6:
                    rows[at] = [.. rows[at].Select((c, i) => i == cell ? Characters(c) : c)];
                    break;
                case 7:
                    rows = [.. rows.Select(r => r.Where((_, i) => i != cell).ToArray())];
                    break;
                default:
                    char mark = ";\t| "[random.Next(4)];
                    return string.Join('\n', rows.Select(r => string.Join(mark, r)));
            }
        }
        return string.Join('\n', rows.Select(r => string.Join(',', r)));
    }

    /// <summary>A file of bytes: some change, some are left out, or it is cut off.</summary>
    public byte[] Bytes(byte[] bytes)
    {
        List<byte> changed = [.. bytes];
        for (int n = Changes(4); n > 0 && changed.Count > 2; n--)
        {
            int at = random.Next(changed.Count);
            if (random.Next(3) > 0)
                changed[at] = (byte)random.Next(256);
            else
                changed.RemoveRange(at, random.Next(4) == 0 ? changed.Count - at : Math.Min(random.Next(8), changed.Count - at));
        }
        return [.. changed];
    }

    /// <summary>A DXF file: pairs of group code and value are changed, left out, doubled, moved, or the file is cut off.</summary>
    public byte[] Dxf(string text) => Encoding.UTF8.GetBytes(string.Concat(Groups(text).Select(p => p.Code + "\n" + p.Value + "\n")));

    /// <summary>The same as a binary file, some bytes of which may change too. A value that its code cannot hold is written as 0.</summary>
    public byte[] BinaryDxf(string text)
    {
        using var stream = new MemoryStream();
        stream.Write("AutoCAD Binary DXF\r\n\x1a\0"u8);
        using var writer = new BinaryWriter(stream);
        foreach ((string given, string value) in Groups(text))
        {
            if (!short.TryParse(given, NumberStyles.Integer, CultureInfo.InvariantCulture, out short code))
                continue;
            writer.Write(code);
            _ = double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number);
            switch (code)
            {
                case (>= 10 and <= 59) or (>= 110 and <= 149) or (>= 210 and <= 239) or (>= 460 and <= 469) or (>= 1010 and <= 1059):
                    writer.Write(number);
                    break;
                case (>= 60 and <= 79) or (>= 170 and <= 179) or (>= 270 and <= 289) or (>= 370 and <= 389) or (>= 400 and <= 409) or (>= 1060 and <= 1070):
                    writer.Write((short)number);
                    break;
                case (>= 90 and <= 99) or (>= 420 and <= 429) or (>= 440 and <= 459) or 1071:
                    writer.Write((int)number);
                    break;
                case >= 160 and <= 169:
                    writer.Write((long)number);
                    break;
                case >= 290 and <= 299:
                    writer.Write((byte)number);
                    break;
                case 1004 or (>= 310 and <= 319):
                    writer.Write((byte)0);
                    break;
                default:
                    writer.Write(Encoding.UTF8.GetBytes(value + "\0"));
                    break;
            }
        }
        writer.Flush();
        return random.Next(2) == 0 ? Bytes(stream.ToArray()) : stream.ToArray();
    }

    private List<(string Code, string Value)> Groups(string text)
    {
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        List<(string Code, string Value)> pairs = [.. Enumerable.Range(0, lines.Length / 2).Select(i => (lines[2 * i], lines[2 * i + 1]))];
        for (int n = Changes(6); n > 0 && pairs.Count > 2; n--)
        {
            int at = random.Next(pairs.Count), other = random.Next(pairs.Count);
            switch (random.Next(8))
            {
                case 0 or 1:
                    pairs[at] = (pairs[at].Code, Values[random.Next(Values.Length)]);
                    break;
                case 2:
                    pairs[at] = (random.Next(-5, 1080).ToString(CultureInfo.InvariantCulture), pairs[at].Value);
                    break;
                case 3:
                    pairs.RemoveAt(at);
                    break;
                case 4:
                    pairs.InsertRange(at, pairs.GetRange(other, Math.Min(random.Next(40), pairs.Count - other)));
                    break;
                case 5:
                    pairs[at] = (pairs[at].Code, pairs[other].Value);
                    break;
                case 6:
                    pairs[at] = (pairs[at].Code, Characters(pairs[at].Value));
                    break;
                default:
                    if (random.Next(10) == 0)
                        pairs.RemoveRange(at, pairs.Count - at);
                    break;
            }
        }
        return pairs;
    }

    private int Changes(int most) => idle ? 0 : 1 + random.Next(most);

    /// <summary>Puts an odd value in place of a number or word of the text.</summary>
    private string WithValue(string line)
    {
        int at = random.Next(line.Length + 1);
        int start = at;
        while (start < line.Length && !char.IsLetterOrDigit(line[start]) && line[start] is not ('-' or '.'))
            start++;
        int end = start;
        while (end < line.Length && (char.IsLetterOrDigit(line[end]) || line[end] is '-' or '.' or '+' or '%' or '\''))
            end++;
        return line[..start] + Values[random.Next(Values.Length)] + line[end..];
    }

    private string Characters(string text)
    {
        int at = random.Next(text.Length + 1);
        return random.Next(3) switch
        {
            0 => text.Insert(at, ((char)random.Next(1, 0x3000)).ToString()),
            1 => text.Remove(at, Math.Min(random.Next(1, 6), text.Length - at)),
            _ => text.Insert(at, "{}[]:,\"'#&*|>-%\t \\"[random.Next(18)].ToString()),
        };
    }
}

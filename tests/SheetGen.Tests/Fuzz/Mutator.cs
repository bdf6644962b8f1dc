using System.Globalization;
using System.Text;

namespace SheetGen.Tests.Fuzz;

/// <summary>Changes good files with regard to their structure: what comes out is mostly well-formed and wrong in one place or a few.</summary>
internal sealed class Mutator(Random random)
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
        for (int n = 1 + random.Next(4); n > 0 && lines.Count > 1; n--)
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

    /// <summary>A JSON text: a number, a text, a key or a bracket becomes another.</summary>
    public string Json(string text)
    {
        for (int n = 1 + random.Next(3); n > 0; n--)
            text = random.Next(3) == 0 ? Characters(text) : WithValue(text);
        return text;
    }

    /// <summary>A DXF file: pairs of group code and value are changed, left out, doubled, moved, or the file is cut off.</summary>
    public byte[] Dxf(string text)
    {
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        List<(string Code, string Value)> pairs = [.. Enumerable.Range(0, lines.Length / 2).Select(i => (lines[2 * i], lines[2 * i + 1]))];
        for (int n = 1 + random.Next(6); n > 0 && pairs.Count > 2; n--)
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
        return Encoding.UTF8.GetBytes(string.Concat(pairs.Select(p => p.Code + "\n" + p.Value + "\n")));
    }

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

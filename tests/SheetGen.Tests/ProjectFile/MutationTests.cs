using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>Whatever happens to a file, the reader answers with a project or with errors whose places are in the file, and never throws.</summary>
public sealed class MutationTests
{
    private static readonly string[] Scraps =
    [
        "", " ", "\t", "\n", "\r\n", ":", ": ", "- ", "[", "]", "{", "}", ",", "'", "\"", "#", "&a ", "*a ", "<<: ", "!x ", "|\n", ">\n", "---\n", "...\n", "? ", "%", "@",
        "0", "-1", "1e400", ".nan", "-.inf", "1e15", "99999", "-99999", "1e-300", "10+00", "1+2", "~", "null", "true", "6 in", "5'-6\"", "\u00e9", "\u2028", "\u0085", "\0", "\uFEFF", "\uD800",
        "name: ", "wall: W1", "station: 10+00", "layout_line: WL-1", "elements:", "steps:", "from_grade: {embedment: 2, rise: 0.01}", "corner: {turn: left, angle: 179.9}", "arc: {radius: 0.001, length: 0.006, turn: left}",
    ];

    public static TheoryData<string, int> Runs => new()
    {
        { "base-wall.yaml", 1 }, { "base-wall.yaml", 2 }, { "bridge-wall.yaml", 3 }, { "bridge-wall.yaml", 4 },
    };

    [Theory]
    [MemberData(nameof(Runs))]
    public void A_mutated_file_never_throws(string file, int seed)
    {
        string text = Repository.Read("tests", "SheetGen.Tests", "Cases", file);
        var random = new Random(seed);
        for (int run = 0; run < 800; run++)
        {
            string mutated = text;
            for (int n = random.Next(1, 5); n > 0; n--)
                mutated = Mutate(mutated, random);
            Check(mutated);
        }
    }

    [Fact]
    public void A_file_cut_off_anywhere_never_throws()
    {
        for (int length = 0; length < BaseWall.Text.Length; length += 7)
            Check(BaseWall.Text[..length]);
    }

    private static string Mutate(string text, Random random)
    {
        string[] lines = text.Split('\n');
        int at = random.Next(text.Length + 1), line = random.Next(lines.Length);
        switch (random.Next(6))
        {
            case 0:
                return text.Insert(at, Scraps[random.Next(Scraps.Length)]);
            case 1:
                return text.Remove(at, Math.Min(random.Next(20), text.Length - at));
            case 2:
                lines[line] = lines[random.Next(lines.Length)];
                return string.Join('\n', lines);
            case 3:
                return string.Join('\n', lines.Where((_, i) => i != line));
            case 4:
                lines[line] = new string(' ', random.Next(12)) + lines[line].TrimStart();
                return string.Join('\n', lines);
            default:
                int end = at;
                while (end < text.Length && (char.IsLetterOrDigit(text[end]) || text[end] is '.' or '+' or '-'))
                    end++;
                return text[..at] + Scraps[random.Next(Scraps.Length)] + text[end..];
        }
    }

    private static void Check(string text)
    {
        ReadResult result = ProjectReader.ReadText(text, "f.yaml");
        Assert.Equal(result.Problems.Any(p => p.Severity == Severity.Error), result.Project is null);
        int lines = text.Split('\n', '\r', '\u0085', '\u2028', '\u2029').Length;
        Assert.All(result.Problems, p => Assert.True(p.Spot.Line >= 1 && p.Spot.Line <= lines && p.Spot.Column >= 1, p.ToString()));
        Assert.All(result.Problems, p => Assert.DoesNotContain('\n', ProblemPrinter.Plain(p)));
        Assert.All(result.Problems.Take(3), p => ProblemPrinter.WithSource(p, result.Text));
        Assert.Equal(result.Problems, result.Problems.OrderBy(p => p.Spot.Line).ThenBy(p => p.Spot.Column));
    }
}

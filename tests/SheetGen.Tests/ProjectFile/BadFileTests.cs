using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>The table of bad files: each with all its messages, places included.</summary>
public sealed class BadFileTests
{
    private static readonly IReadOnlyList<BadFile> Files = ReadTable();

    public static TheoryData<string> Names => [.. Files.Select(f => f.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_bad_file_gives_exactly_its_problems(string name)
    {
        BadFile file = Files.Single(f => f.Name == name);
        string text = file.Edits.Aggregate(BaseWall.Text, (t, edit) => BaseWall.Replace(t, edit.From, edit.To));

        ReadResult result = ProjectReader.ReadText(text, BaseWall.FileName);

        Assert.Equal(file.Problems, result.Problems.Select(ProblemPrinter.Plain));
        Assert.Equal(result.Problems.Any(p => p.Severity == Severity.Error), result.Project is null);
    }

    [Fact]
    public void The_base_is_good() => Assert.NotNull(BaseWall.Read(BaseWall.Text));

    [Fact]
    public void The_table_has_at_least_sixty_files_and_every_code_of_a_loaded_file()
    {
        Assert.True(Files.Count >= 60);
        string[] whole = ["R01", "R02", "R03", "R04"];
        string[] met = [.. Files.SelectMany(f => f.Problems).Select(p => p.Split(": ")[1].Split(' ')[1])];
        Assert.Equal([], ProblemCodes.All.Select(c => c.Code).Except(met).Except(whole));
    }

    [Fact]
    public void Codes_are_unique() =>
        Assert.Equal(ProblemCodes.All.Count, ProblemCodes.All.Select(c => c.Code).Distinct().Count());

    private static List<BadFile> ReadTable()
    {
        var files = new List<BadFile>();
        string? from = null;
        foreach (string line in Repository.Read("tests", "SheetGen.Tests", "Cases", "bad-files.txt").ReplaceLineEndings("\n").Split('\n'))
        {
            if (line.StartsWith("== ", StringComparison.Ordinal))
                files.Add(new BadFile(line[3..], [], []));
            else if (line.StartsWith("- ", StringComparison.Ordinal))
                from = Unescape(line[2..]);
            else if (line.StartsWith('+'))
                files[^1].Edits.Add((from!, Unescape(line.Length > 2 ? line[2..] : "")));
            else if (line.StartsWith("! ", StringComparison.Ordinal))
                files[^1].Problems.Add($"{BaseWall.FileName}:{line[2..]}");
        }
        return files;
    }

    private static string Unescape(string text) =>
        text.Replace("\\\\", "\0", StringComparison.Ordinal).Replace("\\n", "\n", StringComparison.Ordinal).Replace('\0', '\\');

    private sealed record BadFile(string Name, List<(string From, string To)> Edits, List<string> Problems);
}

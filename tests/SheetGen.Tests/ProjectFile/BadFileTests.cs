using System.Globalization;
using System.Text;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>The table of bad files: each with all its messages, places included.</summary>
public sealed class BadFileTests
{
    private static readonly IReadOnlyList<BadFile> Files = ReadTable("bad-files.txt");

    private static readonly IReadOnlyList<BadFile> Mistakes = ReadTable("beginner-mistakes.txt");

    public static TheoryData<string> Names => [.. Files.Select(f => f.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_bad_file_gives_exactly_its_problems(string name)
    {
        BadFile file = Files.Single(f => f.Name == name);
        ReadResult result = ProjectReader.ReadText(Text(file), BaseWall.FileName);

        Assert.Equal(file.Problems, result.Problems.Select(ProblemPrinter.Plain));
        Assert.Equal(result.Problems.Any(p => p.Severity == Severity.Error), result.Project is null);
    }

    [Fact]
    public void The_base_is_good() => Assert.NotNull(BaseWall.Read(BaseWall.Text));

    [Fact]
    public void The_table_has_at_least_sixty_files_and_every_code_of_a_loaded_file()
    {
        Assert.True(Files.Count >= 60);
        string[] whole = ["R01", "R02", "R03", "R04", "R06", "R07", "R08", "R43"];
        string[] met = [.. Files.Concat(Mistakes).SelectMany(f => f.Problems).Select(p => p.Split(": ")[1].Split(' ')[1])];
        Assert.Equal([], ProblemCodes.All.Select(c => c.Code).Where(c => c[0] != 'I').Except(met).Except(whole));
    }

    [Fact]
    public void Codes_are_unique() =>
        Assert.Equal(ProblemCodes.All.Count, ProblemCodes.All.Select(c => c.Code).Distinct().Count());

    /// <summary>Every mistake of a beginner is told with its cause, its place and its cure: a person judged the words, this keeps them.</summary>
    [Fact]
    public void Beginners_mistakes_are_named_with_cause_place_and_cure()
    {
        Assert.True(Mistakes.Count >= 60);
        Assert.Equal([], Mistakes.Where(m => !Judged(m)).Select(m => $"{m.Name}: {m.Judgement}: {string.Join(" // ", BaseWall.Problems(Text(m)))}"));
    }

    /// <summary>With SHEETGEN_WRITE_DOCS=1 the problems in a table are written anew; read the difference.</summary>
    [Theory]
    [InlineData("bad-files.txt")]
    [InlineData("beginner-mistakes.txt")]
    public void The_table_is_fresh(string table)
    {
        string[] path = ["tests", "SheetGen.Tests", "Cases", table];
        var text = new StringBuilder();
        List<BadFile> files = ReadTable(table);
        int file = -1;
        foreach (string line in Repository.Read(path).ReplaceLineEndings("\n").TrimEnd('\n').Split('\n'))
        {
            if (line.Length == 0 && file >= 0)
                AppendProblems();
            if (line.StartsWith("== ", StringComparison.Ordinal))
                file++;
            if (!line.StartsWith("! ", StringComparison.Ordinal))
                text.Append(line).Append('\n');
        }
        AppendProblems();
        if (Environment.GetEnvironmentVariable("SHEETGEN_WRITE_DOCS") == "1")
            File.WriteAllText(Repository.PathOf(path), text.ToString());
        Assert.Equal(text.ToString(), Repository.Read(path), ignoreLineEndingDifferences: true);

        void AppendProblems() => text.AppendJoin("", BaseWall.Problems(Text(files[file])).Select(p => $"! {p[(BaseWall.FileName.Length + 1)..]}\n"));
    }

    private static bool Judged(BadFile mistake)
    {
        string[] asked = mistake.Judgement.Split(" | ");
        return ProjectReader.ReadText(Text(mistake), BaseWall.FileName).Problems.Any(p =>
            p.Spot.Line == int.Parse(asked[0], CultureInfo.InvariantCulture)
            && (p.Message + p.Hint).Contains(asked[1], StringComparison.Ordinal) && p.Hint.Contains(asked[2], StringComparison.Ordinal));
    }

    private static string Text(BadFile file) => file.Edits.Aggregate(BaseWall.Text, (t, edit) => BaseWall.Replace(t, edit.From, edit.To));

    private static List<BadFile> ReadTable(string table)
    {
        var files = new List<BadFile>();
        string? from = null;
        foreach (string line in Repository.Read("tests", "SheetGen.Tests", "Cases", table).ReplaceLineEndings("\n").Split('\n'))
        {
            if (line.StartsWith("== ", StringComparison.Ordinal))
                files.Add(new BadFile(line[3..]));
            else if (line.StartsWith("- ", StringComparison.Ordinal))
                from = Unescape(line[2..]);
            else if (line.StartsWith('+'))
                files[^1].Edits.Add((from!, Unescape(line.Length > 2 ? line[2..] : "")));
            else if (line.StartsWith("? ", StringComparison.Ordinal))
                files[^1].Judgement = line[2..];
            else if (line.StartsWith("! ", StringComparison.Ordinal))
                files[^1].Problems.Add($"{BaseWall.FileName}:{line[2..]}");
        }
        return files;
    }

    private static string Unescape(string text) => text.Replace("\\\\", "\0", StringComparison.Ordinal)
        .Replace("\\n", "\n", StringComparison.Ordinal).Replace("\\t", "\t", StringComparison.Ordinal).Replace('\0', '\\');

    private sealed record BadFile(string Name)
    {
        public List<(string From, string To)> Edits { get; } = [];

        public List<string> Problems { get; } = [];

        public string Judgement { get; set; } = "";
    }
}

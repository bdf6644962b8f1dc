using System.Text.RegularExpressions;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>What the documents say of the program holds.</summary>
public sealed partial class DocumentTests
{
    public static TheoryData<string> Documents =>
        [.. Directory.EnumerateFiles(Repository.Root, "*.md", SearchOption.AllDirectories)
            .Select(p => Path.GetRelativePath(Repository.Root, p).Replace('\\', '/'))
            .Where(p => !p.Contains("/bin/", StringComparison.Ordinal) && !p.Contains("/obj/", StringComparison.Ordinal) && !p.Contains("/node_modules/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Documents))]
    public void Every_link_leads_somewhere(string document)
    {
        string path = Path.Combine(Repository.Root, document);
        foreach (Match link in Link().Matches(File.ReadAllText(path)))
        {
            string target = link.Groups[1].Value.Split('#')[0];
            if (target.Length == 0 || target.Contains("://", StringComparison.Ordinal))
                continue;
            string full = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(path)!, target));
            Assert.True(File.Exists(full) || Directory.Exists(full), $"{document} links to {target}");
        }
    }

    [Fact]
    public void The_readme_names_commands_and_demos_that_exist()
    {
        string readme = File.ReadAllText(Path.Combine(Repository.Root, "README.md"));
        MatchCollection builds = Build().Matches(readme);
        Assert.NotEmpty(builds);
        Assert.All(builds, b => Assert.True(File.Exists(Path.Combine(Repository.Root, b.Groups[1].Value)), b.Value));
        Assert.Contains("dotnet test -c Release", readme, StringComparison.Ordinal);
    }

    [Fact]
    public void The_top_of_the_changelog_is_open()
    {
        string[] heads = [.. File.ReadLines(Path.Combine(Repository.Root, "docs", "CHANGELOG.md")).Where(l => l.StartsWith("## ", StringComparison.Ordinal))];
        Assert.Equal("## Next", heads[0]);
    }

    [GeneratedRegex(@"\]\(([^)\s]+)\)")]
    private static partial Regex Link();

    [GeneratedRegex(@"dotnet run --project src/SheetGen\.Cli -c Release -- build (demo/\S+/wall\.yaml) --out out")]
    private static partial Regex Build();
}

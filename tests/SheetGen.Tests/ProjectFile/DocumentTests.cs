using System.Text.RegularExpressions;
using SheetGen.Model.Results;
using SheetGen.ProjectFile.Documents;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>The documents that are made from tables are not stale. With SHEETGEN_WRITE_DOCS=1 they are written anew.</summary>
public sealed class DocumentTests
{
    [Fact]
    public void The_key_document_is_fresh() => CheckFresh(KeyDocument.Text(), "docs", "project-file.md");

    [Fact]
    public void The_problem_document_is_fresh() => CheckFresh(ProblemDocument.Text(), "docs", "problems.md");

    [Fact]
    public void The_editor_schema_is_fresh() => CheckFresh(EditorSchema.Text(), "templates", "sheetgen.schema.json");

    [Fact]
    public void Every_code_of_the_source_is_in_the_problem_document()
    {
        string text = ProblemDocument.Text();
        IEnumerable<string> codes = Directory.EnumerateFiles(Repository.PathOf("src"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(f => Regex.Matches(File.ReadAllText(f), "\"([A-Z][0-9]{2})\"").Select(m => m.Groups[1].Value)).Distinct();
        Assert.Equal([], codes.Where(c => !text.Contains($"## {c}\n", StringComparison.Ordinal)));
    }

    [Fact]
    public void Every_code_of_a_finding_is_explained_once() =>
        Assert.Equal(
            typeof(FindingCode).GetFields().Select(f => (string)f.GetRawConstantValue()!).Order(StringComparer.Ordinal),
            FindingMeanings.All.Select(f => f.Code).Order(StringComparer.Ordinal));

    private static void CheckFresh(string text, params string[] path)
    {
        if (Environment.GetEnvironmentVariable("SHEETGEN_WRITE_DOCS") == "1")
            File.WriteAllText(Repository.PathOf(path), text);
        Assert.Equal(text, Repository.Read(path), ignoreLineEndingDifferences: true);
    }
}

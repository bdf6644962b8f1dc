using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Corridors;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Studies;
using SheetGen.ProjectFile.Tree;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Corridors;

/// <summary>Project files written anew, and the documents of lists and studies.</summary>
public sealed class YamlTextTests
{
    /// <summary>Every project file of the repository, written from its tree and read again, says the same.</summary>
    [Fact]
    public void A_tree_written_and_read_again_is_the_same_tree()
    {
        string[] files = [.. new[] { "demo", "docs", "templates" }.SelectMany(d => Directory.EnumerateFiles(Path.Combine(Repository.Root, d), "*.yaml", SearchOption.AllDirectories))
            .Where(f => File.ReadAllText(f).Contains("layout_lines:", StringComparison.Ordinal))];
        Assert.True(files.Length >= 10, string.Join(' ', files));
        foreach (string file in files)
        {
            ReadResult read = ProjectReader.Read(file);
            if (read.Root is not { } root)
                continue;
            string text = YamlText.Of(root);
            ReadResult again = ProjectReader.ReadText(text, file);
            Assert.Equal(Plain(root), Plain(again.Root!));
            // The tree holds what was taken from other files, so that the written text names these no more.
            Assert.Equal(read.Problems.Where(p => p.Code != "I07").Select(p => (p.Code, p.Message)).Order(), again.Problems.Select(p => (p.Code, p.Message)).Order());
            Assert.Equal(read.Project is null, again.Project is null);
        }
    }

    [Theory]
    [InlineData("\"#8\"")]
    [InlineData("\"a: b\"")]
    [InlineData("'it''s # 5'")]
    [InlineData("5'-6\"")]
    [InlineData("\"\"")]
    [InlineData("N 62°15' E")]
    [InlineData("-0.5")]
    [InlineData("[[1, 2], [a, \"b, c\"]]")]
    [InlineData("{}")]
    [InlineData("~")]
    public void Odd_values_come_back(string value)
    {
        Node node = YamlLoader.Load($"- a: {value}\n  b: [{(value is "5'-6\"" ? "1" : value)}]\n", "f", new ProblemList())!;
        Assert.Equal(Plain(node), Plain(YamlLoader.Load(YamlText.Of(node), "f", new ProblemList())!));
    }

    [Fact]
    public void The_document_names_every_key_of_lists_and_studies()
    {
        string text = File.ReadAllText(Path.Combine(Repository.Root, "docs", "at-scale.md"));
        Assert.Equal([], Names(CorridorKeys.Root).Concat(Names(StudyKeys.Root)).Append(StudyKeys.Vary).Distinct().Where(k => !text.Contains($"`{k}`", StringComparison.Ordinal)));

        static IEnumerable<string> Names(Key key) => key.Children.Concat(key.Item?.Children ?? []).SelectMany(c => Names(c).Prepend(c.Name));
    }

    private static string Plain(Node node) => node switch
    {
        ScalarNode { IsEmpty: true } => "~",
        ScalarNode scalar => "\"" + scalar.Text + "\"",
        ListNode list => "[" + string.Join(", ", list.Items.Select(Plain)) + "]",
        MapNode map => "{" + string.Join(", ", map.Entries.Select(e => Plain(e.Key) + ": " + Plain(e.Value))) + "}",
        _ => "",
    };
}

using System.Text.Json;
using SheetGen.ProjectFile;
using SheetGen.Tests.Outside;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>The schema in the hands of the YAML language server that editors use (yaml-language-server of npm).</summary>
[Trait("Category", "Outside")]
public sealed class EditorTests
{
    private const string Text = """
        # yaml-language-server: $schema=sheetgen.schema.json
        format: 1
        project: {title: T, units: ft, ow}
        walls:
          - name: W
            facing: { sh }
            sections:
              - name: A
                bar: {s}
        obstructions:
          - {name: S1, kind: shaft, di}
          - {name: P1, kind: pipe, b}
          - {name: X, k}
          - name: S2
            kind: shaft

          - name: S3

        rules:

        """;

    [Theory]
    [InlineData("3:34", new[] { "owner", "vertical_datum" }, new[] { "title", "walls" })]
    [InlineData("6:17", new[] { "shotcrete", "kind", "gap" }, new[] { "strip_width" })]
    [InlineData("9:16", new[] { "size", "grade" }, new[] { "hole" })]
    [InlineData("11:29", new[] { "diameter", "at", "axis", "repeat" }, new[] { "bore", "footprint", "points" })]
    [InlineData("12:28", new[] { "bore", "points", "grade", "invert" }, new[] { "axis", "footprint" })]
    [InlineData("13:15", new[] { "kind" }, new[] { "diameter", "bore" })]
    [InlineData("16:5", new[] { "diameter", "top" }, new[] { "bore", "footprint" })]
    [InlineData("18:5", new[] { "kind", "repeat" }, new[] { "bore", "diameter" })]
    [InlineData("20:3", new[] { "clearance", "heads_below_grade", "redirect" }, new[] { "hole" })]
    public void An_editor_offers_the_keys_that_belong_there(string place, string[] offered, string[] not)
    {
        // An empty line of the text stands for one with the blanks of its block.
        string[] lines = Text.ReplaceLineEndings("\n").Split('\n');
        (lines[15], lines[17], lines[19]) = ("    ", "    ", "  ");

        string[] labels = Ask(string.Join('\n', lines), place).GetProperty("completions").GetProperty(place).EnumerateArray().Select(l => l.GetString()!).ToArray();

        Assert.Equal([], offered.Except(labels));
        Assert.Equal([], not.Intersect(labels));
    }

    [Theory]
    [InlineData("wall")]
    [InlineData("bridge")]
    [InlineData("pipe")]
    [InlineData("curve")]
    [InlineData("metric")]
    public void An_editor_finds_nothing_wrong_with_a_starter(string kind) =>
        Assert.Equal("[]", Ask(StarterProject.TextOf(kind)).GetProperty("problems").ToString());

    [Fact]
    public void An_editor_marks_a_key_that_does_not_belong_and_one_that_is_missing()
    {
        string text = StarterProject.TextOf("pipe").Replace("retained_side: right", "retaned_side: right", StringComparison.Ordinal);

        string problems = Ask(text).GetProperty("problems").ToString();

        Assert.Contains("retaned_side", problems, StringComparison.Ordinal);
        Assert.Contains("retained_side", problems, StringComparison.Ordinal);
    }

    private static JsonElement Ask(string text, params string[] places)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder.File("wall.yaml"), text);
        File.WriteAllText(folder.File(StarterProject.SchemaName), StarterProject.Schema);
        OutsideResult result = OutsideReader.NodeScript("complete.js", "yaml-language-server").Run([folder.File("wall.yaml"), .. places]);
        Assert.True(result.ExitCode == 0, result.Errors);
        return JsonDocument.Parse(result.Output).RootElement;
    }
}

using System.Globalization;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing.Labels;

[Trait("Category", "Long")]
public class LabelShareTests
{
    /// <summary>Set <c>SHEETGEN_LABEL_WALLS</c> to 200 for the long run.</summary>
    private static ulong Walls =>
        ulong.TryParse(Environment.GetEnvironmentVariable("SHEETGEN_LABEL_WALLS"), CultureInfo.InvariantCulture, out ulong walls) ? walls : 40;

    /// <summary>At most 1 in 100 labels without a place, 5 in 100 in numbered notes, no callout among them, no overlap.</summary>
    [Fact]
    public void Nearly_all_labels_of_random_walls_find_a_place()
    {
        int labels = 0, unplaced = 0, noted = 0;
        var wrong = new List<string>();
        for (ulong seed = 100; seed < 100 + Walls; seed++)
        {
            WallProject project = SampleLayout.Read(RandomWall.Yaml(seed));
            SheetSet set = SampleSheets.Compose(project, SampleLayout.Make(project, (int)seed));
            labels += set.Model.Concat(set.Sheets.SelectMany(s => s.Paper))
                .Count(p => p is Dimension or Text { Layer: LayerRole.Label or LayerRole.Callout or LayerRole.Dimension });
            unplaced += set.Findings.Count(f => f.Message.Contains("no room for the label", StringComparison.Ordinal));
            noted += set.Sheets.SelectMany(s => s.Paper).OfType<Text>().Count(t => t.Layer == LayerRole.Note && t.Value.StartsWith('('));
            wrong.AddRange(set.Findings.Where(f => f.Severity == Severity.Error).Select(f => $"{seed}: {f.Message}"));
            wrong.AddRange(set.Sheets.SelectMany(s => CrossedTexts.On(set, s)).Select(w => $"{seed}: {w}"));
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{Walls} walls: {labels} labels, {unplaced} unplaced, {noted} in notes"));
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
        Assert.True(unplaced <= 0.01 * labels, $"{unplaced} of {labels} labels without a place");
        Assert.True(noted <= 0.05 * labels, $"{noted} of {labels} labels in notes");
    }
}

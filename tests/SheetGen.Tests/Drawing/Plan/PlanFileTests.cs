using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using Xunit;

namespace SheetGen.Tests.Drawing.Plan;

/// <summary>The plan as a drawing of its own, at true coordinates.</summary>
public class PlanFileTests
{
    private static readonly string[] Samples = [SampleWalls.TwoWalls, SampleWalls.Metric.Replace("layout_line: A\n", "layout_line: A\n    face_offset: 0.4\n", StringComparison.Ordinal)];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void It_carries_dimensions_that_measure_true(int sample)
    {
        WallProject project = SampleLayout.Read(Samples[sample]);
        SheetSet set = SampleSheets.Compose(project, SampleLayout.Make(project));

        Dimension[] dimensions = [.. set.Plan.OfType<Dimension>()];

        Assert.True(dimensions.Length >= 2, $"{dimensions.Length} dimensions");
        foreach (Dimension d in dimensions)
        {
            DimensionStyle style = Assert.Single(set.DimensionStyles, s => s.Name == d.Style);
            string words = DimensionPicture.Measured(d, style);
            double said = double.Parse(Regex.Match(words, @"\d+\.\d+").Value, CultureInfo.InvariantCulture);
            Assert.Equal((d.To - d.From).Length, said, style.Decimals == 3 ? 0.0006 : 0.006);
            // The words have the height that they have on the sheets of the plan.
            Assert.InRange(style.Scale * style.TextHeight, 0.1, project.Unit == SheetGen.Model.Units.LengthUnit.Metre ? 1.5 : 5);
        }
    }

    [Fact]
    public void The_face_offset_and_the_right_of_way_are_dimensioned_with_the_numbers_of_the_project_file()
    {
        WallProject project = SampleLayout.Read(Samples[1]);
        SheetSet metric = SampleSheets.Compose(project, SampleLayout.Make(project)), feet = SampleSheets.Compose(Samples[0]);

        Assert.Contains(metric.Plan.OfType<Dimension>(), d => Math.Abs((d.To - d.From).Length - 0.4) < 1e-6);
        Assert.Contains(feet.Plan.OfType<Dimension>(), d => d.Words is string w && w.Contains("MIN", StringComparison.Ordinal) && Math.Abs((d.To - d.From).Length - 40) < 0.005);
    }

    /// <summary>A number in the plan has its words: the file has no sheet for notes.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Every_numbered_note_is_written_in_the_file(int sample)
    {
        string[] texts = [.. SampleSheets.Compose(Samples[sample]).Plan.OfType<Text>().Select(t => t.Value)];

        Assert.All(texts.Where(t => Regex.IsMatch(t, @"^\(\d+\)$")), n => Assert.Contains(texts, t => t.StartsWith(n + " ", StringComparison.Ordinal)));
    }
}

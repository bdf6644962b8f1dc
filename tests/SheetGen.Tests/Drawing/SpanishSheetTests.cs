using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Tests.Drawing.Elevation;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing;

/// <summary>A Spanish set has no English text but the project's own words.</summary>
public class SpanishSheetTests
{
    /// <summary>Words of the English texts that no Spanish text holds.</summary>
    private static readonly Regex English = new(
        @"\b(the|of|and|is|are|to|from|with|by|for|within|where|nail|nails|wall|row|rows|hole|length|face|station|clear|between|least|test|load|bond|shared?|required|allowed|turned|because|section|none|left|right|up|down|spacing|height|area|soil|slip|grid|inner|head|shotcrete|sheet|table|detail|corner|joint|facing)\b",
        RegexOptions.IgnoreCase);

    [Theory]
    [InlineData("heron-street-bridge")]
    [InlineData("quarry-lane")]
    public void A_demo(string demo) => Check(Repository.Read("demo", demo, "wall.yaml"));

    [Fact]
    public void A_corner_with_openings_and_pins() => Check(MarkWalls.Corner);

    [Fact]
    public void Walls_on_a_small_sheet() => Check(SampleWalls.TwoWalls);

    private static void Check(string yaml)
    {
        // What the project names itself stands on the sheets as it is.
        WallProject project = SampleLayout.Read(Regex.Replace(yaml, @"\b[Ww]all (?=[0-9])|\bROW\b|(?<=reason: )[^,}\n]+|\bby the [a-z]+\b", "Muro "));
        project = project with { Sheets = project.Sheets with { Language = "spanish" }, Info = project.Info with { Title = "Corte", Facts = new Dictionary<string, string>() } };
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        ClearanceReport report = Checker.Check(project, layout);
        SheetSet set = SheetComposer.Compose(project, layout, report, SampleLayout.Measure(project, layout), [], new RunInfo("0.1.0"), TemplateReader.Default(null, null, "spanish"));
        string[] english =
        [
            .. set.Sheets.SelectMany(s => SheetPicture.Of(set, s).Select(p => p.Primitive).OfType<Text>().Select(t => (s.Name, t.Value)))
                .Distinct().Where(t => English.IsMatch(t.Value) && !IsCode(t.Value)).Select(t => $"{t.Name}: {t.Value}"),
        ];

        Assert.True(set.Sheets.Count > 4);
        Assert.DoesNotContain(set.Findings, f => f.Severity == Severity.Error);
        Assert.True(english.Length == 0, string.Join("\n", english.Take(40)));
    }

    /// <summary>True for the code of a finding, the same in every language.</summary>
    private static bool IsCode(string text) => Regex.IsMatch(text, "^[a-z]+(-[a-z]+)+$");
}

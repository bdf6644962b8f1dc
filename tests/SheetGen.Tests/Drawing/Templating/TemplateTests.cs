using System.Text.RegularExpressions;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.ProjectFile.Keys;
using Xunit;

namespace SheetGen.Tests.Drawing.Templating;

public class TemplateTests
{
    /// <summary>Form of the US National CAD Standard: discipline, major group, up to two minor groups, status.</summary>
    [Fact]
    public void Standard_layer_names_have_the_form_of_the_national_cad_standard()
    {
        var form = new Regex("^[A-Z][A-Z0-9]?(-[A-Z0-9]{4})(-[A-Z0-9]{4}){0,2}(-[ADEFMNTX1-9])?$");
        DrawingTemplates templates = TemplateReader.Default();

        Assert.All(templates.Layers.Values, l => Assert.Matches(form, l.Name));
        Assert.Equal(templates.Layers.Count, templates.Layers.Values.Select(l => l.Name).Distinct().Count());
        Assert.All(templates.Layers.Values, l => Assert.True(l.Linetype == "Continuous" || templates.Linetypes.Any(t => t.Name == l.Linetype)));
    }

    [Fact]
    public void An_agency_brings_its_own_layers_without_code()
    {
        DrawingTemplates agency = TemplateReader.Default("agency-sample");

        Assert.Contains("agency-sample", TemplateReader.LayerLists);
        Assert.All(agency.Layers.Values, l => Assert.StartsWith("SNW_", l.Name, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("{", "cannot be read")]
    [InlineData("{\"linetypes\": [], \"layers\": {}}", "lacks the layer role")]
    public void A_bad_layer_list_says_why(string json, string why)
    {
        FormatException fault = Assert.Throws<FormatException>(() => TemplateReader.WithLayers(TemplateReader.Default(), json));

        Assert.Contains(why, fault.Message, StringComparison.Ordinal);
    }

    /// <summary>Each field is a fact that the project file has a key for, or is made from the rules.</summary>
    [Fact]
    public void Every_field_of_the_notes_can_be_filled()
    {
        var keys = KeyTable.ProjectFacts.Concat(KeyTable.DesignFacts).Select(k => k.Name).ToHashSet();
        WallProject project = SampleLayout.Read(SampleWalls.Metric);
        project = project with { Info = project.Info with { Facts = keys.ToDictionary(k => k, k => "GIVEN") } };
        NailLayout layout = SampleLayout.Make(project);
        var context = new DrawingContext(
            project, layout, SampleLayout.Report(layout), SampleLayout.Measure(project, layout), [], new RunInfo("0"), TemplateReader.Default());

        Assert.All(context.Templates.Notes.SelectMany(b => b.Notes), n => Assert.DoesNotContain("____", NoteFields.Fill(n, context), StringComparison.Ordinal));
    }

    [Fact]
    public void All_texts_plot_at_two_millimetres_or_more() =>
        Assert.All(TemplateReader.Default().Texts.Values, t => Assert.True(t.Height >= 2));

    /// <summary>Widths of Helvetica as published with the core fonts: digits 556, M 833, space 278 thousandths of the font size.</summary>
    [Theory]
    [InlineData("0123456789", 5560)]
    [InlineData("M M", 833 + 278 + 833)]
    [InlineData("ROW 3  EL 112.50", 722 + 778 + 944 + 278 + 556 + 556 + 667 + 556 + 278 + 5 * 556 + 278)]
    public void Widths_are_the_published_ones(string text, int thousandths)
    {
        TextStyle style = TemplateReader.Default().Texts[TextRole.Note] with { WidthFactor = 1, Bold = false };

        Assert.Equal(thousandths / 1000.0 * 2 / 0.718, TextMeasure.Advance(text, 2, style), 6);
    }

    [Fact]
    public void Wrapped_lines_fit_and_keep_all_words()
    {
        TextStyle style = TemplateReader.Default().Texts[TextRole.Note];
        const string Words = "STATIONS AND OFFSETS ARE ON THE LAYOUT LINE AND NOWHERE ELSE";

        IReadOnlyList<string> lines = TextMeasure.Wrap(Words, 50, style.Height, style);

        Assert.Equal(Words, string.Join(" ", lines));
        Assert.All(lines, l => Assert.True(TextMeasure.Measure(l, style.Height, style) <= 50));
    }

    /// <summary>In black and white only the pattern tells what a line is.</summary>
    [Theory]
    [InlineData("standard")]
    [InlineData("agency-sample")]
    public void Lines_that_meet_on_an_elevation_or_plan_differ_without_colour(string list)
    {
        DrawingTemplates templates = TemplateReader.Default(list);
        LayerRole[] roles =
        [
            LayerRole.ExistingGround, LayerRole.FinishedGrade, LayerRole.SectionLimit, LayerRole.LayoutLine, LayerRole.Drainage,
            LayerRole.Boundary, LayerRole.MatchLine, LayerRole.Utility, LayerRole.Obstruction,
        ];
        string[] patterns = [.. roles.Select(r => string.Join(" ", templates.Linetypes.Single(l => l.Name == templates.Layers[r].Linetype).Pattern))];

        Assert.Equal(patterns.Length, patterns.Distinct().Count());
    }
}

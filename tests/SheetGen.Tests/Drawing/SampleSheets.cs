using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Tests.Drawing;

/// <summary>Sheet sets of the sample walls.</summary>
public static class SampleSheets
{
    public static SheetSet Compose(string yaml, int seed = 7, string? layers = null)
    {
        WallProject project = SampleLayout.Read(yaml);
        return Compose(project, SampleLayout.Make(project, seed), layers);
    }

    public static SheetSet Compose(WallProject project, NailLayout layout, string? layers = null, TitleBlock? titleBlock = null) => SheetComposer.Compose(
        project, layout, SampleLayout.Report(layout), SampleLayout.Measure(project, layout),
        [new TableData("Bid quantities", [new("Item", false), new("Unit", false), new("Quantity", true)], [["Soil nails", "LF", "1234"]])],
        new RunInfo("0.1.0"), TemplateReader.Default(layers) with { TitleBlock = titleBlock });
}

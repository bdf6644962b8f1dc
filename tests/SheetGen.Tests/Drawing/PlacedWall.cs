using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Tests.Drawing;

/// <summary>A project as the program itself places, checks and measures it, ready to draw.</summary>
internal static class PlacedWall
{
    public static DrawingContext Context(string yaml, string? language = null)
    {
        WallProject project = SampleLayout.Read(yaml);
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        return new(project, layout, Checker.Check(project, layout), SampleLayout.Measure(project, layout), [], new RunInfo("0.1.0"), TemplateReader.Default(null, null, language));
    }

    /// <summary>The sheets of the same.</summary>
    public static SheetSet Sheets(DrawingContext of) => SheetComposer.Compose(of.Project, of.Layout, of.Report, of.Quantities, of.Tables, of.Run, of.Templates);
}

using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Review;

/// <summary>What every page of a report says of its project.</summary>
/// <param name="Templates">Looks of lines and letters, and the language.</param>
public sealed record ReviewInfo(string Title, string Number, string Date, string InputHash, LengthUnit Unit, string Version, DrawingTemplates Templates)
{
    /// <param name="language">The words of the project's sheets; null for English.</param>
    public static ReviewInfo Of(WallProject project, string version, Language? language = null)
    {
        DrawingTemplates templates = TemplateReader.Default();
        return new(project.Info.Title, project.Info.Number, project.Sheets.Date, project.InputHash, project.Unit, version,
            templates with { Language = (language ?? templates.Language).WithZone(project.Sheets.SectionWord) });
    }
}

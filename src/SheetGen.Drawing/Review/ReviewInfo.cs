using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Review;

/// <summary>What every page of a report says of its project.</summary>
/// <param name="Templates">Looks of lines and letters.</param>
public sealed record ReviewInfo(string Title, string Number, string Date, string InputHash, LengthUnit Unit, string Version, DrawingTemplates Templates)
{
    public static ReviewInfo Of(WallProject project, string version, DrawingTemplates templates) =>
        new(project.Info.Title, project.Info.Number, project.Sheets.Date, project.InputHash, project.Unit, version, templates);
}

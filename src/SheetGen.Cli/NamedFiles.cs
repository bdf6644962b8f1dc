using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using SheetGen.Writers.Dxf;

namespace SheetGen.Cli;

/// <summary>The pay items and templates that a project file names: the program's own by name, or files beside the project file.</summary>
/// <param name="PayItems">Null where there is a problem.</param>
/// <param name="Templates">Null where there is a problem.</param>
public sealed record NamedFiles(PayItemSet? PayItems, DrawingTemplates? Templates, IReadOnlyList<Problem> Problems)
{
    public static NamedFiles Read(WallProject project, string projectPath)
    {
        var problems = new List<Problem>();
        string folder = Path.GetDirectoryName(Path.GetFullPath(projectPath)) ?? ".";
        PayItemSet? items = ReadPayItems(project, projectPath, folder, problems);
        DrawingTemplates? templates = ReadTemplates(project, projectPath, folder, problems);
        if (project.Sheets.TitleBlock is { } block)
        {
            TitleBlock? drawn = Content(block, "title_block", "name a DXF file beside the project file", projectPath, folder, problems, File.ReadAllBytes) is { } bytes
                ? TitleBlockFile.Read(bytes, Path.Combine(folder, block), problems)
                : null;
            templates = drawn is null || templates is null ? null : templates with { TitleBlock = drawn };
        }
        return new NamedFiles(items, templates, problems);
    }

    private static PayItemSet? ReadPayItems(WallProject project, string projectPath, string folder, List<Problem> problems)
    {
        string name = project.PayItems;
        if (PayItemFile.BuiltIn(name) is { } own)
            return PayItemFile.Read(own, name, project.Unit, problems);
        string known = string.Join(", ", PayItemFile.BuiltInNames);
        return TextOf(name, "pay_items", known, projectPath, folder, problems) is { } text
            ? PayItemFile.Read(text, Path.Combine(folder, name), project.Unit, problems)
            : null;
    }

    private static DrawingTemplates? ReadTemplates(WallProject project, string projectPath, string folder, List<Problem> problems)
    {
        DrawingTemplates? templates = TemplateReader.Default(project.Sheets.Layers, project.Sheets.Notes, project.Sheets.Language);
        if (project.Sheets.Layers is { } layers && !TemplateReader.LayerLists.Contains(layers))
            templates = Own(templates, layers, "layers", TemplateReader.LayerLists, TemplateReader.WithLayers);
        if (project.Sheets.Notes is { } notes && !TemplateReader.NoteSets.Contains(notes))
            templates = Own(templates, notes, "notes", TemplateReader.NoteSets, TemplateReader.WithNotes);
        if (project.Sheets.Language is { } language && !TemplateReader.Languages.Contains(language))
            templates = Own(templates, language, "language", TemplateReader.Languages, TemplateReader.WithLanguage);
        return templates;

        DrawingTemplates? Own(
            DrawingTemplates? with, string name, string key, IReadOnlyList<string> known, Func<DrawingTemplates, string, DrawingTemplates> read)
        {
            string? text = TextOf(name, key, string.Join(", ", known), projectPath, folder, problems);
            if (text is null || with is null)
                return null;
            try
            {
                return read(with, text);
            }
            catch (FormatException e)
            {
                (string kind, string place) = key switch
                {
                    "layers" => ("not a complete layer list: ", "layers"),
                    "notes" => ("not a note set: ", "notes"),
                    _ => ("not a complete language: ", "text"),
                };
                problems.Add(new Problem(
                    Severity.Error, "T01", kind + e.Message, new SourceSpot(Path.Combine(folder, name), 1, 1), $"see templates/{place} for a complete file"));
                return null;
            }
        }
    }

    private static string? TextOf(string name, string key, string known, string projectPath, string folder, List<Problem> problems) =>
        Content(name, key, $"the program's own are {known}; or name a file beside the project file", projectPath, folder, problems, File.ReadAllText);

    private static T? Content<T>(
        string name, string key, string hint, string projectPath, string folder, List<Problem> problems, Func<string, T> read)
        where T : class
    {
        try
        {
            return read(Path.Combine(folder, name));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            problems.Add(new Problem(
                Severity.Error, ProblemCodes.CannotRead.Code, $"there is no {key} \"{name}\"", PlaceOf(key, projectPath), hint));
            return null;
        }
    }

    /// <summary>Where the key stands in the project file.</summary>
    private static SourceSpot PlaceOf(string key, string projectPath)
    {
        string[] lines = File.ReadAllLines(projectPath);
        int line = Array.FindIndex(lines, l => l.Contains(key + ":", StringComparison.Ordinal));
        return line < 0
            ? new SourceSpot(projectPath, 1, 1)
            : new SourceSpot(projectPath, line + 1, lines[line].IndexOf(key + ":", StringComparison.Ordinal) + 1, key.Length);
    }
}

using System.Text.Json;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Inputs;
using SheetGen.Writers.Dxf;

namespace SheetGen.Cli;

/// <summary>The pay items and templates that a project file names: the program's own by name, or files beside the project file.</summary>
/// <param name="PayItems">Null where there is a problem.</param>
/// <param name="Templates">Null where there is a problem.</param>
public sealed record NamedFiles(PayItemSet? PayItems, DrawingTemplates? Templates, IReadOnlyList<Problem> Problems)
{
    /// <summary>True where the project names a file of the user's, by a path from its own folder.</summary>
    public bool FilesNamed { get; private init; }

    /// <summary>Reads what the project names; every fault of every file is told in one run.</summary>
    public static NamedFiles Read(ReadResult read, string projectPath, bool allowOutside = false)
    {
        var reading = new Reading(read, projectPath, allowOutside);
        PayItemSet? items = reading.PayItems();
        DrawingTemplates? templates = reading.Templates();
        return new NamedFiles(items, templates, reading.Problems) { FilesNamed = reading.FilesNamed };
    }

    private sealed class Reading(ReadResult read, string projectPath, bool allowOutside)
    {
        private readonly WallProject _project = read.Project!;
        private readonly string _folder = Path.GetDirectoryName(projectPath) ?? "";

        public List<Problem> Problems { get; } = [];

        public bool FilesNamed { get; private set; }

        public PayItemSet? PayItems()
        {
            string name = _project.PayItems;
            if (PayItemFile.BuiltIn(name) is { } own)
                return PayItemFile.Read(own, name, _project.Unit, Problems);
            return TextOf(name, "pay items", PayItemFile.BuiltInNames, ["pay_items"]) is { } text
                ? PayItemFile.Read(text, PathOf(name), _project.Unit, Problems)
                : null;
        }

        public DrawingTemplates? Templates()
        {
            DrawingTemplates templates = TemplateReader.Default(_project.Sheets.Layers, _project.Sheets.Notes, _project.Sheets.Language);
            bool good = true;
            if (_project.Sheets.Layers is { } layers && !TemplateReader.LayerLists.Contains(layers))
            {
                good &= Own(ref templates, layers, "layers", "T01", "not a complete layer list: ", TemplateReader.LayerLists,
                    TemplateReader.WithLayers, TemplateCheck.OfLayers);
            }
            if (_project.Sheets.Notes is { } notes && !TemplateReader.NoteSets.Contains(notes))
            {
                good &= Own(ref templates, notes, "notes", "T04", "not a note set: ", TemplateReader.NoteSets,
                    TemplateReader.WithNotes, TemplateCheck.OfNotes);
            }
            if (_project.Sheets.Language is { } language && !TemplateReader.Languages.Contains(language))
            {
                good &= Own(ref templates, language, "language", "T05", "not a complete language: ", TemplateReader.Languages,
                    TemplateReader.WithLanguage, TemplateCheck.OfLanguage);
            }
            if (_project.Sheets.TitleBlock is { } block)
            {
                byte[]? bytes = BytesOf(block, "title block", "name a DXF file beside the project file", ["sheets", "title_block"], InputFile.MostDrawing);
                TitleBlock? drawn = bytes is null ? null : TitleBlockFile.Read(bytes, PathOf(block), Problems);
                good &= drawn is not null;
                templates = templates with { TitleBlock = drawn };
            }
            return good ? templates : null;
        }

        private bool Own(
            ref DrawingTemplates templates, string name, string key, string code, string kind, IReadOnlyList<string> known,
            Func<DrawingTemplates, string, DrawingTemplates> parse, Func<DrawingTemplates, JsonPlaces, IReadOnlyList<TemplateCheck.Fault>> check)
        {
            if (TextOf(name, key, known, ["sheets", key]) is not { } text)
                return false;
            string hint = $"see templates/{(key == "language" ? "text" : key)} for a complete file";
            try
            {
                DrawingTemplates own = parse(templates, text);
                JsonPlaces places = JsonPlaces.In(text);
                IReadOnlyList<TemplateCheck.Fault> faults = check(own, places);
                foreach (TemplateCheck.Fault fault in faults)
                {
                    (int line, int column) = places.Of(fault.Path);
                    Problems.Add(new Problem(Severity.Error, code, fault.Message, new SourceSpot(PathOf(name), line, column), hint));
                }
                templates = own;
                return faults.Count == 0;
            }
            catch (FormatException e)
            {
                var json = e.InnerException as JsonException;
                var spot = new SourceSpot(PathOf(name), (int)(json?.LineNumber ?? 0) + 1, (int)(json?.BytePositionInLine ?? 0) + 1);
                Problems.Add(new Problem(Severity.Error, code, kind + WithoutPlace(e.Message), spot, hint));
                return false;
            }
        }

        private string? TextOf(string name, string what, IReadOnlyList<string> known, string[] key)
        {
            string hint = $"the program's own are {string.Join(", ", known)}; or name a file beside the project file";
            if (IsOutside(name, what, key))
                return null;
            InputFile file = InputFile.Read(PathOf(name), InputFile.MostText);
            string? text = file.Text(out string why);
            if (text is null)
                Missing(name, what, why, hint, key);
            return text;
        }

        private byte[]? BytesOf(string name, string what, string hint, string[] key, long most)
        {
            if (IsOutside(name, what, key))
                return null;
            InputFile file = InputFile.Read(PathOf(name), most);
            if (file.Bytes is null)
                Missing(name, what, file.Why, hint, key);
            return file.Bytes;
        }

        private bool IsOutside(string name, string what, string[] key)
        {
            if (allowOutside || FolderFence.Fault(_folder, name) is not { } fault)
                return false;
            // What is no file at all is called so wherever it lies.
            InputFile there = InputFile.Read(PathOf(name), 0);
            if (there.Bytes is null && !there.IsTooLarge)
                return false;
            Problems.Add(new Problem(Severity.Error, ProblemCodes.OutsideFolder.Code, $"{what} \"{name}\" is not read: {fault}", read.SpotOf(projectPath, key), "copy it beside the project file, or run with --allow-outside"));
            return true;
        }

        private void Missing(string name, string what, string why, string hint, string[] key) => Problems.Add(new Problem(
            Severity.Error, ProblemCodes.CannotRead.Code, $"{what} \"{name}\" cannot be read: {why}", read.SpotOf(projectPath, key), hint));

        private string PathOf(string name)
        {
            FilesNamed = true;
            return Path.Combine(_folder, name);
        }

        /// <summary>The parser says its place within its message; ours stands before it.</summary>
        private static string WithoutPlace(string message)
        {
            int at = message.IndexOf(" Path: $", StringComparison.Ordinal);
            int line = message.IndexOf(" LineNumber:", StringComparison.Ordinal);
            int cut = at >= 0 ? at : line;
            return cut >= 0 ? message[..cut].TrimEnd('.', ' ') : message;
        }
    }
}

using System.CommandLine;
using System.Runtime.InteropServices;
using System.Text;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Forms;
using SheetGen.ProjectFile.Inputs.Inspecting;
using SheetGen.ProjectFile.Records;
using SheetGen.Writers.Form;

namespace SheetGen.Cli.Commands;

/// <summary><c>start</c>: writes a commented project file, beside it the schema that it names, for completion in an editor, and an empty as-built record.</summary>
public static class StartCommand
{
    public static Command Make(Screen screen, Interruption interruption)
    {
        var folder = new Argument<string>("DIR") { Description = "Folder for the new wall.yaml; an existing file is never overwritten." };
        var kind = new Option<string>("--kind")
        {
            Description = "What the file is near to: " + string.Join(", ", StarterProject.Kinds) + ".",
            HelpName = "KIND",
            DefaultValueFactory = _ => StarterProject.Kinds[0],
        };
        var from = new Option<string?>("--from") { Description = "A drawing (.dxf) or an alignment (.xml) to write the project file around; it is copied into DIR.", HelpName = "FILE" };
        kind.AcceptOnlyFromAmong([.. StarterProject.Kinds]);
        var form = new Option<bool>("--form") { Description = "Write the project as a workbook to fill in (wall.xlsx) instead; check and build take it as it is. --from may then also name a project file." };
        var start = new ExampledCommand(
            "start", "Write a commented project file to begin with, the schema for completion in an editor, and an empty as-built record.",
            "sheetgen start my-wall                          a commented project file to begin with",
            "sheetgen start my-bridge --kind bridge          one near the job: bridge, pipe, curve or metric",
            "sheetgen start my-wall --from road.xml          around an alignment (LandXML) or a base drawing (DXF)",
            "sheetgen start my-wall --form                   a workbook to fill in, in place of the project file")
        { folder, kind, from, form };
        start.SetAction(p => Run(p.GetRequiredValue(folder), p.GetRequiredValue(kind), p.GetValue(from), p.GetValue(form), screen, interruption));
        return start;
    }

    private static int Run(string folder, string kind, string? from, bool form, Screen screen, Interruption interruption)
    {
        bool isProject = form && from is not null && Path.GetExtension(from) is ".yaml" or ".yml";
        string? text = from is null ? StarterProject.TextOf(kind) : isProject ? ProjectText(from!, screen) : Around(from, screen);
        if (text is null)
            return ExitCode.WrongInput;
        byte[] content = form ? Form(text, screen) : Encoding.UTF8.GetBytes(text);
        string path = Path.Combine(folder, form ? FormSheets.FileName : StarterProject.FileName);
        // What stands beside it is never a reason not to begin: a file that is there stays.
        (string Name, string Text)[] beside = form ? [] : [(StarterProject.SchemaName, StarterProject.Schema), (AsBuiltRecord.FileName, AsBuiltRecord.Heads)];
        try
        {
            List<OutputFile> files = [new(Path.GetFileName(path), content)];
            if (from is not null && !isProject && Path.Combine(folder, Path.GetFileName(from)) is var copy && Path.GetFullPath(from) != Path.GetFullPath(copy))
            {
                byte[] bytes = File.ReadAllBytes(from);
                // What a run left that was ended between its files is no reason not to begin either.
                if (InputFile.Read(copy, InputFile.MostDrawing).Bytes is not { } there || !there.AsSpan().SequenceEqual(bytes))
                    files.Add(new(Path.GetFileName(from), bytes));
            }
            files.AddRange(beside.Where(f => !File.Exists(Path.Combine(folder, f.Name))).Select(f => new OutputFile(f.Name, Encoding.UTF8.GetBytes(f.Text))));
            bool written = interruption.WhileWriting(() =>
            {
                if (!interruption.Requested)
                    WholeFile.AddNew(folder, files);
                return !interruption.Requested;
            });
            if (!written)
                return ExitCode.Of(PosixSignal.SIGTERM); // The signal's own handler ends the process with its code first.
        }
        catch (Exception e) when (e is OutputException or IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            screen.Tell(e is OutputException ? e.Message : $"cannot write {path}: {e.Message}");
            return ExitCode.WrongInput;
        }
        screen.Out.WriteLine($"wrote {path}");
        screen.Out.WriteLine($"next: sheetgen check {path}");
        screen.Out.WriteLine($"then: sheetgen build {path} --out {Path.Combine(folder, "sheets")}");
        return ExitCode.Clean;
    }

    private static byte[] Form(string text, Screen screen)
    {
        using var stream = new MemoryStream();
        FormWorkbook.Write(FormSheets.Filled(text, out IReadOnlyList<string> unread), stream);
        if (unread.Count > 0)
            screen.Tell($"not taken into the form, since it has no cell for it: the values at {string.Join(", ", unread.Take(12))}{(unread.Count > 12 ? FormattableString.Invariant($" and {unread.Count - 12} more") : "")}");
        return stream.ToArray();
    }

    /// <summary>The text of a project file that has no fault; null where it has, and the user is told.</summary>
    private static string? ProjectText(string path, Screen screen)
    {
        ReadResult read = ProjectReader.Read(path);
        ProblemScreen.Print(read.Problems, json: false, screen);
        return read.Project is null ? null : read.Text;
    }

    /// <summary>A project file around a file; null where nothing of it can be taken, and the user is told.</summary>
    private static string? Around(string from, Screen screen)
    {
        Inspection inspection = Inspection.Of(from);
        ProblemScreen.Print(inspection.Problems, json: false, screen);
        string? text = inspection.IsReadable ? StartFrom.Text(inspection, Path.GetFileName(from)) : null;
        if (inspection.IsReadable && text is null)
            screen.Tell($"nothing of {from} can be taken; sheetgen inspect {from} says what it holds");
        return text;
    }
}

using System.CommandLine;
using System.Text;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Inputs.Inspecting;
using SheetGen.ProjectFile.Records;

namespace SheetGen.Cli.Commands;

/// <summary><c>start</c>: writes a commented project file, beside it the schema that it names, for completion in an editor, and an empty as-built record.</summary>
public static class StartCommand
{
    public static Command Make(Screen screen)
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
        var start = new ExampledCommand(
            "start", "Write a commented project file to begin with, the schema for completion in an editor, and an empty as-built record.",
            "sheetgen start my-wall                          a commented project file to begin with",
            "sheetgen start my-bridge --kind bridge          one near the job: bridge, pipe, curve or metric",
            "sheetgen start my-wall --from road.xml          around an alignment (LandXML) or a base drawing (DXF)")
        { folder, kind, from };
        start.SetAction(p => Run(p.GetRequiredValue(folder), p.GetRequiredValue(kind), p.GetValue(from), screen));
        return start;
    }

    private static int Run(string folder, string kind, string? from, Screen screen)
    {
        string? text = from is null ? StarterProject.TextOf(kind) : Around(from, screen);
        if (text is null)
            return ExitCode.WrongInput;
        string path = Path.Combine(folder, StarterProject.FileName), schema = Path.Combine(folder, StarterProject.SchemaName), record = Path.Combine(folder, AsBuiltRecord.FileName);
        try
        {
            Directory.CreateDirectory(folder);
            WriteNew(path, text);
            if (from is not null && Path.GetFullPath(from) != Path.GetFullPath(Path.Combine(folder, Path.GetFileName(from))))
                File.Copy(from, Path.Combine(folder, Path.GetFileName(from)));
            if (!File.Exists(schema))
                WriteNew(schema, StarterProject.Schema);
            if (!File.Exists(record))
                WriteNew(record, AsBuiltRecord.Heads);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            string reason = File.Exists(path) ? "it is there already, and start never overwrites" : e.Message;
            screen.Tell($"cannot write {path}: {reason}");
            return ExitCode.WrongInput;
        }
        screen.Out.WriteLine($"wrote {path}");
        screen.Out.WriteLine($"next: sheetgen check {path}");
        screen.Out.WriteLine($"then: sheetgen build {path} --out {Path.Combine(folder, "sheets")}");
        return ExitCode.Clean;
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

    private static void WriteNew(string path, string text)
    {
        using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
        stream.Write(Encoding.UTF8.GetBytes(text));
    }
}

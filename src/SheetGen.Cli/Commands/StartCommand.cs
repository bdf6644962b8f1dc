using System.CommandLine;
using System.Text;
using SheetGen.ProjectFile;

namespace SheetGen.Cli.Commands;

/// <summary><c>start</c>: writes a commented project file, and beside it the schema that it names, for completion in an editor.</summary>
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
        kind.AcceptOnlyFromAmong([.. StarterProject.Kinds]);
        var start = new ExampledCommand(
            "start", "Write a commented project file to begin with, and the schema for completion in an editor.",
            "sheetgen start my-wall                          a commented project file to begin with",
            "sheetgen start my-bridge --kind bridge          one near the job: bridge, pipe, curve or metric")
        { folder, kind };
        start.SetAction(p => Run(p.GetRequiredValue(folder), p.GetRequiredValue(kind), screen));
        return start;
    }

    private static int Run(string folder, string kind, Screen screen)
    {
        string path = Path.Combine(folder, StarterProject.FileName), schema = Path.Combine(folder, StarterProject.SchemaName);
        try
        {
            Directory.CreateDirectory(folder);
            WriteNew(path, StarterProject.TextOf(kind));
            if (!File.Exists(schema))
                WriteNew(schema, StarterProject.Schema);
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

    private static void WriteNew(string path, string text)
    {
        using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
        stream.Write(Encoding.UTF8.GetBytes(text));
    }
}

using System.CommandLine;
using SheetGen.ProjectFile.Inputs.Inspecting;

namespace SheetGen.Cli.Commands;

/// <summary><c>inspect</c>: says what a file of another program holds.</summary>
public static class InspectCommand
{
    public static Command Make(Screen screen)
    {
        var file = new Argument<string>("FILE") { Description = "A drawing (.dxf), an alignment (.xml, LandXML) or a table (.csv)." };
        var form = new Option<string?>("--as") { Description = "yaml: print blocks ready to paste into a project file.", HelpName = "FORM" };
        form.AcceptOnlyFromAmong("yaml");
        var inspect = new ExampledCommand(
            "inspect", "Say what a drawing, an alignment or a table holds, and what of it a project file can take.",
            "sheetgen inspect base.dxf                       layers, shapes, blocks, units and what can be used",
            "sheetgen inspect road.xml --as yaml             blocks ready to paste")
        { file, form };
        inspect.SetAction(p => Run(p.GetRequiredValue(file), p.GetValue(form) == "yaml", screen));
        return inspect;
    }

    private static int Run(string path, bool yaml, Screen screen)
    {
        Inspection inspection = Inspection.Of(path);
        ProblemScreen.Print(inspection.Problems, json: false, screen);
        if (!inspection.IsReadable)
            return ExitCode.WrongInput;
        if (yaml)
            screen.Out.Write(inspection.YamlText);
        else
        {
            foreach (string line in inspection.Lines)
                screen.Out.WriteLine(line);
        }
        return ExitCode.Clean;
    }
}

using System.CommandLine;

namespace SheetGen.Cli.Commands;

/// <summary>The project file and the options that the commands that lay out a wall share.</summary>
public sealed class LayoutOptions
{
    private readonly Option<bool> _prove = new("--prove")
    {
        Description = "Tighten the proof of how good the layout is; may take a minute.",
    };

    private readonly Option<bool> _json = new("--json")
    {
        Description = "Problems of the project file as JSON on the error stream; check prints its findings as JSON.",
    };

    private readonly Option<string?> _picture = new("--picture")
    {
        Description = "Also write a picture of plan and elevation, .svg or .png.",
        HelpName = "FILE",
    };

    private readonly Option<bool> _open = new("--open")
    {
        Description = "Open the picture, or else the PDF sheets, when done.",
    };

    private readonly Option<bool> _allowOutside = new("--allow-outside")
    {
        Description = "Let the project file name files outside of its own folder.",
    };

    public void AddTo(Command command)
    {
        foreach (Option option in new Option[] { _prove, _json, _picture, _open, _allowOutside })
            command.Options.Add(option);
    }

    public RunOptions Of(ParseResult parsed) => new(parsed.GetValue(_prove), parsed.GetValue(_json), parsed.GetValue(_picture), parsed.GetValue(_open)) { AllowOutside = parsed.GetValue(_allowOutside) };

    /// <summary>The argument that names the project file.</summary>
    public static Argument<string> ProjectFile() => new("FILE") { Description = "Project file (YAML, or a filled form: XLSX), or a folder with a wall.yaml or wall.xlsx." };
}

using SheetGen.Drawing.Sheets;

namespace SheetGen.Cli;

/// <summary>A wall after the whole pass: laid out, checked, measured, drawn, and made into files in memory.</summary>
/// <param name="Input">The project with the files that it names.</param>
/// <param name="Laid">The layout with all findings, those of the sheets among them.</param>
/// <param name="Sheets">The sheets as data.</param>
/// <param name="Files">The files of <see cref="OutputSet.Names"/>.</param>
public sealed record FinishedWall(Input Input, CheckedLayout Laid, SheetSet Sheets, IReadOnlyList<OutputFile> Files)
{
    /// <summary>Everything short of writing; null where the input is wrong, which is printed.</summary>
    public static FinishedWall? Make(string argument, RunOptions options, Screen screen)
    {
        if (options.Picture is { } picture && PictureFile.Fault(picture) is { } fault)
            throw new OutputException(fault);
        if (ProjectPath.Of(argument, screen) is not { } file || OnePass.Read(file, options.Json, screen, options.AllowOutside) is not { } input)
            return null;
        var display = new StageDisplay(screen, options.Json);
        return display.While(() =>
        {
            if (OnePass.Measure(input, OnePass.LayOut(input.Project, options.Prove, display), options.Json, display, screen) is not { } measured)
                return null;
            (CheckedLayout laid, SheetSet sheets, IReadOnlyList<OutputFile> files) = OutputSet.Make(input, measured, display);
            return new FinishedWall(input, laid, sheets, files);
        });
    }
}

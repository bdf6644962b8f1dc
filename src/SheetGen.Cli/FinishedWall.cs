using SheetGen.Drawing.Sheets;
using SheetGen.Model.Results;

namespace SheetGen.Cli;

/// <summary>A wall after the whole pass: laid out, checked, measured, drawn, and made into files in memory.</summary>
/// <param name="Input">The project with the files that it names.</param>
/// <param name="Laid">The layout with all findings, those of the sheets among them.</param>
/// <param name="Sheets">The sheets as data.</param>
/// <param name="Files">The files of <see cref="OutputSet.Names"/> that are wanted, and of the open formats asked for.</param>
public sealed record FinishedWall(Input Input, CheckedLayout Laid, SheetSet Sheets, IReadOnlyList<OutputFile> Files)
{
    public required QuantityTable Quantities { get; init; }

    public required BidTable Bid { get; init; }

    /// <summary>Everything short of writing; null where the input is wrong, which is printed.</summary>
    public static FinishedWall? Make(string argument, RunOptions options, Screen screen)
    {
        if (options.Picture is { } picture && PictureFile.Fault(picture) is { } fault)
            throw new OutputException(fault);
        return ProjectPath.Of(argument, screen) is { } file && OnePass.Read(file, options.Json, screen, options.AllowOutside) is { } input ? Make(input, options, screen) : null;
    }

    /// <summary>Everything between reading and writing; null where the pay items have no value, which is printed.</summary>
    public static FinishedWall? Make(Input input, RunOptions options, Screen screen)
    {
        var display = new StageDisplay(screen, options.Json);
        return display.While(() =>
        {
            if (OnePass.Measure(input, OnePass.LayOut(input.Project, options.Prove, display), options.Json, display, screen) is not { } measured)
                return null;
            (CheckedLayout laid, SheetSet sheets, IReadOnlyList<OutputFile> files) = OutputSet.Make(input, measured, options.Also, display, options.Only);
            return new FinishedWall(input, laid, sheets, files) { Quantities = measured.Quantities, Bid = measured.Bid };
        });
    }
}

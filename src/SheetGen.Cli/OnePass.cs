using System.Text;
using SheetGen.Layout.Advice;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Inputs;

namespace SheetGen.Cli;

/// <summary>A wall that was read: the project with the files that it names.</summary>
/// <param name="SignSpot">Where the project file has a sign first; null where no value of it does.</param>
public sealed record Input(WallProject Project, NamedFiles Named, Func<Rune, SourceSpot?> SignSpot);

/// <summary>A finished layout and what the checker says of it.</summary>
public sealed record CheckedLayout(NailLayout Layout, ClearanceReport Report)
{
    /// <summary>What the layout does to the engineer's design; null before it is measured.</summary>
    public LayoutEffect? Effect { get; init; }
}

/// <summary>A checked layout with its take-off and its pay items; what these lack is among the findings.</summary>
public sealed record MeasuredLayout(CheckedLayout Laid, QuantityTable Quantities, BidTable Bid);

/// <summary>The one pass, read → place → check → measure → draw → write; the last three are <see cref="OutputSet"/>'s.</summary>
public static class OnePass
{
    /// <summary>Reads the project file and what it names, and chooses the columns of sections that ask for the best. Problems are printed; null where any of them is an error.</summary>
    public static Input? Read(string file, bool json, Screen screen, bool allowOutside = false)
    {
        ReadResult read = ProjectReader.Read(file, new ReadOptions(allowOutside));
        NamedFiles? named = read.Project is null ? null : NamedFiles.Read(read, file, allowOutside);
        ProblemScreen.Print([.. read.Problems, .. named?.Problems ?? []], json, screen);
        if (named is not { PayItems: not null, Templates: not null })
            return null;
        var display = new StageDisplay(screen, json);
        display.Stage("choosing columns");
        return new Input(display.While(() => Placer.ChooseColumns(read.Project!, display)), named, read.SpotOfSign);
    }

    /// <summary>Places the nails and checks the finished layout.</summary>
    public static CheckedLayout LayOut(WallProject project, bool prove, StageDisplay display)
    {
        display.Stage("placing nails");
        NailLayout layout = Placer.Place(project, new PlacingOptions(prove), display);
        return Check(project, layout, display);
    }

    /// <summary>Checks a finished layout, however it was made.</summary>
    public static CheckedLayout Check(WallProject project, NailLayout layout, StageDisplay display)
    {
        display.Stage("checking clear distances");
        ClearanceReport report = Checker.Check(project, layout);
        return new CheckedLayout(layout, report with { Findings = [.. report.Findings, .. LayoutAdvice.Of(project, layout)] });
    }

    /// <summary>Measures a checked layout. Pay items that have no value are printed as problems; null where there are any.</summary>
    public static MeasuredLayout? Measure(Input input, CheckedLayout laid, bool json, StageDisplay display, Screen screen)
    {
        display.Stage("measuring quantities");
        QuantityTable quantities = TakeOff.Measure(input.Project, laid.Layout);
        BidTable bid = TakeOff.Bid(quantities, input.Named.PayItems!, input.Project.Rates);
        if (bid.Faults.Count > 0)
        {
            ProblemScreen.Print([.. bid.Faults.Select(f => new Problem(
                Severity.Error, ProblemCodes.PayItem.Code, $"item {f.Item.Number}, quantity \"{f.Item.Quantity.Text}\": {f.Fault.Message}", f.Item.Spot, f.Fault.Hint))],
                json, screen);
            return null;
        }
        ClearanceReport report = laid.Report with { Findings = [.. laid.Report.Findings, .. TakeOff.Findings(input.Project, laid.Layout, quantities, bid)] };
        return new MeasuredLayout(laid with { Report = report, Effect = quantities.Effect }, quantities, bid);
    }
}

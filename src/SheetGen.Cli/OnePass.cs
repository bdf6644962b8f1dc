using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Cli;

/// <summary>A finished layout and what the checker says of it.</summary>
public sealed record PassResult(NailLayout Layout, ClearanceReport Report);

/// <summary>The stages that need no files: place, then check.</summary>
public static class OnePass
{
    public static PassResult LayOut(WallProject project, bool prove, StageDisplay display)
    {
        display.Stage("placing nails");
        NailLayout layout = Placer.Place(project, new PlacingOptions(prove), null);
        display.Stage("checking clear distances");
        return new PassResult(layout, Checker.Check(project, layout));
    }
}

using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;

namespace SheetGen.Cli;

/// <summary>A wall that was read: the project with the files that it names.</summary>
public sealed record Input(WallProject Project, NamedFiles Named);

/// <summary>A finished layout and what the checker says of it.</summary>
public sealed record CheckedLayout(NailLayout Layout, ClearanceReport Report);

/// <summary>The one pass, read → place → check → measure → draw → write; the last three are <see cref="OutputSet"/>'s.</summary>
public static class OnePass
{
    /// <summary>Reads the project file and what it names. Problems are printed; null where any of them is an error.</summary>
    public static Input? Read(string file, bool json, Screen screen)
    {
        ReadResult read = ProjectReader.Read(file);
        NamedFiles? named = read.Project is null ? null : NamedFiles.Read(read, file);
        ProblemScreen.Print([.. read.Problems, .. named?.Problems ?? []], json, screen);
        return named is { PayItems: not null, Templates: not null } ? new Input(read.Project!, named) : null;
    }

    /// <summary>Places the nails and checks the finished layout.</summary>
    public static CheckedLayout LayOut(WallProject project, bool prove, StageDisplay display)
    {
        display.Stage("placing nails");
        NailLayout layout = Placer.Place(project, new PlacingOptions(prove), display);
        display.Stage("checking clear distances");
        return new CheckedLayout(layout, Checker.Check(project, layout));
    }
}

using SheetGen.Layout.Neighbours;
using SheetGen.Model;
using SheetGen.Model.Corridors;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using SheetGen.Writers.Pdf;
using SheetGen.Writers.Register;

namespace SheetGen.Cli.Corridors;

/// <summary>Makes the register of a corridor from the states that its folder holds, and checks the walls of different files against each other.</summary>
internal sealed class Gathering(Corridor corridor, StateFolder folder)
{
    private const string Workbook = "register.xlsx", Csv = "register.csv", Pdf = "register.pdf", Html = "register.html", Json = "register.json";

    /// <summary>The files of the register.</summary>
    public static IReadOnlyList<string> Names { get; } = [Workbook, Csv, Pdf, Html, Json];

    public CorridorRegister Make()
    {
        WallState[] states = [.. corridor.Walls.AsParallel().AsOrdered().Select(StateOf)];
        return new CorridorRegister(corridor, states, Neighbours.Check([.. corridor.Walls.Zip(states).Where(p => p.Second is { Outcome: WallOutcome.Built, Reach.Count: 4 }).Select(p => Neighbour(p.First, p.Second))]), ProgramVersion.Text);
    }

    public IReadOnlyList<OutputFile> Files(CorridorRegister register)
    {
        OutputFile File(string name, Action<Stream> write)
        {
            using var stream = new MemoryStream();
            write(stream);
            return new OutputFile(name, stream.ToArray());
        }
        string title = register.Title, caution = CorridorRegister.Caution;
        return
        [
            File(Workbook, s => RegisterWorkbook.Write(title, caution, register.Tables, register.IsMetric, register.Version, s)),
            File(Csv, s => RegisterCsv.Write(register.WallTable, s)),
            File(Pdf, s => PdfSheetWriter.Write(RegisterPages.Make(title, register.InWords, caution, register.Tables, register.IsMetric, register.Version), s)),
            new OutputFile(Html, RegisterHtml.Bytes(title, register.InWords, caution, register.Tables, register.Version)),
            new OutputFile(Json, CorridorJson.Bytes(register.ToFile())),
        ];
    }

    private WallState StateOf(CorridorWall wall)
    {
        if (folder.Read(wall) is not { } state)
            return WallWork.Failed(wall, WallOutcome.NotBuilt, ExitCode.WrongInput, "no run has come to it; run the same command again, or with --only");
        return state.Outcome != WallOutcome.Built || folder.IsCurrent(wall, state, wholly: false) ? state
            : WallWork.Failed(wall, WallOutcome.OutOfDate, ExitCode.WrongInput, "its set stands for an earlier input, program or option; run the same command again, or with --only");
    }

    private static NeighbourSet Neighbour(CorridorWall wall, WallState state)
    {
        LengthUnit unit = state.Figures!.Units switch { "m" => LengthUnit.Metre, "us-ft" => LengthUnit.SurveyFoot, _ => LengthUnit.Foot };
        return new NeighbourSet(
            wall.Name, CoordinateSystem.Of(wall.Coordinates, state.Figures.Zone).Key, unit,
            [.. state.Holes.Select(h => new NeighbourHole(h.Mark, new Hole(
                new(h.Figures[0], h.Figures[1], h.Figures[2]), new(h.Figures[3], h.Figures[4], h.Figures[5]), h.Figures[6], h.Figures[7], h.Figures[8])))],
            new Bounds(new(state.Reach[0], state.Reach[1], 0), new(state.Reach[2], state.Reach[3], 0)),
            new Lazy<WallProject?>(() => ProjectReader.Read(StateFolder.ProjectOf(wall)).Project));
    }
}

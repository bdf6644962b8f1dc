using SheetGen.Layout.Clearance;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Records;
using SheetGen.Tests.Drawing;
using SheetGen.Tests.Placing;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>Station equations in what the checker's tools say and read: 19 to 20 ft exist twice on this line.</summary>
public sealed class EquationStationTests
{
    private static readonly (WallProject Project, NailLayout Layout) Made = Make();

    private static (WallProject, NailLayout) Make()
    {
        string yaml = new PlacingWall { Length = 28 }.Yaml.Replace("elements: [{line: 28}]", "elements: [{line: 29}]\n    station_equations: [{back: 20, ahead: 19}]", StringComparison.Ordinal);
        WallProject project = SampleLayout.Read(yaml);
        return (project, Layout.Placing.Placer.Place(project, new Layout.Placing.PlacingOptions()));
    }

    /// <summary>A nail behind the equation: its station is printed a foot lower than the line is long there.</summary>
    private static Nail Behind => Made.Layout.Nails.First(n => n.Along > 21.5);

    [Fact]
    public void Changed_nails_stand_where_the_sheets_print_them()
    {
        RevisionState State(NailLayout layout) => new() { Name = "wall", Unit = LengthUnit.Foot, Walls = Made.Project.Walls, Nails = [.. layout.Nails.Select(RevisionNail.Of)] };
        Nail moved = Behind with { Station = Behind.Station - 0.25, Along = Behind.Along - 0.25 };
        NailLayout edited = Made.Layout with { Nails = [.. Made.Layout.Nails.Where(n => n.Mark != "A-1-01").Select(n => n.Mark == moved.Mark ? moved : n)] };
        string[] told = [.. Comparison.Of(State(Made.Layout), State(edited)).Nails.Select(n => n.What)];
        Assert.Contains(told, t => t.Contains($"{Printed(Behind)} to {Printed(moved)}", StringComparison.Ordinal));
        Assert.NotEqual(Stations.Format(Behind.Station, LengthUnit.Foot), Printed(Behind));
    }

    [Fact]
    public void A_page_of_the_room_to_turn_prints_the_station_of_the_sheets()
    {
        TurnWindow window = new TurnWindows(Made.Project, Made.Layout).Of(Behind);
        string first = SheetGen.Drawing.Review.WindowPages.Lines(window, Checker.Check(Made.Project, Made.Layout).Nails[Behind.Mark], LengthUnit.Foot).First();
        Assert.Contains($", {Printed(Behind)}, ", first, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0+19.50 AH", 20.5)]
    [InlineData("0+19.50 BK", 19.5)]
    [InlineData("20.5", 20.5)]
    [InlineData("0+21.25", 22.25)]
    public void A_record_reads_stations_as_the_sheets_print_them(string station, double read)
    {
        var problems = new List<Problem>();
        Assert.Equal(read, AsBuiltRecord.Read($"mark,station\n{Behind.Mark},{station}\n", "record.csv", Made.Project, Made.Layout, problems)!.Single().Station!.Value, 9);
        Assert.Empty(problems);
    }

    [Fact]
    public void A_station_that_exists_twice_needs_its_word()
    {
        var problems = new List<Problem>();
        Assert.Null(AsBuiltRecord.Read($"mark,station\n{Behind.Mark},0+19.50\n", "record.csv", Made.Project, Made.Layout, problems));
        Problem problem = Assert.Single(problems);
        Assert.Contains("exists twice", problem.Message, StringComparison.Ordinal);
        Assert.Equal("write 0+19.50 BK or 0+19.50 AH", problem.Hint);
        Assert.Equal(2, problem.Spot.Line);
    }

    private static string Printed(Nail nail) => nail.Wall.StationText(nail.Along, LengthUnit.Foot);
}

using System.IO.Compression;
using SheetGen.Drawing.Review;
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
using SheetGen.Writers.Csv;
using SheetGen.Writers.Json;
using SheetGen.Writers.Workbook;
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
        RevisionDifference difference = Edited(out Nail moved);
        string[] told = [.. difference.Nails.Select(n => n.What)];
        Assert.Contains(told, t => t.Contains($"{Printed(Behind)} to {Printed(moved)}", StringComparison.Ordinal));
        Assert.NotEqual(new PrintedStation(Behind.Station).Text(LengthUnit.Foot), Printed(Behind));
    }

    [Fact]
    public void Workbook_JSON_and_pages_of_changes_print_them_too()
    {
        RevisionDifference difference = Edited(out Nail moved);
        using var book = new MemoryStream();
        RevisionWorkbook.Write(difference, book);
        using var zip = new ZipArchive(book, ZipArchiveMode.Read);
        string texts = string.Concat(zip.Entries.Where(e => e.FullName.EndsWith(".xml", StringComparison.Ordinal)).Select(e => new StreamReader(e.Open()).ReadToEnd()));
        string json = RevisionJson.Text(difference);
        string pages = string.Join('\n', RevisionPages.Compose(difference, ReviewInfo.Of(Made.Project, "1"), Made.Project.Walls).Sheets.SelectMany(s => s.Paper.OfType<SheetGen.Drawing.Primitives.Text>()).Select(t => t.Value));
        foreach (Nail nail in new[] { Behind, moved })
        {
            Assert.Contains($">{Printed(nail)}<", texts, StringComparison.Ordinal);
            Assert.Contains($"\"station_printed\": \"{Printed(nail)}\"", json.Replace("\\u002B", "+", StringComparison.Ordinal), StringComparison.Ordinal);
        }
        Assert.Contains(Made.Project.Walls[0].StationText(29, LengthUnit.Foot), pages, StringComparison.Ordinal);
    }

    private static RevisionDifference Edited(out Nail moved)
    {
        RevisionState State(NailLayout layout) => new() { Name = "wall", Unit = LengthUnit.Foot, Walls = Made.Project.Walls, Nails = [.. layout.Nails.Select(RevisionNail.Of)] };
        Nail now = Behind with { Station = Behind.Station - 0.25, Along = Behind.Along - 0.25 };
        moved = now;
        return Comparison.Of(State(Made.Layout), State(Made.Layout with { Nails = [.. Made.Layout.Nails.Where(n => n.Mark != "A-1-01").Select(n => n.Mark == now.Mark ? now : n)] }));
    }

    /// <summary>The table once had stations as printed, so that compare refused it, or called every nail behind an equation moved.</summary>
    [Fact]
    public void The_table_of_nails_has_the_stations_that_compare_and_records_read()
    {
        using var stream = new MemoryStream();
        NailCsv.Write(Made.Project, Made.Layout, Checker.Check(Made.Project, Made.Layout), stream);
        string text = System.Text.Encoding.UTF8.GetString(stream.ToArray());
        var problems = new List<Problem>();
        IReadOnlyList<RevisionNail> read = NailTable.Read(text, "nails.csv", problems)!;
        Assert.Empty(problems);
        RevisionState table = new() { Name = "table", Unit = LengthUnit.Foot, Nails = read }, now = table with { Name = "wall", Nails = [.. Made.Layout.Nails.Select(RevisionNail.Of)] };
        Assert.Empty(Comparison.Of(table, now).Nails);
        string line = text.Split("\r\n").Single(l => l.Contains($",{Behind.Mark},production,", StringComparison.Ordinal));
        Assert.EndsWith("," + Printed(Behind), line, StringComparison.Ordinal);
        string record = "mark,station\n" + string.Concat(read.Select(n => FormattableString.Invariant($"{n.Mark},{n.Station}\n")));
        IReadOnlyList<AsBuiltNail> drilled = AsBuiltRecord.Read(record, "record.csv", Made.Project, Made.Layout, problems)!;
        Assert.Empty(AsBuilt.Of(Made.Project, Made.Layout, drilled, AsBuilt.Tolerances.Default(LengthUnit.Foot) with { Head = 0.01 }).Misses);
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

using System.Text.RegularExpressions;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Forms.Xlsx;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Writers;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>Stations that jump: printed, read, refused.</summary>
public sealed class StationEquationTests
{
    private static string With(string equations) => BaseWall.With("      - line: 40\n", "      - line: 40\n    station_equations: " + equations + "\n");

    [Fact]
    public void Places_and_stations_go_both_ways_at_overlaps_and_gaps()
    {
        var overlap = new Stationing(1000, [new StationEquation(250, new(1250), new(1200))]);
        Assert.Equal([220, 270], overlap.PlacesOf(new(1220)));
        Assert.Equal("12+20.00 BK", overlap.Text(220, LengthUnit.Foot));
        Assert.Equal("12+20.00 AH", overlap.Text(270, LengthUnit.Foot));
        Assert.Equal("12+60.00", overlap.Text(310, LengthUnit.Foot));
        Assert.Equal("11+99.00", overlap.Text(199, LengthUnit.Foot));
        var gap = new Stationing(1000, [new StationEquation(250, new(1250), new(1300))]);
        Assert.Empty(gap.PlacesOf(new(1275)));
        Assert.Equal("13+00.00", gap.Text(250, LengthUnit.Foot));
        Assert.Equal([250], gap.PlacesOf(new(1250)));
        for (double along = -40; along < 600; along += 7)
        {
            foreach (Stationing stations in new[] { overlap, gap })
                Assert.Contains(stations.PlacesOf(stations.Printed(along)), a => Math.Abs(a - along) < 1e-9);
        }
        Assert.Equal([200, 225, 250, 275, 300, 325], overlap.RoundPlaces(190, 330, 25));
    }

    [Theory]
    [InlineData(1234.56, LengthUnit.Foot, "12+34.56")]
    [InlineData(99.996, LengthUnit.Foot, "1+00.00")]
    [InlineData(-12.5, LengthUnit.Foot, "-0+12.50")]
    [InlineData(1234.567, LengthUnit.Metre, "1+234.567")]
    [InlineData(999.9996, LengthUnit.Metre, "1+000.000")]
    public void A_printed_station_carries_into_full_stations(double number, LengthUnit unit, string text) => Assert.Equal(text, new PrintedStation(number).Text(unit));

    [Fact]
    public void A_project_file_reads_back_and_ahead_and_keeps_one_internal_station()
    {
        // The place 10+60 of the base wall's corner is also 10+40: what follows is 20 ft lower in number.
        string text = Regex.Replace(With("[{back: 10+60, ahead: 10+40}]"), @"10\+(4[0-9]|5[0-9])(?=[ ,\]}])", "$0 BK", RegexOptions.None, TimeSpan.FromSeconds(5))
            .Replace("{back: 10+60, ahead: 10+40 BK}", "{back: 10+60, ahead: 10+40}", StringComparison.Ordinal).Replace("11+00", "10+80", StringComparison.Ordinal)
            .Replace("stations: [10+60, 10+80]", "stations: [10+40 AH, 10+80]", StringComparison.Ordinal).Replace("stations: [10+00, 10+60]", "stations: [10+00, 10+60 BK]", StringComparison.Ordinal);
        WallProject plain = BaseWall.Read(BaseWall.Text), equated = BaseWall.Read(text);
        Assert.Equal(plain.Walls[0].End, equated.Walls[0].End, 1e-9);
        Assert.Equal(plain.Walls[0].Top.Points, equated.Walls[0].Top.Points);
        Assert.Equal(plain.Walls[0].BottomSteps, equated.Walls[0].BottomSteps);
        Assert.Equal(plain.Walls[0].Sections.Select(s => (s.Start, s.End)), equated.Walls[0].Sections.Select(s => (s.Start, s.End)));
    }

    /// <summary>What is printed stands beside the plain number in every list of stations, and nowhere without station equations.</summary>
    [Fact]
    public void The_workbook_prints_back_and_ahead_stations()
    {
        string text = Regex.Replace(With("[{back: 10+60, ahead: 10+40}]"), @"10\+(4[0-9]|5[0-9])(?=[ ,\]}])", "$0 BK", RegexOptions.None, TimeSpan.FromSeconds(5))
            .Replace("{back: 10+60, ahead: 10+40 BK}", "{back: 10+60, ahead: 10+40}", StringComparison.Ordinal).Replace("11+00", "10+80", StringComparison.Ordinal)
            .Replace("stations: [10+60, 10+80]", "stations: [10+40 AH, 10+80]", StringComparison.Ordinal).Replace("stations: [10+00, 10+60]", "stations: [10+00, 10+60 BK]", StringComparison.Ordinal);
        Dictionary<string, GridSheet> Sheets(WallProject project, out NailLayout layout)
        {
            layout = Placer.Place(project, new PlacingOptions());
            return WorkbookFile.Read(WorkbookTests.Write(WorkbookTests.Take(project, layout, "generic"))).ToDictionary(s => s.Name);
        }
        Dictionary<string, GridSheet> sheets = Sheets(BaseWall.Read(text), out NailLayout layout);
        string[] Column(GridSheet sheet, string head) => sheet.Rows.First(r => r.Any(c => c.Text == head)).First(c => c.Text == head) is var at
            ? [.. sheet.Rows.Where(r => r[0].Row > at.Row).SelectMany(r => r.Where(c => c.Column == at.Column)).Select(c => c.Text)] : [];
        string[] printed = Column(sheets["Nails"], "Station, printed");
        Assert.Equal(layout.Nails.Select(n => n.Wall.TextOf(n.Station, LengthUnit.Foot)), printed);
        Assert.Contains(printed, p => p.EndsWith(" BK", StringComparison.Ordinal));
        Assert.Contains(printed, p => p.EndsWith(" AH", StringComparison.Ordinal));
        Assert.Equal(layout.Nails.Select(n => n.Station), Column(sheets["Nails"], "Station").Select(t => double.Parse(t, System.Globalization.CultureInfo.InvariantCulture)));
        Assert.All(["Excavation lifts", "Redirects", "Leveling pad"], name => Assert.Contains(sheets.Where(s => s.Key == name).SelectMany(s => s.Value.Rows).SelectMany(r => r), c => c.Text.EndsWith(", printed", StringComparison.Ordinal)));
        Assert.DoesNotContain(Sheets(BaseWall.Read(BaseWall.Text), out _).Values.SelectMany(s => s.Rows).SelectMany(r => r), c => c.Text.EndsWith(", printed", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("[{back: 10+60, ahead: 10+40}]", "station 10+50.00 exists twice on layout line \"WL-1\" (write 10+50.00 BK or 10+50.00 AH)")]
    [InlineData("[{back: 10+40, ahead: 10+60}]", "there is no station 10+50.00 on layout line \"WL-1\" (its station equations: 10+40.00 BK = 10+60.00 AH)")]
    [InlineData("[{back: 12+40, ahead: 12+60}]", "the back station 12+40.00 is not between 10+00.00 to 11+00.00")]
    [InlineData("[{back: 10+40, ahead: 10+20}, {back: 10+45, ahead: 10+25}]", "exists three times")]
    public void What_cannot_be_told_is_refused(string equations, string message) =>
        Assert.Contains(BaseWall.Problems(With(equations)), p => p.Contains(message, StringComparison.Ordinal));

    [Fact]
    public void Back_and_ahead_need_an_equation() =>
        Assert.Contains(BaseWall.Problems(BaseWall.With("[10+50, 102.5]", "[10+50 BK, 102.5]")), p => p.Contains("BK and AH go with station equations", StringComparison.Ordinal));
}

using SheetGen.Model;
using SheetGen.ProjectFile.Inputs.Inspecting;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>Profiles, layout lines and borings from tables.</summary>
public sealed class CsvTests
{
    private const string Line = "start: {station: 10+00, northing: 5000, easting: 2000, azimuth: 90}\n    elements: [{line: 200}]";

    [Theory]
    [InlineData("Station,Elevation\n10+00,118\n10+50,119.5\n12+00,121\n")]
    [InlineData("sta;elev (ft)\r\n1000;118\r\n\"10+50\";119.5\r\n12+00;121\r\n")]
    [InlineData("10+00\t118\n10+50\t119.5\n12+00\t121")]
    [InlineData("# surveyed\nnorthing,easting,elevation\n5001,2000,118\n4999.5,2050,119.5\n5000,2200,121\n")]
    [InlineData("1,5001,2000,118,TOP\n2,4999.5,2050,119.5,TOP\n9,5000,2200,121,TOP\n")]
    [InlineData("Easting,Northing,Z\n2200,5000,121\n2000,5001,118\n2050,4999.5,119.5\n")]
    public void A_profile_comes_from_any_usual_table(string table)
    {
        using var folder = new InputFolder();
        Profile top = folder.With("top.csv", table).Project(InputFolder.Yaml(Line, "{from_csv: {file: top.csv}}", "[10+00, 12+00]", bottom: "100")).Walls[0].Top;
        Assert.Equal([new(0, 118), new(50, 119.5), new(200, 121)], top.Points.Select(p => new ProfilePoint(Math.Round(p.Along, 9), p.Elevation)));
    }

    [Fact]
    public void Units_and_a_raise_count()
    {
        using var folder = new InputFolder();
        Profile top = folder.With("top.csv", "station,elevation\n10+00,36\n12+00,37\n").Project(InputFolder.Yaml(Line, "{from_csv: {file: top.csv, units: m, raise: 6 in}}", "[10+00, 12+00]", bottom: "100")).Walls[0].Top;
        Assert.Equal(36 / 0.3048 + 0.5, top.Points[0].Elevation, 1e-9);
    }

    [Fact]
    public void Points_too_far_off_the_line_are_left_out_and_told()
    {
        using var folder = new InputFolder();
        string[] problems = folder.With("top.csv", "n,e,z\n5001,2000,118\n5040,2050,150\n5000,2200,121\n").Problems(InputFolder.Yaml(Line, "{from_csv: {file: top.csv, limit: 5 ft}}", "[10+00, 12+00]", bottom: "100"));
        Assert.Contains(problems, p => p.StartsWith("top.csv:3:1: warning I05: the point lies 40 ft from the layout line, over the limit of 5", StringComparison.Ordinal));
    }

    [Fact]
    public void A_layout_line_runs_through_the_points_of_a_table()
    {
        using var folder = new InputFolder();
        WallProject read = folder.With("line.csv", "n,e\n6000,3000\n6000,3100\n5950,3186.6025403784439\n").Project(InputFolder.Yaml("from_csv: {file: line.csv, station: 10+00}", "[[10+00, 118], [12+00, 118]]", "[10+00, 12+00]", bottom: "100"));
        LayoutLine line = read.LayoutLines[0];
        Corner corner = Assert.Single(line.Corners);
        Assert.Equal(100, corner.Along, 1e-9);
        Assert.Equal(Math.PI / 6, corner.Deflection, 1e-9);
        Assert.Equal(5950, (line.PointAt(200) + read.Origin).N, 1e-9);
    }

    [Theory]
    [InlineData("name,northing,easting,top,depth,layer,to,PI,water depth\nB-1,4988,2045,121,43,stiff clay,13,24,25\n,,,,,silty sand,43,,\nB-2,4980,2110,122,40,sand,40,,\n")]
    [InlineData("boring,station,offset,ground,bottom,soil,layer_bottom,plasticity index,water\nB-1,10+45,12,121,78,stiff clay,108,24,96\nB-1,,,,,silty sand,78,,\nB-2,11+10,20,122,82,sand,82,,\n")]
    public void Borings_come_with_layers_by_depth_or_elevation(string table)
    {
        using var folder = new InputFolder();
        WallProject read = folder.With("b.csv", table).Project(InputFolder.Yaml(Line, "[[10+00, 118], [12+00, 118]]", "[10+00, 12+00]", bottom: "100", more: "borings:\n  from_csv: {file: b.csv}\n"));
        Assert.Equal(2, read.Borings.Count);
        Boring first = read.Borings[0];
        Assert.Equal(("B-1", 121.0, 78.0, (double?)96), (first.Name, first.Top, first.Bottom, first.Water));
        Assert.Equal([new BoringLayer(108, "stiff clay", 24), new BoringLayer(78, "silty sand", null)], first.Layers);
        Assert.Equal(4988, first.At.N + 5000, 1e-9);
        Assert.Equal(45, first.At.E, 1e-9);
    }

    /// <summary>Metres in a project in feet were once taken for feet without a word.</summary>
    [Theory]
    [InlineData("station (ft),elevation (m)", "ft", "the head \"elevation (m)\" says m, but the table's lengths are taken in ft (write units: m beside its file, or correct the head)")]
    [InlineData("station,elevation [US survey feet]", "ft", "says us-ft, but the table's lengths are taken in ft")]
    [InlineData("station,elevation (ft)", "us-ft", null)]
    [InlineData("station,elevation (ft)", "ft", null)]
    [InlineData("station,elevation (NAVD 88)", "ft", null)]
    public void A_head_that_names_another_unit_is_an_error(string heads, string units, string? told)
    {
        using var folder = new InputFolder();
        string[] problems = folder.With("top.csv", heads + "\n10+00,118\n12+00,121\n").Problems(InputFolder.Yaml(Line, "{from_csv: {file: top.csv}}", "[10+00, 12+00]", units, bottom: "100"));
        string[] errors = [.. problems.Where(p => p.Contains(": error ", StringComparison.Ordinal))];
        if (told is null)
            Assert.Empty(errors);
        else
            Assert.Contains(told, Assert.Single(errors), StringComparison.Ordinal);
    }

    [Fact]
    public void Columns_and_layers_that_are_not_read_are_told()
    {
        using var folder = new InputFolder();
        string[] problems = folder.With("b.csv", "name,northing,easting,top,bottom,soil,to,colour\nB-1,4988,2045,121,78,clay,13,red\n,,,,,,20,\n,,,,,sand,43,\n")
            .Problems(InputFolder.Yaml(Line, "[[10+00, 118], [12+00, 118]]", "[10+00, 12+00]", bottom: "100", more: "borings:\n  from_csv: {file: b.csv}\n"));
        Assert.Contains(problems, p => p.StartsWith("b.csv:1:1: notice I07: the table's column \"colour\" is not read", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.StartsWith("b.csv:1:1: notice I07: 1 borings with 2 layers; where they end is read as depth below the ground", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.StartsWith("b.csv:3:7: warning I05: the layer that ends at 20 has no soil: it is left out", StringComparison.Ordinal));
    }

    /// <summary>Water, depth and place count in whichever row of a boring they stand; a second word on them was once passed over, as was the start of a layer.</summary>
    [Theory]
    [InlineData("B-1,10+20,5,118,clay,0,5,\nB-1,10+20,5,118,sand,5,20,13", null)]
    [InlineData("B-1,10+20,5,118,clay,0,5,\nB-1,10+60,5,120,sand,5,20,13", "b.csv:3:5: error I04: the boring's station is another than in its row above|b.csv:3:13: error I04: the boring's top is another than in its row above")]
    [InlineData("B-1,10+20,5,118,clay,0,5,\nB-1,,,,sand,10,20,13", "b.csv:3:13: warning I06: nothing is told from 5 to 10 below the ground: the layer is taken from 5 on")]
    [InlineData("B-1,10+20,5,118,clay,0,5,\nB-1,,,,sand,4,20,13", "b.csv:3:13: error I04: the layer begins at 4, over the end 5 of the layer above")]
    [InlineData("B-1,10+20,5,118,clay,0,5,\nB-1,,,,sand,5,20,13,,", null)]
    [InlineData("B-1,10+20,5,118,clay, stiff,0,5,13\n", "b.csv:2:33: error I04: this cell stands beyond the last head")]
    [InlineData("B-1,10+20,5,abc,clay,0,5,13", "b.csv:2:13: error R13: the top is not a number")]
    public void A_boring_is_read_from_all_of_its_rows(string rows, string? told)
    {
        using var folder = new InputFolder();
        string yaml = InputFolder.Yaml(Line, "[[10+00, 118], [12+00, 118]]", "[10+00, 12+00]", bottom: "100", more: "borings:\n  from_csv: {file: b.csv}\n");
        folder.With("b.csv", "name,station,offset,top,layer,from,to,water depth\n" + rows);
        string[] problems = [.. folder.Problems(yaml).Where(p => !p.Contains(": notice ", StringComparison.Ordinal))];
        if (told is null)
            Assert.Equal(([], 105.0), (problems, folder.Read(yaml).Project!.Borings[0].Water));
        else
            Assert.All(told.Split('|').Zip(problems, (t, p) => (t, p)), x => Assert.StartsWith(x.t, x.p, StringComparison.Ordinal));
        Assert.Equal(told?.Split('|').Length ?? 0, problems.Length);
    }

    [Fact]
    public void Every_faulty_row_is_told_in_one_run()
    {
        using var folder = new InputFolder();
        int Faults(string table, string top = "{from_csv: {file: top.csv}}", string line = Line) =>
            folder.With("top.csv", table).Problems(InputFolder.Yaml(line, top, "[10+00, 12+00]", bottom: "100")).Count(p => p.StartsWith("top.csv:", StringComparison.Ordinal) && p.Contains(": error ", StringComparison.Ordinal));
        Assert.Equal(4, Faults("station,elevation\n10+00,118\n,119\n10+30,\n10+40,abc\n10+5x,120\n12+00,118\n"));
        Assert.Equal(2, Faults("station,elevation\n10+00,118\n10+30,q\n10+40,abc\n12+00,118\n", "{from_csv: {file: top.csv, raise: 2}}"));
        Assert.Equal(4, Faults("northing,easting,elevation\n5000,2000,118\n,2010,\n5000,x,118\n5000,2090,\n5000,2200,118\n"));
        Assert.Equal(3, Faults("northing,easting\n5000,2000\n,2010\nx,y\n5000,2200\n", "[[10+00, 118], [12+00, 118]]", "from_csv: {file: top.csv, station: 10+00}"));
        // An unquoted thousand's comma was once read as elevation 1.
        Assert.Equal(2, Faults("station,elevation\n10+00,1,118\n12+00,1,119\n"));
    }

    /// <summary>The project around a table of points once had a wall from 0+00 to 0+00.</summary>
    [Fact]
    public void A_project_around_a_table_of_points_has_a_wall_on_its_line()
    {
        using var folder = new InputFolder();
        const string Name = "line #1, \u00fc.csv";
        Inspection inspection = Inspection.Of(folder.With(Name, "n,e\n6000,3000\n6000,3100\n5950,3186.6\n").Of(Name));
        WallProject read = folder.Project(StartFrom.Text(inspection, Name)!);
        Assert.Equal((10, 110), (read.Walls[0].Start, read.Walls[0].End));
        Assert.Null(StartFrom.Text(Inspection.Of(folder.With(Name, "n,e\n6000,3000\n6000,x\n").Of(Name)), Name));
    }

    [Fact]
    public void Unicode_text_of_a_spreadsheet_is_read()
    {
        using var folder = new InputFolder();
        foreach (var encoding in new[] { System.Text.Encoding.Unicode, System.Text.Encoding.BigEndianUnicode })
        {
            File.WriteAllBytes(folder.Of("top.csv"), [.. encoding.GetPreamble(), .. encoding.GetBytes("station\televation\r\n10+00\t118\r\n12+00\t121\r\n")]);
            Assert.Equal(121, folder.Project(InputFolder.Yaml(Line, "{from_csv: {file: top.csv}}", "[10+00, 12+00]", bottom: "100")).Walls[0].Top.At(200));
        }
    }

    /// <summary>Easting before northing would lay the wall elsewhere; without heads nothing else says which is which.</summary>
    [Fact]
    public void What_columns_without_heads_are_taken_for_is_told()
    {
        using var folder = new InputFolder();
        string[] problems = folder.With("top.csv", "1,5001,2000,118\n2,5000,2200,121\n").Problems(InputFolder.Yaml(Line, "{from_csv: {file: top.csv}}", "[10+00, 12+00]", bottom: "100"));
        Assert.Contains(problems, p => p.StartsWith("top.csv:1:1: notice I07: the table has no row of heads: its columns are taken as name, northing, easting, elevation", StringComparison.Ordinal));
    }

    [Fact]
    public void Faults_of_cells_have_their_place()
    {
        using var folder = new InputFolder();
        string[] problems = folder.With("top.csv", "station,elevation\n10+00,118\n10+5,1a9\n12+00,121\n").Problems(InputFolder.Yaml(Line, "{from_csv: {file: top.csv}}", "[10+00, 12+00]", bottom: "100"));
        Assert.Contains(problems, p => p.StartsWith("top.csv:3:1: error R18", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.StartsWith("top.csv:3:6: error", StringComparison.Ordinal));
        Assert.Contains(folder.With("top.csv", "a,b\n1,2\n").Problems(InputFolder.Yaml(Line, "{from_csv: {file: top.csv}}", "[10+00, 12+00]")), p => p.Contains("error I03: the table has no column northing", StringComparison.Ordinal));
    }
}

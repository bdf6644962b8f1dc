using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>inspect, start --from, start --form and --allow-outside on files written here.</summary>
public sealed class InspectTests
{
    private const string Road = """
        <LandXML version="1.2"><Units><Imperial linearUnit="foot"/></Units><Alignments><Alignment name="Ramp" staStart="1000">
        <CoordGeom><Line><Start>5000 2000</Start><End>5000 2300</End></Line></CoordGeom>
        <Profile><ProfAlign name="FG"><PVI>1000.002 100</PVI><ParaCurve length="100">1150 104</ParaCurve><PVI>1300 103</PVI></ProfAlign></Profile>
        </Alignment></Alignments></LandXML>
        """;

    [Fact]
    public void What_a_file_holds_is_said_and_printed_to_paste()
    {
        using var folder = new TempFolder();
        string road = folder.File("road.xml"), table = folder.File("top.csv"), other = folder.File("other.dxf");
        File.WriteAllText(road, Road);
        File.WriteAllText(table, "station,elevation\n10+00,118\n");
        File.WriteAllText(other, "not a drawing\nat all\n");
        CliRun said = CliRun.Of("inspect", road);
        Assert.Equal(0, said.Code);
        Assert.Contains("alignment \"Ramp\": 10+00.00 to 13+00.00, 300 ft; 1 line", said.Out, StringComparison.Ordinal);
        Assert.Contains("profile \"FG\" (designed): 3 points, 1 vertical curves", said.Out, StringComparison.Ordinal);
        Assert.Contains("from_landxml: {file: \"road.xml\", alignment: \"Ramp\"}", CliRun.Of("inspect", road, "--as", "yaml").Out, StringComparison.Ordinal);
        Assert.Contains("can be used under top", CliRun.Of("inspect", table).Out, StringComparison.Ordinal);
        CliRun refused = CliRun.Of("inspect", other);
        Assert.Equal(2, refused.Code);
        Assert.Contains("error I02", refused.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("not a drawing", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_project_is_started_around_an_alignment_and_checks()
    {
        using var folder = new TempFolder();
        string road = folder.File("road.xml"), wall = folder.File("wall");
        File.WriteAllText(road, Road);
        Assert.Equal(0, CliRun.Of("start", wall, "--from", road).Code);
        Assert.True(File.Exists(Path.Combine(wall, "road.xml")));
        CliRun check = CliRun.Of("check", wall);
        Assert.True(check.Code is 0 or 1, check.Error);
        Assert.Contains("notice I07", check.Error, StringComparison.Ordinal);
        string yaml = Path.Combine(wall, "wall.yaml");
        File.WriteAllText(yaml, File.ReadAllText(yaml).Replace("\"road.xml\"", "\"../road.xml\"", StringComparison.Ordinal));
        CliRun fenced = CliRun.Of("check", wall);
        Assert.Equal(2, fenced.Code);
        Assert.Contains("error I01", fenced.Error, StringComparison.Ordinal);
        Assert.True(CliRun.Of("check", wall, "--allow-outside").Code is 0 or 1);
    }

    /// <summary>The profile may begin far behind the alignment, and a file may have several alignments.</summary>
    [Fact]
    public void A_project_around_one_of_several_alignments_lies_where_its_profile_is()
    {
        using var folder = new TempFolder();
        string road = folder.File("road.xml"), wall = folder.File("wall");
        File.WriteAllText(road, Road.Replace("1000.002 100", "1095 101", StringComparison.Ordinal)
            .Replace("</Alignments>", "<Alignment name=\"Other\" staStart=\"0\"><CoordGeom><Line><Start>0 0</Start><End>0 300</End></Line></CoordGeom></Alignment></Alignments>", StringComparison.Ordinal));
        Assert.Equal(0, CliRun.Of("start", wall, "--from", road).Code);
        CliRun check = CliRun.Of("check", wall);
        Assert.True(check.Code is 0 or 1, check.Error);
    }

    [Fact]
    public void A_form_is_started_and_built_in_place_of_the_project_file()
    {
        using var temp = new TempFolder();
        Assert.Equal(0, CliRun.With(temp.Path, null, "start", "form", "--form").Code);
        Assert.Equal(0, CliRun.With(temp.Path, null, "start", "typed").Code);
        Assert.Equal(["wall.xlsx"], temp.Listing("form"));
        CliRun again = CliRun.With(temp.Path, null, "start", "form", "--form");
        Assert.Equal(2, again.Code);
        Assert.Contains("never overwrites", again.Error, StringComparison.Ordinal);

        CliRun built = CliRun.With(temp.Path, null, "build", "form", "--out", "out1"), wanted = CliRun.With(temp.Path, null, "build", "typed", "--out", "out2");
        Assert.Equal((wanted.Code, wanted.Problems), (built.Code, built.Problems));
        Assert.Equal(File.ReadAllText(temp.File("out2/nails.csv")), File.ReadAllText(temp.File("out1/nails.csv")));
        Assert.Equal(temp.Listing("out2"), temp.Listing("out1"));

        File.WriteAllBytes(temp.File("form/wall.xlsx"), File.ReadAllBytes(temp.File("form/wall.xlsx"))[..5000]);
        CliRun broken = CliRun.With(temp.Path, null, "check", "form");
        Assert.Equal(2, broken.Code);
        Assert.Contains("error R06: the workbook is damaged or cut off", broken.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_form_is_filled_from_a_project_file_or_an_alignment_and_named_cells_hold_its_faults()
    {
        using var temp = new TempFolder();
        File.WriteAllText(temp.File("road.xml"), Road);
        CliRun started = CliRun.With(temp.Path, null, "start", "road", "--form", "--from", "road.xml");
        Assert.Equal(0, started.Code);
        Assert.Equal(["road.xml", "wall.xlsx"], temp.Listing("road"));
        CliRun check = CliRun.With(temp.Path, null, "check", "road");
        Assert.True(check.Code is 0 or 1, check.Error);
        Assert.Contains("layout line \"Ramp\" is alignment \"Ramp\"", check.Error, StringComparison.Ordinal);

        File.Delete(temp.File("road/road.xml"));
        CliRun gone = CliRun.With(temp.Path, null, "check", "road");
        Assert.Equal(2, gone.Code);
        Assert.Contains("wall.xlsx:From files!D6: error R01: \"road.xml\" cannot be read: there is no such file", gone.Error, StringComparison.Ordinal);

        string demo = Path.Combine(Repository.Root, "demo", "quarry-lane", "wall.yaml");
        Assert.Equal(0, CliRun.With(temp.Path, null, "start", "demo", "--form", "--from", demo).Code);
        Assert.Equal(["wall.xlsx"], temp.Listing("demo"));
    }
}

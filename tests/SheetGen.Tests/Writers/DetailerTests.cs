using System.Text;
using SheetGen.Tests.Drawing;
using SheetGen.Tests.Outside;
using SheetGen.Tests.ProjectFile;
using SheetGen.Writers.Dxf;
using Xunit;

namespace SheetGen.Tests.Writers;

/// <summary>
/// The drawing of a set as ezdxf sees it: what the one who edits it would have to touch up (tests/Tools/detailer.py). The walls are upright or
/// straight: a battered arc cannot be laid flat, and its distances are typed (docs/decisions/true-dimensions-of-clear-distances.md).
/// </summary>
[Trait("Category", "Outside")]
public class DetailerTests
{
    private static string Drawing(string yaml)
    {
        using var stream = new MemoryStream();
        DxfSheetWriter.Write(PlacedWall.Sheets(PlacedWall.Context(yaml)), stream);
        return Encoding.ASCII.GetString(stream.ToArray());
    }

    private static string Complaints(string drawing, bool inch)
    {
        using var folder = new TemporaryFolder();
        string file = folder.File("sheets.dxf");
        File.WriteAllText(file, drawing, Encoding.ASCII);
        OutsideResult result = OutsideReader.Script("detailer.py", "ezdxf").Run(file, inch ? "inch" : "mm");
        Assert.True(result.ExitCode == 0, result.Errors);
        return result.Output;
    }

    [Theory]
    [InlineData("two walls", true)]
    [InlineData("metric", false)]
    [InlineData("heron-street-bridge", true)]
    public void A_detailer_finds_nothing_to_touch_up(string name, bool inch) =>
        Assert.Equal("", Complaints(Drawing(name switch
        {
            "two walls" => SampleWalls.TwoWalls,
            "metric" => SampleWalls.Metric,
            _ => Repository.Read("demo", name, "wall.yaml"),
        }), inch));

    [Theory]
    [InlineData("$TILEMODE\r\n 70\r\n0", "$TILEMODE\r\n 70\r\n1", "the model is open")]
    [InlineData("monochrome.ctb", "colours.ctb", "plot style 'colours.ctb'")]
    [InlineData("%%d", "\\U+00B0", "a bare degree sign")]
    public void The_look_sees_what_is_wrong(string right, string wrong, string complaint)
    {
        string drawing = Drawing(SampleWalls.Metric);

        Assert.Contains(right, drawing, StringComparison.Ordinal);
        Assert.Contains(complaint, Complaints(drawing.Replace(right, wrong, StringComparison.Ordinal), false), StringComparison.Ordinal);
    }

    [Fact]
    public void The_look_sees_sheets_in_the_wrong_unit() =>
        Assert.Contains("plots in unit", Complaints(Drawing(SampleWalls.Metric), true), StringComparison.Ordinal);
}

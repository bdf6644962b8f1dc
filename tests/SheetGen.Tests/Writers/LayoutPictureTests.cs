using System.Globalization;
using System.Text;
using SheetGen.Drawing.Sheets;
using SheetGen.Tests.Drawing;
using SheetGen.Tests.Outside;
using SheetGen.Tests.ProjectFile;
using SheetGen.Writers.Dxf;
using SheetGen.Writers.Pdf;
using Xunit;

namespace SheetGen.Tests.Writers;

/// <summary>
/// Each layout of the DXF as LibreCAD draws it against the page of the PDF, cell by cell of 6 to 9 mm: its converter knows no viewports, so a script takes
/// the layouts apart into drawings of their own (<c>tests/Tools/split_layouts.py</c>). Its letters are of another font, its dashes drawn through, hatches left out.
/// </summary>
[Trait("Category", "Outside")]
public class LayoutPictureTests
{
    private const int Across = 100, Down = 65;

    private static string Yaml(string wall) => wall switch
    {
        "heron" => Repository.Read("demo", "heron-street-bridge", "wall.yaml"),
        "quarry" => Repository.Read("demo", "quarry-lane", "wall.yaml"),
        "metric" => SampleWalls.Metric,
        _ => SampleWalls.TwoWalls,
    };

    [Theory]
    [InlineData("heron")]
    [InlineData("quarry")]
    [InlineData("metric")]
    [InlineData("two walls")]
    public void LibreCad_draws_every_layout_as_its_page(string wall)
    {
        SheetSet set = SampleSheets.Compose(Yaml(wall));
        using var folder = new TemporaryFolder();
        Write(folder, "sheets.dxf", DxfSheetWriter.Write, set);
        Write(folder, "sheets.pdf", PdfSheetWriter.Write, set);
        OutsideResult split = OutsideReader.Script("split_layouts.py", "ezdxf").Run(folder.File("sheets.dxf"), folder.Path);
        Assert.True(split.ExitCode == 0, split.Errors);
        Assert.Equal(set.Sheets.Select(s => s.Name + ".dxf"), split.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        OutsideReader.LibreCad.Run(["dxf2pdf", "-a", "-t", folder.Path, .. set.Sheets.Select(s => folder.File(s.Name + ".dxf"))]);

        foreach ((Sheet sheet, int page) in set.Sheets.Select((s, i) => (s, i + 1)))
        {
            bool[,] own = Cells(folder, "sheets.pdf", page), other = Cells(folder, sheet.Name + ".pdf", 1);
            int inked = own.Cast<bool>().Count(c => c), missing = Beyond(own, other), more = Beyond(other, own);
            TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{wall} {sheet.Name}: {inked} cells, {missing} only in the PDF, {more} only in LibreCAD"));
            Assert.True(inked > 300, $"{sheet.Name}: {inked} cells");
            Assert.True(missing <= 0.01 * inked, $"{sheet.Name}: {missing} of {inked} cells only in the PDF");
            Assert.True(more <= 0.02 * inked, $"{sheet.Name}: {more} cells only in LibreCAD, beside {inked}");
        }
    }

    private static void Write(TemporaryFolder folder, string name, Action<SheetSet, Stream> write, SheetSet set)
    {
        using FileStream file = File.Create(folder.File(name));
        write(set, file);
    }

    /// <summary>Cells within the border with ink in one picture and none in the other, there or in a neighbour.</summary>
    private static int Beyond(bool[,] picture, bool[,] other)
    {
        int count = 0;
        for (int x = 1; x < Across - 1; x++)
        {
            for (int y = 1; y < Down - 1; y++)
                count += picture[x, y] && !Near(other, x, y) ? 1 : 0;
        }
        return count;
    }

    private static bool Near(bool[,] picture, int x, int y)
    {
        for (int i = Math.Max(0, x - 1); i <= Math.Min(Across - 1, x + 1); i++)
        {
            for (int k = Math.Max(0, y - 1); k <= Math.Min(Down - 1, y + 1); k++)
            {
                if (picture[i, k])
                    return true;
            }
        }
        return false;
    }

    /// <summary>Cells of a page with ink in them, within the border: the outermost lines of both.</summary>
    private static bool[,] Cells(TemporaryFolder folder, string pdf, int page)
    {
        string number = page.ToString(CultureInfo.InvariantCulture), picture = folder.File("page");
        OutsideReader.Program("pdftoppm").Run("-gray", "-f", number, "-l", number, "-scale-to-x", "1600", "-scale-to-y", "-1", "-singlefile", folder.File(pdf), picture);
        byte[] bytes = File.ReadAllBytes(picture + ".pgm");
        string[] head = Encoding.ASCII.GetString(bytes, 0, 32).Split((char[])[' ', '\n'], 5);
        int width = int.Parse(head[1], CultureInfo.InvariantCulture), height = int.Parse(head[2], CultureInfo.InvariantCulture), start = bytes.Length - width * height;
        bool Ink(int x, int y) => bytes[start + y * width + x] < 240;
        (int X, int Y)[] inked = [.. from y in Enumerable.Range(0, height) from x in Enumerable.Range(0, width) where Ink(x, y) select (x, y)];
        (int left, int right, int top, int bottom) = (inked.Min(p => p.X), inked.Max(p => p.X), inked.Min(p => p.Y), inked.Max(p => p.Y));
        bool[,] cells = new bool[Across, Down];
        foreach ((int x, int y) in inked)
            cells[(x - left) * Across / (right - left + 1), (y - top) * Down / (bottom - top + 1)] = true;
        return cells;
    }
}

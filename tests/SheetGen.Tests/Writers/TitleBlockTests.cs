using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Dxf;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Tests.Drawing;
using SheetGen.Tests.Drawing.Labels;
using SheetGen.Writers.Dxf;
using Xunit;

namespace SheetGen.Tests.Writers;

public class TitleBlockTests
{
    /// <summary>A border of an ANSI D sheet in inches with a strip of fields along the bottom.</summary>
    private static byte[] Drawn(bool asBlock, double width = 33)
    {
        DxfPolyline Frame(double bottom, double top) => new("0",
            [new(new(0.5, bottom)), new(new(0.5 + width, bottom)), new(new(0.5 + width, top)), new(new(0.5, top))], true);
        DxfAttributeDefinition Field(string tag, double x, string value = "") => new(tag, tag, new DxfText("0", new(x, 1), 0.2, value));
        DxfEntity[] entities =
            [Frame(0.5, 21.5), Frame(0.5, 3), Field("SHEET", 30), Field("SHEET_TITLE", 12), Field("VERTICAL_DATUM", 8), Field("PHASE", 1, "95 PERCENT")];
        var document = new DxfDocument { Header = new DxfHeader { Units = DxfUnits.Inch } };
        if (asBlock)
        {
            var block = new DxfBlock("FIRM");
            block.Entities.AddRange(entities);
            document.Blocks.Add(block);
            document.Model.Add(new DxfInsert("0", "FIRM", default));
        }
        else
        {
            document.Model.AddRange(entities);
        }
        using var stream = new MemoryStream();
        DxfWriter.Write(document, stream);
        return stream.ToArray();
    }

    [Fact]
    public void An_ellipse_is_drawn_and_a_block_at_unlike_scales_is_a_problem()
    {
        byte[] Written(double scaleY)
        {
            var document = new DxfDocument { Header = new DxfHeader { Units = DxfUnits.Millimetre } };
            var logo = new DxfBlock("LOGO");
            logo.Entities.Add(new DxfEllipse("0", new(10, 20), new(30, 0), 0.5));
            document.Blocks.Add(logo);
            document.Model.Add(new DxfInsert("0", "LOGO", default) { ScaleX = 2, ScaleY = scaleY });
            using var stream = new MemoryStream();
            DxfWriter.Write(document, stream);
            return stream.ToArray();
        }
        var problems = new List<Problem>();

        TitleBlock block = TitleBlockFile.Read(Written(2), "title.dxf", problems)!;

        Assert.Empty(problems);
        Box around = Box.Around(((Polyline)Assert.Single(block.Lines)).Vertices.Select(v => v.Point));
        Assert.Equal((-40, 80, 10, 70), (Math.Round(around.Left, 3), Math.Round(around.Right, 3), Math.Round(around.Bottom, 3), Math.Round(around.Top, 3)));

        Assert.Null(TitleBlockFile.Read(Written(3), "title.dxf", problems));
        Problem problem = Assert.Single(problems);
        Assert.Contains("LOGO", problem.Message, StringComparison.Ordinal);
        Assert.Contains("explode", problem.Hint, StringComparison.Ordinal);
    }

    private static SheetSet Compose(TitleBlock? block)
    {
        WallProject project = SampleLayout.Read(SampleWalls.TwoWalls);
        return SampleSheets.Compose(project, SampleLayout.Make(project), titleBlock: block);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Attributes_are_filled_by_name_and_the_drawing_keeps_off_the_strip(bool asBlock)
    {
        var problems = new List<Problem>();
        TitleBlock? block = TitleBlockFile.Read(Drawn(asBlock), "title.dxf", problems);
        Assert.Empty(problems);
        SheetSet set = Compose(block);

        foreach (Sheet sheet in set.Sheets)
        {
            BlockReference frame = sheet.Paper.OfType<BlockReference>().Single();
            var values = frame.Attributes.ToDictionary(a => a.Key, a => a.Value);
            Assert.Equal(sheet.Name, values["SHEET"]);
            Assert.Equal(sheet.Title, values["SHEET_TITLE"]);
            Assert.Equal("NAVD 88", values["VERTICAL_DATUM"]);
            Assert.Equal("95 PERCENT", values["PHASE"]);
            Assert.All(sheet.Paper.Where(p => p is not BlockReference).SelectMany(Extents.Points), p => Assert.True(p.Y > 3 * 25.4, $"{sheet.Name} {p}"));
        }
        Assert.Equal("", string.Join("\n", set.Sheets.SelectMany(s => CrossedTexts.On(set, s))));
        using var stream = new MemoryStream();
        DxfSheetWriter.Write(set, stream);
        Assert.Empty(HandleGraph.Problems(stream.ToArray()));
    }

    [Fact]
    public void A_title_block_larger_than_the_sheet_is_a_finding()
    {
        SheetSet set = Compose(TitleBlockFile.Read(Drawn(true, width: 60), "title.dxf", []));

        Assert.Contains(set.Findings, f => f.Message.Contains("title block", StringComparison.Ordinal));
        Assert.Contains(set.Blocks, b => b.Attributes.Any(a => a.Tag == "SHEET_COUNT"));
    }

    [Fact]
    public void What_is_no_drawing_is_a_problem()
    {
        var problems = new List<Problem>();

        Assert.Null(TitleBlockFile.Read("no drawing"u8.ToArray(), "title.dxf", problems));
        Assert.Equal("T02", Assert.Single(problems).Code);
    }
}

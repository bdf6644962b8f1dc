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
            BlockReference frame = (BlockReference)sheet.Paper[0];
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

    private static byte[] Bytes(params DxfEntity[] entities)
    {
        var document = new DxfDocument { Header = new DxfHeader { Units = DxfUnits.Inch } };
        document.Model.AddRange(entities);
        using var stream = new MemoryStream();
        DxfWriter.Write(document, stream);
        return stream.ToArray();
    }

    [Fact]
    public void A_drawing_of_what_a_sheet_cannot_show_is_not_called_empty_and_names_it()
    {
        var problems = new List<Problem>();

        Assert.Null(TitleBlockFile.Read(Bytes(new DxfPointEntity("0", new(1, 1))), "title.dxf", problems));

        Problem problem = Assert.Single(problems);
        Assert.Contains("holds only what a sheet cannot show: point", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_drawn_is_named_and_the_rest_is_drawn()
    {
        var problems = new List<Problem>();
        string text = System.Text.Encoding.UTF8.GetString(Bytes(new DxfLine("0", new(1, 1), new(30, 1)), new DxfLine("0", new(1, 2), new(30, 2))));
        int at = text.IndexOf("LINE", text.IndexOf("ENTITIES", StringComparison.Ordinal), StringComparison.Ordinal);
        text = text[..at] + "SPLINE" + text[(at + 4)..];

        TitleBlock? block = TitleBlockFile.Read(System.Text.Encoding.UTF8.GetBytes(text), "title.dxf", problems);

        Assert.Single(block!.Lines);
        Problem problem = Assert.Single(problems);
        Assert.Equal(("T03", Severity.Warning), (problem.Code, problem.Severity));
        Assert.Contains("SPLINE", problem.Message, StringComparison.Ordinal);
        Assert.True(problem.Spot.Line > 1);
    }

    [Fact]
    public void A_hatch_with_a_pattern_is_drawn_as_lines()
    {
        var problems = new List<Problem>();
        var hatch = new DxfHatch("0", [[new DxfVertex(new(1, 1), 0), new DxfVertex(new(3, 1), 0), new DxfVertex(new(3, 2), 0)]])
        {
            Pattern = DxfHatchPattern.Parallel(30, 0.1),
        };

        TitleBlock block = TitleBlockFile.Read(Bytes(hatch), "title.dxf", problems)!;

        Fill fill = Assert.IsType<Fill>(Assert.Single(block.Lines));
        Assert.Equal(2.54, fill.Spacing, 6);
        Assert.Equal(30, fill.Angle, 6);
        Assert.Empty(problems);
    }

    [Fact]
    public void A_title_block_without_a_needed_field_gets_a_warning_that_names_it()
    {
        SheetSet set = Compose(TitleBlockFile.Read(Drawn(true), "title.dxf", []));

        string message = Assert.Single(set.Findings, f => f.Message.Contains("has no field", StringComparison.Ordinal)).Message;
        Assert.Contains("PROJECT, SCALE, DATE, REVISION", message, StringComparison.Ordinal);
        Assert.DoesNotContain("SHEET,", message, StringComparison.Ordinal);
    }

    /// <summary>An inch drawing of an ANSI D sheet (34 x 22 in) stands on it 1:1, not moved and not scaled.</summary>
    /// <summary>A portrait border whose block is inserted turned, and one drawn in inches that a millimetre drawing inserts 25.4 times as large.</summary>
    [Theory]
    [InlineData(DxfUnits.Inch, 90, 1, 22, 34)]
    [InlineData(DxfUnits.Inch, 0, 1, 34, 22)]
    [InlineData(DxfUnits.Millimetre, 0, 25.4, 34, 22)]
    public void A_block_is_read_as_it_is_inserted(DxfUnits units, double rotation, double scale, double width, double height)
    {
        var document = new DxfDocument { Header = new DxfHeader { Units = units } };
        var block = new DxfBlock("FIRM");
        block.Entities.Add(new DxfPolyline("0", [new(new(0, 0)), new(new(width, 0)), new(new(width, height)), new(new(0, height))], true));
        block.Entities.Add(new DxfAttributeDefinition("SHEET", "SHEET", new DxfText("0", new(1, 2), 0.2, "")));
        document.Blocks.Add(block);
        document.Model.Add(new DxfInsert("0", "FIRM", new(rotation == 0 ? 0 : 34, 0)) { Rotation = rotation, ScaleX = scale, ScaleY = scale });
        var problems = new List<Problem>();

        TitleBlock read = TitleBlockFile.Read(Bytes(document), "title.dxf", problems)!;

        Assert.Empty(problems);
        Box box = Box.Around(read.Lines.SelectMany(Extents.Points));
        Assert.Equal(34 * 25.4, box.Width, 1e-6);
        Assert.Equal(22 * 25.4, box.Height, 1e-6);
        BlockAttribute field = Assert.Single(read.Fields);
        Assert.Equal(rotation, field.Rotation);
        Assert.Equal(0.2 * 25.4, field.Height, 1e-6);
        Assert.True(box.Contains(field.Position));
    }

    [Fact]
    public void A_title_block_on_a_layout_alone_is_read()
    {
        var document = new DxfDocument { Header = new DxfHeader { Units = DxfUnits.Inch } };
        var layout = new DxfLayout("FIRM", 34 * 25.4, 22 * 25.4) { Unit = DxfPaperUnit.Inch };
        layout.Entities.Add(new DxfLine("0", new(1, 1), new(33, 21)));
        layout.Entities.Add(new DxfAttributeDefinition("SHEET", "SHEET", new DxfText("0", new(30, 2), 0.2, "")));
        document.Layouts.Add(layout);
        var problems = new List<Problem>();

        TitleBlock read = TitleBlockFile.Read(Bytes(document), "title.dxf", problems)!;

        Assert.Empty(problems);
        Assert.Equal(32 * 25.4, Box.Around(read.Lines.SelectMany(Extents.Points)).Width, 1e-6);
        Assert.Equal("SHEET", Assert.Single(read.Fields).Tag);
    }

    private static byte[] Bytes(DxfDocument document)
    {
        using var stream = new MemoryStream();
        DxfWriter.Write(document, stream);
        return stream.ToArray();
    }

    [Fact]
    public void An_inch_title_block_fits_a_us_sheet_one_to_one()
    {
        DxfPolyline border = new("0", [new(new(0.5, 0.5)), new(new(33.5, 0.5)), new(new(33.5, 21.5)), new(new(0.5, 21.5))], true);
        TitleBlock block = TitleBlockFile.Read(Bytes(border), "title.dxf", [])!;

        Box box = Box.Around(block.On(TemplateReader.Default().SizeNamed("ANSI D")!)!.Lines.SelectMany(Extents.Points));

        Assert.Equal((12.7, 12.7, 850.9, 546.1), (Math.Round(box.Left, 6), Math.Round(box.Bottom, 6), Math.Round(box.Right, 6), Math.Round(box.Top, 6)));
    }
}

using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Dxf;
using SheetGen.Tests.Drawing;
using SheetGen.Tests.Outside;
using SheetGen.Writers.Dxf;
using SheetGen.Writers.Pdf;
using Xunit;

namespace SheetGen.Tests.Writers;

public class SheetWriterTests
{
    private static byte[] Bytes(Action<SheetSet, Stream> write, SheetSet set)
    {
        using var stream = new MemoryStream();
        write(set, stream);
        return stream.ToArray();
    }

    [Trait("Category", "Outside")]
    [Theory]
    [InlineData(false, null)]
    [InlineData(true, "agency-sample")]
    public void An_auditor_finds_nothing_to_mend(bool metric, string? layers)
    {
        SheetSet set = SampleSheets.Compose(metric ? SampleWalls.Metric : SampleWalls.TwoWalls, layers: layers);
        using var folder = new TemporaryFolder();
        foreach ((string name, Action<SheetSet, Stream> write) in new[] { ("sheets.dxf", (Action<SheetSet, Stream>)DxfSheetWriter.Write), ("plan.dxf", DxfPlanWriter.Write) })
        {
            string file = folder.File(name);
            File.WriteAllBytes(file, Bytes(write, set));

            OutsideResult result = OutsideReader.Script("audit_dxf.py", "ezdxf").Run(file);

            Assert.True(result.ExitCode == 0, result.Output + result.Errors);
            using JsonDocument report = JsonDocument.Parse(result.Output);
            Assert.Equal(metric ? 6 : 2, report.RootElement.GetProperty("units").GetInt32());
        }
    }

    [Fact]
    public void The_handles_of_both_files_are_sound()
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.TwoWalls);

        Assert.Empty(HandleGraph.Problems(Bytes(DxfSheetWriter.Write, set)));
        Assert.Empty(HandleGraph.Problems(Bytes(DxfPlanWriter.Write, set)));
    }

    [Trait("Category", "Outside")]
    [Theory]
    [InlineData("sheets.dxf")]
    [InlineData("plan.dxf")]
    public void Another_program_draws_both_files(string name)
    {
        using var folder = new TemporaryFolder();
        string file = folder.File(name);
        File.WriteAllBytes(file, Bytes(name == "plan.dxf" ? DxfPlanWriter.Write : DxfSheetWriter.Write, SampleSheets.Compose(SampleWalls.Metric)));

        OutsideReader.LibreCad.Run("dxf2pdf", "-a", "-t", folder.Path, file);

        Assert.True(new FileInfo(Assert.Single(Directory.GetFiles(folder.Path, "*.pdf"))).Length > 5000);
    }

    [Trait("Category", "Outside")]
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_third_reader_finds_the_same_nails_layers_and_layouts(bool metric)
    {
        SheetSet set = SampleSheets.Compose(metric ? SampleWalls.Metric : SampleWalls.TwoWalls);
        using var folder = new TemporaryFolder();
        string file = folder.File("sheets.dxf"), plan = folder.File("plan.dxf");
        File.WriteAllBytes(file, Bytes(DxfSheetWriter.Write, set));
        File.WriteAllBytes(plan, Bytes(DxfPlanWriter.Write, set));

        using JsonDocument sheets = Third(file), trueCoordinates = Third(plan);

        JsonElement root = sheets.RootElement;
        Assert.Equal(metric ? 6 : 2, root.GetProperty("unit").GetInt32());
        Assert.Equal(["Model", .. set.Sheets.Select(s => s.Name)], Strings(root, "layouts"));
        Assert.Empty(Strings(root, "used").Except(Strings(root, "layers")));
        Assert.Empty(set.Templates.Layers.Values.Select(l => l.Name).Except(Strings(root, "layers")));
        JsonElement[] references = [.. root.GetProperty("references").EnumerateArray()];
        Assert.Equal(set.Sheets.Select(s => s.Name), references.Where(r => r.GetProperty("paper").GetBoolean() && r.GetProperty("attributes").TryGetProperty("SHEET", out _))
            .Select(r => r.GetProperty("attributes").GetProperty("SHEET").GetString()));
        JsonElement[] nails = [.. references.Where(r => r.GetProperty("block").GetString()!.StartsWith("NAIL", StringComparison.Ordinal))];
        BlockReference[] drawn = [.. set.Model.OfType<BlockReference>().Where(r => r.Block.StartsWith("NAIL", StringComparison.Ordinal))];
        Assert.Equal(drawn.Length, nails.Length);
        foreach (BlockReference nail in drawn)
        {
            JsonElement read = Assert.Single(nails, r =>
                Math.Abs(nail.Position.X - r.GetProperty("x").GetDouble()) < 1e-6 && Math.Abs(nail.Position.Y - r.GetProperty("y").GetDouble()) < 1e-6);
            Assert.Equal(nail.Block, read.GetProperty("block").GetString());
            JsonElement attributes = read.GetProperty("attributes");
            Assert.All(nail.Attributes.Where(a => a.Key != "MARK"), a => Assert.Equal(a.Value, attributes.GetProperty(a.Key).GetString()));
            // The mark on the sheet is the whole or a tail of it after a dash.
            string mark = attributes.GetProperty("MARK").GetString()!;
            Assert.True(mark == nail.Nail || nail.Nail!.EndsWith("-" + mark, StringComparison.Ordinal), $"{mark} of {nail.Nail}");
        }
        Assert.Equal(set.Plan.Count(p => p is Text), trueCoordinates.RootElement.GetProperty("counts").GetProperty("model TEXT").GetInt32());
    }

    private static JsonDocument Third(string file)
    {
        OutsideResult result = OutsideReader.NodeDxf().Run(file);
        Assert.True(result.ExitCode == 0, result.Errors);
        return JsonDocument.Parse(result.Output);
    }

    private static IEnumerable<string> Strings(JsonElement of, string name) => of.GetProperty(name).EnumerateArray().Select(e => e.GetString()!);

    /// <summary>Nails of a page drawn from the PDF, looked for where the DXF layout has them: ink on the ring about each, none just outside it.</summary>
    [Trait("Category", "Outside")]
    [Fact]
    public void The_pdf_shows_nails_where_the_dxf_layout_has_them()
    {
        const double PixelsPerMillimetre = 12;
        SheetSet set = SampleSheets.Compose(SampleWalls.Metric);
        using var folder = new TemporaryFolder();
        string file = folder.File("sheets.pdf");
        File.WriteAllBytes(file, Bytes(PdfSheetWriter.Write, set));
        OutsideReader.Program("pdftoppm").Run("-gray", "-f", "2", "-l", "2", "-r", (PixelsPerMillimetre * 25.4).ToString(CultureInfo.InvariantCulture), "-singlefile", file, folder.File("page"));
        byte[] bytes = File.ReadAllBytes(folder.File("page.pgm"));
        string[] head = System.Text.Encoding.ASCII.GetString(bytes, 0, 32).Split((char[])[' ', '\n'], 5);
        int width = int.Parse(head[1], CultureInfo.InvariantCulture), height = int.Parse(head[2], CultureInfo.InvariantCulture);
        int start = bytes.Length - width * height;
        bool Ink(double x, double y) => Enumerable.Range(-1, 3).Any(dx => Enumerable.Range(-1, 3).Any(dy =>
            bytes[start + (height - 1 - (int)Math.Round(y * PixelsPerMillimetre) + dy) * width + (int)Math.Round(x * PixelsPerMillimetre) + dx] < 160));
        using var stream = new MemoryStream(Bytes(DxfSheetWriter.Write, set));
        DxfDocument document = DxfReader.Read(stream).Document!;
        DxfViewport viewport = document.Layouts["SN-02"].Viewports[0];
        var center = new DxfPoint(viewport.Center.X, viewport.Center.Y);

        int looked = 0;
        foreach (DxfInsert nail in document.Model.OfType<DxfInsert>().Where(i => i.Block == "NAIL-GRID"))
        {
            DxfPoint at = center + (nail.Position - viewport.ViewCenter) * (1 / viewport.Scale);
            if (Math.Abs(at.X - center.X) > viewport.Width / 2 - 3 || Math.Abs(at.Y - center.Y) > viewport.Height / 2 - 3)
                continue;
            looked++;
            bool[] ring = [.. Enumerable.Range(0, 16).Select(i => Ink(at.X + NailSymbols.Radius * Math.Cos(i * Math.PI / 8), at.Y + NailSymbols.Radius * Math.Sin(i * Math.PI / 8)))];
            int outside = Enumerable.Range(0, 16).Count(i => Ink(at.X + 1.4 * NailSymbols.Radius * Math.Cos(i * Math.PI / 8), at.Y + 1.4 * NailSymbols.Radius * Math.Sin(i * Math.PI / 8)));
            Assert.True(ring.All(r => r) && outside < 10, $"no nail at {at.X:0.00}, {at.Y:0.00}: {ring.Count(r => r)} of 16 on the ring, {outside} outside");
        }
        Assert.True(looked > 15, $"{looked} nails");
    }

    [Fact]
    public void The_plan_lies_at_true_coordinates()
    {
        using var stream = new MemoryStream(Bytes(DxfPlanWriter.Write, SampleSheets.Compose(SampleWalls.TwoWalls)));
        DxfDocument document = DxfReader.Read(stream).Document!;

        DxfPolyline line = document.Model.OfType<DxfPolyline>().First(p => p.Layer == "C-WALL-CNTR");

        Assert.Equal(2000, line.Vertices[0].Point.X, 6);
        Assert.Equal(5000, line.Vertices[0].Point.Y, 6);
    }

    [Fact]
    public void The_same_set_gives_the_same_bytes()
    {
        SheetSet first = SampleSheets.Compose(SampleWalls.TwoWalls), second = SampleSheets.Compose(SampleWalls.TwoWalls);

        Assert.Equal(Bytes(DxfSheetWriter.Write, first), Bytes(DxfSheetWriter.Write, second));
        Assert.Equal(Bytes(DxfPlanWriter.Write, first), Bytes(DxfPlanWriter.Write, second));
        Assert.Equal(Bytes(PdfSheetWriter.Write, first), Bytes(PdfSheetWriter.Write, second));
    }

    [Trait("Category", "Outside")]
    [Fact]
    public void The_pdf_can_be_searched_and_shows_texts_where_the_dxf_has_them()
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.Metric);
        using var folder = new TemporaryFolder();
        string file = folder.File("sheets.pdf"), boxes = folder.File("boxes.html");
        File.WriteAllBytes(file, Bytes(PdfSheetWriter.Write, set));
        OutsideReader.PdfToText.Run("-f", "2", "-l", "2", "-bbox", file, boxes);
        var words = Regex.Matches(File.ReadAllText(boxes), "xMin=\"([\\d.]+)\" yMin=\"([\\d.]+)\" xMax=\"([\\d.]+)\" yMax=\"([\\d.]+)\">([^<]+)<")
            .Select(m => (X: Number(m.Groups[1]), Right: Number(m.Groups[3]), Low: Number(m.Groups[4]), High: Number(m.Groups[2]), Word: m.Groups[5].Value)).ToList();
        using var stream = new MemoryStream(Bytes(DxfSheetWriter.Write, set));
        DxfDocument document = DxfReader.Read(stream).Document!;
        DxfLayout layout = document.Layouts["SN-02"];
        DxfViewport viewport = layout.Viewports[0];

        DxfText[] marks = [.. document.Model.OfType<DxfInsert>().SelectMany(i => i.Attributes)
            .Where(a => a.Tag == "MARK" && !a.Invisible && Regex.IsMatch(a.Text.Value, "^N-\\d-\\d\\d$")).Select(a => a.Text)];

        Assert.True(marks.Length > 20);
        foreach (DxfText mark in marks)
        {
            DxfPoint at = viewport.Center + (mark.Position - viewport.ViewCenter) * (1 / viewport.Scale);
            var word = words.Where(w => w.Word == mark.Value).MinBy(w => Math.Abs(w.Low / 72 * 25.4 - (layout.PaperHeight - at.Y)));
            Assert.InRange(layout.PaperHeight - at.Y, word.High / 72 * 25.4, word.Low / 72 * 25.4);
            Assert.InRange(at.X, word.X / 72 * 25.4, word.Right / 72 * 25.4);
        }
    }

    [Fact]
    public void The_pdf_has_a_bookmark_and_a_label_a_page_and_a_switch_a_layer()
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.Metric);

        string text = System.Text.Encoding.Latin1.GetString(Bytes(PdfSheetWriter.Write, set));

        Assert.Equal(set.Sheets.Count, Regex.Count(text, "/Title\\s*<FEFF0053004E002D"));
        Assert.Contains("/PageLabels", text, StringComparison.Ordinal);
        Assert.Contains("(S-NAIL-HEAD)", text, StringComparison.Ordinal);
        Assert.Contains("/OCProperties", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_sheet_is_a_layout_with_locked_viewports_at_the_scale_and_a_title_block()
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.TwoWalls);
        using var stream = new MemoryStream(Bytes(DxfSheetWriter.Write, set));
        DxfDocument document = DxfReader.Read(stream).Document!;

        Assert.Equal(set.Sheets.Select(s => s.Name), document.Layouts.Select(l => l.Name));
        foreach (Sheet sheet in set.Sheets)
        {
            DxfLayout layout = document.Layouts[sheet.Name];
            DxfInsert title = Assert.Single(layout.Entities.OfType<DxfInsert>(), i => i.Block.StartsWith("SHEET-", StringComparison.Ordinal));
            Assert.Equal(sheet.Name, title.Attributes.Single(a => a.Tag == "SHEET").Text.Value);
            Assert.Equal(sheet.Viewports.Count, layout.Viewports.Count);
            Assert.All(layout.Viewports, v => Assert.True(v.Locked));
        }
        double scale = set.Sheets.Single(s => s.Name == "SN-02").Viewports[0].UnitsPerMillimetre;
        Assert.Contains(set.Templates.FootScales, s => Math.Abs(s - scale * 25.4) < 1e-9);
        // In inches of paper a foot scale is a round number.
        Assert.Equal(scale * 25.4, document.Layouts["SN-02"].Viewports[0].Scale, 6);
    }

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);
}

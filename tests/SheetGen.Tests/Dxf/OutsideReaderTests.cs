using System.Globalization;
using System.Text.Json;
using SheetGen.Dxf;
using SheetGen.Tests.Outside;
using Xunit;

namespace SheetGen.Tests.Dxf;

[Trait("Category", "Outside")]
public class OutsideReaderTests
{
    [Theory]
    [InlineData(DxfVersion.AC1015)]
    [InlineData(DxfVersion.AC1032)]
    public void An_auditor_finds_nothing_to_mend(DxfVersion version)
    {
        var document = SampleDocument.Everything();
        var report = Audit(document, version);

        Assert.Equal(version.ToString(), report.GetProperty("version").GetString());
        Assert.Equal(2, report.GetProperty("units").GetInt32());
        Assert.Equal(document.Layers.Select(l => l.Name), Strings(report.GetProperty("layers")));
        var layouts = report.GetProperty("layouts");
        Assert.Equal(["Model", .. document.Layouts.Select(l => l.Name)], layouts.EnumerateObject().Select(p => p.Name));

        var model = layouts.GetProperty("Model");
        Assert.Equal(3, model.GetProperty("counts").GetProperty("DIMENSION").GetInt32());
        Assert.Contains("right top", Strings(model.GetProperty("texts")));
        Assert.Contains(document.Model.OfType<DxfMText>().First().Value, Strings(model.GetProperty("texts")));
        Assert.Equal("N-1 é", model.GetProperty("attributes")[0].GetProperty("ID").GetString());
        Assert.Equal(3, model.GetProperty("xdata").GetArrayLength());

        var viewport = layouts.GetProperty("S-1").GetProperty("viewports")[0];
        Assert.Equal((10.0, true, 2), (viewport.GetProperty("scale").GetDouble(), viewport.GetProperty("locked").GetBoolean(), viewport.GetProperty("frozen").GetInt32()));
    }

    [Fact]
    public void An_auditor_accepts_an_empty_document() => Audit(new DxfDocument(), DxfVersion.AC1015);

    [Fact]
    public void The_auditor_is_strict()
    {
        using var folder = new TemporaryFolder();
        var file = folder.File("bad.dxf");
        var text = System.Text.Encoding.ASCII.GetString(SampleDocument.Write(SampleDocument.Everything()));
        var at = text.IndexOf("AcDbCircle", StringComparison.Ordinal);
        File.WriteAllText(file, text[..(at - 20)] + text[(at - 20)..at].Replace("\r\n  8\r\n0\r\n", "\r\n  8\r\nX\r\n") + text[at..]);

        var result = OutsideReader.Script("audit_dxf.py", "ezdxf").Run(file);

        Assert.Equal(1, result.ExitCode);
        Assert.Contains("layer X", result.Output);
    }

    [Theory]
    [InlineData(DxfVersion.AC1015)]
    [InlineData(DxfVersion.AC1032)]
    public void Another_program_draws_it(DxfVersion version)
    {
        using var folder = new TemporaryFolder();
        var file = folder.File("drawing.dxf");
        File.WriteAllBytes(file, SampleDocument.Write(SampleDocument.Everything(), version));

        var result = OutsideReader.LibreCad.Run("dxf2pdf", "-a", "-t", folder.Path, file);

        Assert.Equal(0, result.ExitCode);
        var pdf = File.ReadAllBytes(folder.File("drawing.pdf"));
        Assert.True(pdf.AsSpan().StartsWith("%PDF"u8) && pdf.Length > 5_000, $"a PDF of {pdf.Length} bytes");
    }

    [Theory]
    [InlineData("R12")]
    [InlineData("R2000")]
    [InlineData("R2018")]
    public void What_another_program_writes_is_read(string release)
    {
        using var folder = new TemporaryFolder();
        var file = folder.File("foreign.dxf");
        var made = OutsideReader.Script("make_foreign_dxf.py", "ezdxf").Run(release, file);
        Assert.True(made.ExitCode == 0, made.Errors);

        var result = DxfReader.Read(File.ReadAllBytes(file));

        Assert.True(result.Succeeded, result.Error?.ToString());
        var model = result.Document.Model;
        Assert.Contains(new DxfLine("WALL", new(1, 2), new(3, 4)), model);
        Assert.Contains(new DxfCircle("WALL", new(-5, 6), 2), model);
        Assert.Contains(new DxfPolyline("WALL", [new(new(0, 0), 0.5), new DxfPoint(4, 0), new DxfPoint(4, 3)], true), model);
        Assert.Contains(model, e => e is DxfText { Value: "± 5° é" });
        var insert = Assert.Single(model.OfType<DxfInsert>());
        Assert.Equal(("MARK", new DxfPoint(7, 8), "N-7"), (insert.Block, insert.Position, insert.Attributes.Single().Text.Value));
        Assert.Contains(result.Warnings, w => w.Message == "LINE: Z is not 0; X and Y are taken");
        Audit(result.Document, DxfVersion.AC1015);
    }

    [Fact]
    public void A_large_drawing_is_written_and_read()
    {
        const int Count = 50_000;
        var document = new DxfDocument();
        document.AppIds.Add(new("SAMPLE"));
        var block = new DxfBlock("MARK") { Entities = { new DxfCircle("0", new(0, 0), 0.5), new DxfAttributeDefinition("ID", "?", new("0", new(1, 0), 0.4, "")) } };
        document.Blocks.Add(block);
        for (var i = 0; i < Count; i++)
        {
            var id = i.ToString(CultureInfo.InvariantCulture);
            document.Model.Add(DxfInsert.Of("0", block, new(i % 500, i / 500), new Dictionary<string, string> { ["ID"] = id }) with
            {
                XData = [new("SAMPLE", [new DxfXValue.Text(id)])],
            });
        }

        var read = SampleDocument.Read(SampleDocument.Write(document));

        Assert.Equal(document.Model, read.Model);
    }

    private static JsonElement Audit(DxfDocument document, DxfVersion version)
    {
        using var folder = new TemporaryFolder();
        var file = folder.File("drawing.dxf");
        File.WriteAllBytes(file, SampleDocument.Write(document, version));
        var result = OutsideReader.Script("audit_dxf.py", "ezdxf").Run(file);
        Assert.True(result.ExitCode == 0, result.Output + result.Errors);
        return JsonDocument.Parse(result.Output).RootElement;
    }

    private static IEnumerable<string?> Strings(JsonElement array) => array.EnumerateArray().Select(e => e.GetString());
}

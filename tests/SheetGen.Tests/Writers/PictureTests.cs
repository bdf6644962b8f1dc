using System.Buffers.Binary;
using System.IO.Compression;
using System.Xml.Linq;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Tests.Drawing;
using SheetGen.Tests.ProjectFile;
using SheetGen.Writers.Picture;
using Xunit;

namespace SheetGen.Tests.Writers;

/// <summary>The picture shows what the sheets show.</summary>
public sealed class PictureTests
{
    [Fact]
    public void The_svg_has_every_text_of_the_sheets_with_plan_and_elevation()
    {
        SheetSet set = Set();
        XElement svg = XElement.Parse(System.Text.Encoding.UTF8.GetString(Written(set, SvgPicture.Write)));
        XNamespace space = "http://www.w3.org/2000/svg";

        string[] texts = [.. svg.Descendants(space + "text").Select(t => t.Value).Order(StringComparer.Ordinal)];

        Sheet[] seen = [.. set.Sheets.Where(s => s.Title.StartsWith("PLAN", StringComparison.Ordinal) || s.Title.StartsWith("ELEVATION", StringComparison.Ordinal))];
        string[] expected = [.. seen.SelectMany(s => SheetPicture.Of(set, s)).Select(p => p.Primitive).OfType<SheetGen.Drawing.Primitives.Text>()
            .Where(t => t.Value.Length > 0 && set.LayerOf(t.Layer).Plot).Select(t => t.Value).Order(StringComparer.Ordinal)];
        Assert.Equal(expected, texts);
        Assert.NotEmpty(texts);
        Assert.Equal(Written(set, SvgPicture.Write), Written(set, SvgPicture.Write));
    }

    /// <summary>Read by the form of ISO/IEC 15948: signature, header, and rows that unpack to the stated size.</summary>
    [Fact]
    public void The_png_unpacks_to_its_stated_size_and_has_ink_where_the_frame_is()
    {
        SheetSet set = Set();
        byte[] png = Written(set, PngPicture.Write);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], png[..8]);
        int width = BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), height = BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20));

        byte[] rows = Unpacked(png);

        Assert.Equal((width + 1) * height, rows.Length);
        Assert.All(Enumerable.Range(0, height), y => Assert.Equal(0, rows[y * (width + 1)]));
        int dark = rows.Where((b, i) => i % (width + 1) != 0 && b < 128).Count();
        Assert.InRange(dark / (double)(width * height), 0.002, 0.2);
    }

    private static SheetSet Set()
    {
        WallProject project = SampleLayout.Read(Repository.Read("docs", "cookbook", "02-under-a-bridge.yaml"));
        return SampleSheets.Compose(project, SampleLayout.Make(project));
    }

    private static byte[] Unpacked(byte[] png)
    {
        using var data = new MemoryStream();
        for (int at = 8; at < png.Length;)
        {
            int length = BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(at));
            if (System.Text.Encoding.ASCII.GetString(png, at + 4, 4) == "IDAT")
                data.Write(png, at + 8, length);
            at += length + 12;
        }
        data.Position = 0;
        using var zlib = new ZLibStream(data, CompressionMode.Decompress);
        using var rows = new MemoryStream();
        zlib.CopyTo(rows);
        return rows.ToArray();
    }

    private static byte[] Written(SheetSet set, Action<SheetSet, Stream> write)
    {
        using var stream = new MemoryStream();
        write(set, stream);
        return stream.ToArray();
    }
}

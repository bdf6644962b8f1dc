using System.Globalization;
using System.Text;
using FsCheck;
using FsCheck.Xunit;
using SheetGen.Dxf;
using Xunit;

namespace SheetGen.Tests.Dxf;

public class RoundTripTests
{
    [Theory]
    [InlineData(DxfVersion.AC1015)]
    [InlineData(DxfVersion.AC1032)]
    public void What_is_written_is_read_again(DxfVersion version)
    {
        var document = SampleDocument.Everything();

        DocumentAssert.Equal(document, SampleDocument.Read(SampleDocument.Write(document, version)));
    }

    [Theory]
    [InlineData(DxfVersion.AC1015)]
    [InlineData(DxfVersion.AC1032)]
    public void A_document_read_is_written_with_the_same_bytes(DxfVersion version)
    {
        var bytes = SampleDocument.Write(SampleDocument.Everything(), version);

        Assert.Equal(bytes, SampleDocument.Write(SampleDocument.Read(bytes), version));
    }

    [Fact]
    public void The_culture_changes_nothing()
    {
        var bytes = SampleDocument.Write(SampleDocument.Everything());
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("1,5", 1.5.ToString("0.0", CultureInfo.CurrentCulture));
            Assert.Equal(bytes, SampleDocument.Write(SampleDocument.Everything()));
            DocumentAssert.Equal(SampleDocument.Everything(), SampleDocument.Read(bytes));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Release_2000_is_pure_ascii_with_full_line_ends()
    {
        var bytes = SampleDocument.Write(SampleDocument.Everything());
        var text = Encoding.ASCII.GetString(bytes);

        Assert.DoesNotContain(bytes, b => b > 126);
        Assert.Equal(text.Count(c => c == '\n'), text.Split("\r\n").Length - 1);
        Assert.EndsWith("\r\n  0\r\nEOF\r\n", text);
    }

    [Fact]
    public void A_document_without_layouts_gets_the_one_that_programs_need()
    {
        var read = SampleDocument.Read(SampleDocument.Write(new DxfDocument()));

        Assert.Equal("Layout1", Assert.Single(read.Layouts).Name);
    }

    [Fact]
    public void Names_beyond_ascii_are_kept()
    {
        var document = new DxfDocument();
        document.Layers.Add(new("Größe ± Ω"));
        document.Model.Add(new DxfPointEntity("Größe ± Ω", new(1, 2)));

        Assert.Equal(document.Model, SampleDocument.Read(SampleDocument.Write(document)).Model);
    }

    [Fact]
    public void Well_known_pattern_keeps_its_geometry()
    {
        var hatch = new DxfHatch("0", [[new DxfPoint(0, 0), new DxfPoint(1, 0), new DxfPoint(1, 1)]]) { Pattern = DxfHatchPattern.Ansi31(8) };

        var read = (DxfHatch)SampleDocument.Read(SampleDocument.Write(SampleDocument.WithEntities(hatch))).Model.Single();

        // 45 degree lines 1 apart: offset (-1/sqrt 2, 1/sqrt 2).
        var line = Assert.Single(read.Pattern!.Lines);
        Assert.Equal(-Math.Sqrt(0.5), line.Offset.X, 12);
        Assert.Equal(Math.Sqrt(0.5), line.Offset.Y, 12);
        Assert.Equal(("ANSI31", DxfPatternKind.Predefined, 8.0), (read.Pattern.Name, read.Pattern.Kind, read.Pattern.Scale));
    }

    [Property(MaxTest = 300)]
    public void Numbers_come_back_to_15_digits(NormalFloat x, NormalFloat y)
    {
        var point = new DxfPoint(Fit(x.Get), Fit(y.Get));
        var bytes = SampleDocument.Write(SampleDocument.WithEntities(new DxfPointEntity("0", point)));

        var read = (DxfPointEntity)SampleDocument.Read(bytes).Model.Single();

        Assert.True(IsSame(point.X, read.Position.X) && IsSame(point.Y, read.Position.Y), $"{point} became {read.Position}");
        foreach (var number in Values(bytes, 10, 20, 30, 40, 42, 45))
        {
            Assert.Matches(@"^-?\d+\.\d+$", number);
            Assert.DoesNotMatch(@"^-0\.0+$", number);
        }

        static double Fit(double value) => Math.Abs(value) < 1e15 ? value : Math.IEEERemainder(value, 1e12);
        static bool IsSame(double a, double b) => Math.Abs(a - b) <= Math.Max(Math.Abs(a) * 1e-14, 1e-12);
    }

    [Theory]
    [InlineData(0.0, "0.0")]
    [InlineData(-1e-15, "0.0")]
    [InlineData(1e-7, "0.0000001")]
    [InlineData(1.25e14, "125000000000000.0")]
    [InlineData(0.1 + 0.2, "0.3")]
    [InlineData(-12.5, "-12.5")]
    public void Numbers_are_plain(double value, string expected)
    {
        var bytes = SampleDocument.Write(SampleDocument.WithEntities(new DxfCircle("0", new(value, 0), 1)));

        Assert.Contains(" 10\r\n" + expected + "\r\n 20\r\n0.0\r\n 30\r\n0.0\r\n 40\r\n1.0\r\n", Encoding.ASCII.GetString(bytes));
    }

    [Property(MaxTest = 300)]
    public void Any_text_comes_back(string? some, bool unicode)
    {
        var text = some ?? "";
        var document = SampleDocument.WithEntities(
            new DxfText("0", new(0, 0), 1, text),
            new DxfMText("0", new(0, 0), 1, text),
            new DxfPointEntity("0", new(0, 0)) { XData = [new("ACAD", [new DxfXValue.Text(text[..Math.Min(255, text.Length)])])] });

        var read = SampleDocument.Read(SampleDocument.Write(document, unicode ? DxfVersion.AC1032 : DxfVersion.AC1015));

        Assert.Equal(document.Model, read.Model);
    }

    [Theory]
    [InlineData("%%")]
    [InlineData("%%d 100%%% %%%%c %")]
    [InlineData("\\U+0041 \\u+00e9 \\M+1A2B3 \\P \\\\U+0041 \\")]
    [InlineData("{\\fArial;x} \\S1/2; ^J ^ J ^")]
    [InlineData("  blanks around  ")]
    [InlineData("a\tb\r\nc\n\nd\u0000\u001f\u007f\u0085\u2028\ufeff")]
    [InlineData("\ud83d\ude00 \ud800 \udc00")]
    public void Text_that_looks_like_codes_comes_back(string text)
    {
        Any_text_comes_back(text, false);
        Any_text_comes_back(text, true);
    }

    [Property(MaxTest = 100)]
    public void Long_text_is_cut_between_codes(NonEmptyString piece)
    {
        var text = string.Concat(Enumerable.Repeat(piece.Get + "\\{é%%\n", 80));
        var document = SampleDocument.WithEntities(new DxfMText("0", new(0, 0), 1, text));

        var bytes = SampleDocument.Write(document);

        Assert.Equal(document.Model, SampleDocument.Read(bytes).Model);
        var chunks = Values(bytes, 3).Where(v => v.Length > 100).ToList();
        Assert.NotEmpty(chunks);
        Assert.All(chunks, c => Assert.InRange(c.Length, 240, 250));
        Assert.All(chunks, c => Assert.DoesNotMatch(@"(^|[^\\])(\\\\)*\\(U(\+[0-9A-F]{0,3})?)?$", c));
    }

    private static IEnumerable<string> Values(byte[] bytes, params int[] codes)
    {
        var lines = Encoding.ASCII.GetString(bytes).Split("\r\n");
        for (var i = 0; i + 1 < lines.Length; i += 2)
        {
            if (codes.Contains(int.Parse(lines[i], CultureInfo.InvariantCulture)) && (lines[i + 1].Length == 0 || codes is [3] || lines[i + 1][0] is '-' or (>= '0' and <= '9')))
                yield return lines[i + 1];
        }
    }
}

using System.Text;
using System.Text.RegularExpressions;
using PdfSharp.Drawing;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Tests.Drawing;
using SheetGen.Tests.Outside;
using SheetGen.Writers.Pdf;
using Xunit;

namespace SheetGen.Tests.Writers;

/// <summary>Every sign of a text is drawn on every machine: by the carried font, or as its code point.</summary>
public sealed class SheetFontTests
{
    private const string Chinese = "\u4e2d";

    [Fact]
    public void Signs_that_the_carried_font_lacks_are_drawn_as_their_code_points()
    {
        const string Known = "ABC abc 0123 °±×→Ø½² áéñü Ωα Жд \u05d0\u05ea";
        Assert.Empty(SheetFont.Lacking(Known));
        Assert.Equal(Known, SheetFont.Shown(Known));
        Assert.Equal([0x58C1, 0x1F6A7], SheetFont.Lacking("wall \u58c1 \U0001F6A7 \u58c1"));
        Assert.Equal("wall [U+58C1] [U+1F6A7] [U+58C1]é", SheetFont.Shown("wall \u58c1 \U0001F6A7 \u58c1é"));
        Assert.All(Enumerable.Range(0, char.MaxValue + 1).Select(c => ((char)c).ToString()).Where(c => SheetFont.Lacking(c).Any()), c => Assert.Matches(@"^\[U\+[0-9A-F]{4}\]$", SheetFont.Shown(c)));
    }

    /// <summary>What is measured is what is drawn: beyond ASCII the font's own advances, as PDFsharp reads them, for code points the sum of their signs.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Texts_are_measured_as_wide_as_they_are_drawn(bool bold)
    {
        var style = new TextStyle("T", 2, 1, bold);
        using XGraphics page = XGraphics.CreateMeasureContext(new XSize(100, 100), XGraphicsUnit.Point, XPageDirection.Downwards);
        PdfSheetWriter.UseSheetFonts();
        var font = new XFont(SheetFonts.Family, 1000, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular);
        double Of(string text) => TextMeasure.Advance(text, TextMeasure.CapHeight, style);
        int looked = 0;
        for (int c = 0x80; c <= char.MaxValue; c++)
        {
            string text = ((char)c).ToString();
            if (c is >= 0xE000 and <= 0xF8FF or 0xB0 or 0xB1 or 0xD7 || SheetFont.Lacking(text).Any() || char.IsSurrogate((char)c))
                continue;
            looked++;
            Assert.Equal(page.MeasureString(text, font).Width / 1000, Of(text), 0.0006);
        }
        Assert.InRange(looked, 2500, 3100);
        Assert.Equal(Of("[U+4E2D]"), Of(Chinese), 9);
        Assert.Equal(Of("a[U+1F6A7]"), Of("a\U0001F6A7"), 9);
    }

    /// <summary>A sheet with a Chinese and a Hebrew word: one warning, and the PDF's own text layer says what is drawn.</summary>
    [Trait("Category", "Outside")]
    [Fact]
    public void A_pdf_has_the_code_point_of_a_sign_that_its_font_lacks_and_hebrew_in_its_order()
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.Metric);
        Sheet first = set.Sheets[0];
        Text Word(double y, string text) => new(LayerRole.Border, TextRole.Heading, new Point2(50, y), 4, text);
        set = set with { Sheets = [first with { Paper = [.. first.Paper, Word(60, $"PILE{Chinese}"), Word(80, "\u05d0\u05d1\u05d2 12")] }, .. set.Sheets.Skip(1)] };
        Finding said = Assert.Single(SheetSigns.Findings(set, _ => null));
        Assert.Equal("the sheet font has no sign for U+4E2D (first in \"PILE\u4e2d\"): the PDF has [U+4E2D] and the like in their place; the DXF has the signs, in a font of the machine that opens it", said.Message);
        using var folder = new TemporaryFolder();
        string file = folder.File("sheets.pdf"), text = folder.File("text.txt");
        using (FileStream stream = File.Create(file))
            PdfSheetWriter.Write(set, stream);
        OutsideReader.PdfToText.Run("-f", "1", "-l", "1", "-bbox", file, text);
        string[] words = [.. Regex.Matches(File.ReadAllText(text), "xMin=\"([\\d.]+)\"[^>]*>([^<]+)<").Select(m => m.Groups[2].Value)];
        Assert.Contains("PILE[U+4E2D]", words);
        Assert.Contains(words, w => w.Contains('\u05d0'));
    }

    /// <summary>A title of the project file has a sign that the font lacks, another comes from elsewhere: the first has its place, under the file's name alone.</summary>
    [Fact]
    public void A_sign_that_the_font_lacks_is_named_with_its_place_in_the_project_file()
    {
        ReadResult read = ProjectReader.ReadText($"format: 1\nproject:\n  number: 1 # {Chinese}\n  title: [a, b{Chinese}]\n", "some/where/wall.yaml");
        Assert.Null(read.SpotOfSign(new Rune(0x1F6A7)));
        SheetSet set = SampleSheets.Compose(SampleWalls.Metric);
        set = set with { Sheets = [set.Sheets[0] with { Paper = [new Text(LayerRole.Border, TextRole.Heading, new Point2(50, 60), 4, $"b{Chinese}\U0001F6A7")] }] };
        Assert.StartsWith(
            $"the sheet font has no sign for U+4E2D (in wall.yaml:4:14), U+1F6A7 (first in \"b{Chinese}\U0001F6A7\"): ",
            Assert.Single(SheetSigns.Findings(set, read.SpotOfSign)).Message, StringComparison.Ordinal);
        Assert.Empty(SheetSigns.Findings(SampleSheets.Compose(SampleWalls.Metric), read.SpotOfSign));
    }

    /// <summary>By the rules of Unicode Standard Annex 9, worked by hand; the first letters of the Hebrew alphabet are written as Latin capitals here.</summary>
    [Theory]
    [InlineData("wall 12", "wall 12")]
    [InlineData("ABC", "CBA")]
    [InlineData("wall ABC 12", "wall 12 CBA")]
    [InlineData("ABC DEF wall", "FED CBA wall")]
    [InlineData("ABC 10+25.50 D", "D 10+25.50 CBA")]
    [InlineData("ABC 15° D", "D 15° CBA")]
    [InlineData("12 ABC", "12 CBA")]
    [InlineData("ABC (D)", "(D) CBA")]
    [InlineData("ABC (D), wall", "(D) CBA, wall")]
    [InlineData("wall (ABC) 3", "wall (CBA) 3")]
    [InlineData("A-1-02", "1-02-A")]
    public void Hebrew_is_drawn_in_the_order_in_which_it_is_read(string text, string drawn)
    {
        static string Hebrew(string s) => string.Concat(s.Select(c => c is >= 'A' and <= 'F' ? (char)('\u05d0' + c - 'A') : c));
        Assert.Equal(Hebrew(drawn), ReadingOrder.Drawn(Hebrew(text)));
    }
}

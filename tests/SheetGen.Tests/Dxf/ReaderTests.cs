using System.Text;
using SheetGen.Dxf;
using Xunit;

namespace SheetGen.Tests.Dxf;

public class ReaderTests
{
    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void Line_ends_blank_lines_comments_and_order_do_not_matter(string end)
    {
        string[] lines =
        [
            "999", "made by hand", "", "  0", "SECTION", "2", "ENTITIES", "", "", "0", " LINE ", " 21", " 4", "11", "3.0E+00", "   ", "  8", "A",
            "20", "2", "999", "again", "10", "1", "0", "ENDSEC", "0", "EOF", "", "junk after the end", "",
        ];

        var result = Read(string.Join(end, lines));

        Assert.Equal([new DxfLine("A", new(1, 2), new(3, 4))], result.Document?.Model);
        Assert.Equal([new DxfProblem(11, "layer A is used but not defined; it is added") { Kind = DxfProblemKind.Definition }], result.Warnings);
    }

    [Fact]
    public void Unknown_entities_are_counted()
    {
        var result = Read(Entities("0", "REGION", "0", "POINT", "0", "SPLINE", "0", "REGION", "10", "not a number"));

        Assert.Single(result.Document!.Model);
        Assert.Equal(
            [new(6, "REGION is not read; it is left out") { Count = 2 }, new DxfProblem(10, "SPLINE is not read; it is left out")],
            result.Warnings);
    }

    [Theory]
    [InlineData(1252, "ANSI_1252", "Größe €")]
    [InlineData(1251, "ANSI_1251", "Стена")]
    [InlineData(932, "ANSI_932", "壁の図")]
    [InlineData(65001, "ANSI_1252", "Größe 壁")]
    public void Code_pages_are_read(int codePage, string name, string text)
    {
        var encoding = codePage == 65001 ? Encoding.UTF8 : CodePagesEncodingProvider.Instance.GetEncoding(codePage)!;
        var content = Lines("0", "SECTION", "2", "HEADER", "9", "$ACADVER", "1", "AC1015", "9", "$DWGCODEPAGE", "3", name, "0", "ENDSEC")
            + Entities("0", "TEXT", "40", "1", "1", text);

        var result = DxfReader.Read(encoding.GetBytes(content));

        Assert.Equal(text, ((DxfText)result.Document!.Model.Single()).Value);
        Assert.Empty(result.Warnings);
    }

    [Fact]
    public void Utf8_with_a_mark_and_an_unknown_code_page()
    {
        byte[] marked = [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(Entities("0", "TEXT", "40", "1", "1", "é"))];
        Assert.Equal("é", ((DxfText)DxfReader.Read(marked).Document!.Model.Single()).Value);

        var unknown = DxfReader.Read(Encoding.Latin1.GetBytes(Entities("0", "TEXT", "40", "1", "1", "é")));
        Assert.Equal("é", ((DxfText)unknown.Document!.Model.Single()).Value);
        Assert.Equal("code page '' is not known; ANSI_1252 is taken", Assert.Single(unknown.Warnings).Message);
    }

    [Theory]
    [InlineData("TEXT", "\\U+00B1 %%d %%P %%C %%65 %%065 %%uline%%u %%% 5%", "± ° ± Ø %%65 A line % 5%")]
    [InlineData("MTEXT", "{\\fArial|b1;Bold} \\H2.5x;tall\\PNew \\S1/2;\\~\\\\ \\{x\\} %%d \\pi1,2;in", "Bold tall\nNew 1/2\u00a0\\ {x} ° in")]
    [InlineData("MTEXT", "cut off \\", "cut off \\")]
    [InlineData("MTEXT", "\\A1;\\C7;\\Lunder\\l \\zodd \\S1^ 2;", "under \\zodd 1/2")]
    public void Control_codes_become_plain_text(string kind, string coded, string shown)
    {
        var entity = Read(Entities("0", kind, "40", "1", "1", coded)).Document!.Model.Single();

        Assert.Equal(shown, entity is DxfText text ? text.Value : ((DxfMText)entity).Value);
    }

    [Fact]
    public void Pieces_of_long_text_are_joined_whatever_their_order()
    {
        var result = Read(Entities("0", "MTEXT", "40", "1", "1", "end", "3", "first ", "3", "second "));

        Assert.Equal("first second end", ((DxfMText)result.Document!.Model.Single()).Value);
    }

    [Theory]
    [InlineData(4, 0, DxfTextAlign.Center, DxfTextVerticalAlign.Middle, 5, 6, 0)]
    [InlineData(2, 3, DxfTextAlign.Right, DxfTextVerticalAlign.Top, 5, 6, 0)]
    [InlineData(0, 1, DxfTextAlign.Left, DxfTextVerticalAlign.Bottom, 5, 6, 0)]
    [InlineData(0, 0, DxfTextAlign.Left, DxfTextVerticalAlign.Baseline, 2, 3, 0)]
    [InlineData(3, 0, DxfTextAlign.Left, DxfTextVerticalAlign.Baseline, 2, 3, 45)]
    [InlineData(5, 0, DxfTextAlign.Left, DxfTextVerticalAlign.Baseline, 2, 3, 45)]
    public void Text_is_placed(int along, int across, DxfTextAlign align, DxfTextVerticalAlign vertical, double x, double y, double rotation)
    {
        var text = (DxfText)Read(Entities("0", "TEXT", "40", "1", "1", "x", "10", "2", "20", "3", "11", "5", "21", "6", "72", $"{along}", "73", $"{across}"))
            .Document!.Model.Single();

        Assert.Equal((align, vertical, new DxfPoint(x, y), rotation), (text.Align, text.VerticalAlign, text.Position, text.Rotation));
    }

    [Fact]
    public void Z_is_dropped_with_a_warning()
    {
        var result = Read(Entities("0", "LINE", "10", "1", "30", "7", "0", "LINE", "31", "2", "0", "LWPOLYLINE", "38", "5", "10", "0", "20", "0", "10", "1", "20", "1"));

        Assert.Equal(3, result.Document!.Model.Count);
        Assert.Equal(
            [new(6, "LINE: Z is not 0; X and Y are taken") { Count = 2 }, new DxfProblem(16, "LWPOLYLINE: Z is not 0; X and Y are taken") { Count = 2 }],
            result.Warnings);
    }

    [Fact]
    public void Old_polylines_are_read()
    {
        var result = Read(Entities(
            "0", "POLYLINE", "66", "1", "70", "1", "40", "0.5",
            "0", "VERTEX", "10", "0", "20", "0", "42", "1", "0", "VERTEX", "10", "2", "20", "0",
            "0", "VERTEX", "10", "9", "20", "9", "70", "16", "0", "SEQEND",
            "0", "POLYLINE", "70", "8", "0", "VERTEX", "10", "1", "0", "VERTEX", "10", "2", "30", "4", "0", "SEQEND",
            "0", "POLYLINE", "70", "64", "0", "VERTEX", "10", "1", "0", "SEQEND",
            "0", "POINT", "10", "3"));

        Assert.Equal(
            [
                new DxfPolyline("0", [new(new(0, 0), 1), new DxfPoint(2, 0)], true) { Width = 0.5 },
                new DxfPolyline("0", [new DxfPoint(1, 0), new DxfPoint(2, 0)]),
                new DxfPointEntity("0", new(3, 0)),
            ],
            result.Document!.Model);
        Assert.Equal(["POLYLINE: Z is not 0; X and Y are taken", "POLYLINE that is a mesh is left out"], result.Warnings.Select(w => w.Message));
    }

    [Fact]
    public void A_block_in_rows_and_columns_becomes_many()
    {
        var result = Read(
            Lines("0", "SECTION", "2", "BLOCKS", "0", "BLOCK", "2", "B", "0", "POINT", "0", "ENDBLK", "0", "ENDSEC")
            + Entities("0", "INSERT", "2", "b", "10", "1", "50", "90", "70", "2", "71", "3", "44", "10", "45", "5"));

        var places = result.Document!.Model.Cast<DxfInsert>().Select(i => i.Position);
        Assert.Equal([new(1, 0), new(1, 10), new(-4, 0), new(-4, 10), new(-9, 0), new DxfPoint(-9, 10)], places);
    }

    [Fact]
    public void Blocks_that_are_missing_or_contain_themselves_do_no_harm()
    {
        var result = Read(
            Lines("0", "SECTION", "2", "BLOCKS", "0", "BLOCK", "2", "A", "0", "INSERT", "2", "B", "0", "ENDBLK",
                "0", "BLOCK", "2", "B", "0", "INSERT", "2", "A", "0", "POINT", "0", "ENDBLK", "0", "ENDSEC")
            + Entities("0", "INSERT", "2", "A", "0", "INSERT", "2", "NONE"));

        Assert.Equal("A", ((DxfInsert)Assert.Single(result.Document!.Model)).Block);
        Assert.Equal(
            ["block B: inserts of A are left out, because the block would contain itself", "INSERT of block NONE, which is not defined, is left out"],
            result.Warnings.Select(w => w.Message));
        Assert.Empty(DxfDocumentCheck.Problems(result.Document));
    }

    [Fact]
    public void What_cannot_be_drawn_is_left_out()
    {
        var result = Read(Entities("0", "CIRCLE", "40", "0", "0", "TEXT", "1", "x", "0", "LWPOLYLINE", "10", "1", "20", "1"));

        Assert.Empty(result.Document!.Model);
        Assert.Equal(
            [
                "CIRCLE is left out: the radius must be above 0",
                "TEXT is left out: height and width factor must be above 0",
                "LWPOLYLINE is left out: two or more corners are needed",
            ],
            result.Warnings.Select(w => w.Message));
    }

    [Fact]
    public void Hatch_edges_become_outlines()
    {
        // A half disc of an arc clockwise over the top, angles counted clockwise, and its diameter; then a full circle.
        var result = Read(Entities(
            "0", "HATCH", "2", "SOLID", "70", "1", "91", "2",
            "92", "1", "93", "2",
            "72", "2", "10", "0", "20", "0", "40", "2", "50", "180", "51", "360", "73", "0",
            "72", "1", "10", "2", "20", "0", "11", "-2", "21", "0", "97", "0",
            "92", "16", "93", "1", "72", "2", "10", "0", "20", "1", "40", "0.5", "50", "0", "51", "360", "73", "1", "97", "0",
            "75", "0", "76", "1", "98", "0"));

        var hatch = (DxfHatch)result.Document!.Model.Single();
        Assert.Empty(result.Warnings);
        Assert.Null(hatch.Pattern);
        Assert.Equal(2, hatch.Boundaries.Count);
        AssertVertices([new(new(-2, 0), -1), new DxfPoint(2, 0)], hatch.Boundaries[0]);
        AssertVertices([new(new(0.5, 1), 1), new(new(-0.5, 1), 1)], hatch.Boundaries[1]);
    }

    [Fact]
    public void Hatch_with_other_edges_is_left_out()
    {
        var result = Read(Entities("0", "HATCH", "70", "1", "91", "1", "92", "1", "93", "1", "72", "4", "94", "3"));

        Assert.Empty(result.Document!.Model);
        Assert.Equal("HATCH whose boundary is not a closed chain of lines and arcs is left out", Assert.Single(result.Warnings).Message);
    }

    [Fact]
    public void Paper_space_of_old_files_becomes_a_layout()
    {
        var result = Read(Entities("0", "POINT", "67", "1", "10", "5", "0", "POINT", "10", "6"));

        Assert.Equal([new DxfPointEntity("0", new(6, 0))], result.Document!.Model);
        Assert.Equal([new DxfPointEntity("0", new(5, 0))], Assert.Single(result.Document.Layouts).Entities);
        Assert.Equal("the file has paper space but no layout; paper of 297 x 210 mm is taken", Assert.Single(result.Warnings).Message);
    }

    [Fact]
    public void Each_warning_says_what_it_is_about()
    {
        var result = Read(Entities(
            "0", "REGION", "0", "INSERT", "2", "*D4", "0", "INSERT", "2", "PLATE", "0", "LINE", "8", "VIEWPORT", "30", "1", "0", "VIEWPORT", "40", "100", "41", "50",
            "0", "DIMENSION", "70", "33", "3", "paper", "14", "1", "1", "<>"));

        Assert.Equal(
            [
                ("INSERT of block *D4, which is not defined, is left out", DxfProblemKind.DimensionPicture),
                ("INSERT of block PLATE, which is not defined, is left out", DxfProblemKind.Content),
                ("LINE: Z is not 0; X and Y are taken", DxfProblemKind.Content),
                ("REGION is not read; it is left out", DxfProblemKind.Content),
                ("VIEWPORT without a view height is left out", DxfProblemKind.Paper),
                ("dimension style paper is used but not defined; it is added", DxfProblemKind.DimensionStyle),
                ("layer VIEWPORT is used but not defined; it is added", DxfProblemKind.Definition),
            ],
            result.Warnings.Select(w => (w.Message, w.Kind)).OrderBy(w => w.Message, StringComparer.Ordinal));
    }

    [Fact]
    public void Written_over_dimension_text_is_read_and_other_dimensions_are_told()
    {
        var result = Read(Entities(
            "0", "DIMENSION", "70", "32", "1", "6'-0\" TYP.", "13", "0", "14", "5", "10", "5", "0", "DIMENSION", "70", "4", "0", "DIMENSION", "70", "33", "14", "1", "1", "<>"));

        Assert.Equal(["6'-0\" TYP.", null], result.Document!.Model.OfType<DxfDimension>().Select(d => d.Words));
        Assert.Equal(
            ["DIMENSION that is neither rotated nor aligned is left out"],
            result.Warnings.Select(w => w.Message));
    }

    private static void AssertVertices(DxfVertex[] expected, DxfSequence<DxfVertex> actual)
    {
        Assert.Equal(expected.Length, actual.Count);
        for (var i = 0; i < expected.Length; i++)
        {
            Assert.Equal(0, (expected[i].Point - actual[i].Point).Length, 9);
            Assert.Equal(expected[i].Bulge, actual[i].Bulge, 9);
        }
    }

    internal static DxfReadResult Read(string content)
    {
        var result = DxfReader.Read(Encoding.UTF8.GetBytes(content));
        Assert.True(result.Succeeded, result.Error?.ToString());
        return result;
    }

    internal static string Entities(params string[] groups) =>
        Lines(["0", "SECTION", "2", "ENTITIES", .. groups, "0", "ENDSEC", "0", "EOF"]);

    internal static string Lines(params string[] lines) => string.Concat(lines.Select(l => l + "\n"));
}

using System.IO.Compression;
using System.Text;
using SheetGen.ProjectFile;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Forms;

/// <summary>Faults of a form: each named by sheet and cell.</summary>
public sealed class FormFaultTests
{
    /// <summary>Sheet, heading, row below the headings, what is typed, then the code and the cell that must be named. Cells are those of the form as written.</summary>
    [Theory]
    [InlineData("Sections", "horizontal_spacing", 0, "45", true, "R15", "Sections!E6")]
    [InlineData("Sections", "horizontal_spacing", 0, "3.5 furlongs", false, "R14", "Sections!E6")]
    [InlineData("Sections", "horizontal_spacing", 0, "3,5", false, "R13", "Sections!E6")]
    [InlineData("Sections", "rows", 0, "levle", false, "R16", "Sections!H6")]
    [InlineData("Sections", "wall", 0, "Wall 9", false, "R21", "Sections!A6")]
    [InlineData("Sections", "stations.2", 0, "soon", false, "R18", "Sections!D6")]
    [InlineData("Sections", "lengths", 0, "24,24,22", false, "R07", "Sections!L6")]
    [InlineData("Sections", "bar.grade", 0, "7 5", false, "R13", "Sections!N6")]
    [InlineData("Walls", "batter.angle", 0, "50 deg", false, "R15", "Walls!H6")]
    [InlineData("Walls", "retained_side", 0, "up", false, "R16", "Walls!C6")]
    [InlineData("Walls", "section_defaults", 0, "{pattern: [", false, "R02", "Walls!Z6")]
    [InlineData("Profiles", "top.elevation", 1, "high", false, "R13", "Profiles!C7")]
    [InlineData("Layout lines", "start.azimuth", 0, "N 100 E", false, "R15", "Layout lines!E6")]
    [InlineData("Shafts and piles", "kind", 0, "shfat", false, "R16", "Shafts and piles!B6")]
    [InlineData("Beams", "width", 1, "2", true, "R11", "Beams!N7")]
    [InlineData("Cross sections", "ground.in_front", 0, "0", true, "R07", "Cross sections!C6")]
    [InlineData("Prices", "price", 0, "52", true, "R07", "Prices!B6")]
    [InlineData("From files", "goes into", 0, "roof", false, "R16", "From files!A6")]
    [InlineData("Design values", "design.t_max", 0, "20 stones", false, "R22", "Design values!C6")]
    public void A_fault_is_named_by_sheet_and_cell(string sheet, string heading, int row, string text, bool isNumber, string code, string cell)
    {
        ReadResult read = new FormBook(BaseWall.Text).Set(sheet, heading, row, text, isNumber).Read();
        Assert.Null(read.Project);
        Assert.Contains($"{cell} {code}", read.Problems.Select(p => $"{p.Spot.Sheet}!{p.Spot.Cell} {p.Code}"));
        Assert.Contains($"wall.xlsx:{cell}: error {code}: ", string.Join('\n', read.Problems.Select(ProblemPrinter.Plain)), StringComparison.Ordinal);
        Assert.Contains($"\"cell\": \"{cell.Split('!')[1]}\"", ProblemPrinter.Json(read.Problems), StringComparison.Ordinal);
    }

    /// <summary>What a spreadsheet makes of what is typed, or what a formula leaves behind.</summary>
    [Theory]
    [InlineData("<c r=\"E6\" t=\"e\"><f>1/0</f><v>#DIV/0!</v></c>", "shows the error #DIV/0!")]
    [InlineData("<c r=\"E6\"><f>2+2</f></c>", "no result in the file")]
    [InlineData("<c r=\"E6\" t=\"d\"><v>2026-10-05</v></c>", "the date or time 2026-10-05")]
    [InlineData("<c r=\"E6\"><v>1e400</v></c>", "")]
    public void A_cell_without_a_value_is_a_fault(string xml, string message)
    {
        ReadResult read = new FormBook(BaseWall.Text).Raw("Sections", "E6", xml).Read();
        Assert.Null(read.Project);
        string told = string.Join('\n', read.Problems.Select(ProblemPrinter.Plain));
        Assert.Contains("wall.xlsx:Sections!E6: error R07: \"horizontal_spacing\" cannot be taken", told, StringComparison.Ordinal);
        Assert.Contains(message, told, StringComparison.Ordinal);
    }

    [Fact]
    public void A_formula_counts_by_its_result_and_a_number_to_fifteen_digits()
    {
        ReadResult read = new FormBook(BaseWall.Text).Raw("Sections", "E6", "<c r=\"E6\"><f>3.2+0.1</f><v>3.3000000000000003</v></c>").Read();
        Assert.Equal(3.3, read.Project!.Walls[0].Sections[0].HorizontalSpacing);
    }

    /// <summary>Number format 14 and a custom one: both show a date (ISO/IEC 29500-1, 18.8.30); day 45000 is 2023-03-15.</summary>
    [Theory]
    [InlineData("numFmtId=\"14\"", "2023-03-15")]
    [InlineData("numFmtId=\"400\"", "2023-03-15")]
    public void A_number_that_shows_as_a_date_is_a_fault_in_a_length_and_a_text_in_a_text(string format, string date)
    {
        byte[] bytes = new FormBook(BaseWall.Text).Raw("Sections", "E6", "<c r=\"E6\" s=\"1\"><v>45000</v></c>").Raw("Revisions", "B6", "<c r=\"B6\" s=\"1\"><v>45000</v></c>")
            .Set("Revisions", "number", 0, "1").Set("Revisions", "date", 0, "x").Set("Revisions", "text", 0, "t").Bytes();
        bytes = FormBook.Edit(bytes, "xl/styles.xml", s => s.Replace("numFmts count=\"", "numFmts x=\"", StringComparison.Ordinal)
            .Replace("</x:numFmts>", "<x:numFmt numFmtId=\"400\" formatCode=\"[$-409]d&quot;h&quot;\\-mmm\"/></x:numFmts>", StringComparison.Ordinal));
        int xf = 0;
        bytes = FormBook.Edit(bytes, "xl/styles.xml", s => System.Text.RegularExpressions.Regex.Replace(s, "(<x:cellXfs.*)", m => System.Text.RegularExpressions.Regex.Replace(m.Value, "numFmtId=\"[0-9]+\"", n => xf++ == 1 ? format : n.Value), System.Text.RegularExpressions.RegexOptions.Singleline));
        string told = string.Join('\n', FormBook.Read(bytes).Problems.Select(ProblemPrinter.Plain));
        Assert.Contains($"Sections!E6: error R07: \"horizontal_spacing\" cannot be taken: the spreadsheet made the date or time {date}", told, StringComparison.Ordinal);
        Assert.DoesNotContain("Revisions", told, StringComparison.Ordinal);
    }

    [Fact]
    public void Merged_cells_strays_and_unknown_headings_and_sheets_are_told()
    {
        FormBook book = new FormBook(BaseWall.Text).Raw("Sections", "", "<mergeCells count=\"1\"><mergeCell ref=\"E6:F6\"/></mergeCells>")
            .Rename("Walls", "face_offset", "face_ofset").RenameSheet("Prices", "My own").RenameSheet("Borings", "Boring")
            .Set("Project", "project.owner", "x").Set("Rules", "key", 0, "clearance.nails").Set("Rules", "value", 0, "1");
        string told = string.Join('\n', book.Read().Problems.Select(ProblemPrinter.Plain));
        Assert.Contains("Sections!E6: error R07: the cells E6 to F6 are merged", told, StringComparison.Ordinal);
        Assert.Contains("Walls!G5: error R10: unknown key \"face_ofset\"", told, StringComparison.Ordinal);
        Assert.Contains("did you mean \"face_offset\"?", told, StringComparison.Ordinal);
        Assert.Contains("My own!A1: notice R08: this sheet is none of the form's", told, StringComparison.Ordinal);
        Assert.Contains("Boring!A1: notice R08", told, StringComparison.Ordinal);
        Assert.Contains("did you mean \"Borings\"?", told, StringComparison.Ordinal);
        Assert.Contains("Rules!A4: error R10: unknown key \"clearance.nails\"", told, StringComparison.Ordinal);
        string stray = string.Join('\n', new FormBook(BaseWall.Text).Raw("Prices", "B6", "<c r=\"B6\"/><c r=\"Q6\" t=\"inlineStr\"><is><t>see me</t></is></c>").Read().Problems.Select(ProblemPrinter.Plain));
        Assert.Contains("Prices!Q6: error R07: this cell stands under no known heading", stray, StringComparison.Ordinal);
    }

    [Fact]
    public void All_faults_are_told_in_one_run_and_sorted_by_sheet_and_row()
    {
        ReadResult read = new FormBook(BaseWall.Text).Set("Sections", "horizontal_spacing", 0, "x").Set("Sections", "hole", 0, "y").Set("Walls", "stations.1", 0, "z").Set("Rules", "rules.min_gap", "w").Read();
        Assert.Equal(["Rules", "Sections", "Sections", "Walls"], read.Problems.Select(p => p.Spot.Sheet));
    }

    [Fact]
    public void What_is_no_form_is_refused_with_its_reason()
    {
        string[] Told(byte[] bytes) => [.. FormBook.Read(bytes).Problems.Select(p => $"{p.Code} {p.Message}")];
        byte[] good = new FormBook(BaseWall.Text).Bytes();
        Assert.Equal(["R06 the workbook has a password or is of the older binary kind (.xls)"], Told([0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1]));
        Assert.Equal(["R06 the workbook is damaged or cut off"], Told(good[..(good.Length / 2)]));
        Assert.Equal(["R06 the workbook is an OpenDocument file; save it as .xlsx"], Told(Zip(("mimetype", "application/vnd.oasis.opendocument.spreadsheet"), ("content.xml", "<a/>"))));
        Assert.Equal(["R06 the workbook is no spreadsheet"], Told(Zip(("word/document.xml", "<a/>"))));
        Assert.Equal(["R06 the workbook has none of the form's sheets"], Told(Zip(("xl/workbook.xml", "<workbook/>"))));
        Assert.Equal(["R06 the workbook is damaged or cut off"], Told(FormBook.Edit(good, "xl/worksheets/sheet2.xml", s => "<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/passwd\">]>" + s)));
        Assert.Equal(["R06 the workbook is damaged or cut off"], Told(FormBook.Edit(good, "xl/worksheets/sheet2.xml", s => s.Replace("<c r=\"A4\"", "<c r=\"ZZZZ4\"", StringComparison.Ordinal))));
    }

    /// <summary>A part that unpacks to more than a form may hold, or a tag of it, costs no more than the limit.</summary>
    [Theory]
    [InlineData("<workbook>", 70, "unpacks to more than a form ever holds")]
    [InlineData("<workbook", 2, "more than 1000000 bytes in one tag")]
    public void A_form_that_unpacks_without_end_is_stopped_by_a_count(string start, int megabytes, string why)
    {
        using var memory = new MemoryStream();
        using (var zip = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            using Stream part = zip.CreateEntry("xl/workbook.xml", CompressionLevel.Fastest).Open();
            part.Write(System.Text.Encoding.UTF8.GetBytes(start));
            byte[] blanks = new byte[1 << 20];
            blanks.AsSpan().Fill((byte)' ');
            for (int i = 0; i < megabytes; i++)
                part.Write(blanks);
        }
        ReadResult read = FormBook.Read(memory.ToArray());
        Assert.Contains(why, Assert.Single(read.Problems, p => p.Code == "R04").Message, StringComparison.Ordinal);
        Assert.Single(read.Problems);
    }

    [Fact]
    public void Broken_bytes_never_throw()
    {
        byte[] good = new FormBook(BaseWall.Text).Bytes();
        var random = new Random(16);
        for (int i = 0; i < 20; i++)
        {
            byte[] bad = [.. good];
            for (int n = random.Next(1, 20); n > 0; n--)
                bad[random.Next(4, bad.Length)] = (byte)random.Next(256);
            ReadResult read = FormBook.Read(bad);
            Assert.True(read.Project is not null || read.Problems.Count > 0);
        }
    }

    private static byte[] Zip(params (string Name, string Text)[] parts)
    {
        using var memory = new MemoryStream();
        using (var zip = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach ((string name, string text) in parts)
            {
                using Stream part = zip.CreateEntry(name).Open();
                part.Write(Encoding.UTF8.GetBytes(text));
            }
        }
        return memory.ToArray();
    }
}

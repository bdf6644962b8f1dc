using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Tests.Outside;
using SheetGen.Tests.Quantities;
using SheetGen.Tests.Walls;
using SheetGen.Writers.Csv;
using SheetGen.Writers.Workbook;
using Xunit;

namespace SheetGen.Tests.Writers;

public class WorkbookTests
{
    public static TheoryData<string> Names => [.. StrangeWallTests.Walls.Keys];

    internal static (WallProject Project, NailLayout Layout, QuantityTable Table, BidTable Bid) Take(TestWall wall, string set = "generic")
    {
        (WallProject project, NailLayout layout) = wall.Make();
        return Take(project, layout, set);
    }

    internal static (WallProject Project, NailLayout Layout, QuantityTable Table, BidTable Bid) Take(WallProject project, NailLayout layout, string set)
    {
        QuantityTable table = TakeOff.Measure(project, layout);
        var problems = new List<Problem>();
        PayItemSet items = PayItemFile.Read(PayItemFile.BuiltIn(set)!, set, project.Unit, problems)!;
        Assert.Empty(problems);
        return (project, layout, table, BidQuantities.Make(table, items, project.Rates));
    }

    internal static byte[] Write((WallProject Project, NailLayout Layout, QuantityTable Table, BidTable Bid) taken)
    {
        using var stream = new MemoryStream();
        WorkbookWriter.Write(taken.Project, taken.Layout, TestWall.Report(taken.Layout), taken.Table, taken.Bid, new RunInfo("0.1.0"), stream);
        return stream.ToArray();
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Schema_is_clean(string name)
    {
        using var stream = new MemoryStream(Write(Take(StrangeWallTests.Walls[name])));
        using SpreadsheetDocument document = SpreadsheetDocument.Open(stream, false);
        IEnumerable<ValidationErrorInfo> errors = new OpenXmlValidator(FileFormatVersions.Office2019).Validate(document, TestContext.Current.CancellationToken);
        Assert.Equal([], errors.Select(e => $"{e.Part?.Uri} {e.Path?.XPath}: {e.Description}"));
    }

    [Fact]
    public void Same_input_same_bytes()
    {
        TestWall wall = StrangeWallTests.Walls["metric, left"];
        byte[] first = Write(Take(wall));
        Assert.Equal(first, Write(Take(wall)));
        using var zip = new ZipArchive(new MemoryStream(first), ZipArchiveMode.Read);
        Assert.All(zip.Entries, e => Assert.Equal(1980, e.LastWriteTime.Year));
        Assert.DoesNotContain(zip.Entries, e => e.FullName.Contains("core", StringComparison.Ordinal));
    }

    [Trait("Category", "Outside")]
    [Fact]
    public void Recalculated_by_another_program_all_cells_are_equal()
    {
        string[] sets = [.. PayItemFile.BuiltInNames];
        byte[][] books = [.. StrangeWallTests.Walls.Values.Select((w, i) => Write(Take(w, sets[i % sets.Length])))];
        int formulas = Recalculation.AssertEqual(books);
        Assert.True(formulas > 2000, "too few formulas compared: " + formulas);
    }

    /// <summary>An estimator whose program writes 1,5 for one and a half sees the same figures and no error.</summary>
    [Trait("Category", "Outside")]
    [Fact]
    public void Recalculated_with_a_decimal_comma_all_cells_are_equal() =>
        Recalculation.AssertEqualWithDecimalComma(Write(Take(StrangeWallTests.Walls["metric, left"])), Write(Take(StrangeWallTests.Walls["survey feet, panels"])));

    /// <summary>Walls as they are, through reader and placer; SHEETGEN_LONG=1 takes 50. Under a comma culture the other program has one too.</summary>
    [Trait("Category", "Long")]
    [Fact]
    public void Random_walls_are_equal_when_recalculated()
    {
        ulong count = Environment.GetEnvironmentVariable("SHEETGEN_LONG") == "1" ? 50ul : 6ul;
        var books = new List<byte[]>();
        for (ulong seed = 1; seed <= count; seed++)
        {
            WallProject project = ProjectReader.ReadText(RandomWall.Yaml(seed, new RandomWallOptions { Nails = 60 }), "wall.yaml").Project!;
            NailLayout layout = Placer.Place(project, new PlacingOptions());
            var taken = Take(project, layout, PayItemFile.BuiltInNames[(int)(seed % 3)]);
            double face = taken.Table.Totals[QuantityName.FaceArea].Amount!.Value;
            Assert.All(taken.Table.Sections.SelectMany(s => s.Grid), g => Assert.Equal(0, g.Difference));
            Assert.InRange(taken.Table.Lifts.Sum(l => l.CutArea), face - 1e-4, face + 1e-4);
            books.Add(Write(taken));
        }
        if (CultureInfo.CurrentCulture.NumberFormat.NumberDecimalSeparator == ",")
            Recalculation.AssertEqualWithDecimalComma(books);
        else
            Recalculation.AssertEqual(books);
    }

    [Trait("Category", "Outside")]
    [Fact]
    public void A_changed_rate_reaches_the_bid()
    {
        TestWall wall = StrangeWallTests.Walls["survey feet, panels"];
        byte[] changed = Recalculation.WithRate(Write(Take(wall, "northlake-authority")), RateSheet.GroutOverrun, 1.5);
        Dictionary<string, string[][]> sheets = Recalculation.Recalculate(changed);
        var expected = Take(wall with { Rates = wall.Rates with { GroutOverrun = 1.5 } }, "northlake-authority");
        string[] line = sheets["Bid quantities"].Single(r => r[0] == "W-190");
        Assert.Equal(expected.Bid.Lines.Single(b => b.Item.Number == "W-190").Rounded!.Value, double.Parse(line[5], CultureInfo.InvariantCulture), 9);
    }

    [Trait("Category", "Outside")]
    [Fact]
    public void Summary_shows_the_texts_of_the_sheets_cell_for_cell()
    {
        var taken = Take(StrangeWallTests.Walls["survey feet, panels"]);
        TableData printed = SummaryTables.BySection(taken.Table);
        string[][] shown = Recalculation.Recalculate(Write(taken), formatted: true)["By section"];
        Assert.Equal(printed.Columns.Select(c => c.Head), shown[4].Take(printed.Columns.Count));
        for (int r = 0; r < printed.Rows.Count; r++)
            Assert.Equal(printed.Rows[r], shown[5 + r].Take(printed.Columns.Count).Select(t => Regex.Replace(t, "(?<=[0-9]),(?=[0-9]{3})", "")));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Totals_are_those_of_the_nail_file_to_the_last_digit(string name)
    {
        var taken = Take(StrangeWallTests.Walls[name]);
        using var csv = new MemoryStream();
        NailCsv.Write(taken.Project, taken.Layout, TestWall.Report(taken.Layout), csv);
        string[][] rows = [.. Encoding.UTF8.GetString(csv.ToArray()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => l.Split(','))];
        decimal length = rows.Where(r => r[4] != "verification").Sum(r => decimal.Parse(r[11], CultureInfo.InvariantCulture));
        BookListing book = BookListing.Read(Write(taken));
        Assert.Equal(length, book.Number("Quantities", "D", QuantityName.FaceLength));
        Assert.Equal(rows.Count(r => r[4] != "verification"), book.Number("Quantities", "D", QuantityName.NailCount));
        Assert.Equal(rows.Select(r => r[3]), book.Column("Nails", "E").Skip(1));
        Assert.Contains(new string('a', 64), book.Text("Summary", "A4"), StringComparison.Ordinal);
    }

    [Trait("Category", "Outside")]
    [Fact]
    public void Stages_add_up_to_the_total()
    {
        TestWall wall = StrangeWallTests.Walls["three stages"];
        var taken = Take(wall);
        byte[] written = Write(taken);
        Recalculation.AssertEqual(written);
        string[][] rows = Recalculation.Recalculate(written)["Quantities"];
        string[] heads = rows[5];
        int total = Array.IndexOf(heads, "Total"), one = Array.IndexOf(heads, "Stage 1"), less = Array.IndexOf(heads, "Stages less total");
        Assert.Equal(["Stage 1", "Stage 2b", "no stage"], heads[one..(one + 3)]);
        foreach (string[] row in rows.Skip(6).Where(r => r[total].Length > 0))
        {
            Assert.Equal("0", row[less]);
            double sum = row[one..(one + 3)].Where(t => t.Length > 0).Sum(t => double.Parse(t, CultureInfo.InvariantCulture));
            Assert.Equal(double.Parse(row[total], CultureInfo.InvariantCulture), sum, 6);
        }
        string[] nails = rows.Single(r => r[0] == QuantityName.NailCount);
        double first = taken.Table.Sections[0].Amounts[QuantityName.NailCount].Amount!.Value + taken.Table.Sections[2].Amounts[QuantityName.NailCount].Amount!.Value;
        Assert.Equal(first, double.Parse(nails[one], CultureInfo.InvariantCulture));
    }

    [Trait("Category", "Outside")]
    [Fact]
    public void Another_reader_opens_it_with_its_head_rows_names_and_rules()
    {
        string folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            File.WriteAllBytes(Path.Combine(folder, "q.xlsx"), Write(Take(StrangeWallTests.Walls["survey feet, panels"])));
            string file = Path.Combine(folder, "q.xlsx");
            OutsideResult result = OutsideReader.Script("read_workbook.py", "openpyxl").Run(file);
            Assert.True(result.ExitCode == 0, result.Errors);
            string output = result.Output;
            Assert.Contains("Summary,Rates,Bid quantities,Cost build-up,Production,Quantities,By section,Nails,Nails by length,Redirects,Findings,Left out,Design effect,Reconciliation,Gaps,Bars,Cutting plan,Holes,Drilling by layer,Grout,Facing,Panels,Leveling pad,Drainage,Excavation lifts,Test nails,Test schedules,Field,Independent check", output, StringComparison.Ordinal);
            Assert.Contains("Nails|F6|$1:$5|landscape|2", output, StringComparison.Ordinal);
            Assert.Contains("errors 0", output, StringComparison.Ordinal);
            foreach (string line in new[] { "charts 3", "protected 29", "formulas open 0", "inputs locked 0", "back 28", "quoted 0" })
                Assert.Contains(line + "\n", output, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    [Trait("Category", "Outside")]
    [Fact]
    public void Names_with_odd_characters_do_no_harm()
    {
        (WallProject project, NailLayout layout) = new TestWall().Make();
        project = project with { Info = new ProjectInfo("=1+1 <&> \u0001 \"Wall\" *?~", "N", new Dictionary<string, string>()) };
        Recalculation.AssertEqual(Write(Take(project, layout, "generic")));
    }

    /// <summary>A name that begins as a formula does is a text for good in the workbook, and no spreadsheet runs it from a file.</summary>
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+A1")]
    [InlineData("-A1")]
    [InlineData("@SUM(A1)")]
    public void A_name_like_a_formula_is_never_run(string name)
    {
        (WallProject project, NailLayout layout) = new TestWall().Make();
        Wall renamed = project.Walls[0] with { Name = name };
        layout = layout with { Nails = [.. layout.Nails.Select(n => n with { Wall = renamed })], Rows = [.. layout.Rows.Select(r => r with { Wall = renamed })] };
        var taken = Take(project with { Walls = [renamed] }, layout, "generic");
        byte[] book = Write(taken);
        using (var zip = new ZipArchive(new MemoryStream(book), ZipArchiveMode.Read))
        {
            using var reader = new StreamReader(zip.GetEntry("xl/styles.xml")!.Open());
            Assert.Contains("quotePrefix=\"1\"", reader.ReadToEnd(), StringComparison.Ordinal);
        }
        Recalculation.AssertEqual(book);
        Assert.Contains(name, BookListing.Read(book).Column("Nails", "B"));
        using var csv = new MemoryStream();
        NailCsv.Write(taken.Project, taken.Layout, TestWall.Report(taken.Layout), csv);
        Assert.All(Encoding.UTF8.GetString(csv.ToArray()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1), l => Assert.StartsWith("'" + name + ",", l, StringComparison.Ordinal));
    }

    [Fact]
    public void Tables_are_written_as_files_too()
    {
        var taken = Take(StrangeWallTests.Walls["survey feet, panels"]);
        var files = new Dictionary<string, MemoryStream>();
        TableCsv.Write(taken.Project, taken.Layout, TestWall.Report(taken.Layout), taken.Table, taken.Bid, new RunInfo("0.1.0"), n => files[n] = new MemoryStream());
        Assert.Equal(
            ["bars.csv", "bid-sums.csv", "bid.csv", "by-section.csv", "check.csv", "cost.csv", "cutting-plan.csv", "design-effect.csv", "drainage.csv", "drilling-by-layer.csv", "facing.csv", "field.csv", "findings.csv", "gaps.csv", "grout.csv", "holes.csv", "layer-rates.csv", "left-out.csv", "lengths.csv", "leveling-pad.csv", "lifts.csv", "nail-quantities.csv", "panels.csv", "production.csv", "proof-schedule.csv", "quantities.csv", "rates.csv", "reconciliation.csv", "redirects.csv", "test-loads.csv", "test-nails.csv", "verification-schedule.csv"],
            files.Keys.Order(StringComparer.Ordinal));
        string[] lines = Encoding.UTF8.GetString(files["nail-quantities.csv"].ToArray()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(taken.Layout.Nails.Count + 1, lines.Length);
        Assert.All(files.Values, f => Assert.NotEqual(0xEF, f.ToArray()[0]));
        foreach ((string name, MemoryStream file) in files)
        {
            string[] heads = Encoding.UTF8.GetString(file.ToArray()).Split("\r\n")[0].Split("\",\"");
            Assert.True(heads.Distinct(StringComparer.OrdinalIgnoreCase).Count() == heads.Length, name);
        }
        foreach (string[] rows in new[] { "drainage.csv", "lifts.csv", "leveling-pad.csv" }.Select(n => Encoding.UTF8.GetString(files[n].ToArray()).Split("\r\n")))
        {
            int station = Array.FindIndex(rows[0].Split(','), h => h.Contains("tation", StringComparison.Ordinal));
            Assert.True(double.TryParse(rows[1].Split(',')[station], NumberStyles.Float, CultureInfo.InvariantCulture, out _), rows[0]);
        }
    }

    [Trait("Category", "Long")]
    [Fact]
    public void Ten_thousand_nails_are_written_and_add_up()
    {
        TestWall wall = new()
        {
            End = 12500,
            Elements = [new LayoutElement.Tangent(12500)],
            Limits = [.. Enumerable.Range(1, 19).Select(i => i * 625.0)],
        };
        var taken = Take(wall);
        Assert.True(taken.Layout.Nails.Count >= 10000);
        byte[] book = Write(taken);
        Recalculation.AssertEqual(book);
        BookListing read = BookListing.Read(book);
        Assert.Equal(taken.Layout.Nails.Select(n => n.Mark), read.Column("Nails", "E").Skip(1));
        foreach (string name in new[] { QuantityName.NailCount, QuantityName.PayLength, QuantityName.BarWeight, QuantityName.GroutVolume, QuantityName.FaceArea })
            Assert.Equal(taken.Table.Totals[name].Amount!.Value, (double)read.Number("Quantities", "D", name), 6);
    }
}

using System.Globalization;
using System.IO.Compression;
using System.Text.Json;
using System.Text.RegularExpressions;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>The demos' files, read by programs that we did not write.</summary>
[Trait("Category", "Outside")]
public sealed partial class OutsideReaderTests(OutsideReaderTests.BuiltDemos demos) : IClassFixture<OutsideReaderTests.BuiltDemos>
{
    private const string Audit = """
        import sys, ezdxf
        from ezdxf import recover
        doc, auditor = recover.readfile(sys.argv[1])
        strict = ezdxf.readfile(sys.argv[1])
        second = strict.audit()
        bad = list(auditor.errors) + list(auditor.fixes) + list(second.errors) + list(second.fixes)
        for entry in bad:
            print(entry.code, entry.message)
        layers = {layer.dxf.name.lower() for layer in strict.layers}
        used = {entity.dxf.layer.lower() for entity in strict.entitydb.values() if entity.dxf.hasattr("layer")}
        for name in sorted(used - layers):
            print("undefined layer", name)
        print("nails", sum(1 for i in strict.modelspace().query("INSERT") if i.has_attrib("MARK")))
        """;

    private const string ReadBook = """
        import sys, openpyxl
        values = openpyxl.load_workbook(sys.argv[1], data_only=True)
        formulas = openpyxl.load_workbook(sys.argv[1])
        cells = 0
        for sheet in formulas:
            for row in sheet.iter_rows():
                for cell in row:
                    if isinstance(cell.value, str) and cell.value.startswith("="):
                        cells += 1
                        stored = values[sheet.title][cell.coordinate].value
                        if isinstance(stored, str) and stored.startswith("#"):
                            print("error value", sheet.title, cell.coordinate, cell.value)
        print("formulas", cells)
        """;

    public static TheoryData<string> Demos => [.. Repository.DemoNames];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Ezdxf_audits_the_drawings_without_error_or_fix(string demo)
    {
        OutsideTool.NeedModule("ezdxf");
        var sheets = OutsideTool.Run(OutsideTool.Python, null, "-c", Audit, demos.File(demo, "sheets.dxf"));
        int nails = CsvTable.Read(demos.File(demo, "nails.csv")).Rows.Count;
        Assert.Equal($"nails {nails}\n", sheets.Out);
        var plan = OutsideTool.Run(OutsideTool.Python, null, "-c", Audit, demos.File(demo, "plan.dxf"));
        Assert.Equal("nails 0\n", plan.Out);
    }

    /// <summary>
    /// A program that draws layouts through their viewports shows the words that the PDF's pages show, at the same places, and every nail's mark once.
    /// </summary>
    [Theory]
    [MemberData(nameof(Demos))]
    public void Ezdxf_draws_in_every_layout_what_its_page_shows(string demo)
    {
        OutsideTool.NeedModule("ezdxf");
        OutsideTool.Need("pdftotext");
        string script = Path.Combine(Repository.Root, "tests", "Tools", "compare_layouts.py");
        string[] lines = OutsideTool.Run(OutsideTool.Python, null, script, demos.File(demo, "sheets.dxf"), demos.File(demo, "sheets.pdf")).Out.TrimEnd().Split('\n');
        Match[] layouts = [.. lines.Select(l => LayoutLine().Match(l)).Where(m => m.Success)];
        int Sum(int group) => layouts.Sum(m => int.Parse(m.Groups[group].Value, CultureInfo.InvariantCulture));

        Assert.Empty(lines.Skip(layouts.Length));
        Assert.Equal(CsvTable.Read(demos.File(demo, "nails.csv")).Rows.Count, Sum(4));
        Assert.True(layouts.Length > 5 && Sum(2) > 10 && Sum(3) > 2000, string.Join("\n", lines));
    }

    /// <summary>A reader of another language finds every nail's block and every layer that is used.</summary>
    [Theory]
    [MemberData(nameof(Demos))]
    public void The_reader_of_node_finds_the_nails_and_layouts(string demo)
    {
        OutsideTool.Need("node");
        string folder = Path.Combine(Repository.Root, "tests", "Tools", "node");
        if (!Directory.Exists(Path.Combine(folder, "node_modules", "dxf")))
            OutsideTool.Missing("the dxf package of Node.js");
        foreach (string name in new[] { "sheets.dxf", "plan.dxf" })
        {
            using JsonDocument read = JsonDocument.Parse(OutsideTool.Run("node", null, Path.Combine(folder, "read_dxf.js"), demos.File(demo, name)).Out);
            IEnumerable<string?> Names(string list) => read.RootElement.GetProperty(list).EnumerateArray().Select(l => l.GetString());
            Assert.NotEmpty(Names("used"));
            Assert.Empty(Names("used").Except(Names("layers")));
            if (name == "plan.dxf")
                continue;
            JsonElement[] nails = [.. read.RootElement.GetProperty("references").EnumerateArray().Where(r => r.GetProperty("block").GetString()!.StartsWith("NAIL", StringComparison.Ordinal))];
            string[] marks = [.. CsvTable.Read(demos.File(demo, "nails.csv")).Column("nail")];
            Assert.Equal(marks.Length, nails.Length);
            // The mark on the sheet is the whole or a tail of it after a dash.
            Assert.All(nails, n => Assert.Contains(marks, m => ("-" + m).EndsWith("-" + n.GetProperty("attributes").GetProperty("MARK").GetString(), StringComparison.Ordinal)));
            Assert.Equal(OutsideTool.Run("pdfinfo", null, demos.File(demo, "sheets.pdf")).Out.Split('\n').Single(l => l.StartsWith("Pages:", StringComparison.Ordinal))[6..].Trim(),
                (Names("layouts").Count() - 1).ToString(CultureInfo.InvariantCulture));
        }
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void LibreCad_loads_the_drawings(string demo)
    {
        OutsideTool.Need("librecad");
        foreach (string name in new[] { "sheets.dxf", "plan.dxf" })
        {
            using var temp = new TempFolder();
            OutsideTool.Run("librecad", temp.Path, "dxf2pdf", "-a", "-t", temp.Path, demos.File(demo, name));
            string made = Assert.Single(Directory.GetFiles(temp.Path, "*.pdf"));
            Assert.True(new FileInfo(made).Length > 2000, name);
        }
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Poppler_finds_the_title_and_every_noted_nail_in_the_pdf(string demo)
    {
        OutsideTool.Need("pdftotext");
        string text = OutsideTool.Run("pdftotext", null, "-layout", demos.File(demo, "sheets.pdf"), "-").Out;
        string title = TitleLine().Match(File.ReadAllText(Repository.DemoFile(demo))).Groups[1].Value;
        Assert.Contains(title, text, StringComparison.OrdinalIgnoreCase);
        CsvTable nails = CsvTable.Read(demos.File(demo, "nails.csv"));
        foreach ((string mark, string status) in nails.Column("nail").Zip(nails.Column("status")))
        {
            if (status is "noted" or "unresolved")
                Assert.Contains(mark, text, StringComparison.Ordinal);
        }
        string fonts = OutsideTool.Run("pdffonts", null, demos.File(demo, "sheets.pdf")).Out;
        Assert.All(fonts.TrimEnd().Split('\n').Skip(2), line => Assert.Matches(@"\byes\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+\s*$", line));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Qpdf_finds_the_pdf_sound(string demo)
    {
        OutsideTool.Need("qpdf");
        var check = OutsideTool.Run("qpdf", null, "--check", demos.File(demo, "sheets.pdf"));
        Assert.True(check.Code is 0 or 3, check.Out + check.Error);
        Assert.DoesNotContain("ERROR", check.Out + check.Error, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Openpyxl_reads_every_formula_and_no_error_value(string demo)
    {
        OutsideTool.NeedModule("openpyxl");
        var read = OutsideTool.Run(OutsideTool.Python, null, "-c", ReadBook, demos.File(demo, "quantities.xlsx"));
        Assert.Matches(@"^formulas [1-9]\d*\n$", read.Out);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void LibreOffice_recalculates_the_stored_values(string demo)
    {
        OutsideTool.Need("soffice");
        using var temp = new TempFolder();
        StripValues(demos.File(demo, "quantities.xlsx"), temp.File("stripped.xlsx"));
        OutsideTool.Run(
            "soffice", temp.Path, "-env:UserInstallation=file://" + temp.File("profile"), "--headless", "--convert-to", "xlsx:Calc MS Excel 2007 XML",
            "--outdir", temp.File("calculated"), temp.File("stripped.xlsx"));
        IReadOnlyDictionary<string, string> stored = WorkbookListing.FormulaValues(demos.File(demo, "quantities.xlsx"));
        IReadOnlyDictionary<string, string> calculated = WorkbookListing.FormulaValues(temp.File("calculated/stripped.xlsx"));
        Assert.NotEmpty(stored);
        var different = stored.Where(s => !Same(s.Value, calculated.GetValueOrDefault(s.Key))).Take(20);
        Assert.Empty(different.Select(s => $"{s.Key}: stored {s.Value}, calculated {calculated.GetValueOrDefault(s.Key)}"));
    }

    /// <summary>The sums of a corridor's register are formulas over its bid quantities: another program finds the same in them.</summary>
    [Fact]
    public void LibreOffice_recalculates_the_register()
    {
        OutsideTool.Need("soffice");
        using var temp = new TempFolder();
        SmallCorridor.Write(temp.Path, 4);
        CliRun run = CliRun.With(temp.Path, null, "corridor", SmallCorridor.List, "--out", "out", "--jobs", "1");
        Assert.True(run.Code is 0 or 1, run.Error + run.Out);
        StripValues(temp.File("out/register.xlsx"), temp.File("stripped.xlsx"));
        OutsideTool.Run(
            "soffice", temp.Path, "-env:UserInstallation=file://" + temp.File("profile"), "--headless", "--convert-to", "xlsx:Calc MS Excel 2007 XML",
            "--outdir", temp.File("calculated"), temp.File("stripped.xlsx"));
        IReadOnlyDictionary<string, string> stored = WorkbookListing.FormulaValues(temp.File("out/register.xlsx"));
        IReadOnlyDictionary<string, string> calculated = WorkbookListing.FormulaValues(temp.File("calculated/stripped.xlsx"));
        Assert.True(stored.Count(s => double.TryParse(s.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double sum) && sum > 0) > 10);
        Assert.Empty(stored.Where(s => !Same(s.Value, calculated.GetValueOrDefault(s.Key))).Select(s => $"{s.Key}: stored {s.Value}, calculated {calculated.GetValueOrDefault(s.Key)}").Take(20));
    }

    private static bool Same(string stored, string? calculated)
    {
        if (stored == calculated)
            return true;
        return double.TryParse(stored, NumberStyles.Float, CultureInfo.InvariantCulture, out double s)
            && double.TryParse(calculated, NumberStyles.Float, CultureInfo.InvariantCulture, out double c)
            && Math.Abs(s - c) <= 1e-9 * Math.Max(1, Math.Abs(s));
    }

    /// <summary>A copy in which the formulas have no stored values, so that a reader must calculate them.</summary>
    private static void StripValues(string workbook, string copy)
    {
        using ZipArchive source = ZipFile.OpenRead(workbook);
        using ZipArchive target = ZipFile.Open(copy, ZipArchiveMode.Create);
        foreach (ZipArchiveEntry entry in source.Entries)
        {
            using var reader = new StreamReader(entry.Open());
            string text = reader.ReadToEnd();
            if (entry.FullName.StartsWith("xl/worksheets/", StringComparison.Ordinal))
                text = StoredValue().Replace(text, "$1");
            using var writer = new StreamWriter(target.CreateEntry(entry.FullName).Open());
            writer.Write(text);
        }
    }

    [GeneratedRegex(@"(</(?:x:)?f>)<(?:x:)?v>[^<]*</(?:x:)?v>")]
    private static partial Regex StoredValue();

    [GeneratedRegex(@"(?m)^  title: (.+)$")]
    private static partial Regex TitleLine();

    /// <summary>Name, viewports, words and marks of a layout.</summary>
    [GeneratedRegex(@"^(\S+) (\d+) (\d+) (\d+)$")]
    private static partial Regex LayoutLine();

    /// <summary>Every demo, built once for all tests of this class.</summary>
    public sealed class BuiltDemos : IDisposable
    {
        private readonly TempFolder _temp = new();

        public BuiltDemos()
        {
            foreach (string demo in Repository.DemoNames)
            {
                CliRun run = CliRun.Of("build", Repository.DemoFile(demo), "--out", _temp.File(demo));
                if (run.Code is not (0 or 1))
                    throw new InvalidOperationException(run.Error);
            }
        }

        public string File(string demo, string name) => _temp.File(demo + "/" + name);

        public void Dispose() => _temp.Dispose();
    }
}

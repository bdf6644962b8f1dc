using System.Globalization;
using System.Text.Json;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>Every demo is built as the README says and compared with its committed results.</summary>
public sealed class DemoTests
{
    public static TheoryData<string> Demos => [.. Repository.DemoNames];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Gives_the_committed_results(string demo)
    {
        using var temp = new TempFolder();
        CliRun run = Build(demo, temp);
        string expected = Path.Combine(Repository.Demo(demo), "expected");
        SheetListing.Write(temp.File("out/sheets.dxf"), temp.File("sheets.txt"));
        WorkbookListing.Write(temp.File("out/quantities.xlsx"), temp.File("quantities.txt"));
        string[] compared = ["out/nails.csv", "out/findings.json", "sheets.txt", "quantities.txt"];
        if (Environment.GetEnvironmentVariable("SHEETGEN_UPDATE_EXPECTED") == "1")
        {
            Directory.CreateDirectory(expected);
            foreach (string name in compared)
                File.Copy(temp.File(name), Path.Combine(expected, Path.GetFileName(name)), overwrite: true);
        }
        foreach (string name in compared)
            Meaning.Equal(Path.Combine(expected, Path.GetFileName(name)), temp.File(name));
        Assert.Equal(HasErrors(temp) ? 1 : 0, run.Code);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    [Trait("Category", "Outside")]
    public void Looks_like_the_committed_pictures(string demo)
    {
        OutsideTool.Need("pdftoppm");
        using var temp = new TempFolder();
        Build(demo, temp);
        string expected = Path.Combine(Repository.Demo(demo), "expected", "sheets.pgm"), actual = temp.File("sheets.pgm");
        GreyPictures.Draw(temp.File("out/sheets.pdf"), actual);
        if (Environment.GetEnvironmentVariable("SHEETGEN_UPDATE_EXPECTED") == "1")
            File.Copy(actual, expected, overwrite: true);
        int pages = Directory.GetFiles(temp.File("pages")).Length;

        Assert.Empty(GreyPictures.Differences(expected, actual, pages));

        string spoiled = temp.File("spoiled.pgm");
        byte[] bytes = File.ReadAllBytes(actual);
        // A stamp of 8 by 8 pixels on the last page.
        for (int i = 0; i < 64; i++)
            bytes[^(120 * (20 + i / 8) + 40 + i % 8)] ^= 255;
        File.WriteAllBytes(spoiled, bytes);
        Assert.Single(GreyPictures.Differences(expected, spoiled, pages));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Writes_its_files_and_no_other(string demo)
    {
        using var temp = new TempFolder();
        CliRun run = Build(demo, temp);
        Assert.Equal(["clashes.pdf", "findings.json", "nails.csv", "plan-review.pdf", "plan.dxf", "quantities.xlsx", "review.html", "sheets.dxf", "sheets.pdf", "tables.zip"], temp.Listing("out"));
        Assert.All(temp.Listing("out"), name => Assert.True(new FileInfo(temp.File("out/" + name)).Length > 500, name));
        Assert.Equal("", run.Problems);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Check_says_the_same_and_writes_nothing(string demo)
    {
        using var temp = new TempFolder();
        CliRun built = Build(demo, temp);
        using var empty = new TempFolder();
        CliRun checkedOnly = CliRun.With(empty.Path, null, "check", Repository.DemoFile(demo));
        Assert.Equal(built.Code, checkedOnly.Code);
        Assert.Empty(empty.Listing());
        using JsonDocument findings = JsonDocument.Parse(File.ReadAllText(temp.File("out/findings.json")));
        foreach (JsonElement finding in findings.RootElement.GetProperty("findings").EnumerateArray())
        {
            if (finding.GetProperty("code").GetString() != "sheet")
                Assert.Contains(finding.GetProperty("message").GetString()!, checkedOnly.Out, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void The_summary_says_what_the_files_say(string demo)
    {
        using var temp = new TempFolder();
        CliRun run = Build(demo, temp);
        CsvTable nails = CsvTable.Read(temp.File("out/nails.csv"));
        List<(string Kind, string Status, double Length, double Clear)> rows = nails.Column("kind")
            .Zip(nails.Column("status"), nails.Column("length").Zip(nails.Column("least_clear")))
            .Select(r => (r.First, r.Second, Number(r.Third.First), Number(r.Third.Second)))
            .ToList();
        var production = rows.Where(r => r.Kind != "verification").ToList();
        string length = production.Sum(r => r.Length).ToString("#,##0.##", CultureInfo.InvariantCulture);
        int Of(string status) => production.Count(r => r.Status == status);

        Assert.Contains($"{production.Count} production, {length} ", run.Out, StringComparison.Ordinal);
        Assert.Contains($"{Of("moved")} moved, {Of("redirected")} redirected", run.Out, StringComparison.Ordinal);
        Assert.Contains($"{Of("noted")} noted", run.Out, StringComparison.Ordinal);
        Assert.Contains(rows.Min(r => r.Clear).ToString("0.00", CultureInfo.InvariantCulture), run.Out, StringComparison.Ordinal);
        foreach (string name in temp.Listing("out"))
            Assert.Contains(name, run.Out, StringComparison.Ordinal);
        Assert.True(run.Out.Count(c => c == '\n') <= 30, "a summary is read in ten seconds:\n" + run.Out);
    }

    private static CliRun Build(string demo, TempFolder temp)
    {
        CliRun run = CliRun.Of("build", Repository.DemoFile(demo), "--out", temp.File("out"));
        Assert.True(run.Code is 0 or 1, run.Error + run.Out);
        return run;
    }

    private static bool HasErrors(TempFolder temp)
    {
        using JsonDocument findings = JsonDocument.Parse(File.ReadAllText(temp.File("out/findings.json")));
        return findings.RootElement.GetProperty("findings").EnumerateArray().Any(f => f.GetProperty("severity").GetString() == "error");
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}

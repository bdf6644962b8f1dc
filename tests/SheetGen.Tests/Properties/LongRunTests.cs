using System.Globalization;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Quantities;
using SheetGen.Layout.Revisions;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Records;
using SheetGen.Tests.Outside;
using SheetGen.Tests.Walls;
using SheetGen.Writers.Csv;
using SheetGen.Writers.Dxf;
using SheetGen.Writers.Json;
using SheetGen.Writers.Workbook;
using Xunit;

namespace SheetGen.Tests.Properties;

/// <summary>
/// Random walls from end to end: findings equal the slow twin's, sums equal, every file quotes the same numbers, cover is as promised. A few in a usual run;
/// <c>SHEETGEN_LONG_WALLS=10000</c> in the environment sets another number, <c>SHEETGEN_LONG_WALLS_FIRST</c> the first seed, and
/// <c>SHEETGEN_LONG_WALLS_REPORT</c> a file that counts and faults are added to.
/// </summary>
[Trait("Category", "Long")]
public sealed class LongRunTests
{
    private static readonly int Walls = int.Parse(Environment.GetEnvironmentVariable("SHEETGEN_LONG_WALLS") ?? "4", CultureInfo.InvariantCulture);
    private static readonly ulong First = ulong.Parse(Environment.GetEnvironmentVariable("SHEETGEN_LONG_WALLS_FIRST") ?? "700000", CultureInfo.InvariantCulture);

    [Fact]
    public void Random_walls_keep_every_promise_from_end_to_end()
    {
        var faults = new List<string>();
        int nails = 0, findings = 0, promised = 0, pairs = 0;
        for (int i = 0; i < Walls; i++)
        {
            ulong seed = First + (ulong)i;
            try
            {
                // A third of them can be covered, and so must be.
                bool satisfiable = seed % 3 == 0;
                BuiltWall built = BuiltWall.Of(RandomWall.Scenario(seed, new RandomWallOptions { Nails = 20 + (int)(seed % 50), Satisfiable = satisfiable }));
                RandomWallTests.AssertTold(built);
                if (satisfiable)
                    Assert.DoesNotContain(built.Report.Findings, f => f.Code == FindingCode.Cover);
                QuantityTable quantities = TakeOff.Measure(built.Project, built.Layout);
                AssertSums(built, quantities);
                AssertFiles(built, quantities);
                nails += built.Layout.Nails.Count;
                findings += built.Report.Findings.Count;
                pairs += built.Report.Findings.Count(f => f.Code == FindingCode.NailNail);
                promised += satisfiable ? 1 : 0;
            }
            catch (Exception e)
            {
                faults.Add($"wall {seed}: {e}");
            }
        }
        string report = FormattableString.Invariant($"{Walls} walls from seed {First}: {nails} nails, {findings} findings ({pairs} of pairs of holes), {promised} with promised cover, faults {faults.Count}");
        TestContext.Current.TestOutputHelper?.WriteLine(report);
        if (Environment.GetEnvironmentVariable("SHEETGEN_LONG_WALLS_REPORT") is { } file)
            File.AppendAllLines(file, [report, .. faults]);
        Assert.True(faults.Count == 0, string.Join('\n', faults.Take(10)));
    }

    private static void AssertSums(BuiltWall built, QuantityTable quantities)
    {
        Nail[] production = [.. built.Layout.Nails.Where(n => n.Kind != NailKind.Verification)];
        Near(production.Length, quantities.Totals[QuantityName.NailCount].Amount);
        Near(production.Sum(n => n.Length), quantities.Totals[QuantityName.FaceLength].Amount);
        foreach (QuantityDefinition definition in quantities.Definitions.Where(d => quantities.Totals[d.Name].State == QuantityState.Complete && quantities.Sections.All(s => s.Amounts.ContainsKey(d.Name))))
            Near(quantities.Sections.Sum(s => s.Amounts[definition.Name].Amount ?? double.NaN), quantities.Totals[definition.Name].Amount);
        AssertChecks(quantities);
    }

    private static void AssertChecks(QuantityTable quantities) => Assert.All(quantities.Checks.Where(c => c is { Second: not null, Limit: not null }), c =>
        Assert.True(Math.Abs(c.First - c.Second!.Value) <= c.Limit!.Value * Math.Abs(c.First) + 1e-9, $"{c.Text}: {c.First} as measured, {c.Second} by {c.Way}"));

    private static void Near(double expected, double? actual) =>
        Assert.True(actual is { } is_ && Math.Abs(expected - is_) <= 1e-9 * Math.Max(1, Math.Abs(expected)), $"expected {expected:R}, got {actual:R}");

    /// <summary>The drawing's nails are counted and summed; nails.csv, findings.json and the workbook's tables are read back, and nothing in them differs.</summary>
    private static void AssertFiles(BuiltWall built, QuantityTable quantities)
    {
        BidTable bid = BidQuantities.Make(quantities, PayItemFile.Read(PayItemFile.BuiltIn(PayItemFile.BuiltInNames[0])!, "pay", built.Project.Unit, [])!, built.Project.Rates);
        var run = new RunInfo("0.1.0");
        using var drawing = new MemoryStream();
        DxfSheetWriter.Write(SheetComposer.Compose(built.Project, built.Layout, built.Report, quantities, [SummaryTables.Bid(bid)], run, TemplateReader.Default()), drawing);
        QuantityTable recounted = DrawingRecount.AddTo(quantities, drawing.ToArray());
        Assert.True(recounted.Checks.Count >= quantities.Checks.Count + 2);
        AssertChecks(recounted);

        using var folder = new TemporaryFolder();
        string Write(string name, Action<Stream> write)
        {
            using FileStream stream = File.Create(Path.Combine(folder.Path, name));
            write(stream);
            return stream.Name;
        }
        string nails = Write("nails.csv", s => NailCsv.Write(built.Project, built.Layout, built.Report, s));
        Write("findings.json", s => FindingsJson.Write(built.Project, built.Layout, built.Report, s));
        Write("tables.zip", s => TableCsv.WriteZip(built.Project, built.Layout, built.Report, recounted, bid, run, s));
        var problems = new List<Problem>();
        RevisionState? read = ResultFolder.Read(nails, "files", false, problems);
        Assert.Equal([], problems.Select(ProblemPrinter.Plain));
        RevisionDifference difference = Comparison.Of(RevisionState.Of("wall", built.Project, built.Layout, built.Report, quantities, bid), read!);
        Assert.Equal([], difference.Nails.Select(n => n.What));
        Assert.Equal([], difference.Findings.Select(f => $"{f.Before?.Message} -> {f.After?.Message}"));
        Assert.Equal([], difference.Amounts.Select(a => $"{a.Wall} {a.Name} {a.Before:R} -> {a.After:R}"));
        Assert.Equal([], difference.Items.Select(i => i.ToString()));
        Assert.Equal([], difference.NotCompared);
    }
}

using System.Text;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Problems;
using SheetGen.Writers.Dxf;
using Xunit;

namespace SheetGen.Tests.Writers;

/// <summary>A title block drawing can be small and stand for a billion lines, or hold what no sheet shows: counted first, and said.</summary>
public class TitleBlockLimitTests
{
    [Theory]
    [InlineData(6, 6, "stand for")]
    [InlineData(12, 10, "stand for")]
    [InlineData(40, 1, "nested more than 16 deep")]
    [InlineData(5_000, 1, "nested more than 16 deep")]
    public void Blocks_within_blocks_are_counted_before_they_are_drawn(int levels, int times, string said)
    {
        var problems = new List<Problem>();
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Null(TitleBlockFile.Read(Nested(levels, times, ""), "title.dxf", problems));
        Assert.Contains(said, Assert.Single(problems).Message, StringComparison.Ordinal);
        Assert.Equal(Severity.Error, problems[0].Severity);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 200_000_000);
    }

    [Fact]
    public void References_that_repeat_in_rows_and_columns_are_counted_too()
    {
        var problems = new List<Problem>();
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Null(TitleBlockFile.Read(Nested(3, 30, "70\n100\n71\n100\n44\n1\n45\n1\n"), "title.dxf", problems));
        Assert.Contains(problems, p => p.Severity == Severity.Error && p.Message.Contains("stand for", StringComparison.Ordinal));
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 400_000_000);
    }

    [Fact]
    public void A_logo_of_some_thousand_lines_in_blocks_is_drawn()
    {
        var problems = new List<Problem>();
        TitleBlock? block = TitleBlockFile.Read(Nested(3, 20, ""), "title.dxf", problems);
        Assert.Empty(problems);
        Assert.Equal(20 * 20 * 20, block!.Lines.Count);
    }

    [Theory]
    [InlineData("0\nLINE\n8\n0\n10\n1e14\n20\n0\n11\n1\n21\n1\n", "from the origin")]
    [InlineData("0\nLINE\n8\n0\n10\n-9000\n20\n0\n11\n9000\n21\n1\n", "18000 by 1 mm")]
    [InlineData("0\nTEXT\n8\n0\n10\n0\n20\n0\n40\n9000\n1\nBIG\n0\nLINE\n8\n0\n10\n0\n20\n0\n11\n100\n21\n1\n", "9000 mm high")]
    public void Sizes_that_no_sheet_has_are_refused(string entities, string said)
    {
        var problems = new List<Problem>();
        Assert.Null(TitleBlockFile.Read(File(entities, 4), "title.dxf", problems));
        Assert.Contains(said, Assert.Single(problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_left_out_or_odd_is_said_and_the_rest_is_drawn()
    {
        const string line = "0\nLINE\n8\n0\n10\n0\n20\n0\n11\n800\n21\n10\n";
        string entities = line
            + "0\nSPLINE\n8\n0\n70\n8\n"
            + "0\nINSERT\n8\n0\n2\nNOWHERE\n10\n0\n20\n0\n"
            + "0\nPOINT\n8\n0\n10\n5\n20\n5\n"
            + "0\nTEXT\n8\n0\n10\n1\n20\n1\n40\n0.1\n1\nTINY\n"
            + "0\nTEXT\n8\n0\n10\n1\n20\n1\n40\n250\n1\nTALL\n";
        var problems = new List<Problem>();

        TitleBlock? block = TitleBlockFile.Read(File(entities, 4), "title.dxf", problems);

        Assert.NotNull(block);
        Assert.All(problems, p => Assert.Equal((Severity.Warning, "T03"), (p.Severity, p.Code)));
        foreach (string said in new[] { "SPLINE", "NOWHERE", "1 x point", "\"TINY\" is 0.1 mm high", "\"TALL\" is 250 mm high" })
            Assert.Contains(problems, p => p.Message.Contains(said, StringComparison.Ordinal));
        Assert.Contains(problems, p => p.Spot.Line > 20);
    }

    private static byte[] Nested(int levels, int times, string array)
    {
        var text = new StringBuilder();
        for (int i = 0; i < levels; i++)
        {
            text.Append($"0\nBLOCK\n8\n0\n2\nB{i}\n70\n0\n10\n0\n20\n0\n");
            string inner = i + 1 < levels ? $"0\nINSERT\n8\n0\n2\nB{i + 1}\n10\n0\n20\n0\n{array}" : "0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n";
            for (int t = 0; t < times; t++)
                text.Append(inner);
            text.Append("0\nENDBLK\n8\n0\n");
        }
        return File("0\nINSERT\n8\n0\n2\nB0\n10\n0\n20\n0\n", 4, text.ToString());
    }

    private static byte[] File(string entities, int units, string blocks = "") => Encoding.ASCII.GetBytes(
        $"0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$INSUNITS\n70\n{units}\n0\nENDSEC\n0\nSECTION\n2\nBLOCKS\n{blocks}0\nENDSEC\n"
        + $"0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n");
}

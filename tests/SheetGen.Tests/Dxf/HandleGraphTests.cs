using System.Text;
using System.Text.RegularExpressions;
using SheetGen.Dxf;
using Xunit;

namespace SheetGen.Tests.Dxf;

public class HandleGraphTests
{
    private static readonly string Whole = Encoding.ASCII.GetString(SampleDocument.Write(SampleDocument.Everything()));

    [Theory]
    [InlineData(DxfVersion.AC1015)]
    [InlineData(DxfVersion.AC1032)]
    public void A_written_file_is_in_order(DxfVersion version) =>
        Assert.Empty(HandleGraph.Problems(SampleDocument.Write(SampleDocument.Everything(), version)));

    [Fact]
    public void An_empty_document_is_in_order() =>
        Assert.Empty(HandleGraph.Problems(SampleDocument.Write(new DxfDocument())));

    [Theory]
    [InlineData(@"\$HANDSEED\r\n  5\r\n", @"\w+", "1F", @"\$HANDSEED is not above the greatest handle")]
    [InlineData(@"  0\r\nLAYER\r\n  5\r\n\w+\r\n330\r\n", @"\w+", "21", "LAYER .*: its owner 21 is TABLE VPORT, which is wrong")]
    [InlineData(@"  0\r\nLAYER\r\n  5\r\n", @"\w+", "21", "LAYER has handle 21, as has TABLE in line")]
    [InlineData(@"  0\r\nLAYER\r\n  5\r\n", @"\w+", "xyz", "LAYER has no handle")]
    [InlineData(@"  0\r\nCIRCLE\r\n  5\r\n\w+\r\n330\r\n", @"\w+", "FFFF", "CIRCLE .*: group 330 leads to FFFF, which is not in the file")]
    [InlineData(@"  0\r\nCIRCLE\r\n  5\r\n\w+\r\n330\r\n", @"\w+", "21", "CIRCLE .*: its owner 21 is TABLE VPORT, which is wrong")]
    [InlineData(@"  0\r\nATTRIB\r\n  5\r\n\w+\r\n330\r\n", @"\w+", "21", "ATTRIB .*: its owner")]
    [InlineData(@"  0\r\nCIRCLE\r\n.*?  8\r\n", @"[^\r]+", "NOWHERE", "CIRCLE .*: LAYER NOWHERE is not defined")]
    [InlineData(@"  0\r\nLAYER\r\n.*?  6\r\n", @"[^\r]+", "Wavy", "LAYER .*: LTYPE Wavy is not defined")]
    [InlineData(@"  0\r\nATTRIB\r\n.*?\r\n  7\r\n", @"[^\r]+", "Script", "ATTRIB .*: STYLE Script is not defined")]
    [InlineData(@"  0\r\nINSERT\r\n.*?AcDbBlockReference\r\n  2\r\n", @"[^\r]+", "GONE", "INSERT .*: BLOCK_RECORD GONE is not defined")]
    [InlineData(@"  0\r\nDIMENSION\r\n.*?  2\r\n", @"[^\r]+", "*D99", @"DIMENSION .*: BLOCK_RECORD \*D99 is not defined")]
    [InlineData(@"  0\r\nLEADER\r\n.*?  3\r\n", @"[^\r]+", "Odd", "LEADER .*: DIMSTYLE Odd is not defined")]
    [InlineData(@"1001\r\n", @"[^\r]+", "STRANGER", ".*: APPID STRANGER is not defined")]
    [InlineData(@"\$CLAYER\r\n  8\r\n", @"[^\r]+", "NOWHERE", @"\$CLAYER: LAYER NOWHERE is not defined")]
    [InlineData(@"AcDbBlockTableRecord\r\n  2\r\n\*Paper_Space\r\n340\r\n", @"\w+", "0", "LAYOUT .* and its block record do not name each other")]
    [InlineData(@"  0\r\nDIMSTYLE\r\n105.*?340\r\n", @"\w+", "21", "DIMSTYLE .*: group 340 leads to TABLE, not to STYLE")]
    [InlineData(@"102\r\n\{ACAD_REACTORS\r\n330\r\n", @"\w+", "21", "LEADER .*: its note does not name it among its reactors")]
    [InlineData(@"AcDbDictionary\r\n.*?350\r\n", @"\w+", "21", "DICTIONARY .*: its entry 21 has another owner")]
    [InlineData(@"ENDBLK.*?  0\r\nBLOCK\r\n.*?  2\r\n", @"[^\r]+", "*Other", @"block record .* has no block")]
    [InlineData(@"  0\r\nTABLE\r\n  2\r\n", "UCS", "XXX", "table UCS is missing")]
    public void One_fault_is_found(string before, string part, string with, string problem)
    {
        var place = new Regex("(?<=" + before + ")" + part, RegexOptions.Singleline);
        var match = place.Match(Whole);
        Assert.True(match.Success && match.Value != with);

        var problems = HandleGraph.Problems(Encoding.ASCII.GetBytes(place.Replace(Whole, with, 1)));

        Assert.Contains(problems, p => Regex.IsMatch(p.Message, "^" + problem));
    }

    [Fact]
    public void A_fault_names_its_line()
    {
        var spoiled = Whole.Replace("AcDbCircle\r\n", "AcDbCircle\r\n340\r\nFFFF\r\n");
        var line = spoiled[..spoiled.IndexOf("FFFF", StringComparison.Ordinal)].Split('\n').Length;

        Assert.Contains(HandleGraph.Problems(Encoding.ASCII.GetBytes(spoiled)), p => p.Line == line);
    }

    [Fact]
    public void An_unreadable_file_is_one_problem() =>
        Assert.Equal("the file is empty", Assert.Single(HandleGraph.Problems([])).Message);
}

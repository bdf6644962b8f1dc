using System.Text;
using FsCheck;
using FsCheck.Xunit;
using SheetGen.Dxf;
using Xunit;

namespace SheetGen.Tests.Dxf;

public class MalformedFileTests
{
    private static readonly byte[] Whole = SampleDocument.Write(SampleDocument.Everything());

    [Theory]
    [InlineData("", 1, "the file is empty")]
    [InlineData("hello\nworld\n", 1, "expected a group code, found 'hello'")]
    [InlineData("  5\nworld\n", 1, "this is not a DXF file: it starts with group code 5")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n", 4, "the file ends without EOF: it is cut off")]
    [InlineData("  0\nSECTION\n  2", 3, "the file ends after group code 2, without its value: it is cut off")]
    [InlineData("  0\nEOF\n", 2, "the file has no section")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  0\nPOINT\n 10\nabc\n  0\nENDSEC\n  0\nEOF\n", 8, "POINT: expected a number for group code 10, found 'abc'")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  0\nPOINT\n 10\n1,5\n  0\nENDSEC\n  0\nEOF\n", 8, "POINT: expected a number for group code 10, found '1,5'")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  0\nPOINT\n 10\nNaN\n  0\nENDSEC\n  0\nEOF\n", 8, "POINT: expected a number for group code 10, found 'NaN'")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  0\nTEXT\n 72\n1.5\n  0\nENDSEC\n  0\nEOF\n", 8, "TEXT: expected a whole number for group code 72, found '1.5'")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  0\nPOINT\n 9999\n1\n  0\nENDSEC\n  0\nEOF\n", 7, "expected a group code, found '9999'")]
    [InlineData("AutoCAD Binary DXF\r\n\u001a\0", 1, "the file is empty")]
    [InlineData("AutoCAD Binary DXF\r\n\u001a\0\0\0SECTION\0\u0002\0HEADER\0", 4, "the file ends without EOF: it is cut off")]
    [InlineData("AutoCAD Binary DXF\r\n\u001a\0\0\0SECT", 1, "the file ends within the value of group code 0: it is cut off")]
    [InlineData("AC1015\0\0\0", 1, "this is a DWG file; save it as DXF")]
    public void Unreadable_file_is_an_error_with_its_line(string content, int line, string message)
    {
        var result = DxfReader.Read(Encoding.UTF8.GetBytes(content));

        Assert.False(result.Succeeded);
        Assert.Null(result.Document);
        Assert.Equal(new DxfProblem(line, message), result.Error);
    }

    [Fact]
    public void The_first_of_two_errors_is_told()
    {
        var result = DxfReader.Read(Encoding.ASCII.GetBytes(
            "  0\nSECTION\n  2\nBLOCKS\n  0\nENDSEC\n  0\nSECTION\n  2\nENTITIES\n  0\nPOINT\n 20\nfirst\n 10\nlast\n  0\nENDSEC\n  0\nEOF\n"));

        Assert.Equal(14, result.Error?.Line);
    }

    [Fact]
    public void Every_cut_file_is_an_error_in_its_last_lines()
    {
        // The very last line end may be missing.
        for (var length = 0; length < Whole.Length - 2; length += 997)
        {
            var cut = Whole[..length];
            var lines = cut.Count(b => b == (byte)'\n') + 1;

            var result = DxfReader.Read(cut);

            Assert.False(result.Succeeded, $"{length} bytes");
            Assert.InRange(result.Error.Line, Math.Max(1, lines - 2), lines);
        }
        Assert.True(DxfReader.Read(Whole[..^2]).Succeeded);
    }

    [Property(MaxTest = 200)]
    public void Garbage_never_throws(byte[] garbage)
    {
        var result = DxfReader.Read(garbage);

        Assert.False(result.Succeeded);
        Assert.InRange(result.Error.Line, 1, garbage.Length + 1);
    }

    [Property(MaxTest = 100)]
    public void Spoiled_file_never_throws(PositiveInt seed)
    {
        var random = new Random(seed.Get);
        var lines = Encoding.ASCII.GetString(Whole).Split("\r\n").ToList();
        for (var i = 0; i < 5; i++)
        {
            var at = random.Next(lines.Count);
            switch (random.Next(4))
            {
                case 0: lines.RemoveAt(at); break;
                case 1: lines[at] = random.Next(-20, 2000).ToString(System.Globalization.CultureInfo.InvariantCulture); break;
                case 2: lines.InsertRange(at, lines[random.Next(lines.Count)..][..1]); break;
                default: lines.RemoveRange(at, Math.Min(2 * random.Next(20), lines.Count - at)); break;
            }
        }

        var result = DxfReader.Read(Encoding.ASCII.GetBytes(string.Join("\n", lines)));

        if (!result.Succeeded)
            Assert.InRange(result.Error.Line, 1, lines.Count);
        else if (DxfDocumentCheck.Problems(result.Document).Count == 0)
            Assert.Empty(HandleGraph.Problems(SampleDocument.Write(result.Document)));
    }
}

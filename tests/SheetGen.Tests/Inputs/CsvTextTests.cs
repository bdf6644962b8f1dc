using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using SheetGen.ProjectFile.Records;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>The one reader of tables; the form of its cells is that of RFC 4180, section 2 (from memory).</summary>
public sealed class CsvTextTests
{
    [Theory]
    [InlineData("a,b\r\n1,2\r\n", "a|b/1|2")]
    [InlineData("a,b\r1,2", "a|b/1|2")]
    [InlineData("\uFEFFa;b\n1,5;2\n", "a|b/1,5|2")]
    [InlineData("a\tb,c\n1\t2\n", "a|b,c/1|2")]
    [InlineData("a,b\n\"x, \"\"y\"\"\nz\",2\n", "a|b/x, \"y\"\nz|2")]
    [InlineData("a,b\n  \"x\" ,2\n", "a|b/x |2")]
    [InlineData("a,b\n\n , \n1,2\n", "a|b/1|2")]
    [InlineData("a,b\n\"\",2\n", "a|b/|2")]
    [InlineData("# one; two; three\na,b\n# 3,4\n1,2\n", "a|b/1|2")]
    public void Rows_and_cells_are_parted(string text, string cells) =>
        Assert.Equal(cells, string.Join('/', CsvText.Read(text, hasComments: true).Rows.Select(r => string.Join('|', r.Select(c => c.Text)))));

    [Fact]
    public void Without_comments_a_hash_is_a_value()
    {
        Assert.Equal(["#8", "2"], CsvText.Read("bar,no\n#8,2\n", hasComments: false).Rows[1].Select(c => c.Text));
        Assert.Single(CsvText.Read("bar,no\n#8,2\n", hasComments: true).Rows);
    }

    [Fact]
    public void An_open_quote_and_text_behind_a_closed_one_have_their_places()
    {
        CsvText read = CsvText.Read("a,b\n\"1\"x,2\n3,\"4\n5,6\n", hasComments: false);
        Assert.Equal((3, 3), read.Open);
        Assert.Equal([(2, 4)], read.Beyond);
        Assert.Null(read.TooLarge);
    }

    /// <summary>What is too large is not kept: 16 million commas would be as many cells.</summary>
    [Theory]
    [InlineData(',', 1, "over 200 columns")]
    [InlineData('\n', 2, "over 200000 rows")]
    public void Reading_stops_where_a_table_is_too_large(char end, int line, string what)
    {
        CsvText read = CsvText.Read(string.Concat(Enumerable.Repeat("a" + end, 1_000_000)), hasComments: false);
        Assert.Equal(what, read.TooLarge?.What);
        Assert.Equal(end == ',' ? line : 200_002, read.TooLarge?.Line);
        Assert.True(read.Rows.Count <= 200_001);
    }

    [Property]
    public bool What_is_written_with_quotes_is_read_with_its_places(NonEmptyArray<NonEmptyArray<NonNull<string>>> table, bool semicolon)
    {
        // Each row begins with a word, so that none is blank, and has as many cells of any text.
        string mark = semicolon ? ";" : ",";
        string[][] rows = [.. table.Get.Select((r, i) => (string[])[$"row{i}", .. r.Get.Take(20).Select(c => c.Get.Replace("\r", "", StringComparison.Ordinal))])];
        string[] heads = ["head", .. Enumerable.Range(0, 21).Select(i => $"h{i}")];
        string text = string.Join(mark, heads) + "\n" + string.Concat(rows.Select(r => string.Join(mark, r.Select(c => "\"" + c.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"")) + "\n"));
        CsvText read = CsvText.Read(text, hasComments: false);
        string[] lines = text.Split('\n');
        return read is { Open: null, Beyond.Count: 0, TooLarge: null }
            && read.Rows.Skip(1).Select(r => r.Select(c => c.Text)).Zip(rows).All(p => p.First.SequenceEqual(p.Second))
            && read.Rows.Count == rows.Length + 1
            && read.Rows.Skip(1).SelectMany(r => r).All(c => lines[c.Line - 1][c.Column - 1] == '"');
    }

    [Property]
    public bool Any_text_is_read(NonNull<string> text)
    {
        CsvText read = CsvText.Read(text.Get, hasComments: true);
        return read.Rows.All(r => r.Any(c => c.Text.Trim().Length > 0) && r.All(c => c is { Line: >= 1, Column: >= 1 }));
    }
}

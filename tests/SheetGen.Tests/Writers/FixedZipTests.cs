using System.IO.Compression;
using SheetGen.Model.Files;
using Xunit;

namespace SheetGen.Tests.Writers;

public sealed class FixedZipTests
{
    private static readonly (string Name, Action<Stream> Write)[] Entries =
    [
        ("b.csv", s => s.Write("nail,length\nA-1-01,24\n"u8)),
        ("folder/a.xml", s => s.Write("<a/>"u8)),
        ("empty.txt", _ => { }),
    ];

    [Fact]
    public void Entries_are_read_back_in_their_order_with_one_time_and_the_rights_of_a_plain_file()
    {
        using var zip = new ZipArchive(new MemoryStream(FixedZip.Of(Entries)));

        Assert.Equal(["b.csv", "folder/a.xml", "empty.txt"], zip.Entries.Select(e => e.FullName));
        Assert.All(zip.Entries, e => Assert.Equal(0x81A4, e.ExternalAttributes >>> 16));
        Assert.All(zip.Entries, e => Assert.Equal(new DateTime(1980, 1, 1), e.LastWriteTime.DateTime));
        using var text = new StreamReader(zip.Entries[0].Open());
        Assert.Equal("nail,length\nA-1-01,24\n", text.ReadToEnd());
    }

    [Fact]
    public void What_the_framework_writes_on_windows_becomes_the_same_bytes()
    {
        byte[] here = FixedZip.Of(Entries);
        byte[] there = [.. here];
        int[] headers = [.. Enumerable.Range(0, there.Length - 4).Where(i => there.AsSpan(i, 4).SequenceEqual("PK\u0001\u0002"u8))];
        Assert.Equal(Entries.Length, headers.Length);
        foreach (int header in headers)
        {
            there[header + 5] = 0; // The system: FAT.
            there.AsSpan(header + 38, 4).Clear();
        }
        Assert.NotEqual(here, there);

        FixedZip.SetSystem(there);

        Assert.Equal(here, there);
    }

    [Theory]
    [InlineData("")]
    [InlineData("not a zip, though long enough to hold the end of one")]
    public void What_is_no_zip_is_refused(string text) =>
        Assert.Throws<InvalidDataException>(() => FixedZip.SetSystem(System.Text.Encoding.ASCII.GetBytes(text)));

    [Fact]
    public void A_directory_that_is_not_where_the_end_says_is_refused()
    {
        byte[] zip = FixedZip.Of(Entries);
        zip[^6]++;

        Assert.Throws<InvalidDataException>(() => FixedZip.SetSystem(zip));
    }
}

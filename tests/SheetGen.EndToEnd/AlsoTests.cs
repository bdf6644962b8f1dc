using SheetGen.Cli;
using SheetGen.EndToEnd.Support;
using SheetGen.Exchange;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>Open formats beside the results: asked for by their words, part of the set, and gone when they are not asked for any more.</summary>
public sealed class AlsoTests : IDisposable
{
    private readonly TempFolder _temp = new();

    private static string Wall => Repository.DemoFile("quarry-lane");

    public void Dispose() => _temp.Dispose();

    [Fact]
    public void All_writes_every_format_and_a_build_without_them_takes_them_away_and_says_so()
    {
        CliRun all = Build("--also", "all");
        Assert.Equal(0, all.Code);
        Assert.Equal(OutputSet.AllNames.Order(StringComparer.Ordinal), _temp.Listing("out"));
        Assert.Contains("nails.ifc", all.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("removed", all.Out, StringComparison.Ordinal);
        byte[] first = File.ReadAllBytes(_temp.File("out/nails.ifc"));

        CliRun some = Build("--also", "ifc,Stakeout", "--also", "bcf");
        Assert.Equal([.. OutputSet.Names.Concat(["nails.ifc", "stakeout.csv", "findings.bcf"]).Order(StringComparer.Ordinal)], _temp.Listing("out"));
        Assert.Contains("removed    nails.glb: made by an earlier build, not asked for now (--also gltf)", some.Out, StringComparison.Ordinal);
        Assert.Equal(first, File.ReadAllBytes(_temp.File("out/nails.ifc")));

        CliRun none = Build();
        Assert.Equal(OutputSet.Names.Order(StringComparer.Ordinal), _temp.Listing("out"));
        Assert.Contains("removed    stakeout.csv", none.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ifcx", "did you mean ifc?")]
    [InlineData("geo-json", "did you mean geojson?")]
    [InlineData("ifc,dwg", "the formats are stakeout, landxml, geojson, shape, ifc, bcf, gltf, all")]
    [InlineData("", "needs the name of a format")]
    public void An_unknown_word_gets_a_hint_and_nothing_is_written(string words, string hint)
    {
        CliRun run = Build("--also", words);
        Assert.Equal(2, run.Code);
        Assert.Contains(hint, run.Error, StringComparison.Ordinal);
        Assert.Empty(_temp.Listing());
    }

    [Fact]
    public void A_file_of_someone_else_under_such_a_name_stops_the_run()
    {
        Directory.CreateDirectory(_temp.File("out"));
        File.WriteAllText(_temp.File("out/nails.xml"), "mine");
        foreach (string[] also in new[] { Array.Empty<string>(), ["--also", "landxml"] })
        {
            CliRun run = Build(also);
            Assert.Equal(2, run.Code);
            Assert.Contains("nails.xml is not of a build of this program", run.Error, StringComparison.Ordinal);
            Assert.Equal("mine", File.ReadAllText(_temp.File("out/nails.xml")));
            Assert.Equal(["nails.xml"], _temp.Listing("out"));
        }
    }

    [Fact]
    public void The_document_names_every_word_and_file()
    {
        string text = File.ReadAllText(Path.Combine(Repository.Root, "docs", "exchange.md"));
        Assert.All(ExchangeFormat.All, f => Assert.Contains($"| `{f.Word}` |", text, StringComparison.Ordinal));
        Assert.All(ExchangeFormat.AllFileNames, n => Assert.True(
            text.Contains($"`{n}`", StringComparison.Ordinal) || text.Contains($"`{Path.GetFileNameWithoutExtension(n)}.*`", StringComparison.Ordinal), n));
    }

    private CliRun Build(params string[] also) => CliRun.With(_temp.Path, null, ["build", Wall, "--out", "out", .. also]);
}

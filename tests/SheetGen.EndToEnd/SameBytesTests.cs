using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>The same input gives the same bytes, wherever and by whomever it is built.</summary>
public sealed class SameBytesTests
{
    public static TheoryData<string> Demos => [.. Repository.DemoNames];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Culture_time_zone_folder_and_cores_change_nothing(string demo)
    {
        using TempFolder here = new(), there = new();
        string copy = there.File("a b/wall.yaml");
        Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
        File.Copy(Repository.DemoFile(demo), copy);
        var plain = new Dictionary<string, string?> { ["LC_ALL"] = "C.UTF-8", ["TZ"] = "UTC" };
        var strange = new Dictionary<string, string?>
        {
            ["LC_ALL"] = "de_DE.UTF-8",
            ["LANG"] = "de_DE.UTF-8",
            ["TZ"] = "Asia/Kathmandu",
            ["HOME"] = there.Path,
            ["DOTNET_PROCESSOR_COUNT"] = "1",
        };
        CliRun first = CliRun.With(null, plain, "build", Repository.DemoFile(demo), "--out", here.File("out"));
        CliRun second = CliRun.With(there.File("a b"), strange, "build", "wall.yaml", "--out", "../results");
        Assert.Equal(first.Code, second.Code);
        Assert.Equal(here.Listing("out"), there.Listing("results"));
        foreach (string name in here.Listing("out"))
        {
            bool same = File.ReadAllBytes(here.File("out/" + name)).AsSpan().SequenceEqual(File.ReadAllBytes(there.File("results/" + name)));
            Assert.True(same, name + " differs");
        }
    }

    [Fact]
    public void Cultures_are_there_so_that_the_test_above_means_something()
    {
        Assert.Equal("1,5", 1.5.ToString(System.Globalization.CultureInfo.GetCultureInfo("de-DE")));
    }
}

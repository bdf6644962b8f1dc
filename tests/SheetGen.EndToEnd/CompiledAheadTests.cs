using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>The ordinary release build is compiled ahead, along the profile of what a run of the demo uses of the framework (<c>packaging/profile.sh</c>).</summary>
public sealed class CompiledAheadTests
{
    /// <summary>Some 700 methods are left to compile just in time; without the profile some 4,400, without any compiling ahead 9,000.</summary>
    private const int MostCompiled = 1500;

    [Fact]
    public void A_release_build_compiles_little_just_in_time()
    {
        Assert.SkipWhen(Repository.Program.Contains("Debug", StringComparison.Ordinal), "a debug build is not compiled ahead");
        using var temp = new TempFolder();
        string list = temp.File("compiled.txt");
        var told = new Dictionary<string, string?> { ["DOTNET_JitStdOutFile"] = list, ["DOTNET_JitDisasmSummary"] = "1" };
        CliRun run = CliRun.With(null, told, "check", Repository.DemoFile("heron-street-bridge"));
        Assert.Equal(0, run.Code);
        Assert.InRange(File.ReadLines(list).Count(l => l.Contains("[Tier0", StringComparison.Ordinal)), 1, MostCompiled);
    }
}

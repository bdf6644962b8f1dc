using System.Text.RegularExpressions;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Rows;

/// <summary>The tolerances of the layout have their names and reasons in one place a room; elsewhere none is written as a bare figure.</summary>
public partial class ToleranceTests
{
    private static string[] Files => Directory.GetFiles(Repository.PathOf("src", "SheetGen.Layout"), "*.cs", SearchOption.AllDirectories)
        .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)).ToArray();

    private static bool IsPlace(string file) => file.EndsWith("Tolerance.cs", StringComparison.Ordinal);

    [Fact]
    public void No_file_has_a_bare_tolerance()
    {
        string[] bare = [.. Files.Where(f => !IsPlace(f)).SelectMany(f => File.ReadLines(f).Where(l => Bare().IsMatch(l)).Select(l => $"{Path.GetFileName(f)}: {l.Trim()}"))];

        Assert.Empty(bare);
    }

    [Theory]
    [InlineData("a < b - 1e-6", true)]
    [InlineData("a * 1.000001f", true)]
    [InlineData("0.0001 + a", true)]
    [InlineData("column sums, 0.002)", true)]
    [InlineData("$\"{a:0.000} of its force\"", false)]
    [InlineData("Math.Round(Math.Abs(a - b), 6)", true)]
    [InlineData("i / 200.0001", true)]
    [InlineData("area / 1e6", false)]
    [InlineData("(int)Math.Round(share * 10), 1, 9)", false)]
    [InlineData("Math.Round(a, Tolerance.Decimals)", false)]
    public void A_bare_tolerance_is_known(string line, bool isBare) => Assert.Equal(isBare, Bare().IsMatch(line));

    [Fact]
    public void Each_tolerance_has_its_reason_above_it()
    {
        string[] places = [.. Files.Where(IsPlace)];

        Assert.Equal(6, places.Length);
        foreach (string place in places)
        {
            string[] lines = File.ReadAllLines(place);
            int[] named = [.. Enumerable.Range(1, lines.Length - 1).Where(i => lines[i].Contains(" const ", StringComparison.Ordinal) || lines[i].Contains(" static double ", StringComparison.Ordinal))];
            Assert.NotEmpty(named);
            Assert.All(named, i => Assert.EndsWith("</summary>", lines[i - 1], StringComparison.Ordinal));
        }
    }

    [GeneratedRegex(@"\d[eE]-\d|\d\.0{2,}[1-9]|Math\.Round\((?:[^()]|\((?:[^()]|\([^()]*\))*\))*, \d+\)")]
    private static partial Regex Bare();
}

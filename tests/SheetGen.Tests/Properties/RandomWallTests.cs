using System.Text.RegularExpressions;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.Tests.Geometry;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Properties;

/// <summary>What must hold on walls that nobody has seen.</summary>
[Trait("Category", "Long")]
public sealed partial class RandomWallTests
{
    public static IEnumerable<TheoryDataRow<ulong>> Seeds => SeedData.Of(1, 30).Union([818UL]).Select(s => new TheoryDataRow<ulong>(s));

    public static IEnumerable<TheoryDataRow<ulong>> SatisfiableSeeds => SeedData.Of(5001, 30).Select(s => new TheoryDataRow<ulong>(s));

    public static IEnumerable<TheoryDataRow<string>> Names => NamedWalls.All.Select(w => new TheoryDataRow<string>(w.Name));

    [Theory, MemberData(nameof(Seeds))]
    public void No_rule_is_broken_without_a_finding(ulong seed) =>
        AssertTold(BuiltWall.Of(RandomWall.Scenario(seed, new RandomWallOptions { Nails = 70 })));

    [Theory, MemberData(nameof(Names))]
    public void Named_walls_break_no_rule_without_a_finding(string name) =>
        AssertTold(BuiltWall.Of(NamedWalls.All.First(w => w.Name == name).Scenario));

    [Theory, MemberData(nameof(SatisfiableSeeds))]
    public void A_wall_that_can_be_covered_is_covered(ulong seed)
    {
        BuiltWall built = BuiltWall.Of(RandomWall.Scenario(seed, new RandomWallOptions { Nails = 70, Satisfiable = true }));
        AssertTold(built);
        Assert.DoesNotContain(built.Report.Findings, f => f.Code == FindingCode.Cover);
    }

    internal static void AssertTold(BuiltWall built)
    {
        AssertCover(built);
        AssertClear(built);
        AssertHeads(built);
        AssertCloseOnlyWhereUnresolved(built);
        AssertTexts(built);
        Assert.Equal(built.Layout.Nails.Count, built.Layout.Nails.Select(n => n.Mark).Distinct().Count());
        Assert.Equal(built.Layout.Score.Unresolved.Found, built.Layout.Nails.Count(n => n.Status == NailStatus.Unresolved && n.Kind != NailKind.Verification));
        Assert.Equal(built.Layout.Score.Noted.Found, built.Layout.Nails.Count(n => n.Status == NailStatus.Noted && n.Kind != NailKind.Verification));
    }

    /// <summary>No text prints a length below 0, or with more decimals than the unit has.</summary>
    private static void AssertTexts(BuiltWall built)
    {
        IEnumerable<string?> texts = [.. built.Report.Findings.Select(f => f.Message), .. built.Layout.Nails.Select(n => n.Reason?.Text), .. built.Layout.LeftOut.Select(l => l.Reason)];
        Assert.DoesNotContain(texts, t => t is not null && OddLength().IsMatch(t));
    }

    [GeneratedRegex(@"(?<= )-\d[\d.]* (us-ft|ft|m)\b|\.\d{3,} (us-)?ft\b|\.\d{4,} m\b")]
    private static partial Regex OddLength();

    private static void AssertCover(BuiltWall built)
    {
        double slack = built.Project.Unit == LengthUnit.Metre ? 0.005 : 0.05;
        Finding[] cover = [.. built.Report.Findings.Where(f => f.Code == FindingCode.Cover)];
        foreach (CoverTwin twin in CoverTwin.All(built.Project, built.Layout))
        {
            Finding[] own = [.. cover.Where(f => f.Wall!.Name == twin.Wall.Name)];
            foreach (double s in twin.Samples())
            {
                double station = twin.Wall.StationOf(s);
                bool told = own.Any(f => f.Station - slack <= station && station <= f.ToStation + slack);
                bool deep = own.Any(f => f.Station + slack < station && station < f.ToStation - slack);
                Assert.False(!told && twin.IsBroken(s), $"{twin.Wall.Name}: cover broken at {station}, no finding");
                Assert.False(deep && twin.IsHeld(s), $"{twin.Wall.Name}: cover finding at {station}, where the rule holds");
            }
        }
    }

    /// <summary>Pairs too close are in the findings, pairs in the findings are too close.</summary>
    private static void AssertClear(BuiltWall built)
    {
        const double Slack = 0.005;
        IReadOnlyList<Nail> nails = built.Layout.Nails;
        double required = built.Project.Rules.NailClearance;
        var told = built.Report.Findings.Where(f => f.Code == FindingCode.NailNail).ToDictionary(f => string.Join(' ', f.Nails.Order(StringComparer.Ordinal)));
        for (int i = 0; i < nails.Count; i++)
        {
            for (int j = i + 1; j < nails.Count; j++)
            {
                Hole a = nails[i].Hole, b = nails[j].Hole;
                double reach = (a.Length + b.Length) / 2 + a.RadiusAt(a.Length) + b.RadiusAt(b.Length) + required;
                if ((a.At(a.Length / 2) - b.At(b.Length / 2)).Length > reach || Coarse(a, b) > required + 1)
                    continue;
                double clear = SlowTwin.Between(a, b);
                string pair = string.Join(' ', new[] { nails[i].Mark, nails[j].Mark }.Order(StringComparer.Ordinal));
                bool found = told.Remove(pair, out Finding? finding);
                Assert.False(clear < required - Slack && !found, $"{pair}: {clear} under {required}, no finding");
                Assert.False(found && clear > required + Slack, $"{pair}: finding at {finding?.Clear}, {clear} by sampling");
                if (found)
                    Assert.Equal(clear, finding!.Clear!.Value, Slack);
            }
        }
        Assert.Empty(told.Keys);
    }

    private static void AssertCloseOnlyWhereUnresolved(BuiltWall built)
    {
        HashSet<string> unresolved = [.. built.Layout.Nails.Where(n => n.Status == NailStatus.Unresolved).Select(n => n.Mark)];
        string[] clear = [FindingCode.NailNail, FindingCode.NailObstruction, FindingCode.NailBoundary, FindingCode.NailFace];
        foreach (Finding finding in built.Report.Findings.Where(f => clear.Contains(f.Code)))
            Assert.True(finding.Nails.Any(unresolved.Contains), $"{finding.Message}; none of them is unresolved");
    }

    /// <summary>Clear distance over samples a quarter of a unit apart at most: at most half a unit over the least.</summary>
    private static double Coarse(Hole a, Hole b)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i <= 16; i++)
        {
            Vector3D from = a.At(a.Length * i / 16);
            double along = Math.Clamp((from - b.Head).Dot(b.Direction), 0, b.Length);
            least = Math.Min(least, (from - b.At(along)).Length);
        }
        return least - a.RadiusAt(a.Length) - b.RadiusAt(b.Length) - a.Length / 32;
    }

    private static void AssertHeads(BuiltWall built)
    {
        double tolerance = built.Project.Unit == LengthUnit.Metre ? 0.002 : 0.02;
        var told = built.Report.Findings.Where(f => f.Code is FindingCode.Edge or FindingCode.Spacing).SelectMany(f => f.Nails).ToHashSet();
        foreach (Nail nail in built.Layout.Nails.Where(n => !told.Contains(n.Mark)))
        {
            Assert.True(nail.Elevation <= nail.Wall.Top.At(nail.Along) + tolerance, $"{nail.Mark} stands above the top");
            Assert.True(nail.Elevation >= nail.Wall.Bottom.At(nail.Along) - tolerance, $"{nail.Mark} stands below the bottom");
            double end = Math.Min(nail.Along - nail.Wall.Start, nail.Wall.End - nail.Along);
            Assert.True(end >= built.Project.Rules.EdgeMin - 2 * tolerance || nail.Wall.FaceOffset != 0 || nail.Wall.Batter is not null, $"{nail.Mark} stands at the end");
        }
        foreach (IGrouping<(string, string, int, RowNumber), Nail> row in built.Layout.Nails.Where(n => n.Kind != NailKind.Verification)
            .GroupBy(n => (n.Wall.Name, n.Section.Name, new Face(n.Wall).LegAt(n.Along).Index, n.Row)))
        {
            Nail[] sorted = [.. row.OrderBy(n => n.Along)];
            for (int i = 1; i < sorted.Length; i++)
            {
                double gap = new Face(sorted[i].Wall).Distance(sorted[i - 1].Along, sorted[i].Along, sorted[i].Elevation);
                Assert.True(
                    Math.Max(gap, sorted[i].Along - sorted[i - 1].Along) >= built.Project.Rules.MinGap - tolerance || told.Contains(sorted[i].Mark),
                    $"{sorted[i - 1].Mark} and {sorted[i].Mark} are {gap} apart");
            }
        }
        Assert.All(built.Report.Findings, f => Assert.True(f.Severity is Severity.Error or Severity.Warning or Severity.Notice));
    }
}

using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Properties;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Cover comes first: no layout found leaves more of a wall uncovered than the grid alone does.</summary>
public sealed class CoverKeptTests
{
    private const ulong First = 61001;

    public static IEnumerable<TheoryDataRow<ulong>> Seeds => SeedData.Of(First, 12).Select(s => new TheoryDataRow<ulong>(s));

    /// <summary>200 walls, or 1,000 with SHEETGEN_LONG=1.</summary>
    public static IEnumerable<TheoryDataRow<ulong>> ManySeeds => Enumerable.Range(0, Environment.GetEnvironmentVariable("SHEETGEN_LONG") == "1" ? 1000 : 200).Select(i => new TheoryDataRow<ulong>(First + 100 + (ulong)i));

    [Theory, MemberData(nameof(Seeds))]
    public void A_layout_covers_what_the_grid_covers(ulong seed) => AssertCovered(seed, 60);

    [Theory, MemberData(nameof(ManySeeds))]
    [Trait("Category", "Long")]
    public void Layouts_of_many_walls_cover_what_the_grid_covers(ulong seed) => AssertCovered(seed, 40);

    private static void AssertCovered(ulong seed, int nails)
    {
        WallProject project = PlacingWall.Read(RandomWall.Yaml(seed, new RandomWallOptions { Nails = nails, Obstructions = 12 }));
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        foreach (Bay bay in PlacingWall.Bays(project))
        {
            NailRow[] rows = [.. layout.Rows.Where(r => r.Wall == bay.Wall && r.Section == bay.Section && r.Leg == bay.Leg.Index)];
            Head[] grid = [.. rows.SelectMany(r => r.GridStations.Select(a => new Head(a, Model.Units.Lengths.RoundToQuantum(r.ElevationAt(a), project.Unit))))];
            Head[] found = [.. layout.Nails.Where(n => n.Kind != NailKind.Verification && n.Wall == bay.Wall && n.Section == bay.Section && bay.Leg.Has(n.Along)).Select(n => new Head(n.Along, n.Elevation))];
            double given = Uncovered(bay, grid), now = Uncovered(bay, found);
            Assert.True(now <= given + 1e-6, $"seed {seed}, {bay.Wall.Name} section {bay.Section.Name}: {now} uncovered, {given} by the grid alone");
        }
    }

    private static double Uncovered(Bay bay, Head[] heads) =>
        CoverRule.Breaks(bay, heads, strict: false).Select(b => (b.Start, b.End)).Distinct().Sum(b => b.End - b.Start);
}

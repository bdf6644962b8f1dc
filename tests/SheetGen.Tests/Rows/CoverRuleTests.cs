using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Placing;
using SheetGen.Tests.Properties;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Rows;

/// <summary>The cover rule against its literal reading at many stations, on walls that miss nails.</summary>
public sealed class CoverRuleTests
{
    public static IEnumerable<TheoryDataRow<ulong>> Seeds => SeedData.Of(3001, 25).Select(s => new TheoryDataRow<ulong>(s));

    [Theory, MemberData(nameof(Seeds))]
    public void Breaks_are_where_the_literal_rule_breaks(ulong seed)
    {
        WallProject project = PlacingWall.Read(RandomWall.Yaml(seed, new RandomWallOptions { Nails = 60, Obstructions = 0 }));
        NailLayout whole = Placer.Place(project, new PlacingOptions());
        var random = new WallRandom(seed);
        NailLayout layout = whole with { Nails = [.. whole.Nails.Where(n => n.Kind != NailKind.Verification && !random.Chance(0.2))] };
        int broken = 0, held = 0;
        foreach (CoverTwin twin in CoverTwin.All(project, layout))
        {
            Bay? bay = PlacingWall.Bays(project).FirstOrDefault(b => b.Wall.Name == twin.Wall.Name && b.Start.Number == twin.Start && b.End.Number == twin.End);
            if (bay is null)
                continue;
            Head[] heads = [.. layout.Nails.Where(n => n.Wall == bay.Wall && n.Section == bay.Section && bay.Leg.Has(n.Along)).Select(Head.Of)];
            List<CoverBreak> breaks = CoverRule.Breaks(bay, heads, strict: false);
            double slack = project.Unit == Model.Units.LengthUnit.Metre ? 0.005 : 0.05;
            foreach (double s in twin.Samples())
            {
                Along at = new(s);
                bool near = breaks.Any(b => b.Start - slack <= at && at <= b.End + slack);
                bool deep = breaks.Any(b => b.Start + slack < at && at < b.End - slack);
                bool isBroken = twin.IsBroken(s), isHeld = twin.IsHeld(s);
                Assert.False(isBroken && !near, $"broken at {s}, not found");
                Assert.False(isHeld && deep, $"found broken at {s}, where it holds");
                broken += isBroken ? 1 : 0;
                held += isHeld ? 1 : 0;
            }
        }
        Assert.True(broken > 0 || held > 0, "nothing to tell");
    }
}

using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Properties;

/// <summary>Changes of the project file that must not change the layout.</summary>
public sealed class SameLayoutTests
{
    public static IEnumerable<TheoryDataRow<ulong>> Seeds => SeedData.Of(101, 6).Select(s => new TheoryDataRow<ulong>(s));

    private static readonly RandomWallOptions Small = new() { Nails = 50 };

    [Theory, MemberData(nameof(Seeds))]
    public void A_reflected_plan_with_the_retained_side_swapped_gives_the_same_layout(ulong seed)
    {
        WallScenario scenario = RandomWall.Scenario(seed, Small);
        AssertSame(BuiltWall.Of(scenario), BuiltWall.Of(scenario.Reflected()));
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Shifted_and_rotated_coordinates_give_the_same_layout(ulong seed)
    {
        WallScenario scenario = RandomWall.Scenario(seed, Small);
        BuiltWall built = BuiltWall.Of(scenario);
        AssertSame(built, BuiltWall.Of(scenario.Moved(1e7, -9.87e6, 0)));
        AssertSame(built, BuiltWall.Of(scenario.Moved(123.5, 4e6, 77)));
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Reversed_stations_give_the_same_figures(ulong seed)
    {
        WallScenario scenario = RandomWall.Scenario(seed, Small);
        scenario = scenario with
        {
            Walls = [.. scenario.Walls.Where(w => w.Steps.Count > 0).Select(w => w with
            {
                Sections = [.. w.Sections.Select(s => s with { ShiftedCornerRows = false, Verification = 0, ProofPercent = 0 })],
            })],
        };
        if (scenario.Walls.Count == 0)
            return;
        scenario = scenario with { Obstructions = [.. scenario.Obstructions.Where(o => scenario.Walls.Any(w => w.Name == o.Wall))] };
        BuiltWall built = BuiltWall.Of(scenario), reversed = BuiltWall.Of(scenario.Reversed());
        Assert.Equal(built.Layout.Nails.Count, reversed.Layout.Nails.Count);
        Assert.Equal(built.Figures, reversed.Figures);
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Feet_and_metres_give_the_same_figures(ulong seed)
    {
        WallScenario feet = RandomWall.Scenario(seed, Small with { Plain = true }) with { Rules = ScenarioChange.AllRulesInFeet(1) };
        BuiltWall built = BuiltWall.Of(feet), metres = BuiltWall.Of(feet.InMetres());
        Assert.Equal(built.Figures, metres.Figures);
        Assert.Equal(built.Layout.Nails.Count, metres.Layout.Nails.Count);
        foreach ((string mark, Model.Results.NailClearance clear) in built.Report.Nails)
        {
            // A quantum of each of two heads, and of their elevations, on either side.
            if (double.IsFinite(clear.LeastClear) && metres.Report.Nails.TryGetValue(mark, out Model.Results.NailClearance? other))
                Assert.Equal(clear.LeastClear, other.LeastClear / 0.3048, 0.05);
        }
    }

    private static void AssertSame(BuiltWall one, BuiltWall two)
    {
        Assert.Equal(one.NailLines, two.NailLines);
        Assert.Equal(one.FindingLines(), two.FindingLines());
    }
}

using SheetGen.Model.Results;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Properties;

/// <summary>Changes of the project file that must not change the layout.</summary>
[Trait("Category", "Long")]
public sealed class SameLayoutTests
{
    public static IEnumerable<TheoryDataRow<ulong>> Seeds => SeedData.Of(101, 4).Select(s => new TheoryDataRow<ulong>(s));

    private static readonly RandomWallOptions Small = new() { Nails = 40 };

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

    [Fact]
    public void Reversed_stations_give_the_same_best_layout()
    {
        int asked = 0;
        foreach (ulong seed in SeedData.Of(101, 4))
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
                continue;
            scenario = scenario with { Obstructions = [.. scenario.Obstructions.Where(o => scenario.Walls.Any(w => w.Name == o.Wall))] };
            BuiltWall built = BuiltWall.Of(scenario), reversed = BuiltWall.Of(scenario.Reversed());
            AssertEquallyGood(built, reversed);
            AssertEquallyGood(reversed, built);
            asked++;
        }
        Assert.True(asked >= 3, $"{asked} walls with bottom steps");
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Feet_and_metres_give_the_same_figures(ulong seed)
    {
        WallScenario feet = RandomWall.Scenario(seed, Small with { Plain = true }) with { Rules = ScenarioChange.AllRulesInFeet(1) };
        BuiltWall built = BuiltWall.Of(feet), metres = BuiltWall.Of(feet.InMetres());
        Assert.Equal(built.Figures.Unresolved, metres.Figures.Unresolved);
        AssertEquallyGood(built, metres);
        AssertEquallyGood(metres, built);
        Assert.InRange(metres.Figures.Noted, built.Figures.Noted - 1, built.Figures.Noted + 1);
        // The quanta of the two units put heads up to 2 mm apart, which can let a hole pass that was just too close, or stop it.
        Assert.InRange(metres.Figures.Effort, 0.9 * built.Figures.Effort - 5, 1.1 * built.Figures.Effort + 5);
    }

    /// <summary>What was found for one is not below what is proven for the other, figure by figure; where both are proven, both are the same.</summary>
    private static void AssertEquallyGood(BuiltWall one, BuiltWall two)
    {
        LayoutScore found = one.Layout.Score, proven = two.Layout.Score;
        if (proven.Unresolved.Bound is double unresolved)
        {
            Assert.True(found.Unresolved.Found >= unresolved, $"unresolved {found.Unresolved.Found}, proven at least {unresolved} the other way");
            if (found.Unresolved.Found > unresolved)
                return;
        }
        if (proven.Noted.Bound is double noted)
        {
            Assert.True(found.Noted.Found >= noted, $"noted {found.Noted.Found}, proven at least {noted} the other way");
            if (found.Noted.Found > noted)
                return;
        }
        if (proven.Effort.Bound is double effort)
            Assert.True(found.Effort.Found >= effort - 1e-6, $"effort {found.Effort.Found}, proven at least {effort} the other way");
        if (found.IsProvenBest && proven.IsProvenBest)
            Assert.Equal(one.Figures, two.Figures);
    }

    private static void AssertSame(BuiltWall one, BuiltWall two)
    {
        Assert.Equal(one.NailLines, two.NailLines);
        Assert.Equal(one.FindingLines(), two.FindingLines());
    }
}

using SheetGen.Layout.Quantities.Effect;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Quantities.Effect;

/// <summary>Warnings of loads: only against limits that the engineer gives, and only where the layout made it so.</summary>
public sealed class LoadFindingTests
{
    private static IReadOnlyList<Finding> Of((WallProject Project, NailLayout Layout) made) =>
        LoadFindings.Make(made.Project, made.Layout, EffectTakeOff.Make(made.Project, made.Layout));

    private static (WallProject, NailLayout) Wall(DesignValues? design, string? without = "A-2-07")
    {
        (WallProject, NailLayout) made = (EffectWall.Exact with { Design = design }).Make();
        return without is null ? made : EffectWall.Without(made, without);
    }

    [Fact]
    public void Without_a_limit_nothing_is_found()
    {
        Assert.Empty(Of(Wall(null)));
        Assert.Empty(Of(Wall(EffectWall.Lrfd)));
        Assert.Empty(Of(Wall(new DesignValues { LeastRatio = 1 })));
    }

    [Fact]
    public void Without_a_change_nothing_is_found() =>
        Assert.Empty(Of(Wall(EffectWall.Lrfd with { AreaShare = 0, LeastRatio = 0.5 }, null)));

    [Fact]
    public void Areas_over_the_share_are_found_with_who_carries_what()
    {
        IReadOnlyList<Finding> found = Of(Wall(new DesignValues { AreaShare = 0.2 }));
        Assert.Equal(["A-1-07", "A-2-06", "A-2-08", "A-3-07"], found.SelectMany(f => f.Nails).Order());
        Assert.All(found, f => Assert.Equal((FindingCode.Load, Severity.Warning), (f.Code, f.Severity)));
        Finding beside = found.Single(f => f.Nails[0] == "A-2-06");
        Assert.StartsWith("A-2-06: carries 31.3 ft2 of face, 1.25 of the design's 25.0, where 1.20 is allowed (A-2-07 left out beside it); beside it A-2-05 1.00 of the design's area, A-2-08 1.25 of the design's area; would cure it", beside.Message);
        Assert.Contains("a nail added in its row at station 100+", beside.Message);
        Assert.Contains("(upper row)", found.Single(f => f.Nails[0] == "A-1-07").Message);
        Assert.Empty(Of(Wall(new DesignValues { AreaShare = 0.25 })));
    }

    [Fact]
    public void Ratios_under_the_one_asked_for_are_found_with_a_longer_nail()
    {
        DesignValues design = new() { MaximumLoads = [20], Bond = 15, Surfaces = [new SlipSurface("1", [], 60)], LeastRatio = 2.55 };
        Finding shorter = Assert.Single(Of(EffectWall.With(Wall(design, null), "A-2-07", length: 20)), f => f.Severity == Severity.Warning);
        Assert.Equal(["A-2-07"], shorter.Nails);
        Assert.StartsWith("A-2-07: ratio 2.26 in pullout, slip surface 1 (2.94 at its grid place) under the 2.55 asked for: resistance 45.3 kip, load 20.0 kip (20 ft long, 24 on the grid)", shorter.Message);
        Assert.Contains("would cure it (tried, clear of everything): a nail of 22 ft instead of 20", shorter.Message);
        // Its own row stands in the way of a nail turned by 28 degrees: no length cures that.
        Finding turned = Assert.Single(Of(EffectWall.With(Wall(design, null), "A-2-07", splay: 28)), f => f.Severity == Severity.Warning);
        Assert.Contains("turned: 0.870 of its force square to the face, 0.985 on the grid", turned.Message);
        Assert.DoesNotContain("a nail of", turned.Message);
    }

    [Fact]
    public void A_grid_under_the_ratio_is_told_once_and_no_nail_is_blamed()
    {
        Finding notice = Assert.Single(Of(Wall(EffectWall.Lrfd with { LeastRatio = 2 }, null)));
        Assert.Equal(Severity.Notice, notice.Severity);
        Assert.StartsWith("section A: 80 of its grid places are under the ratio 2.00 asked for before anything is changed", notice.Message);
    }
}

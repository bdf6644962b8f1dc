using SheetGen.Model;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Quantities.Effect;

/// <summary>Areas of the nails: they share the face, and a nail that is left out leaves its own to its neighbours.</summary>
public sealed class AreaTests
{
    public static TheoryData<string> Walls => [.. StrangeWallTests.Walls.Keys];

    [Theory]
    [MemberData(nameof(Walls))]
    public void Areas_sum_to_the_face(string name)
    {
        (WallProject project, NailLayout layout) = StrangeWallTests.Walls[name].Make();
        QuantityTable table = Layout.Quantities.TakeOff.Measure(project, layout);
        double face = table.Totals[QuantityName.FaceArea].Amount!.Value;
        LayoutEffect effect = table.Effect;
        Assert.Equal(face, effect.Nails.Sum(n => n.Drawn.Area) + effect.AreaWithoutNails, face * 1e-9);
        Assert.Equal(face, effect.Nails.Sum(n => n.Grid!.Area) + effect.AreaWithoutNails, face * 1e-9);
    }

    [Theory]
    [MemberData(nameof(Walls))]
    public void A_wall_without_changes_is_as_designed_everywhere(string name)
    {
        LayoutEffect effect = EffectWall.Of(StrangeWallTests.Walls[name] with { Design = EffectWall.Lrfd });
        Assert.Equal(name == "no nail", effect.Nails.Count == 0);
        Assert.Empty(effect.Changed);
        Assert.All(effect.Nails, n => Assert.Equal(n.Grid!.Checks, n.Drawn.Checks));
        Assert.All(effect.Nails, n => Assert.Equal(3, n.Drawn.Checks.Count(c => c.Surface is null)));
    }

    [Fact]
    public void On_a_grid_that_fits_each_nail_has_the_design_area_and_load()
    {
        LayoutEffect effect = EffectWall.Of(EffectWall.Exact with { Design = EffectWall.Lrfd });
        Assert.Equal(80, effect.Nails.Count);
        Assert.All(effect.Nails, n => Assert.Equal(25, n.Drawn.Area, 9));
        Assert.All(effect.Nails, n => Assert.Equal(20, n.Drawn.MaximumLoad!.Value, 9));
        Assert.All(effect.Nails, n => Assert.Equal(20 * 0.714, n.Drawn.HeadLoad!.Value, 9));
    }

    [Fact]
    public void A_nail_left_out_leaves_its_area_to_its_neighbours()
    {
        (WallProject Project, NailLayout Layout) whole = EffectWall.Exact.Make();
        foreach (string mark in new[] { "A-2-07", "A-3-12", "A-2-19" })
        {
            LayoutEffect effect = EffectWall.Of(EffectWall.Without(whole, mark));
            NailEffect[] grown = [.. effect.Nails.Where(n => n.Drawn.Area > n.Grid!.Area + 1e-9)];
            Assert.Equal(25, grown.Sum(n => n.Drawn.Area - n.Grid!.Area), 9);
            Assert.All(effect.Nails.Except(grown), n => Assert.Equal(25, n.Drawn.Area, 9));
            Assert.All(grown, n => Assert.InRange((n.Nail.Hole.Head - whole.Layout.Nails.Single(o => o.Mark == mark).Hole.Head).Length, 4.9, 7.2));
            SharedArea shared = Assert.Single(effect.LeftOut);
            Assert.Equal((mark, 25.0), (shared.Place.Mark, Math.Round(shared.Area, 9)));
            Assert.Equal(25, shared.Carriers.Sum(c => c.Growth), 9);
            Assert.Equal(grown.Select(n => n.Nail.Mark).Order(), effect.Changed.Select(n => n.Nail.Mark).Order());
        }
    }

    [Fact]
    public void Heads_on_one_place_share_a_cell()
    {
        (WallProject Project, NailLayout Layout) wall = EffectWall.With(EffectWall.Exact.Make(), "A-2-07", along: 5);
        LayoutEffect effect = EffectWall.Of(wall);
        NailEffect[] two = [.. effect.Nails.Where(n => n.Nail.Mark is "A-2-07" or "A-2-08")];
        Assert.Equal(two[0].Drawn.Area, two[1].Drawn.Area, 9);
        Assert.Equal(2000, effect.Nails.Sum(n => n.Drawn.Area), 6);
    }

    [Fact]
    public void Zones_apart_from_the_inner_nails()
    {
        LayoutEffect effect = EffectWall.Of(EffectWall.Exact with { Elements = [new LayoutElement.Tangent(60), new LayoutElement.Bend(Turn.Right, 20), new LayoutElement.Tangent(40)] });
        FaceZone Of(string mark) => effect.Nails.Single(n => n.Nail.Mark == mark).Zone;
        Assert.Equal(FaceZone.Inner, Of("A-2-05"));
        Assert.Equal(FaceZone.UpperRow, Of("A-1-05"));
        Assert.Equal(FaceZone.End, Of("A-1-01"));
        Assert.Equal(FaceZone.Corner, Of("A-3-12"));
        Assert.Equal(FaceZone.Corner, Of("AL1-1-01"));
        Assert.Equal(FaceZone.End, Of("AL1-4-08"));
        Assert.Equal(FaceZone.Inner, Of("A-4-11"));
    }
}

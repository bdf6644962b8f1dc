using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Quantities.Effect;
using Xunit;

namespace SheetGen.Tests.Drawing;

/// <summary>Changed nails and loads of tests on the sheets.</summary>
public sealed class EffectTableTests
{
    private static (WallProject Project, NailLayout Layout) Wall(DesignValues? design) => EffectWall.With(
        EffectWall.Without((EffectWall.Exact with { Design = design, Tests = new TestNails(1, 0.05, false, false), Rates = new Rates { TestFreeLength = 5 } }).Make(), "A-2-07"), "A-3-10", splay: 12);

    private static string[] Texts((WallProject Project, NailLayout Layout) wall)
    {
        SheetSet set = SampleSheets.Compose(wall.Project, wall.Layout);
        return [.. set.Sheets.SelectMany(s => SheetPicture.Of(set, s)).Select(p => p.Primitive).OfType<Text>().Select(t => t.Value)];
    }

    [Fact]
    public void Changed_nails_stand_with_area_and_ratio_lowest_first()
    {
        (WallProject, NailLayout) wall = Wall(EffectWall.Lrfd);
        string[] texts = Texts(wall);
        int title = Array.IndexOf(texts, "CHANGED NAILS AGAINST THE DESIGN");
        Assert.True(title >= 0);
        LayoutEffect effect = EffectWall.Of(wall);
        string[] marks = [.. effect.Changed.Select(n => n.Nail.Mark)];
        Assert.Equal(5, marks.Length);
        Assert.Equal(marks, texts.Skip(title).Where(marks.Contains).Take(5));
        NailEffect lowest = effect.Changed[0];
        int at = Array.IndexOf(texts, lowest.Nail.Mark, title);
        Assert.Equal([lowest.Drawn.Area.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture), lowest.AreaShare.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture)], texts[(at + 2)..(at + 4)]);
        Assert.Contains(lowest.Drawn.Lowest!.Ratio.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture), texts[at..(at + 8)]);
        Assert.Contains("ARE NOT CHECKED HERE", string.Join(' ', texts.Skip(title)));
    }

    [Fact]
    public void Loads_of_tests_stand_by_step_and_soil()
    {
        string[] texts = Texts(Wall(EffectWall.Lrfd));
        int title = Array.IndexOf(texts, "LOADS OF NAIL TESTS");
        // 10 ft of 3.39292 kip/ft (FHWA GEC No. 7, eq. 9.7, C): 33.9 kip; steps of table 9.1.
        Assert.Contains(texts.Skip(title), t => t.StartsWith("0.13: 4.4", StringComparison.Ordinal) && t.EndsWith("1.00: 33.9", StringComparison.Ordinal));
        Assert.Contains("53.3", texts.Skip(title));
    }

    [Fact]
    public void The_list_of_test_nails_has_the_load_of_the_designs_bond()
    {
        DesignValues layered = EffectWall.Lrfd with { Bond = null, BondByLayer = new Dictionary<string, double> { ["clay"] = 6, ["sand"] = 15 } };
        string[] one = Texts(Wall(EffectWall.Lrfd));
        int title = Array.IndexOf(one, "TEST NAILS");
        Assert.True(one.Skip(title).Count(t => t == "33.9 KIP") >= 2, "verification and proof tests have their load");
        (WallProject Project, NailLayout Layout) soils = EffectWall.With(
            (EffectWall.Exact with
            {
                Design = layered,
                Borings = [new("B-1", new(-12, 20), 126, 90, null, [new BoringLayer(108, "clay", null), new BoringLayer(90, "sand", null)])],
                Tests = new TestNails(1, 0.05, false, false),
                Rates = new Rates { ProofFreeLength = 3 },
            }).Make(), "A-3-10", splay: 12);
        // 10 ft of 1.357 and 3.393 kip/ft.
        Assert.Contains("13.6 - 33.9 KIP", Texts(soils));
        Assert.DoesNotContain("33.9 KIP", Texts(Wall(null)));
    }

    [Fact]
    public void Without_values_neither_table_is_there()
    {
        string[] texts = Texts(Wall(null));
        Assert.DoesNotContain("CHANGED NAILS AGAINST THE DESIGN", texts);
        Assert.DoesNotContain("LOADS OF NAIL TESTS", texts);
    }
}

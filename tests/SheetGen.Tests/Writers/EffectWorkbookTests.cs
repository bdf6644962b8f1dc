using System.Text.Json;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.Tests.Quantities;
using SheetGen.Tests.Quantities.Effect;
using SheetGen.Writers.Json;
using Xunit;

namespace SheetGen.Tests.Writers;

/// <summary>The effect of a layout in the workbook, whose formulas another program computes anew, and in findings.json.</summary>
public sealed class EffectWorkbookTests
{
    private static readonly string[] Sheets = ["Design effect", "Design values", "Design loads", "Bonded lengths"];

    private static TestWall Feet { get; } = EffectWall.Exact with
    {
        Limits = [60],
        Batter = new Batter(5, 100),
        Tests = new TestNails(1, 0.05, false, false),
        Rates = new Rates { TestBondedLength = 12, TestFreeLength = 4, ProofFreeLength = 3, DesignBond = 2.5 },
        Top = [new(0, 120), new(40, 124), new(100, 118)],
        Borings = [Boring("B-1", 20, 112, 105), Boring("B-2", 80, 109, 101)],
        Design = EffectWall.Lrfd with
        {
            MaximumLoads = [16, 20],
            Bond = null,
            BondByLayer = new Dictionary<string, double> { ["clay"] = 6, ["Clay"] = 9, ["sand"] = 15, ["above the borings"] = 3 },
            Surfaces = [new SlipSurface("plane", [], 55), new SlipSurface("broken", [new(0, 101), new(5, 109), new(9, 125)], null)],
            Facing = EffectWall.Lrfd.Facing with { SoilReaction = 2.5 },
            LeastRatio = 1,
            AreaShare = 0.1,
        },
    };

    private static TestWall Metres { get; } = new()
    {
        Unit = LengthUnit.Metre,
        Elements = [new LayoutElement.Tangent(30)],
        End = 30,
        Top = [new(0, 6)],
        Steps = [new(0, 0)],
        Spacing = 1.5,
        Depth = 0.75,
        Length = 7,
        Hole = 0.15,
        Facing = null,
        Lifts = null,
        Drainage = null,
        Tests = new TestNails(1, 0.05, false, false),
        Rates = new Rates { ProofFreeLength = 1 },
        Design = new DesignValues
        {
            MaximumLoads = [90],
            HeadLoads = [50, 55],
            Method = DesignMethod.Asd,
            Factors = new Dictionary<LimitState, double> { [LimitState.Pullout] = 2, [LimitState.Bar] = 1.8, [LimitState.Flexure] = 1.5, [LimitState.PermanentFlexure] = 1.5, [LimitState.Punching] = 1.5, [LimitState.PermanentPunching] = 1.5, [LimitState.Studs] = 2 },
            Bond = 100,
            Surfaces = [new SlipSurface("1", [], 60)],
            PermanentFacing = new FacingDesign { ConcreteStrength = 28, SteelDepth = 0.1, Mesh = 250, MeshYield = 420, PressureFactor = 1 },
            PlateThickness = 0.02,
            Studs = new HeadStuds(4, 0.0127, 126.7, 0.105, 0.0254, 0.008, 0.15, 415),
        },
    };

    private static Boring Boring(string name, double along, double first, double second) =>
        new(name, new Vector2D(-12, along), 118, 92, null, [new BoringLayer(first, "clay", null), new BoringLayer(second, "Clay", null), new BoringLayer(92, "sand", null)]);

    private static (WallProject Project, NailLayout Layout) Changed(TestWall wall) => EffectWall.With(
        EffectWall.With(EffectWall.Without(wall.Make(), "A-2-07"), "A-3-05", splay: 22, inclination: 14, length: 25), "A-2-04", along: wall.Unit == LengthUnit.Metre ? 0.3 : 1);

    private static byte[] Book((WallProject Project, NailLayout Layout) made) => WorkbookTests.Write(WorkbookTests.Take(made.Project, made.Layout, "generic"));

    [Trait("Category", "Outside")]
    [Fact]
    public void Another_program_computes_the_same_ratios_from_the_inputs()
    {
        (WallProject, NailLayout)[] walls = [Changed(Feet), Changed(Metres), Changed(EffectWall.Exact with { Design = new DesignValues { MaximumLoads = [20], ServiceLoad = new ServiceLoad(0.5, 0.26, 120, 20), PlateWidth = 0.5, Facing = new FacingDesign { Thickness = 0.3, ConcreteStrength = 4000 } } })];
        byte[][] books = [.. walls.Select(Book)];
        Assert.True(Recalculation.AssertEqual(books) > 8000);
        Dictionary<string, string[][]> computed = Recalculation.Recalculate(books[0]);
        Assert.All(Sheets, s => Assert.Contains(s, computed.Keys));
        string[] heads = computed["Design effect"][4];
        string[] turned = computed["Design effect"].Single(r => r.Length > 4 && r[4] == "A-3-05");
        LayoutEffect effect = EffectWall.Of(walls[0]);
        double ratio = effect.Nails.Single(n => n.Nail.Mark == "A-3-05").Drawn.Lowest!.Ratio;
        Assert.Equal(ratio, double.Parse(turned[Array.IndexOf(heads, "Lowest ratio as drawn")], System.Globalization.CultureInfo.InvariantCulture), 9);
    }

    /// <summary>The engineer changes a bond or a bar's strength in the workbook: loads, stretch and schedules follow.</summary>
    [Trait("Category", "Outside")]
    [Fact]
    public void Test_loads_follow_the_values_that_the_engineer_changes()
    {
        (WallProject, NailLayout) wall = Changed(EffectWall.Exact with
        {
            Design = EffectWall.Lrfd with { Bond = 15 },
            Tests = new TestNails(1, 0.05, false, false),
            Rates = new Rates { ProofFreeLength = 3 },
        });
        byte[] book = Book(wall);
        // 33.929 kip, 0.042652 in, 15.717 ft: GEC 7 eq. 9.1, 9.7, 9.8 (F2), C.
        Dictionary<string, string[][]> before = Recalculation.Recalculate(book);
        Assert.Equal("proof", Cell(before, "Test"));
        Assert.Equal(33.929, Number(before, "Test load"), 3);
        Assert.Equal(0.042652, Number(before, "Least movement"), 6);
        var edited = new EditedBook(book);
        Dictionary<string, string[][]> after = Recalculation.Recalculate(edited.Number("Design values", edited.Column("DesignValues", "q_u Every soil") + "6", 10).Bytes());
        Assert.Equal(33.929 / 1.5, Number(after, "Test load"), 3);
        Assert.Equal(0.042652 / 1.5, Number(after, "Least movement"), 6);
        Assert.Equal(15.717 * 1.5, Number(after, "Bonded length the bar"), 0.001);
        Assert.Contains(after["Test schedules"], r => r.Any(c => double.TryParse(c, System.Globalization.CultureInfo.InvariantCulture, out double load) && Math.Abs(load - 33.929 / 1.5) < 1e-3));

        static string Cell(Dictionary<string, string[][]> sheets, string head) =>
            sheets["Test nails"][11][Array.FindIndex(sheets["Test nails"][9], h => h.StartsWith(head, StringComparison.Ordinal))];
        static double Number(Dictionary<string, string[][]> sheets, string head) => double.Parse(Cell(sheets, head), System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Every_page_says_what_is_not_checked()
    {
        BookListing book = BookListing.Read(Book(Changed(Feet)));
        Assert.All(Sheets, s => Assert.Contains("Global stability, sliding, bearing, seismic loads and deflection are not checked here", book.Text(s, "A3")));
    }

    [Fact]
    public void Without_values_there_is_geometry_only()
    {
        BookListing book = BookListing.Read(Book(Changed(EffectWall.Exact)));
        Assert.EndsWith("geometry only.", book.Text("Design effect", "A3"));
        Assert.Equal("Nail", book.Text("Design effect", "E5"));
        Assert.Contains("A-3-05", book.Column("Design effect", "E"));
        Assert.DoesNotContain(Enumerable.Range('A', 26).Select(c => book.Text("Design effect", $"{(char)c}5")), h => h.Contains("ratio", StringComparison.OrdinalIgnoreCase));
        Assert.Equal("", book.Text("Design loads", "A2"));
    }

    [Fact]
    public void Findings_json_has_every_nail_with_its_checks()
    {
        (WallProject project, NailLayout layout) = Changed(Feet);
        LayoutEffect effect = EffectWall.Of((project, layout));
        using var stream = new MemoryStream();
        FindingsJson.Write(project, layout, TestWall.Report(layout), stream, effect);
        JsonElement json = JsonDocument.Parse(stream.ToArray()).RootElement.GetProperty("effect");
        Assert.Equal(LayoutEffect.Caution, json.GetProperty("caution").GetString());
        JsonElement[] nails = [.. json.GetProperty("nails").EnumerateArray()];
        Assert.Equal(effect.Nails.Select(n => n.Nail.Mark), nails.Select(n => n.GetProperty("nail").GetString()!));
        JsonElement turned = nails.Single(n => n.GetProperty("nail").GetString() == "A-3-05");
        NailEffect same = effect.Nails.Single(n => n.Nail.Mark == "A-3-05");
        Assert.Equal(same.Drawn.Lowest!.Ratio, turned.GetProperty("drawn").GetProperty("ratio").GetDouble(), 6);
        Assert.Equal(same.Grid!.Area, turned.GetProperty("grid").GetProperty("area").GetDouble(), 6);
        Assert.Equal(same.Drawn.Checks.Count, turned.GetProperty("drawn").GetProperty("checks").GetArrayLength());
        Assert.Equal("A-2-07", json.GetProperty("left_out")[0].GetProperty("place").GetString());
        Assert.Equal(effect.Tests.Count, json.GetProperty("tests").GetArrayLength());
    }
}

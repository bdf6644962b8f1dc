using System.Collections.Concurrent;
using System.Text;
using System.Text.Json;
using SheetGen.Exchange;
using SheetGen.Exchange.Common;
using SheetGen.Exchange.Ifc;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.Tests.Outside;
using Xunit;

namespace SheetGen.Tests.Exchange;

/// <summary>
/// IFC as web-ifc opens it, and as the schema's tables in two packages (web-ifc: entities and their arguments; @ifc-lite/data: supertypes,
/// property and quantity sets) allow it. ISO 16739-1 itself was not at hand.
/// </summary>
[Trait("Category", "Outside")]
public class IfcTests
{
    public static TheoryData<string> Walls => [.. ExchangeWalls.Names];

    private const double Micron = 1e-6;

    // web-ifc keeps the points of shapes in single precision.
    private const double Single = 2e-5;

    private static readonly ConcurrentDictionary<string, JsonElement> Known = [];

    /// <summary>What the outside reader says of a wall's file; each wall is read once.</summary>
    private static JsonElement Read(string wall) => Known.GetOrAdd(wall, w => Read(IfcFile.Make(ExchangeWalls.Of(w))));

    private static JsonElement Read(byte[] file, params string[] options)
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("nails.ifc");
        File.WriteAllBytes(path, file);
        OutsideResult result = OutsideReader.NodeScript("read_ifc.mjs", "web-ifc").Run([path, .. options]);
        Assert.True(result.ExitCode == 0, result.Errors);
        return JsonDocument.Parse(result.Output).RootElement;
    }

    private static double[] Numbers(JsonElement list) => [.. list.EnumerateArray().Select(v => v.GetDouble())];

    /// <summary>East, north and up in metres of the model's world.</summary>
    private static double[] World(ExchangeInput input, Vector3D point)
    {
        double metres = Lengths.MetresPer(input.Project.Unit);
        bool mapped = input.Project.Info.Facts.ContainsKey("coordinate_zone");
        Vector2D shift = mapped ? default : input.Project.Origin;
        return [(point.E + shift.E) * metres, (point.N + shift.N) * metres, point.Z * metres];
    }

    private static void Near(double[] expected, double[] actual, double tolerance, string what) =>
        Assert.True(Math.Sqrt(expected.Zip(actual, (a, b) => (a - b) * (a - b)).Sum()) <= tolerance, $"{what}: {string.Join(' ', expected)} and {string.Join(' ', actual)}");

    [Theory]
    [MemberData(nameof(Walls))]
    public void The_schema_is_kept_and_every_nail_stands_where_it_is_placed(string wall)
    {
        ExchangeInput input = ExchangeWalls.Of(wall);
        JsonElement read = Read(wall);
        Assert.Equal([], read.GetProperty("faults").EnumerateArray().Select(f => f.GetString()));
        Assert.Equal(Lengths.MetresPer(input.Project.Unit), read.GetProperty("unit").GetDouble());
        Dictionary<string, JsonElement> nails = read.GetProperty("nails").EnumerateArray().ToDictionary(n => n.GetProperty("mark").GetString()!);
        Assert.Equal(input.Layout.Nails.Select(n => n.Mark).Order(StringComparer.Ordinal), nails.Keys.Order(StringComparer.Ordinal));
        double metres = Lengths.MetresPer(input.Project.Unit);
        foreach (NailQuantity amounts in input.Quantities.Nails)
        {
            Nail nail = amounts.Nail;
            JsonElement found = nails[nail.Mark];
            AssertEnds(found.GetProperty("hole"), World(input, nail.Hole.Head), World(input, nail.Hole.Tip), nail.Mark);
            AssertEnds(found.GetProperty("bar"), World(input, nail.Hole.At(-amounts.Projection)), World(input, nail.Hole.Tip), nail.Mark);
            // A regular polygon of as many corners as a viewer likes stands for the circle.
            double hole = amounts.HoleVolume * metres * metres * metres;
            Assert.InRange(found.GetProperty("hole").GetProperty("volume").GetDouble(), hole * 0.9, hole * 1.0001);
            // The place along the alignment, which the reader computed from the curve alone, in project units from the origin.
            Near([nail.Hole.Head.E, nail.Hole.Head.N, nail.Hole.Head.Z], Numbers(found.GetProperty("head")), Micron, nail.Mark);
        }
    }

    private static void AssertEnds(JsonElement shape, double[] from, double[] to, string mark)
    {
        double[][] ends = [.. shape.GetProperty("ends").EnumerateArray().Select(Numbers)];
        double one = Math.Max(Away(ends[0], from), Away(ends[1], to)), other = Math.Max(Away(ends[1], from), Away(ends[0], to));
        Assert.True(Math.Min(one, other) < Single * Math.Max(1, Math.Abs(to[2]) / 100), $"{mark} lies {Math.Min(one, other)} m off");
    }

    private static double Away(double[] a, double[] b) => Math.Sqrt(a.Zip(b, (x, y) => (x - y) * (x - y)).Sum());

    [Theory]
    [MemberData(nameof(Walls))]
    public void Properties_and_quantities_are_those_of_the_results(string wall)
    {
        ExchangeInput input = ExchangeWalls.Of(wall);
        JsonElement read = Read(wall);
        Dictionary<string, JsonElement> nails = read.GetProperty("nails").EnumerateArray().ToDictionary(n => n.GetProperty("mark").GetString()!);
        foreach (NailQuantity amounts in input.Quantities.Nails)
        {
            Nail nail = amounts.Nail;
            JsonElement sets = nails[nail.Mark].GetProperty("sets"), soil = sets.GetProperty("SheetGen_SoilNail");
            Assert.Equal(nail.Mark, soil.GetProperty("Mark").GetString());
            Assert.Equal(ResultWords.Of(nail.Status), soil.GetProperty("Status").GetString());
            Assert.Equal(NailFigures.Station(nail), soil.GetProperty("Station").GetDouble());
            Assert.Equal(nail.Hole.Head.N + input.Project.Origin.N, soil.GetProperty("HeadNorthing").GetDouble());
            Assert.Equal(nail.Hole.Tip.E + input.Project.Origin.E, soil.GetProperty("TipEasting").GetDouble());
            Assert.Equal(nail.Inclination, soil.GetProperty("Inclination").GetDouble());
            Assert.Equal(nail.Length, soil.GetProperty("Length").GetDouble());
            double least = input.Report.Nails[nail.Mark].LeastClear;
            Assert.Equal(double.IsFinite(least) ? least : (double?)null, soil.TryGetProperty("LeastClear", out JsonElement clear) ? clear.GetDouble() : (double?)null);
            JsonElement steel = nails[nail.Mark].GetProperty("bar").GetProperty("sets").GetProperty("Qto_ReinforcingElementBaseQuantities");
            Assert.Equal(amounts.BarLength, steel.GetProperty("Length").GetDouble());
            Assert.Equal(amounts.Weight, steel.TryGetProperty("Weight", out JsonElement weight) ? weight.GetDouble() : (double?)null);
            Assert.Equal(amounts.Grout, nails[nail.Mark].GetProperty("hole").GetProperty("sets").GetProperty("SheetGen_HoleQuantities").GetProperty("TheoreticalGrout").GetDouble());
        }
        JsonElement site = Others(read, "IFCSITE").Single().GetProperty("sets");
        AssertAmounts(site.GetProperty("SheetGen_ProjectQuantities"), input.Quantities.Definitions.Select(d => input.Quantities.Totals[d.Name]));
        JsonElement[] sections = Others(read, "IFCFACILITYPARTCOMMON");
        Assert.Equal(input.Quantities.Sections.Count, sections.Length);
        foreach ((JsonElement section, SectionQuantities expected) in sections.Zip(input.Quantities.Sections))
            AssertAmounts(section.GetProperty("sets").GetProperty("SheetGen_SectionQuantities"), expected.Amounts.Values);
        // Production nails by hand: their pay lengths in the file add up to the total.
        double paid = nails.Values.Select(n => n.GetProperty("sets").GetProperty("SheetGen_NailQuantities"))
            .Sum(q => q.TryGetProperty("PayLength", out JsonElement length) ? length.GetDouble() : 0);
        Assert.Equal(input.Quantities.Totals[QuantityName.PayLength].Amount!.Value, paid, 6);
    }

    private static JsonElement[] Others(JsonElement read, string entity) =>
        [.. read.GetProperty("others").EnumerateArray().Where(o => o.GetProperty("entity").GetString() == entity)];

    private static void AssertAmounts(JsonElement set, IEnumerable<Quantity> expected)
    {
        Dictionary<string, double> given = set.EnumerateObject().ToDictionary(p => p.Name, p => p.Value.GetDouble());
        Assert.Equal(expected.Where(q => q.Amount is not null).ToDictionary(q => q.Name, q => q.Amount!.Value), given);
    }

    [Theory]
    [MemberData(nameof(Walls))]
    public void Shotcrete_and_panels_have_the_volume_of_the_take_off(string wall)
    {
        ExchangeInput input = ExchangeWalls.Of(wall);
        double metres = Lengths.MetresPer(input.Project.Unit), cubic = metres * metres * metres;
        JsonElement read = Read(wall);
        JsonElement[] walls = Others(read, "IFCWALL");
        Assert.Equal(input.Quantities.Sections.Count, walls.Length);
        foreach ((JsonElement shown, SectionQuantities section) in walls.Zip(input.Quantities.Sections))
        {
            if (section.Amounts[QuantityName.ShotcreteVolume].Amount is not { } volume)
            {
                Assert.False(shown.GetProperty("sets").TryGetProperty("Qto_WallBaseQuantities", out JsonElement set) && set.TryGetProperty("NetVolume", out _));
                continue;
            }
            // Bodies are chords of arcs and square at corners: a little off the neat volume.
            Assert.InRange(shown.GetProperty("volume").GetDouble(), volume * cubic * 0.998, volume * cubic * 1.002);
            Assert.Equal(volume, shown.GetProperty("sets").GetProperty("Qto_WallBaseQuantities").GetProperty("NetVolume").GetDouble());
        }
        foreach (Panel panel in input.Quantities.PanelPieces)
        {
            JsonElement shown = Others(read, "IFCCOVERING").Single(c => c.GetProperty("id").GetString() == new StableId(input.Project).Ifc(ItemKey.Panel(panel)));
            double expected = panel.Area * panel.Wall.Facing!.Thickness!.Value * cubic;
            // On an arc the panel stands before the face on which its width counts.
            Assert.InRange(shown.GetProperty("volume").GetDouble(), expected * 0.98, expected * 1.02);
        }
    }

    [Fact]
    public void Obstructions_are_what_they_are_measured_as()
    {
        ExchangeInput input = ExchangeWalls.Of("feet");
        JsonElement read = Read("feet");
        double cubic = Math.Pow(0.3048, 3);
        double Volume(string entity, string name) => Others(read, entity).Single(o => o.GetProperty("name").GetString() == name).GetProperty("volume").GetDouble() / cubic;
        AssertRound(Math.PI * 1.5 * 1.5 * 36, Volume("IFCPILE", "S1"));
        Obstruction raked = input.Project.Obstructions.Single(o => o.Name == "S2");
        AssertRound(Math.PI * 0.75 * 0.75 * (raked.Shape[0] - raked.Shape[1]).Length, Volume("IFCPILE", "S2"));
        // The cap's footprint stands beside an arc's end and a tangent: its plan area follows from its own corners.
        Obstruction cap = input.Project.Obstructions.Single(o => o.Name == "Cap");
        Assert.Equal(PlanArea(cap.Shape) * 3, Volume("IFCBUILDINGELEMENTPROXY", "Cap"), 2);
        Obstruction beam = input.Project.Obstructions.Single(o => o.Name == "G1");
        Assert.Equal(PlanArea(beam.Shape) * 4, Volume("IFCBEAM", "G1"), 2);
        Obstruction pipe = input.Project.Obstructions.Single(o => o.Name == "Storm");
        AssertRound(Math.PI * pipe.Shape.Zip(pipe.Shape.Skip(1), (a, b) => (b - a).Length).Sum(), Volume("IFCPIPESEGMENT", "Storm"));
        JsonElement row = Others(read, "IFCVIRTUALELEMENT").Single();
        Assert.Equal(102 * 0.3048, row.GetProperty("low")[2].GetDouble(), 4);
        Assert.Equal(118 * 0.3048, row.GetProperty("high")[2].GetDouble(), 4);
    }

    private static void AssertRound(double expected, double actual) => Assert.InRange(actual, expected * 0.9, expected * 1.001);

    private static double PlanArea(IReadOnlyList<Vector3D> ring) =>
        Math.Abs(ring.Select((p, i) => (p.Plan - ring[0].Plan).CrossRight(ring[(i + 1) % ring.Count].Plan - ring[0].Plan)).Sum()) / 2;

    [Fact]
    public void A_named_zone_gives_a_map_conversion_and_none_leaves_the_projects_own_coordinates()
    {
        JsonElement map = Read("survey feet").GetProperty("map");
        Assert.Equal("EPSG:2276", map.GetProperty("name").GetString());
        Assert.Equal(7012345.678, map.GetProperty("northing").GetDouble());
        Assert.Equal(2487654.321, map.GetProperty("easting").GetDouble());
        Assert.Equal(JsonValueKind.Null, Read("feet").GetProperty("map").ValueKind);
    }

    /// <summary>Each fault is put into one file, and all are asked for.</summary>
    [Fact]
    public void The_checker_sees_what_is_wrong()
    {
        (string Right, string Wrong, string Fault)[] changes =
        [
            (".ANCHORING.,.TEXTURED.)", ".ANCHORED.,.TEXTURED.)", "IFCREINFORCINGBAR.PredefinedType"),
            ("=IFCBEAM(", "=IFCBEEM(", "no such entity"),
            ("Qto_WallBaseQuantities", "Qto_WallBasicQuantities", "Qto_WallBasicQuantities: no set of the schema"),
            ("'GrossSideArea'", "'NetSideArea'", "two properties of one name"),
            ("IFCLENGTHMEASURE(0.)", "IFCAREAMEASURE(0.)", "IFCCURVESEGMENT.SegmentStart"),
            ("'Pset_Stationing'", "'Pset_StationingX'", "Pset_StationingX: no set of the schema"),
            ("IFCQUANTITYWEIGHT('Weight'", "IFCQUANTITYLENGTH('Weight'", "Weight: IfcLengthMeasure and not IfcMassMeasure"),
            (",.RETAININGWALL.)", ")", "arguments, the schema has"),
            (",.CIRCULARARC.)", ",$)", "IFCALIGNMENTHORIZONTALSEGMENT.PredefinedType"),
            ("'SOIL NAIL',", "$,", "USERDEFINED without ObjectType"),
        ];
        string text = Encoding.ASCII.GetString(IfcFile.Make(ExchangeWalls.Of("feet")));
        foreach ((string right, string wrong, string _) in changes)
        {
            Assert.Contains(right, text, StringComparison.Ordinal);
            text = text.Replace(right, wrong, StringComparison.Ordinal);
        }
        string[] faults = [.. Read(Encoding.ASCII.GetBytes(text), "--schema").GetProperty("faults").EnumerateArray().Select(f => f.GetString()!)];
        Assert.All(changes, c => Assert.Contains(faults, f => f.Contains(c.Fault, StringComparison.Ordinal)));
    }
}

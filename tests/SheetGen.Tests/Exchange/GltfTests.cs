using System.Text.Json;
using SheetGen.Exchange;
using SheetGen.Exchange.Gltf;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.Tests.Outside;
using Xunit;

namespace SheetGen.Tests.Exchange;

/// <summary>glTF as the validator of Khronos judges it and glTF Transform reads it.</summary>
[Trait("Category", "Outside")]
public class GltfTests
{
    public static TheoryData<string> Walls => [.. ExchangeWalls.Names];

    [Theory]
    [MemberData(nameof(Walls))]
    public void The_validator_finds_nothing_and_every_nail_stands_where_it_is_placed(string wall)
    {
        ExchangeInput input = ExchangeWalls.Of(wall);
        using var folder = new TemporaryFolder();
        string path = folder.File("nails.glb");
        File.WriteAllBytes(path, GltfFile.Make(input));
        OutsideResult result = OutsideReader.NodeScript("read_gltf.mjs", "gltf-validator").Run(path);
        Assert.True(result.ExitCode == 0, result.Errors);
        JsonElement read = JsonDocument.Parse(result.Output).RootElement;
        Assert.Equal(0, read.GetProperty("issues").GetArrayLength());
        JsonElement extras = read.GetProperty("root").GetProperty("extras");
        Assert.Equal(input.Project.Origin.N, extras.GetProperty("origin_northing").GetDouble());
        JsonElement[] nodes = [.. read.GetProperty("nodes").EnumerateArray()];
        double metres = Lengths.MetresPer(input.Project.Unit), low = input.Project.Walls.Min(w => w.Bottom.Points.Min(p => p.Elevation));
        Dictionary<string, JsonElement> holes = In(nodes, "Holes").ToDictionary(n => n.GetProperty("name").GetString()!), bars = In(nodes, "Bars").ToDictionary(n => n.GetProperty("name").GetString()!);
        Assert.Equal(input.Layout.Nails.Count, holes.Count);
        foreach (NailQuantity amounts in input.Quantities.Nails)
        {
            Nail nail = amounts.Nail;
            Near(nail.Hole.Head, holes[nail.Mark].GetProperty("start"));
            Near(nail.Hole.Tip, holes[nail.Mark].GetProperty("end"));
            Near(nail.Hole.At(-amounts.Projection), bars[nail.Mark].GetProperty("start"));
            Near(nail.Hole.Tip, bars[nail.Mark].GetProperty("end"));
            Assert.Equal(nail.HoleDiameter / 2 * metres, holes[nail.Mark].GetProperty("scale")[0].GetDouble(), 5);
            Assert.Equal(nail.Length, holes[nail.Mark].GetProperty("extras").GetProperty("length").GetDouble());
            Assert.True(holes[nail.Mark].GetProperty("volume").GetDouble() > 0, "triangles turn inward");
        }
        foreach ((JsonElement shown, SectionQuantities section) in In(nodes, "Shotcrete").Zip(input.Quantities.Sections))
        {
            if (section.Amounts[QuantityName.ShotcreteVolume].Amount is { } volume)
                Assert.InRange(shown.GetProperty("volume").GetDouble() / (metres * metres * metres), volume * 0.998, volume * 1.002);
        }
        Assert.All(input.Project.Obstructions.Where(o => o.Kind != ObstructionKind.Boundary), o =>
            Assert.Contains(nodes, n => n.GetProperty("name").GetString()!.StartsWith(o.Name, StringComparison.Ordinal) && n.GetProperty("volume").GetDouble() > 0));

        void Near(Vector3D expected, JsonElement actual)
        {
            double[] at = [.. actual.EnumerateArray().Select(v => v.GetDouble())];
            double off = (expected * metres - new Vector3D(-at[2], at[0], at[1] + low * metres)).Length;
            Assert.True(off < 5e-5, $"{off} m off");
        }
    }

    private static IEnumerable<JsonElement> In(JsonElement[] nodes, string group) =>
        nodes.Where(n => n.GetProperty("parents").EnumerateArray().Any(p => p.GetString() == group));
}

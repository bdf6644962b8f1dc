using SheetGen.Layout.Quantities.Effect;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using Xunit;
using static SheetGen.Tests.Rows.Typed;

namespace SheetGen.Tests.Quantities.Effect;

/// <summary>Slip surfaces and soil layers along a hole, against slow twins that ask at many depths.</summary>
public sealed class SlipAndSoilTests
{
    [Fact]
    public void A_slip_surface_is_left_where_a_walk_along_the_hole_leaves_it()
    {
        var random = new Random(41);
        int inside = 0;
        for (int round = 0; round < 400; round++)
        {
            var points = new List<SurfacePoint> { new(random.Next(-1, 3), 100) };
            for (int i = random.Next(1, 6); i > 0; i--)
                points.Add(new SurfacePoint(points[^1].Behind + random.Next(-2, 8), points[^1].Elevation + random.Next(0, 7) + (i == 1 ? 1 : 0)));
            points = [.. points.Distinct()];
            if (points.Count < 2)
                continue;
            double elevation = 98 + random.NextDouble() * 22, tilt = random.NextDouble() * 0.9 - 0.2, behind = random.NextDouble() * 2, length = 10 + random.NextDouble() * 20;
            double at = SlipCut.At(new SlipSurface("s", points, null), 100, behind, elevation, Math.Cos(tilt), Math.Sin(tilt), length);
            const int Steps = 4000;
            double walked = 0;
            for (int k = Steps - 1; k >= 0; k--)
            {
                double depth = (k + 0.5) / Steps * length;
                if (IsInFront(points, behind + depth * Math.Cos(tilt), elevation - depth * Math.Sin(tilt)))
                {
                    walked = (k + 1.0) / Steps * length;
                    break;
                }
            }
            Assert.Equal(walked, at, 2 * length / Steps);
            inside += at > 0 && at < length ? 1 : 0;
        }
        Assert.True(inside > 100, $"only {inside} holes cross their surface");

        static bool IsInFront(List<SurfacePoint> points, double behind, double elevation)
        {
            if (elevation < points[0].Elevation)
                return false;
            double at = points[^1].Behind;
            for (int i = 1; i < points.Count; i++)
            {
                if (elevation >= points[i - 1].Elevation && elevation < points[i].Elevation)
                    at = points[i - 1].Behind + (points[i].Behind - points[i - 1].Behind) * (elevation - points[i - 1].Elevation) / (points[i].Elevation - points[i - 1].Elevation);
            }
            return behind < at;
        }
    }

    [Fact]
    public void Between_borings_a_limit_is_straight_and_a_layer_of_one_boring_runs_out()
    {
        SoilLayers layers = Layers(
            new Boring("B-1", new Vector2D(-10, 20), 120, 80, null, [new BoringLayer(110, "clay", null), new BoringLayer(80, "sand", null)]),
            new Boring("B-2", new Vector2D(-10, 60), 122, 80, null, [new BoringLayer(118, "fill", null), new BoringLayer(106, "clay", null), new BoringLayer(84, "sand", null)]));
        // Half way: top 121, fill down to (120 + 118) / 2, clay to 108, sand to 82, then below.
        Assert.Equal([(SoilLayers.Above, 4.0), ("fill", 2.0), ("clay", 11.0), ("sand", 26.0), (SoilLayers.Below, 7.0)], Down(layers, 40));
        // Level before the first and after the last.
        Assert.Equal([(SoilLayers.Above, 5.0), ("clay", 10.0), ("sand", 30.0), (SoilLayers.Below, 5.0)], Down(layers, 0));
        Assert.Equal(Down(layers, 60), Down(layers, 95));

        static IEnumerable<(string, double)> Down(SoilLayers layers, double along) => layers.Of(HeadAt(along, 125), 0, 1, 50).Select(l => (l.Layer, Math.Round(l.Length, 9)));
    }

    [Fact]
    public void Lengths_in_layers_agree_with_asking_at_many_depths()
    {
        var random = new Random(43);
        string[] names = ["fill", "clay", "sand", "silt"];
        int mixed = 0;
        for (int round = 0; round < 150; round++)
        {
            var borings = new List<Boring>();
            for (int b = 0; b < 3; b++)
            {
                double level = 118 + random.NextDouble() * 8, top = level;
                var parts = new List<BoringLayer>();
                for (int i = random.Next(1, 5); i > 0; i--)
                    parts.Add(new BoringLayer(level -= 1 + random.NextDouble() * 8, names[random.Next(4)], null));
                borings.Add(new Boring("B-" + b, new Vector2D(-5 - random.Next(9), 20 + 30 * b), top, level, null, parts));
            }
            SoilLayers layers = Layers([.. borings]), again = Layers([.. borings.AsEnumerable().Reverse()]);
            double along = random.NextDouble() * 100, rate = random.NextDouble() * 1.4 - 0.7, down = random.NextDouble() * 0.6 - 0.1, elevation = 104 + random.NextDouble() * 20;
            IReadOnlyList<LayerStretch> found = layers.Of(HeadAt(along, elevation), rate, down, 25);
            Assert.Equal(found, again.Of(HeadAt(along, elevation), rate, down, 25));
            Assert.Equal(25, found.Sum(l => l.Length), 9);
            for (int k = 0; k < 200; k++)
            {
                double depth = (k + 0.5) / 8;
                LayerStretch here = found.First(l => depth <= l.To);
                if (Math.Min(depth - here.From, here.To - depth) < 1e-6)
                    continue;
                Assert.Equal(here.Layer, layers.Of(HeadAt(along + rate * depth, elevation - down * depth), 0, 0, 1e-9)[0].Layer);
            }
            mixed += found.Count > 2 ? 1 : 0;
        }
        Assert.True(mixed > 25, $"only {mixed} holes with three layers");
    }

    private static SoilLayers Layers(params Boring[] borings)
    {
        (WallProject project, _) = (EffectWall.Exact with { Borings = borings }).Make();
        return new SoilLayers(project, project.Walls[0]);
    }
}

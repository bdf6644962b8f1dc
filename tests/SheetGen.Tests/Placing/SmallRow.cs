using System.Globalization;
using SheetGen.Model;
using SheetGen.Tests.Walls;

namespace SheetGen.Tests.Placing;

/// <summary>
/// A wall of level profiles small enough for <see cref="EveryLayout"/>: one row or two on a straight wall, or one round a corner, with shafts behind it and
/// perhaps a pinned nail of the first row. Spacing 3.5, shift step 1, redirect step 5, greatest splay 20, inclination 10 to 20 around 15, field tolerance 10.
/// </summary>
internal sealed class SmallRow
{
    private const double Spacing = 3.5;

    public SmallRow(ulong seed, int rows = 1, bool corner = false, bool pin = false)
    {
        var random = new WallRandom(seed);
        double width = corner ? random.Of(6.0, 7) : rows == 1 ? random.Of(7.0, 9.5, 12, 13.5, 15, 17) : random.Of(6.0, 7, 9.5);
        double second = corner ? random.Of(6.0, 7) : 0, deflection = corner ? random.Of(90, 75, 60, 45, -60) : 0;
        double length = random.Of(12.0, 16, 20);
        var shafts = new List<string>();
        int count = random.Whole(1, 3);
        for (int i = 0; i < count; i++)
        {
            shafts.Add(string.Create(CultureInfo.InvariantCulture,
                $"  - {{name: S{i + 1}, kind: shaft, at: {{station: {random.Between(0, width + second, 0.25)}, offset: {random.Between(3, 11, 0.25)}}}, diameter: {random.Of(1, 2, 3)}, top: 110, bottom: 80}}"));
        }
        string nailClear = random.Of("0.5", "0.5", "1.5", "2.25");
        Yaml = new PlacingWall
        {
            Length = width + second,
            CornerAt = corner ? width : null,
            Deflection = deflection,
            Top = "[[0, 103], [END, 103]]",
            Bottom = rows == 1 ? "[[0, 100]]" : "[[0, 95]]",
            TopRowDepth = 1.5,
            Lengths = length.ToString(CultureInfo.InvariantCulture),
            Blocks =
            [
                "obstructions:",
                .. shafts,
                .. pin ? Pin(random, corner ? [(0, width), (width, second)] : [(0, width)]) : [],
                "rules:",
                $"  clearance: {{obstruction: 0.5, nail: {nailClear}, boundary: 1}}",
                "  redirect: {field_tolerance: 10, step: 5, maximum: 20, inclination: [10, 20]}",
                "  shift_step: 1",
            ],
        }.Yaml;
        Project = PlacingWall.Read(Yaml);
    }

    public string Yaml { get; }

    public WallProject Project { get; }

    /// <summary>A nail pinned on or beside a grid station of a leg.</summary>
    private static string[] Pin(WallRandom random, (double Start, double Width)[] legs)
    {
        (double start, double width) = legs[random.Whole(0, legs.Length - 1)];
        double[] places = [.. Grid(width).SelectMany(g => (double[])[g - 1, g, g, g, g, g + 1]).Where(s => s >= 1 - 1e-9 && s <= width - 1 + 1e-9)];
        double place = places[random.Whole(0, places.Length - 1)];
        return ["fixed:", string.Create(CultureInfo.InvariantCulture,
            $"  - {{wall: Wall 1, row: 1, station: {start + place}, splay: {random.Of(-15.0, 0, 0, 5, 20)}, inclination: {random.Of(15.0, 15, 20)}}}")];
    }

    private static double[] Grid(double width)
    {
        int n = (int)Math.Ceiling(width / Spacing);
        double rest = (width - (n - 1) * Spacing) / 2;
        double[] grid = [.. Enumerable.Range(0, n).Select(i => rest + i * Spacing)];
        grid[0] = Math.Max(rest, 1);
        grid[^1] = Math.Min(width - rest, width - 1);
        return grid;
    }
}

using System.Globalization;

namespace SheetGen.Tests.Walls;

/// <summary>
/// A long straight wall with six level rows at 5 ft both ways and 14 to 23 obstructions for each 300 nails: shafts, pipes along the wall
/// and caps, each by itself. Less crowded than <see cref="RandomWall"/>, whose groups of obstructions stand close behind the face.
/// </summary>
public static class OpenWall
{
    private const double Spacing = 5;
    private const int Rows = 6;

    /// <summary>The text of a project file; the same seed and number of nails always give the same wall.</summary>
    public static string Yaml(ulong seed, int nails)
    {
        var random = new WallRandom(seed);
        double length = nails / Rows * Spacing;
        var lines = new List<string>
        {
            "format: 1",
            Invariant($"project: {{title: Open wall {seed}, number: O-1, units: ft}}"),
            "layout_lines:",
            "  - name: WL-1",
            "    start: {station: 0, northing: 5000, easting: 2000, azimuth: 90}",
            Invariant($"    elements: [{{line: {length}}}]"),
            "walls:",
            "  - name: Wall 1",
            "    layout_line: WL-1",
            "    retained_side: right",
            Invariant($"    stations: [0, {length}]"),
            Invariant($"    top: [[0, 130], [{Math.Round(length * 0.4, 1)}, {131 + random.Whole(0, 2)}], [{length}, 131]]"),
            "    bottom: {steps: [[0, 100]]}",
            "    panels: {width: 10, height: 5, first_break: 0}",
            "    sections:",
            Invariant($"      - {{name: A, stations: [0, {length}], horizontal_spacing: {Spacing}, vertical_spacing: {Spacing}, rows: level, pattern: square,"),
            "         top_row_depth: 2.5, inclination: 15, lengths: [26, 26, 24, 24, 22, 20], bar: {size: \"#8\", grade: 75}, hole: 6 in}",
            "obstructions:",
        };
        int count = (int)Math.Round(random.Whole(14, 23) * nails / 300.0);
        for (int i = 1; i <= count; i++)
            lines.Add("  - " + Obstruction(random, i, length));
        return string.Join('\n', lines) + "\n";
    }

    private static string Obstruction(WallRandom random, int number, double length)
    {
        double at = random.Between(0, length, 0.25);
        int kind = random.Whole(0, 9);
        if (kind < 6)
            return Invariant($"{{name: S{number}, kind: shaft, at: {{station: {at}, offset: {random.Between(4, 14, 0.25)}}}, diameter: {random.Between(2.5, 4.5, 0.25)}, top: 129, bottom: 70}}");
        double reach = kind < 8 ? 25 : 8, start = Math.Max(0, at - reach), end = Math.Min(length, at + reach);
        if (kind < 8)
        {
            double offset = random.Between(6, 18, 0.25), depth = random.Between(105, 125, 0.25);
            return Invariant($"{{name: P{number}, kind: pipe, points: [{{station: {start}, offset: {offset}, elevation: {depth}}}, ")
                + Invariant($"{{station: {end}, offset: {offset + random.Between(0, 4, 0.25)}, elevation: {depth}}}], diameter: 2}}");
        }
        double near = random.Between(3, 9, 0.25);
        return Invariant($"{{name: C{number}, kind: solid, footprint: [[{start}, {near}], [{end}, {near}], [{end}, {near + 5}], [{start}, {near + 5}]], ")
            + Invariant($"bottom: {random.Between(118, 126, 0.25)}, top: 133}}");
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

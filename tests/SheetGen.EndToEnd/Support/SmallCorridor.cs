using System.Globalization;
using System.Text;

namespace SheetGen.EndToEnd.Support;

/// <summary>A folder with a list and small random walls: 12 to 30 nails each, most with a shaft behind the face; contracts and stages by turns.</summary>
internal static class SmallCorridor
{
    public const string List = "corridor.yaml";

    /// <summary>Distance of the walls in feet, out of reach of each other.</summary>
    private const double Apart = 400;

    /// <param name="also">Further lines of the list's walls.</param>
    public static void Write(string folder, int count, string also = "")
    {
        var random = new Random(18);
        Directory.CreateDirectory(Path.Combine(folder, "walls"));
        var list = new StringBuilder("format: 1\ntitle: Cedar corridor\nwalls:\n");
        for (int i = 0; i < count; i++)
        {
            File.WriteAllText(Path.Combine(folder, FileOf(i)), Wall(i, random));
            list.Append(CultureInfo.InvariantCulture, $"  - {{file: {FileOf(i)}, name: Wall {i}, contract: C-{1 + i % 2}, stage: {1 + i % 3}}}\n");
        }
        File.WriteAllText(Path.Combine(folder, List), list + also);
    }

    public static string FileOf(int wall) => $"walls/w{wall.ToString(CultureInfo.InvariantCulture)}.yaml";

    private static string Wall(int number, Random random)
    {
        T One<T>(params T[] of) => of[random.Next(of.Length)];
        int length = One(16, 20, 24, 28);
        double top = 100 + One(8.5, 9.5, 11);
        string shaft = random.Next(4) == 0 ? "" : FormattableString.Invariant($"  - {{name: P{number}, kind: shaft, at: {{station: 10+{4 + random.NextDouble() * (length - 8):00.00}, offset: 6}}, diameter: 30 in, top: {top}, bottom: 85}}\n");
        return FormattableString.Invariant($$"""
            format: 1
            project: {title: Small wall {{number}}, number: S-{{number:000}}, units: ft}
            layout_lines:
              - name: L
                start: {station: 10+00, northing: {{5000 + number * Apart}}, easting: 2000, azimuth: 90}
                elements: [{line: {{length}}}]
            walls:
              - name: W{{number}}
                layout_line: L
                retained_side: right
                stations: [10+00, 10+{{length}}]
                top: [[10+00, {{top}}], [10+{{length}}, {{top - One(0, 0.5)}}]]
                bottom: {steps: [[10+00, 100]]}
                facing: {shotcrete: 4 in, kind: permanent shotcrete, thickness: 6 in}
                sections:
                  - name: A
                    stations: [10+00, 10+{{length}}]
                    horizontal_spacing: {{One(3.5, 4, 4.5)}}
                    vertical_spacing: {{One(3.5, 4)}}
                    top_row_depth: 2
                    inclination: {{One(10, 15)}}
                    lengths: {{One(14, 16, 18)}}
                    bar: {size: "#8", grade: 75}
                    hole: 6 in
            {{(shaft.Length == 0 ? "" : "obstructions:\n" + shaft)}}
            """).ReplaceLineEndings("\n");
    }
}

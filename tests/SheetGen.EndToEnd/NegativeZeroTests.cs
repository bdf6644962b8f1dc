using System.IO.Compression;
using System.Text.RegularExpressions;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>A wall about the origin, with every chance of a figure that rounds to nothing from below: no output says "-0".</summary>
public sealed partial class NegativeZeroTests
{
    private const string Wall = """
        format: 1
        project: {title: About nothing, number: T-1, units: ft}
        layout_lines:
          - name: L
            start: {station: 0+00, northing: -0.001, easting: -0, azimuth: 90}
            elements: [{line: 40}]
        walls:
          - name: W1
            layout_line: L
            retained_side: left
            stations: [0+00, 0+40]
            top: [[0+00, 0.004], [0+40, -0.004]]
            finished_grade: [[0+00, -9], [0+40, -9]]
            bottom: {steps: [[0+00, -10]]}
            facing: {shotcrete: 4 in}
            sections:
              - {name: A, stations: [0+00, 0+40], horizontal_spacing: 5, vertical_spacing: 5, top_row_depth: 2.5, inclination: 0, lengths: [20, 16], bar: {size: "#8", grade: 75}, hole: 6 in}
        obstructions:
          - {name: P1, kind: pipe, points: [{station: 0+00, offset: 8, elevation: -1.254}, {station: 0+40, offset: 8, elevation: -1.254}], diameter: 2}
          - {name: ROW, kind: boundary, points: [{station: 0+00, offset: 40}, {station: 0+40, offset: 40}]}
        fixed:
          - {wall: W1, section: A, row: 1, splay: -0, inclination: 0}
        rules: {redirect: {inclination: [0, 25]}}
        """;

    [Fact]
    public void No_output_says_minus_zero()
    {
        using var temp = new TempFolder();
        File.WriteAllText(temp.File("wall.yaml"), Wall);
        CliRun run = CliRun.With(temp.Path, null, "build", "wall.yaml", "--out", "out", "--also", "all");
        CliRun picture = CliRun.With(temp.Path, null, "check", "wall.yaml", "--picture", "wall.svg");

        Assert.Equal((1, 1), (run.Code, picture.Code));
        Assert.Contains("  closest    0.00 ft clear", run.Out, StringComparison.Ordinal);
        var texts = new List<(string Name, string Text)> { ("stdout", run.Out), ("stderr", run.Error), ("check", picture.Out), ("svg", File.ReadAllText(temp.File("wall.svg"))) };
        foreach (string path in Directory.EnumerateFiles(temp.File("out"), "*", SearchOption.AllDirectories))
        {
            string name = Path.GetFileName(path);
            if (Path.GetExtension(path) is ".csv" or ".json" or ".dxf" or ".xml" or ".geojson" or ".ifc" or ".gltf")
                texts.Add((name, File.ReadAllText(path)));
            if (Path.GetExtension(path) is not (".zip" or ".xlsx" or ".bcf"))
                continue;
            using ZipArchive zip = ZipFile.OpenRead(path);
            foreach (ZipArchiveEntry entry in zip.Entries.Where(e => Path.GetExtension(e.Name) is ".csv" or ".xml" or ".bcf" or ".bcfv"))
            {
                using var reader = new StreamReader(entry.Open());
                texts.Add((name + ":" + entry.FullName, reader.ReadToEnd()));
            }
        }

        Assert.True(texts.Count > 20, "few outputs were looked at");
        Assert.All(texts, t => Assert.DoesNotMatch(MinusZero(), t.Text));
    }

    /// <summary>A minus before a figure of noughts that stands alone: not of a mark (A-0), a station (-0+50), an exponent, a bearing or a name.</summary>
    [GeneratedRegex(@"(?<![\w.+\-#'])-0(?:\.0+)?(?![\w.+\-])")]
    private static partial Regex MinusZero();
}

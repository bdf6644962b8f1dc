using System.Globalization;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>A small wall as the text of a project file: one straight section from station 0, soil to the right, unless said otherwise. Feet.</summary>
internal sealed record PlacingWall
{
    /// <summary>A wall with one row, 1.5 ft below its top of 103.</summary>
    /// <param name="blocks">What the project file says besides.</param>
    public static PlacingWall OneRow(double length, params IReadOnlyList<string> blocks) =>
        new() { Length = length, Top = "[[0, 103], [END, 103]]", TopRowDepth = 1.5, Blocks = blocks };

    public double Length { get; init; } = 21;

    /// <summary>Station of a corner in the middle of the wall; null for a straight one.</summary>
    public double? CornerAt { get; init; }

    /// <summary>Deflection to the right, degrees: outside corner where positive.</summary>
    public double Deflection { get; init; }

    public double FaceOffset { get; init; }

    /// <summary>Stations and elevations; END stands for the wall's last station.</summary>
    public string Top { get; init; } = "[[0, 118], [END, 118]]";

    public string Bottom { get; init; } = "[[0, 100]]";

    public string Rows { get; init; } = "level";

    public string Pattern { get; init; } = "square";

    public double TopRowDepth { get; init; } = 2;

    public string Lengths { get; init; } = "20";

    public string CornerRows { get; init; } = "continuous";

    /// <summary>Distance from the row's start to its first column; empty where the columns are shared.</summary>
    public string Columns { get; init; } = "";

    public string Tests { get; init; } = "{verification: 0, proof: 0 %}";

    /// <summary>Further keys of the wall, a line each.</summary>
    public IReadOnlyList<string> WallKeys { get; init; } = [];

    /// <summary>Further blocks of the file, a line each.</summary>
    public IReadOnlyList<string> Blocks { get; init; } = [];

    public string Yaml
    {
        get
        {
            string N(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
            string elements = CornerAt is double at
                ? $"[{{line: {N(at)}}}, {{corner: {{turn: {(Deflection > 0 ? "right" : "left")}, angle: {N(Math.Abs(Deflection))}}}}}, {{line: {N(Length - at)}}}]"
                : $"[{{line: {N(Length)}}}]";
            string[] lines =
            [
                "format: 1",
                "project: {title: Small wall, number: P-1, units: ft}",
                "layout_lines:",
                "  - name: WL-1",
                "    start: {station: 0, northing: 5000, easting: 2000, azimuth: 90}",
                $"    elements: {elements}",
                "walls:",
                "  - name: Wall 1",
                "    layout_line: WL-1",
                "    retained_side: right",
                $"    stations: [0, {N(Length)}]",
                $"    face_offset: {N(FaceOffset)}",
                $"    top: {Top.Replace("END", N(Length), StringComparison.Ordinal)}",
                $"    bottom: {{steps: {Bottom}}}",
                .. WallKeys.Select(k => "    " + k),
                "    sections:",
                "      - name: A",
                $"        stations: [0, {N(Length)}]",
                "        horizontal_spacing: 3.5",
                "        vertical_spacing: 3.5",
                Columns.Length == 0 ? "" : $"        columns: {Columns}",
                $"        rows: {Rows}",
                $"        pattern: {Pattern}",
                $"        top_row_depth: {N(TopRowDepth)}",
                "        inclination: 15",
                $"        lengths: {Lengths}",
                "        bar: {size: \"#8\", grade: 75}",
                "        hole: 6 in",
                $"        corner_rows: {CornerRows}",
                $"        test_nails: {Tests}",
                .. Blocks,
            ];
            return string.Join('\n', lines) + "\n";
        }
    }

    public WallProject Project => Read(Yaml);

    public NailLayout Layout => Placer.Place(Project, new PlacingOptions());

    public static WallProject Read(string text)
    {
        ReadResult read = ProjectReader.ReadText(text, "wall.yaml");
        Assert.True(read.Project is not null, string.Join('\n', read.Problems.Where(p => p.Severity == Severity.Error)));
        return read.Project;
    }

    public static Bay[] Bays(WallProject project) =>
        [.. project.Walls.SelectMany(w => Bay.Of(new Face(w), project.Rules, project.Unit))];
}

using SheetGen.Exchange;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;

namespace SheetGen.Tests.Exchange;

/// <summary>Walls that between them have what an open format may meet: all units, arcs, corners both ways, both sides, two walls, every kind of obstruction.</summary>
internal static class ExchangeWalls
{
    public static IReadOnlyList<string> Names { get; } = ["feet", "metres", "survey feet", "two walls", "batter", "spiral"];

    private static readonly Dictionary<string, Lazy<ExchangeInput>> Made = Names.ToDictionary(n => n, n => new Lazy<ExchangeInput>(() => Make(Yaml(n))));

    public static ExchangeInput Of(string name) => Made[name].Value;

    public static ExchangeInput Make(string yaml)
    {
        ReadResult read = ProjectReader.ReadText(yaml, "wall.yaml");
        WallProject project = read.Project ?? throw new InvalidOperationException(string.Join("; ", read.Problems.Select(p => $"{p.Spot.Line}: {p.Message}")));
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        return new ExchangeInput(project, layout, Checker.Check(project, layout), TakeOff.Measure(project, layout), new RunInfo("0.1.0"));
    }

    public static string Yaml(string name) => name switch
    {
        "feet" => Feet,
        "metres" => Metres,
        "survey feet" => SurveyFeet,
        "two walls" => TwoWalls,
        "batter" => Batter,
        "spiral" => Spiral,
        _ => throw new ArgumentException("no such wall", nameof(name)),
    };

    // Right side, a tangent, an arc to the left, an outside corner; panels, an opening, all obstructions; one shaft too near to pass.
    private const string Feet = """
        format: 1
        project: {title: "Tern Street \"Ö\" wall", number: X-1, units: ft}
        layout_lines:
          - name: WL-1
            start: {station: 100+00, northing: 5000, easting: 2000, azimuth: 75}
            elements: [{line: 30}, {arc: {radius: 120, length: 30, turn: left}}, {corner: {turn: right, angle: 35}}, {line: 30}]
        walls:
          - name: Wall 1
            layout_line: WL-1
            retained_side: right
            stations: [100+00, 100+90]
            top: [[100+00, 116], [100+40, 118], [100+90, 114]]
            existing_ground: [[100+00, 117], [100+90, 116]]
            bottom: {steps: [[100+00, 102], [100+40, 102.5], [100+70, 103]]}
            panels: {width: 10, height: 5, first_break: 100+00}
            facing: {shotcrete: 4 in, kind: precast panels, thickness: 5.5 in, gap: 6 in, coping: cast in place}
            openings: [{name: Outlet, stations: [100+10, 100+13], bottom: 104, top: 107}]
            sections:
              - {name: A, stations: [100+00, 100+60], horizontal_spacing: 4, vertical_spacing: 4, top_row_depth: 2, inclination: 12, lengths: [24, 22, 20], bar: {size: "#8", grade: 75}, hole: 6 in, test_nails: {verification: 1, proof: 5 %}}
              - {name: B, stations: [100+60, 100+90], horizontal_spacing: 5, vertical_spacing: 4, rows: parallel, pattern: staggered, top_row_depth: 2, inclination: 15, lengths: 20, bar: {size: "#9", grade: 75}, hole: 6 in}
        obstructions:
          - {name: S1, kind: shaft, at: {station: 100+20, offset: 6}, diameter: 36 in, top: 116, bottom: 80}
          - {name: S2, kind: pile, axis: [{station: 100+48, offset: 5, elevation: 116}, {station: 100+50, offset: 9, elevation: 90}], diameter: 1.5}
          - {name: Cap, kind: solid, footprint: [[100+66, 6], [100+80, 6], [100+80, 12], [100+73, 12], [100+73, 9], [100+66, 9]], bottom: 109, top: 112}
          - {name: G1, kind: beam, from: {station: 100+35, offset: 8}, to: {station: 100+35, offset: 40}, width: 2, bottom: 116, top: 120}
          - {name: Storm, kind: pipe, points: [{station: 100+00, offset: 14, elevation: 108}, {station: 100+45, offset: 16, elevation: 107.5}, {station: 100+90, offset: 15, elevation: 107}], diameter: 2}
          - {name: ROW, kind: boundary, points: [{station: 100+00, offset: 40}, {station: 100+90, offset: 40}]}
          - {name: Slab, kind: solid, footprint: [[100+01, 0.5], [100+08, 0.5], [100+08, 30], [100+01, 30]], bottom: 103, top: 115.9}
        """;

    // Left side, an inside corner, no thickness of shotcrete given: no volume, and a surface only.
    private const string Metres = """
        format: 1
        project: {title: Kiln Lane wall, number: M-2, units: m}
        layout_lines:
          - name: L
            start: {station: 0, northing: 5200, easting: 7400, azimuth: 310}
            elements: [{line: 12}, {corner: {turn: right, angle: 25}}, {line: 10}]
        walls:
          - name: West
            layout_line: L
            retained_side: left
            stations: [0, 22]
            face_offset: 0.2
            top: [[0, 106], [22, 107]]
            bottom: {steps: [[0, 101]]}
            sections:
              - {name: A, stations: [0, 22], horizontal_spacing: 1.5, vertical_spacing: 1.5, top_row_depth: 0.6, inclination: 15, lengths: [8, 7], bar: {size: "#8", grade: 75}, hole: 150 mm}
        sheets: {date: 2026-03-02}
        """;

    // State plane coordinates of millions of feet, and a zone with its code.
    private const string SurveyFeet = """
        format: 1
        project: {title: Basin Road wall, number: S-3, units: us-ft, coordinate_zone: "state plane, north zone (EPSG:2276)", horizontal_datum: NAD 83, vertical_datum: NAVD 88}
        layout_lines:
          - name: CL
            start: {station: 1250+00, northing: 7012345.678, easting: 2487654.321, azimuth: 200}
            elements: [{arc: {radius: 300, length: 50, turn: right}}]
        walls:
          - name: Wall 7
            layout_line: CL
            retained_side: right
            stations: [1250+05, 1250+45]
            top: [[1250+05, 612], [1250+45, 613]]
            bottom: {steps: [[1250+05, 600]]}
            facing: {shotcrete: 4 in, kind: cast in place, thickness: 8 in}
            sections:
              - {name: A, stations: [1250+05, 1250+45], horizontal_spacing: 5, vertical_spacing: 4, top_row_depth: 2, inclination: 10, lengths: 20, bar: {size: "#8", grade: 75}, hole: 6 in}
        """;

    private const string TwoWalls = """
        format: 1
        project: {title: Cut between, number: T-4, units: ft}
        layout_lines:
          - {name: N, start: {station: 10+00, northing: 0, easting: 0, azimuth: 90}, elements: [{line: 30}]}
          - {name: S, start: {station: 20+00, northing: -40, easting: 0, azimuth: 90}, elements: [{line: 30}]}
        walls:
          - name: North
            layout_line: N
            retained_side: left
            stations: [10+00, 10+30]
            top: [[10+00, 112], [10+30, 112]]
            bottom: {steps: [[10+00, 100]]}
            facing: {shotcrete: 4 in}
            sections:
              - {name: A, stations: [10+00, 10+30], horizontal_spacing: 5, vertical_spacing: 4, top_row_depth: 2, inclination: 10, lengths: 18, bar: {size: "#8", grade: 75}, hole: 6 in}
          - name: South
            layout_line: S
            retained_side: right
            stations: [20+00, 20+30]
            top: [[20+00, 110], [20+30, 111]]
            bottom: {steps: [[20+00, 100]]}
            facing: {shotcrete: 4 in, kind: permanent shotcrete, thickness: 6 in}
            sections:
              - {name: A, stations: [20+00, 20+30], horizontal_spacing: 5, vertical_spacing: 4, top_row_depth: 2, inclination: 20, lengths: 16, bar: {size: "#7", grade: 75}, hole: 5 in}
        """;

    private const string Batter = """
        format: 1
        project: {title: Leaning wall, number: B-5, units: ft}
        layout_lines:
          - {name: L, start: {station: 0, northing: 100, easting: 100, azimuth: 0}, elements: [{line: 20}, {corner: {turn: right, angle: 40}}, {line: 20}]}
        walls:
          - name: Wall 1
            layout_line: L
            retained_side: right
            stations: [0, 40]
            batter: {angle: 8 deg, elevation: 100}
            top: [[0, 112], [40, 112]]
            bottom: {steps: [[0, 100]]}
            facing: {shotcrete: 4 in, kind: sculpted shotcrete, thickness: 6 in}
            sections:
              - {name: A, stations: [0, 40], horizontal_spacing: 4, vertical_spacing: 4, top_row_depth: 2, inclination: 10, lengths: 20, bar: {size: "#8", grade: 75}, hole: 6 in}
        """;

    // Tangent, spiral, arc and spiral out again to the left, an equation within the wall after which stations exist twice.
    private const string Spiral = """
        format: 1
        project: {title: Spiral wall, number: P-6, units: ft}
        layout_lines:
          - name: L
            start: {station: 12+00, northing: 3000, easting: 8000, azimuth: 40}
            elements: [{line: 20}, {spiral: {length: 30, end_radius: 150, turn: left}}, {arc: {radius: 150, length: 20, turn: left}}, {spiral: {length: 30, start_radius: 150, turn: left}}]
            station_equations: [{back: 12+50, ahead: 12+30}]
        walls:
          - name: Wall 1
            layout_line: L
            retained_side: right
            stations: [12+05, 12+75 AH]
            top: [[12+05, 112], [12+75 AH, 113]]
            bottom: {steps: [[12+05, 100]]}
            facing: {shotcrete: 4 in}
            sections:
              - {name: A, stations: [12+05, 12+75 AH], horizontal_spacing: 5, vertical_spacing: 4, top_row_depth: 2, inclination: 12, lengths: 20, bar: {size: "#8", grade: 75}, hole: 6 in}
        """;
}

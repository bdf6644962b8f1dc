namespace SheetGen.Tests.Drawing;

/// <summary>Invented project files for the drawing tests.</summary>
public static class SampleWalls
{
    /// <summary>Two walls on two lines, both sides, with corner, arc, steps, shafts, cap, pipes, boundary and borings, in feet.</summary>
    public const string TwoWalls = """
        format: 1
        project: {title: Mill Road underpass widening, number: T-101, units: ft, vertical_datum: NAVD 88, designed: A. B.}
        layout_lines:
          - name: WL-1
            start: {station: 100+00, northing: 5000.0, easting: 2000.0, azimuth: 80.0}
            elements:
              - line: 70
              - arc: {radius: 250, length: 45, turn: left}
              - corner: {turn: right, angle: 30}
              - line: 55
          - name: WL-2
            start: {station: 10+00, northing: 5160.0, easting: 2010.0, azimuth: 95.0}
            elements:
              - line: 90
        walls:
          - name: Wall 1
            layout_line: WL-1
            retained_side: right
            stations: [100+00, 101+70]
            top: [[100+00, 118.0], [100+60, 121.5], [101+70, 121.5]]
            existing_ground: [[100+00, 120.0], [101+70, 125.0]]
            finished_grade: [[100+00, 104.0], [101+70, 106.0]]
            bottom: {steps: [[100+00, 102.0], [100+40, 102.5], [101+00, 103.0]]}
            panels: {width: 10, height: 5, first_break: 100+00}
            facing: {shotcrete: 4 in, kind: precast panels, thickness: 5.5 in, gap: 6 in, coping: cast in place}
            drainage: {strip_width: 12 in, max_spacing: 10 ft}
            lifts: {below_row: 1.5 ft, max_exposed: 4 ft, max_hours: 24}
            sections:
              - {name: A, stations: [100+00, 100+60], horizontal_spacing: 3.5, vertical_spacing: 3.5, rows: level, pattern: square, top_row_depth: 2.0, inclination: 10, lengths: [24, 24, 22, 20], bar: {size: "#8", grade: 75}, hole: 6 in, test_nails: {verification: 1, proof: 5 %}}
              - {name: B, stations: [100+60, 101+70], horizontal_spacing: 4, vertical_spacing: 3.5, rows: parallel, pattern: staggered, top_row_depth: 2.25, inclination: 15, lengths: 26, bar: {size: "#8", grade: 75}, hole: 6 in, test_nails: {verification: 1, proof: 5 %}}
          - name: Wall 2
            layout_line: WL-2
            retained_side: left
            stations: [10+00, 10+90]
            top: [[10+00, 116.0], [10+90, 112.0]]
            bottom: {steps: [[10+00, 101.0], [10+50, 102.0]]}
            panels: {width: 10, height: 5, first_break: 10+00}
            sections:
              - {name: C, stations: [10+00, 10+90], horizontal_spacing: 5, vertical_spacing: 5, rows: level, pattern: square, top_row_depth: 2.0, inclination: 15, lengths: [20, 18], bar: {size: "#7", grade: 75}, hole: 6 in, test_nails: {verification: 1, proof: 5 %}}
        obstructions:
          - {name: S1, kind: shaft, at: {layout_line: WL-1, station: 100+28, offset: 5.5}, diameter: 36 in, top: 117, bottom: 70}
          - {name: S2, kind: shaft, at: {layout_line: WL-1, station: 100+42, offset: 5.5}, diameter: 36 in, top: 117, bottom: 70}
          - {name: Cap, kind: solid, footprint: [{layout_line: WL-1, station: 100+20, offset: 3}, {layout_line: WL-1, station: 100+50, offset: 3}, {layout_line: WL-1, station: 100+50, offset: 8}, {layout_line: WL-1, station: 100+20, offset: 8}], bottom: 117, top: 120.5}
          - {name: G1, kind: beam, from: {layout_line: WL-1, station: 100+35, offset: 2}, to: {layout_line: WL-1, station: 100+35, offset: 60}, width: 2, bottom: 120.5, top: 123}
          - {name: Storm 24, kind: pipe, points: [{layout_line: WL-1, station: 100+00, offset: 14, elevation: 108}, {layout_line: WL-1, station: 101+70, offset: 14, elevation: 107}], diameter: 2}
          - {name: Water 8, kind: pipe, points: [{layout_line: WL-2, station: 10+30, offset: 2, elevation: 108}, {layout_line: WL-2, station: 10+30, offset: 40, elevation: 108}], diameter: 8 in}
          - {name: ROW, kind: boundary, points: [{layout_line: WL-1, station: 100+00, offset: 40}, {layout_line: WL-1, station: 101+70, offset: 40}]}
        borings:
          - {name: B-1, at: {layout_line: WL-1, station: 100+75, offset: 12}, top: 121.0, bottom: 78.0, water: 106.0, layers: [{to: 108.0, name: stiff clay, plasticity_index: 24}, {to: 78.0, name: silty sand}]}
        sheets: {size: ANSI D, scale: 10, revision: 0, date: 2026-01-15}
        """;

    /// <summary>A wall in metres, soil on the left.</summary>
    public const string Metric = """
        format: 1
        project: {title: Quarry Lane retaining wall, number: T-102, units: m}
        layout_lines:
          - name: A
            start: {station: 0+000, northing: 300.0, easting: 100.0, azimuth: 20.0}
            elements: [line: 40]
        walls:
          - name: Wall A
            layout_line: A
            retained_side: left
            stations: [0+002, 0+038]
            top: [[0+002, 56.0], [0+038, 57.5]]
            bottom: {steps: [[0+002, 50.0], [0+020, 50.6]]}
            panels: {width: 3, height: 1.5, first_break: 0+002}
            sections:
              - {name: N, stations: [0+002, 0+038], horizontal_spacing: 1.5, vertical_spacing: 1.5, rows: top_parallel, pattern: square, top_row_depth: 0.7, inclination: 15, lengths: 7.5, bar: {size: "#8", grade: 75}, hole: 150 mm, test_nails: {verification: 1, proof: 5 %}}
        obstructions:
          - {name: P1, kind: pile, at: {station: 0+015, offset: 2}, diameter: 600 mm, top: 56, bottom: 40}
        sheets: {size: ISO A1, scale: 100, revision: A, date: 2026-02-01}
        """;
}

namespace SheetGen.Tests.Drawing.Elevation;

/// <summary>Invented walls that are hard on marks.</summary>
internal static class MarkWalls
{
    /// <summary>Metres, an arc with a batter, staggered rows that follow a sloping top, a stepped bottom: many part rows.</summary>
    public static string Arc => OneWall.Yaml(
        "Hill road retaining wall", "m", "station: 3+400, northing: 900, easting: 400, azimuth: 75", "{line: 18}, {arc: {radius: 50, length: 40, turn: left}}, {line: 12}",
        """
        name: Wall 7
        retained_side: left
        stations: [3+404, 3+465]
        batter: {angle: 6 deg, elevation: 80}
        top: [[3+404, 86], [3+430, 88.8], [3+465, 87.1]]
        finished_grade: [[3+404, 80], [3+465, 80.8]]
        bottom: {from_grade: {embedment: 0.6, rise: 0.4}}
        panels: {width: 3, height: 1.5}
        """,
        """
        name: A, stations: [3+404, 3+440], horizontal_spacing: 1.5, vertical_spacing: 1.5, rows: parallel, pattern: staggered, top_row_depth: 0.6, inclination: 15, lengths: [8, 7, 6], test_nails: {verification: 1, proof: 5 %}
        name: B, stations: [3+440, 3+465], horizontal_spacing: 1.6, vertical_spacing: 1.5, rows: level, top_row_depth: 0.6, inclination: 10, lengths: 7
        """,
        "bar: {size: \"#8\", grade: 75}, hole: 120 mm",
        "sheets: {size: ISO A1}");

    /// <summary>Two walls on 11 x 17 in sheets: marks with wall prefixes.</summary>
    public const string TwoOnASmallSheet = """
        format: 1
        project: {title: Canal street walls, number: MK-2, units: ft}
        layout_lines:
          - name: LA
            start: {station: 20+00, northing: 5000, easting: 2000, azimuth: 80}
            elements: [{line: 140}]
          - name: LB
            start: {station: 40+00, northing: 5090, easting: 2150, azimuth: 260}
            elements: [{line: 120}]
        walls:
          - name: Wall 1
            layout_line: LA
            retained_side: right
            stations: [20+05, 21+25]
            top: [[20+05, 212], [21+25, 216]]
            existing_ground: [[20+05, 213], [21+25, 218]]
            bottom: {steps: [[20+05, 198]]}
            sections:
              - {name: A, stations: [20+05, 21+25], horizontal_spacing: 5, vertical_spacing: 5, rows: parallel, top_row_depth: 2, inclination: 15, lengths: [20, 18, 16], bar: {size: "#8", grade: 75}, hole: 6 in, test_nails: {verification: 1, proof: 5 %}}
          - name: Wall 2
            layout_line: LB
            retained_side: right
            stations: [40+10, 41+00]
            top: [[40+10, 212], [41+00, 216]]
            bottom: {steps: [[40+10, 198]]}
            sections:
              - {name: A, stations: [40+10, 41+00], horizontal_spacing: 4, vertical_spacing: 4, rows: level, pattern: staggered, top_row_depth: 2, inclination: 15, lengths: [20, 18, 16], bar: {size: "#8", grade: 75}, hole: 6 in}
        sheets: {size: ANSI B}
        """;

    /// <summary>An inside corner with face offset, an opening, a step of the top; seen from behind.</summary>
    public static string Corner => OneWall.Yaml(
        "Depot cut", "ft", "station: 7+00, northing: 1000, easting: 2000, azimuth: 310", "{line: 60}, {corner: {turn: left, angle: 60}}, {line: 80}",
        """
        name: Wall 3
        retained_side: right
        stations: [7+05, 8+30]
        face_offset: 1.5
        top: [[7+05, 115], [7+60, 121], [8+05, 121], [8+05, 118], [8+30, 115]]
        bottom: {steps: [[7+05, 99], [7+40, 99.5], [8+00, 100.5]]}
        openings: [{name: Inlet, stations: [7+90, 7+94], bottom: 105, top: 109}]
        """,
        """
        name: A, stations: [7+05, 8+30], horizontal_spacing: 4, vertical_spacing: 4, rows: level, pattern: staggered, top_row_depth: 2, inclination: 12, lengths: [22, 20, 18], test_nails: {verification: 2, proof: 5 %}
        """,
        "bar: {size: \"#8\", grade: 75}, hole: 6 in",
        "sheets: {size: ARCH D, view: from_behind}");

    /// <summary>Several sheets, three sections with three kinds of rows, from grade in small steps.</summary>
    public static string Long => OneWall.Yaml(
        "Ring road widening", "us-ft", "station: 98+00, northing: 12345, easting: 6543, azimuth: 12", "{line: 300}, {arc: {radius: 1200, length: 300, turn: right}}",
        """
        name: RW-7
        retained_side: left
        stations: [99+00, 103+50]
        top: [[99+00, 640], [100+50, 652], [102+00, 658], [103+50, 646]]
        finished_grade: [[99+00, 631], [103+50, 634]]
        bottom: {from_grade: {embedment: 2 ft, rise: 1.25 ft}}
        panels: {width: 20, height: 5}
        """,
        """
        name: A, stations: [99+00, 100+20], horizontal_spacing: 5, vertical_spacing: 5, rows: parallel, top_row_depth: 2, inclination: 15, lengths: [24, 24, 20], bar: {size: "#8", grade: 75}
        name: B, stations: [100+20, 102+20], horizontal_spacing: 5, vertical_spacing: 5, rows: level, top_row_depth: 2, inclination: 15, lengths: [30, 28, 24], bar: {size: "#9", grade: 75}, test_nails: {verification: 1, proof: 5 %}
        name: C, stations: [102+20, 103+50], horizontal_spacing: 5, vertical_spacing: 5, rows: top_parallel, pattern: staggered, top_row_depth: 2, inclination: 15, lengths: 24, bar: {size: "#8", grade: 75}
        """,
        "hole: 6 in",
        "sheets: {size: ANSI D}");
}

namespace SheetGen.Tests.Drawing.Details;

/// <summary>Invented walls that give every figure that a detail can show.</summary>
internal static class DetailWalls
{
    /// <summary>The facts of the design that stand in details, by key.</summary>
    public static IReadOnlyDictionary<string, string> Facts { get; } = new Dictionary<string, string>
    {
        ["corrosion_protection"] = "epoxy coated bars",
        ["grout_strength"] = "3000 psi",
        ["concrete_strength"] = "4500 psi",
        ["mesh"] = "4x4 W4xW4",
        ["mesh_cover"] = "1.5 in",
        ["waler_bars"] = "2 #4 each way",
        ["bearing_bars"] = "2 #5, 3 ft long",
        ["plate"] = "9 x 9 x 1 in",
        ["studs"] = "4 of 5/8 x 5 in",
        ["nut_and_washer"] = "hex nut",
        ["centralizers"] = "at no more than 7 ft, 2 ft from each end",
        ["drainage_strip"] = "geocomposite",
        ["strip_lap"] = "10 in",
        ["weep_holes"] = "3 in PVC at 10 ft",
        ["underdrain"] = "6 in perforated PVC",
        ["drain_outlet"] = "inlet 4",
        ["facing_bars"] = "#5 at 12 in each way",
        ["facing_cover"] = "2.5 in",
        ["connection"] = "tie strips",
        ["gap_fill"] = "gravel",
        ["coping_bars"] = "4 #4",
        ["corner_bars"] = "#4 at 12 in",
        ["trim_bars"] = "2 #6 on each side",
        ["joint"] = "square",
        ["leveling_pad"] = "18 x 6 in",
        ["verification_load"] = "60 kip",
        ["finish"] = "ashlar",
        ["wall_ends"] = "return of 6 ft",
        ["surface_water"] = "ditch",
    };

    /// <summary>A wall with an offset corner, an opening, panels, drainage and lifts, in feet.</summary>
    public static string Feet(IEnumerable<KeyValuePair<string, string>> facts) => OneWall.Yaml(
        "Mill Road wall", "ft", "station: 10+00, northing: 5000, easting: 2000, azimuth: 80", "{line: 60}, {corner: {turn: right, angle: 35}}, {line: 60}",
        """
        name: Wall 1
        retained_side: right
        stations: [10+00, 11+20]
        face_offset: 1.25
        top: [[10+00, 118], [11+20, 118]]
        existing_ground: [[10+00, 120], [11+20, 120]]
        finished_grade: [[10+00, 104.5], [11+20, 104.5]]
        bottom: {steps: [[10+00, 102], [10+50, 102.25]]}
        panels: {width: 10, height: 5, first_break: 10+00}
        facing: {shotcrete: 4.5 in, kind: precast panels, thickness: 6 in, gap: 7 in, coping: cast in place}
        drainage: {strip_width: 14 in, max_spacing: 8 ft}
        lifts: {below_row: 1.75 ft, max_exposed: 5 ft, max_hours: 36}
        openings: [{name: Door, stations: [10+20, 10+25.5], bottom: 106, top: 112.75}]
        """,
        """
        name: A, stations: [10+00, 11+20], horizontal_spacing: 5, vertical_spacing: 4.5, rows: level, pattern: square, top_row_depth: 2, inclination: 12, lengths: [24, 20], test_nails: {verification: 1, proof: 5 %}
        """,
        "bar: {size: \"#9\", grade: 75}, hole: 6 in",
        $$$"""
        design: {{{{string.Join(", ", facts.Select(f => $"{f.Key}: \"{f.Value}\""))}}} }
        rates: {test_bonded_length: 10 ft, test_free_length: 6 ft, mesh: {length: 20 ft, width: 8 ft, lap: 9 in}, coping: {width: 24 in, height: 12 in}}
        rules: {bar_projection: 8 in, edge_min: 1.5, corner_clear: 1.75}
        sheets: {size: ANSI D, scale: 10}
        """);

    /// <summary>A battered wall in metres, shotcrete on its face.</summary>
    public static string Metres => OneWall.Yaml(
        "Quarry wall", "m", "station: 0+000, northing: 900, easting: 400, azimuth: 75", "{line: 20}, {corner: {turn: right, angle: 25}}, {line: 20}",
        """
        name: Wall 1
        retained_side: left
        stations: [0+001, 0+039]
        batter: {angle: 5 deg, elevation: 50}
        top: [[0+001, 56], [0+039, 56]]
        finished_grade: [[0+001, 50.7], [0+039, 50.7]]
        bottom: {steps: [[0+001, 50]]}
        facing: {shotcrete: 100 mm, kind: permanent shotcrete, thickness: 150 mm}
        drainage: {strip_width: 300 mm, max_spacing: 3 m}
        lifts: {below_row: 0.5, max_exposed: 1.5, max_hours: 24}
        """,
        """
        name: A, stations: [0+001, 0+039], horizontal_spacing: 1.5, vertical_spacing: 1.5, rows: level, top_row_depth: 0.7, inclination: 15, lengths: 7, test_nails: {verification: 1, proof: 5 %}
        """,
        "bar: {size: \"#8\", grade: 75}, hole: 150 mm",
        """
        design: {plate: 200 x 200 x 20 mm, mesh_cover: 50 mm, facing_cover: 60 mm, strip_lap: 250 mm, weep_holes: 75 mm PVC at 3 m, underdrain: 100 mm pipe, leveling_pad: 450 x 150 mm}
        rates: {mesh: {length: 6, width: 2.4, lap: 200 mm}}
        sheets: {size: ISO A1}
        """);
}

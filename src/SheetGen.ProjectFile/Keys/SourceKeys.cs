using static SheetGen.ProjectFile.Keys.KeyForms;

namespace SheetGen.ProjectFile.Keys;

/// <summary>Blocks that name a file of another program to take values from.</summary>
internal static class SourceKeys
{
    public const string LandXml = "from_landxml", Dxf = "from_dxf", Csv = "from_csv";

    public static IReadOnlyList<Key> OfLayoutLine { get; } =
    [
        Map(LandXml, "Start, elements and station equations from an alignment of a LandXML file (1.0 to 2.0).",
            [File("road.xml"), Alignment(), Units()]) with { Shared = "from_landxml of a layout line" },
        Map(Dxf, "Start and elements from a polyline of a drawing (DXF), its bulges as arcs.",
        [
            File("base.dxf"), Text("layer", "Layer of the polyline.", "C-WALL-LINE"), Text("handle", "Handle of the polyline, where the layer has several.", "2F"),
            Station("station", "Station of its start.", "100+00") with { Default = "0" }, Flag("reverse", "Whether stations run from its last point to its first.", "true") with { Default = "false" },
            .. Placing(),
        ]) with { Shared = "from_dxf of a layout line" },
        Map(Csv, "Start and elements from a table of northing and easting: straight from point to point, with a corner at each.",
            [File("wall-line.csv"), Station("station", "Station of its first point.", "100+00") with { Default = "0" }, Units()]) with { Shared = "from_csv of a layout line" },
    ];

    public static IReadOnlyList<Key> OfProfile { get; } =
    [
        Map(LandXml, "The points of a profile (designed, with its vertical curves, or of a surface) of a LandXML alignment; or, with surface, where the face passes the triangles of a surface.",
            [File("road.xml"), Alignment(), Text("profile", "Name of the profile; may be left out where there is only one.", "FG"), Text("surface", "Name of a surface of triangles (TIN), in place of alignment and profile.", "EG"), Raise(), Units()]) with { Shared = "from_landxml of a profile" },
        Map(Csv, "The points of a table: station and elevation, or northing, easting and elevation of points that are projected on the layout line.",
            [File("top.csv"), Raise(), Length("limit", "Greatest distance of a point from the layout line.", ValueRange.Over0, "5 ft") with { Default = "10 ft", DefaultMetric = "3 m" }, Units()]) with { Shared = "from_csv of a profile" },
    ];

    public static IReadOnlyList<Key> OfCrossSections { get; } =
    [
        Map(LandXml, "The cross sections of a LandXML alignment: what lies in front of the face; or cuts through a surface of triangles (TIN).",
        [
            File("road.xml"), Alignment(), Text("surface", "Name of the surface; may be left out where each cross section has only one.", "EG"), Raise(), Units(),
            Length("every", "Distance between the cuts through a surface of triangles; the ends of the wall are cut too.", new ValueRange(0.1, true, 1e4), "25 ft") with { Default = "25 ft", DefaultMetric = "10 m" },
            Length("reach", "How far in front of the face they go.", ValueRange.Over0, "50 ft") with { Default = "50 ft", DefaultMetric = "15 m" },
        ]) with { Shared = "from_landxml of cross sections" },
    ];

    public static IReadOnlyList<Key> OfBorings { get; } =
    [
        Map(Csv, "Borings from a table: a row a layer, or a row a boring and its first layer.", [File("borings.csv"), Units()]) with { Shared = "from_csv of borings" },
    ];

    public static IReadOnlyList<Key> OfObstructions { get; } =
    [
        Map(Dxf, "Obstructions from a drawing (DXF).",
        [
            File("base.dxf"),
            Text("layer", "Layer to take everything from.", "S-SHAFT"), Text("block", "Block whose every insert is one obstruction.", "SHAFT-36"),
            Choice("kind", "Kind of what is there.", "shaft", "shaft", "pile", "solid", "pipe", "boundary") with { Required = true },
            Elevation("bottom", "Elevation of the bottom, where the drawing has none.", "70"), Elevation("top", "Elevation of the top, where the drawing has none.", "117"),
            Length("diameter", "Diameter of pipes, and of shafts that are drawn as points.", new ValueRange(0, false, 100), "24 in"),
            Elevation("elevation", "Elevation of the axis of pipes that are drawn flat.", "108"),
            Text("name", "Start of the names; a number by station follows.", "S") with { Default = "the layer or block" },
            Text("name_attribute", "Attribute of the block that holds the name.", "MARK"),
            Choice("names", "Where names come from: a text inside the shape, or numbers in order of station.", "text", "text", "station") with { Default = "text" },
            Length("gap", "Greatest gap between the ends of lines and arcs that make one loop.", ValueRange.From0, "0.05 ft") with { Default = "0.01 ft", DefaultMetric = "3 mm" },
            Length("error", "Greatest distance between a curve and the sides that stand for it; they lie outside of it.", ValueRange.Over0, "0.05 ft") with { Default = "0.02 ft", DefaultMetric = "5 mm" },
            Length("within", "What lies farther than this from every layout line is passed over.", ValueRange.Over0, "300 ft") with { Default = "500 ft", DefaultMetric = "150 m" },
            .. Placing(),
            .. ObstructionKeys.Facts,
        ]) with { Shared = "from_dxf of obstructions" },
    ];

    private static Key File(string example) => Text("file", "File beside the project file or below its folder.", example) with { Required = true };

    private static Key Alignment() => Text("alignment", "Name of the alignment; may be left out where the file has only one.", "Ramp A");

    private static Key Raise() => Length("raise", "Added to every elevation of the file.", new ValueRange(-1e4, true, 1e4), "-1.5 ft") with { Default = "0" };

    private static Key Units() => Choice("units", "Unit of the file's lengths, where it does not tell.", "us-ft", "ft", "us-ft", "in", "m", "cm", "mm") with { Default = "what the file says" };

    /// <summary>How a drawing lies in the project's coordinates.</summary>
    private static Key[] Placing() =>
    [
        Units(),
        Coordinate("shift_northing", "Added to the drawing's y, after scale and rotation.", "5000"), Coordinate("shift_easting", "Added to the drawing's x, after scale and rotation.", "2000"),
        Angle("rotate", "Turn of the drawing about its origin, positive counter-clockwise.", new ValueRange(-360, true, 360), "-12.5"),
        Number("scale", "Factor on the drawing's lengths, beside its unit.", new ValueRange(0, false, 1e6), "1"),
        List("match", "Two points of the drawing (x, y in its own unit) and where they lie in the project; instead of shift, rotate and scale.", 2, Map("matching point", "A point of the drawing and of the project.",
            Number("x", "x in the drawing.", ValueRange.Coordinate, "0") with { Required = true }, Number("y", "y in the drawing.", ValueRange.Coordinate, "0") with { Required = true },
            Coordinate("northing", "Northing in the project.", "5000") with { Required = true }, Coordinate("easting", "Easting in the project.", "2000") with { Required = true })
            with { Short = ["x", "y", "northing", "easting"], Shared = "matching point" }) with { MaxCount = 2, Example = "[[0, 0, 5000, 2000], [100, 0, 5000, 2100]]" },
    ];
}

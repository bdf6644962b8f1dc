using static SheetGen.ProjectFile.Keys.KeyForms;

namespace SheetGen.ProjectFile.Keys;

/// <summary>The keys of obstructions and of points in plan.</summary>
internal static class ObstructionKeys
{
    public static Key Obstruction() =>
        Map("obstruction", "Something that holes keep clear of; further keys depend on its kind.",
            Text("name", "Name, printed on the sheets.", "S1") with { Required = true },
            Choice("kind", "Kind.", "shaft", "shaft", "pile", "solid", "beam", "pipe", "boundary")
                .Also(
                ("drilledshaft caisson column", "shaft"), ("piling drivenpile hpile micropile", "pile"), ("cap footing abutment pilecap block", "solid"),
                ("girder", "beam"), ("culvert stormdrain sewer watermain gasmain utility conduit duct", "pipe"),
                ("row rightofway easement propertyline limit", "boundary")) with
            { Required = true },
            Map("repeat", "The same again, several times along the layout line; a number at the end of the name counts on.",
                Integer("count", "How many in all.", new ValueRange(2, true, 1000), "5") with { Required = true },
                Length("every", "Distance along the layout line from one to the next.", new ValueRange(-1e4, true, 1e4), "12 ft") with { Required = true }),
            Flag("in_front", "Said of what is known to lie in front of the face, so that no warning is given.", "true") with { Default = "false" },
            Flag("straight", "Said of what is straight in plan although the layout line bends beside it, so that no warning is given.", "true") with { Default = "false" },
            Facts[0], Facts[1], Facts[2], Facts[3])
        with
        {
            Sources = SourceKeys.OfObstructions,
            VariantKey = "kind",
            Variants = new Dictionary<string, IReadOnlyList<Key>>
            {
                ["shaft"] = Shaft(),
                ["pile"] = Shaft(),
                ["solid"] =
                [
                    List("footprint", "Corners in order around it; [station, offset] for short.", 3, Point("point", "A corner.", false) with { Short = ["station", "offset"], Shared = "footprint point" }) with { MaxCount = 500, Example = "[[100+20, 3], [100+50, 3], [100+50, 7], [100+20, 7]]" },
                    .. Following("Offset of its near side"),
                    Length("width", "Width in plan, with offset_line.", ValueRange.Over0, "4").Usually(0.3, 40, 0.1, 12),
                    .. Heights(),
                ],
                ["beam"] =
                [
                    Point("from", "One end of its centre line.", false) with { Required = true },
                    Point("to", "The other end.", false) with { Required = true },
                    Length("width", "Width in plan.", ValueRange.Over0, "2").Usually(0.3, 20, 0.1, 6) with { Required = true },
                    .. Heights(),
                ],
                ["pipe"] =
                [
                    List("points", "Points of its axis, each with an elevation.", 2, Point("point", "A point of the axis.", true) with { Shared = "pipe point", Children = [.. Point("point", "", true).Children.Select(c => c with { Required = false })] }) with { Example = "[{station: 100+00, offset: 14, elevation: 108}, {station: 101+60, offset: 14, elevation: 107}]" },
                    Length("diameter", "Outside diameter.", new ValueRange(0, false, 100), "2").Usually(0.04, 14, 0.012, 4.3) with { Required = true },
                    .. Following("Offset of its axis"),
                    Elevation("elevation", "Elevation at its first point, where the points have none.", "108"),
                    Elevation("invert", "Elevation of the invert at its first point, where the points have none; needs bore.", "107.2"),
                    Slope("grade", "Rise (or, negative, fall) per length in plan, from the one point with an elevation on in the order of the points.", new ValueRange(-1, true, 1), "-1 %").Usually(-0.2, 0.2, -0.2, 0.2),
                    Choice("elevation_is", "What the elevations are: axis, or invert (then bore is needed).", "axis", "axis", "invert") with { Default = "axis" },
                    Length("bore", "Inside diameter.", new ValueRange(0, false, 100), "18 in").Usually(0.04, 14, 0.012, 4.3),
                ],
                ["boundary"] =
                [
                    List("points", "Points of the line in plan.", 2, Point("point", "A point of the line.", false)) with { Example = "[{station: 100+00, offset: 40}, {station: 101+60, offset: 40}]" },
                    .. Following("Offset of the line"),
                ],
            },
        };

    /// <summary>Facts of an obstruction that are printed.</summary>
    public static IReadOnlyList<Key> Facts { get; } =
    [
        Text("owner", "Owner of a utility.", "City water department"),
        Choice("state", "State of a utility.", "active", "active", "abandoned", "proposed", "unknown"),
        Choice("quality_level", "Quality level of a utility's location (ASCE 38).", "B", "A", "B", "C", "D"),
        Text("source", "Where the location comes from.", "as-built drawings, 1998"),
    ];

    /// <summary>A point in plan, with an elevation where it needs one.</summary>
    public static Key Point(string name, string meaning, bool elevation) =>
        Map(name, meaning,
        [
            Station("station", "Station; may lie beyond the layout line's ends.", "100+32"),
            Length("offset", "Offset from the layout line, positive into the retained side.", new ValueRange(-1e4, true, 1e4), "5.5"),
            Text("layout_line", "Layout line of the station; needed where there are several and no wall is named.", "WL-1"),
            Text("wall", "Wall whose retained side counts; needed where walls on the layout line retain different sides.", "Wall 1"),
            Coordinate("northing", "Northing.", "4990"),
            Coordinate("easting", "Easting.", "2050"),
            .. elevation ? [Elevation("elevation", "Elevation.", "108") with { Required = true }] : Array.Empty<Key>(),
        ]) with
        {
            Shared = elevation ? "point with elevation" : "point",
            Example = elevation ? "{station: 100+32, offset: 5.5, elevation: 108}" : "{station: 100+32, offset: 5.5}",
        };

    /// <summary>The keys of what keeps its offset all along the layout line.</summary>
    private static Key[] Following(string what) =>
    [
        Length("offset_line", what + " that it keeps through arcs and corners of the layout line, instead of points.", new ValueRange(-1e4, true, 1e4), "42"),
        StationPair("stations", "First and last station, with offset_line; left out: the whole layout line.", "[100+00, 101+60]"),
        Text("layout_line", "Layout line of offset_line; needed where there are several and no wall is named.", "WL-1"),
        Text("wall", "Wall whose retained side counts; needed where walls on the layout line retain different sides.", "Wall 1"),
    ];

    private static Key[] Shaft() =>
    [
        Point("at", "Centre of a vertical shaft or pile, with top and bottom.", false),
        List("axis", "Both ends of the axis, where it is inclined; each with an elevation.", 2, Point("point", "An end of the axis.", true)) with { MaxCount = 2, Example = "[{station: 100+32, offset: 5, elevation: 117}, {station: 100+32, offset: 9, elevation: 70}]" },
        Length("diameter", "Diameter.", new ValueRange(0, false, 100), "36 in").Usually(0.4, 14, 0.12, 4.3) with { Required = true },
        Elevation("top", "Elevation of its top, with at.", "117"),
        Elevation("bottom", "Elevation of its bottom, with at.", "70"),
    ];

    private static Key[] Heights() =>
    [
        Elevation("bottom", "Elevation of its bottom.", "115.5") with { Required = true },
        Elevation("top", "Elevation of its top.", "119.5") with { Required = true },
    ];
}

using static SheetGen.ProjectFile.Keys.KeyForms;

namespace SheetGen.ProjectFile.Keys;

/// <summary>The keys of obstructions and of points in plan.</summary>
internal static class ObstructionKeys
{
    public static Key Obstruction() =>
        Map("obstruction", "Something that holes keep clear of; further keys depend on its kind.",
            Text("name", "Name, printed on the sheets.", "S1") with { Required = true },
            Choice("kind", "Kind.", "shaft", "shaft", "pile", "solid", "beam", "pipe", "boundary") with { Required = true },
            Facts[0], Facts[1], Facts[2], Facts[3])
        with
        {
            VariantKey = "kind",
            Variants = new Dictionary<string, IReadOnlyList<Key>>
            {
                ["shaft"] = Shaft(),
                ["pile"] = Shaft(),
                ["solid"] =
                [
                    List("footprint", "Corners in order around it; [station, offset] for short.", 3, Point("point", "A corner.", false) with { Short = ["station", "offset"], Shared = "footprint point" }) with { Required = true, MaxCount = 500, Example = "[[100+20, 3], [100+50, 3], [100+50, 7], [100+20, 7]]" },
                    .. Heights(),
                ],
                ["beam"] =
                [
                    Point("from", "One end of its centre line.", false) with { Required = true },
                    Point("to", "The other end.", false) with { Required = true },
                    Length("width", "Width in plan.", ValueRange.Over0, "2") with { Required = true },
                    .. Heights(),
                ],
                ["pipe"] =
                [
                    List("points", "Points of its axis, each with an elevation.", 2, Point("point", "A point of the axis.", true)) with { Required = true, Example = "[{station: 100+00, offset: 14, elevation: 108}, {station: 101+60, offset: 14, elevation: 107}]" },
                    Length("diameter", "Outside diameter.", new ValueRange(0, false, 100), "2") with { Required = true },
                    Choice("elevation_is", "What the elevations are: axis, or invert (then bore is needed).", "axis", "axis", "invert") with { Default = "axis" },
                    Length("bore", "Inside diameter.", new ValueRange(0, false, 100), "18 in"),
                ],
                ["boundary"] =
                [
                    List("points", "Points of the line in plan.", 2, Point("point", "A point of the line.", false)) with { Required = true, Example = "[{station: 100+00, offset: 40}, {station: 101+60, offset: 40}]" },
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

    private static Key[] Shaft() =>
    [
        Point("at", "Centre of a vertical shaft or pile, with top and bottom.", false),
        List("axis", "Both ends of the axis, where it is inclined; each with an elevation.", 2, Point("point", "An end of the axis.", true)) with { MaxCount = 2, Example = "[{station: 100+32, offset: 5, elevation: 117}, {station: 100+32, offset: 9, elevation: 70}]" },
        Length("diameter", "Diameter.", new ValueRange(0, false, 100), "36 in") with { Required = true },
        Elevation("top", "Elevation of its top, with at.", "117"),
        Elevation("bottom", "Elevation of its bottom, with at.", "70"),
    ];

    private static Key[] Heights() =>
    [
        Elevation("bottom", "Elevation of its bottom.", "115.5") with { Required = true },
        Elevation("top", "Elevation of its top.", "119.5") with { Required = true },
    ];
}

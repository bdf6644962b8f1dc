using SheetGen.Model.Units;
using static SheetGen.ProjectFile.Keys.KeyForms;

namespace SheetGen.ProjectFile.Keys;

/// <summary>The keys of a wall and its sections.</summary>
internal static class WallKeys
{
    private static readonly ValueRange SpacingFeet = new(0.5, true, 30);
    private static readonly ValueRange SpacingMetres = new(0.15, true, 10);

    private static Key WithSources(IReadOnlyList<Key> sources, Key key) => key with { Sources = sources };

    public static Key[] All() =>
    [
        Text("name", "Name of the wall.", "Wall 1") with { Required = true },
        Text("layout_line", "Layout line that it follows; may be left out where there is only one.", "WL-1"),
        Side("retained_side", "Side of the layout line where the soil is, looking up-station.", "right") with { Required = true },
        Choice("faces", "Where the face looks, as a check of retained_side: an error where it looks elsewhere.", "south-east", [.. Compass.Points]).Also(
            ("n", "north"), ("ne", "north-east"), ("e", "east"), ("se", "south-east"), ("s", "south"), ("sw", "south-west"), ("w", "west"), ("nw", "north-west")),
        StationPair("stations", "First and last station.", "[100+00, 101+60]") with { Required = true },
        Length("face_offset", "Layout line to shotcrete face, positive into the retained side.", new ValueRange(-1000, true, 1000), "0").Usually(-30, 30, -9, 9) with { Default = "0" },
        Map("batter", "Lean of the face, top into the soil.",
            new Key("angle", ValueKind.Lean, "Angle from vertical, or a ratio such as 1:10.") { Range = new ValueRange(0, true, 45, false), Example = "5 deg", Required = true },
            Elevation("elevation", "Elevation at which the face stands at face_offset.", "104") with { Required = true }),
        Profile("top", "Top of the temporary shotcrete, straight between its points, or with vertical curves; two points at one station make a step.", "[[100+00, 118.0], [101+60, 121.5]]") with { Required = true },
        Profile("existing_ground", "Existing ground at the face.", "[[100+00, 120.0], [101+60, 124.0]]"),
        Profile("finished_grade", "Finished grade in front of the wall.", "[[100+00, 104.0], [101+60, 106.0]]"),
        Map("bottom", "Bottom of wall: level steps, given or made from the finished grade.",
            Steps("steps", "Elevations from a station on, up to the next.", "[[100+00, 102.0], [100+40, 102.5]]"),
            Map("from_grade", "Each panel's bottom is datum + k * rise with the greatest whole k that is at least the embedment below finished grade over the whole panel.",
                Length("embedment", "Least depth below finished grade (2 ft: common practice, no source).", ValueRange.From0, "2 ft").Usually(0, 10, 0, 3) with { Required = true },
                Length("rise", "Height of a step.", new ValueRange(0.01, true, 100), "1.25 ft").Usually(0.04, 6, 0.01, 2) with { Required = true, RangeMetric = new ValueRange(0.001, true, 30) },
                Elevation("datum", "Elevation that the steps are counted from.", "0") with { Default = "0" }))
        with
        { Required = true, ExactlyOne = true },
        Map("panels", "Precast facing panels; they restart at corners, and their width counts on their own face.",
            Length("width", "Panel width.", new ValueRange(1, true, 100), "10").Usually(3, 30, 0.9, 10) with { Required = true, RangeMetric = new ValueRange(0.3, true, 30) },
            Length("height", "Panel height.", new ValueRange(0.5, true, 100), "5").Usually(1, 35, 0.3, 11) with { Required = true, RangeMetric = new ValueRange(0.15, true, 30) },
            Station("first_break", "A panel break, in the wall's first leg.", "100+00") with { Default = "the wall's first station" }),
        Map("facing", "Temporary shotcrete and permanent facing.",
            Length("shotcrete", "Thickness of the temporary shotcrete.", ValueRange.Over0, "4 in").Usually(0.16, 1.5, 0.05, 0.45),
            Choice("kind", "Permanent facing.", "precast panels", "precast panels", "cast in place", "permanent shotcrete", "sculpted shotcrete", "other", "none")
                .Also(("precast panels precastconcretepanels", "precast panels"), ("cip castinplaceconcrete", "cast in place")) with { Default = "none" },
            Length("thickness", "Thickness of the permanent facing.", ValueRange.Over0, "5.5 in").Usually(0.16, 3, 0.05, 0.9),
            Length("gap", "Gap between temporary shotcrete and permanent facing.", ValueRange.From0, "6 in").Usually(0, 3, 0, 0.9),
            Text("coping", "What the coping is; none, or left out: there is no coping.", "cast in place")),
        Map("drainage", "Drainage strips behind the shotcrete.",
            Length("strip_width", "Width of a strip.", ValueRange.Over0, "12 in").Usually(0.25, 5, 0.08, 1.5),
            Length("max_spacing", "Greatest distance between strips (10 ft: common practice, no source).", new ValueRange(0.5, true, 1000), "10 ft").Usually(2, 30, 0.6, 9) with { Default = "10 ft", DefaultMetric = "3 m", RangeMetric = new ValueRange(0.15, true, 300) }),
        Map("lifts", "Limits of an excavation lift.",
            Length("below_row", "How far below a row the cut goes.", ValueRange.From0, "1.5 ft").Usually(0, 6, 0, 2),
            Length("max_exposed", "Greatest height of face left open.", ValueRange.Over0, "4 ft").Usually(1.5, 12, 0.45, 4),
            Number("max_hours", "Longest time that a face stays open, hours.", new ValueRange(0, false, 1e4), "24")),
        List("cross_sections", "Cross sections of the ground in front of the wall before the excavation, in order of station; without them its volume is not computed. The first and the last go on to the wall's ends.", 0, WithSources(SourceKeys.OfCrossSections, Map("cross section", "The ground in front of the wall at a station.",
            Station("station", "Station.", "100+00") with { Required = true },
            List("ground", "From the face outward: [distance in front of the face, elevation]; the first distance is 0, and the excavation ends at the last.", 2, Map("ground point", "A point of a cross section, [in_front, elevation] for short.",
                Length("in_front", "Horizontal distance in front of the face.", ValueRange.From0, "20") with { Required = true },
                Elevation("elevation", "Elevation of the ground.", "118.0") with { Required = true }) with { Short = ["in_front", "elevation"] }) with { Required = true, Example = "[[0, 118.0], [20, 118.0], [40, 104.0]]" }))),
        List("openings", "Openings and pipes through the face: deducted from the area, exempt from cover.", 0, Map("opening", "An opening of the face.",
            Text("name", "Name.", "Culvert") with { Required = true },
            StationPair("stations", "First and last station.", "[100+20, 100+26]") with { Required = true },
            Elevation("bottom", "Elevation of its lower edge.", "104") with { Required = true },
            Elevation("top", "Elevation of its upper edge.", "109") with { Required = true })),
        List("no_nails", "Stretches of the face that are closed to nail heads.", 0, Map("closed stretch", "A stretch without nails.",
            StationPair("stations", "First and last station.", "[100+20, 100+26]") with { Required = true },
            Elevation("bottom", "Lower limit; left out: down to the bottom of wall.", "104"),
            Elevation("top", "Upper limit; left out: up to the top of wall.", "109"),
            Text("reason", "Why.", "future opening"))),
        SectionDefaults("What the sections of this wall have in common; a section's own value goes before it."),
        List("sections", "Stretches of the wall with one design grid each, together the whole wall.", 1, Map("section", "A stretch with one design grid.", SectionKeys())) with { Required = true, MaxCount = 1000 },
    ];

    /// <summary>A block with what sections have in common, none of it needed.</summary>
    public static Key SectionDefaults(string meaning) => Map("section_defaults", meaning,
        [.. SectionKeys().Where(k => IsDefault(k.Name)).Select(k => k with { Required = false, Children = [.. k.Children.Select(c => c with { Required = false })] })])
        with
    { Shared = "section defaults" };

    /// <summary>True for a key of a section that a default can stand for.</summary>
    public static bool IsDefault(string key) => key is not ("name" or "stations") && SectionNames.Contains(key);

    private static readonly HashSet<string> SectionNames = [.. SectionKeys().Select(k => k.Name)];

    private static Key[] SectionKeys() =>
    [
        Text("name", "Name of the section; it starts the marks of its nails.", "A") with { Required = true },
        StationPair("stations", "First and last station.", "[100+00, 100+60]") with { Required = true },
        Length("horizontal_spacing", "Horizontal spacing of the nails.", SpacingFeet, "3.5") with { Required = true, RangeMetric = SpacingMetres },
        Length("columns", "Where the grid's columns stand: the distance along the face from the down-station end of each row to its first column that the spacing counts from, under the horizontal spacing (over half of it, a nail at the end covers what lies before); `centred`: what the spacing leaves over is shared by both ends; `best`: the distance that leaves the fewest nails unresolved, then noted, is found with the search and stated on the sheets. A row too narrow for the distance is centred.", ValueRange.From0, "1.25") with
        {
            Choices = ["centred", "best"],
            Default = "centred",
            Formerly = new Dictionary<string, string>
            {
                ["first_column"] = "write columns: with the same distance",
                ["columns_shift"] = "write columns: with the distance from the down-station end of each row to its first column, or columns: best",
            },
        },
        Length("vertical_spacing", "Vertical spacing of the rows.", SpacingFeet, "3.5") with { Required = true, RangeMetric = SpacingMetres },
        Choice("rows", "Level rows, rows parallel to the top, or the first row parallel and the others level.", "level", "level", "parallel", "top_parallel")
            .Also(("horizontal", "level"), ("paralleltotop sloping", "parallel"), ("firstparallel toprowparallel", "top_parallel")) with { Default = "level" },
        Choice("pattern", "Square, or every second row moved by half the spacing.", "square", "square", "staggered")
            .Also(("rectangular grid", "square"), ("stagger triangular diamond", "staggered")) with { Default = "square" },
        Length("top_row_depth", "Depth of the first row below the highest top in the section (level) or below the top (parallel).", ValueRange.From0, "2.0") with { Required = true },
        Angle("inclination", "Angle of the holes below horizontal.", new ValueRange(-45, true, 60), "15") with { Required = true },
        List("lengths", "Nail lengths by row from the top, the last one repeats; or one number.", 1, Length("length", "Nail length.", new ValueRange(0, false, 500), "24").Usually(4, 120, 1.2, 36)) with { Required = true, OneAllowed = true, MaxCount = 100, Example = "[24, 24, 22, 20]" },
        Map("bar", "Bar of the nails; \"#8 Gr 75\" in quotes for short.",
            Text("size", "Size by number, in quotes: a # without quotes starts a comment.", "\"#8\"") with { Required = true },
            new Key("grade", ValueKind.Grade, "Yield strength in ksi; also 75 ksi, Gr 75, 520 MPa.") { Range = new ValueRange(40, true, 160), Example = "75", Required = true },
            Number("weight", "Weight of the bar in lb/ft or kg/m; needed for grades that ASTM A615 does not publish (150 above all).", new ValueRange(0, false, 100), "3.01")) with
        { Required = true, Short = ["size", "grade"], Example = "{size: \"#8\", grade: 75}" },
        Length("hole", "Diameter of the holes.", new ValueRange(0, false, 5), "6 in") with { Required = true, RangeMetric = new ValueRange(0, false, 1.5) },
        Map("test_nails", "Test nails.",
            Integer("verification", "Number of sacrificial verification test nails.", new ValueRange(0, true, 1000), "1") with { Default = "0" },
            Choice("verification_per", "Whether that number stands for the section or for the whole wall.", "section", "section", "wall") with { Default = "section" },
            Share("proof", "Least share of the production nails that are proof tested.", new ValueRange(0, true, 1), "5 %") with { Default = "0 %" },
            Choice("proof_marks", "Who chooses the proof test nails: the engineer in the field, or evenly spread marks.", "engineer", "engineer", "spread") with { Default = "engineer" }),
        DesignKeys.Block(),
        Text("stage", "Stage of construction that the section belongs to: quantities are also summed by stage.", "1"),
        Choice("corner_rows", "Rows at an outside corner: continuous, or those of the up-station leg moved by half the vertical spacing.", "continuous", "continuous", "shifted") with { Default = "continuous" },
    ];
}

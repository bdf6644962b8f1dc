using static SheetGen.ProjectFile.Keys.KeyForms;

namespace SheetGen.ProjectFile.Keys;

/// <summary>The keys of the project file. The blocks of walls and obstructions stand in files of their own.</summary>
public static class KeyTable
{
    /// <summary>Facts of the project that are printed. No fact of the project has the name of a fact of the design.</summary>
    public static IReadOnlyList<Key> ProjectFacts { get; } =
    [
        Text("owner", "Owner of the wall.", "County road department"),
        Text("location", "Where the wall stands.", "Alder Street at the main line"),
        Text("vertical_datum", "Datum of the elevations.", "NAVD 88"),
        Text("horizontal_datum", "Datum of the coordinates.", "NAD 83 (2011)"),
        Text("coordinate_zone", "Zone of the coordinates.", "state plane, north zone"),
        Text("grid_to_ground", "Combined factor from grid to ground.", "1.00012"),
        Text("designed", "Initials or name of the designer.", "A. B."),
        Text("drawn", "Initials or name of the drafter.", "C. D."),
        Text("checked", "Initials or name of the checker.", "E. F."),
        Text("approved", "Initials or name of who approves.", "G. H."),
    ];

    /// <summary>Facts of the design that are printed.</summary>
    public static IReadOnlyList<Key> DesignFacts { get; } =
    [
        Text("specification", "Design specification.", "LRFD, 9th edition"),
        Text("design_loads", "Design loads.", "250 psf traffic surcharge"),
        Text("seismic", "Seismic design.", "kh = 0.10"),
        Text("service_life", "Service life.", "75 years"),
        Text("soil", "Soil parameters.", "stiff clay, 125 pcf, 28 deg, 100 psf"),
        Text("bond", "Bond strength used in the design.", "10 psi ultimate"),
        Text("nail_load", "Design load of a nail.", "28 kip"),
        Text("corrosion_protection", "Corrosion protection of the nails.", "epoxy coated bars"),
        Text("bar_standard", "Standard of the bars.", "ASTM A615"),
        Text("grout_strength", "Strength of the grout.", "3000 psi at 28 days"),
        Text("shotcrete_strength", "Strength of the shotcrete.", "4000 psi at 28 days"),
        Text("concrete_strength", "Strength of the concrete.", "4000 psi at 28 days"),
        Text("mesh", "Welded wire in the shotcrete.", "4x4 W2.9xW2.9"),
        Text("mesh_cover", "Distance from the face of the shotcrete to its welded wire.", "2 in"),
        Text("waler_bars", "Waler bars.", "\"2 #4 each way at each head\""),
        Text("bearing_bars", "Vertical bearing bars.", "\"2 #4, 3 ft long\""),
        Text("plate", "Bearing plate.", "8 x 8 x 3/4 in"),
        Text("studs", "Headed studs on the plate.", "4 of 1/2 x 4 in"),
        Text("nut_and_washer", "Nut and washer.", "hex nut, bevelled washer"),
        Text("centralizers", "Centralizers.", "at no more than 8 ft, 2 ft from each end"),
        Text("drainage_strip", "Kind of drainage strip.", "geocomposite, fabric side to the soil"),
        Text("leveling_pad", "Leveling pad.", "12 x 6 in, unreinforced"),
        Text("strip_lap", "How far drainage strips lap.", "12 in"),
        Text("weep_holes", "Weep holes: size, kind and spacing.", "2 in PVC at 10 ft"),
        Text("underdrain", "Drain at the foot of the wall.", "4 in perforated PVC in gravel"),
        Text("drain_outlet", "Where the drain lets the water out.", "drop inlet at 11+95"),
        Text("facing_bars", "Reinforcement of the permanent facing.", "\"#4 at 12 in each way\""),
        Text("facing_cover", "Distance from the front of the permanent facing to its reinforcement.", "2 in"),
        Text("connection", "How the permanent facing is connected to the nail heads or the shotcrete.", "4 headed studs at each head"),
        Text("gap_fill", "What fills the gap between shotcrete and permanent facing.", "drainage gravel"),
        Text("coping_bars", "Reinforcement of the coping.", "\"4 #4 with #3 ties at 12 in\""),
        Text("corner_bars", "Bars round the corners of the facing.", "\"#4 at 12 in, 3 ft each way\""),
        Text("trim_bars", "Bars round openings in the facing.", "\"2 #5 on each side\""),
        Text("joint", "Shape of the construction joint between two lifts.", "tapered at 45 degrees"),
        Text("groundwater", "Groundwater that the design reckons with.", "below elevation 634"),
        Text("surface_water", "How surface water is kept off the wall.", "lined ditch above the coping"),
        Text("test_gap", "How far the shotcrete keeps clear of a test nail's grout; left out: 1 in (25 mm), common practice.", "1 in"),
        Text("facing_time", "When the permanent facing must stand; left out: within 30 working days of the last lift, common practice.", "30 working days"),
        Text("verification_load", "Test load of verification test nails.", "200 percent of the design load"),
        Text("proof_load", "Test load of proof test nails.", "150 percent of the design load"),
        Text("finish", "Finish of the permanent facing.", "form liner, stained"),
        Text("wall_ends", "How the wall ends and how it goes round pipes and inlets.", "returns into the slope"),
        Text("adjacent_structures", "Structures nearby and what movement they bear.", "abutment, 1/4 in"),
        Text("construction_sequence", "Order of the works.", "top down, one row a lift"),
        Text("monitoring", "Monitoring points, thresholds and actions.", "survey points at 50 ft, stop at 1 in"),
        Text("traffic", "Traffic staging and barriers.", "stage 2, barrier 4 ft from the face"),
        Text("site_limits", "Environmental limits, contamination, access and headroom.", "headroom 14 ft under the girders"),
    ];

    /// <summary>The whole file.</summary>
    public static Key Root { get; } = Map("project file", "The whole file.",
        Integer("format", "Version of the file format; this program reads format 1.", new ValueRange(1, true, 1), "1") with { Required = true },
        Map("project", "Names of the project and its one length unit, and facts that are printed.", ProjectKeys()) with { Required = true },
        Map("design", "Facts of the design that the sheets print; nothing is computed with them. The engineer's figures stand in design of the sections.", [.. DesignFacts]),
        List("layout_lines", "Plan alignments with stations along them.", 1, Map("layout line", "A plan alignment.", LayoutLineKeys()) with { Sources = SourceKeys.OfLayoutLine, FromSource = ["start", "elements", "station_equations"] }) with { Required = true, MaxCount = 100 },
        WallKeys.SectionDefaults("What the sections of all walls have in common; the defaults of a wall and a section's own value go before it."),
        List("walls", "Soil nail walls on layout lines.", 1, Map("wall", "A soil nail wall.", WallKeys.All())) with { Required = true, MaxCount = 100 },
        List("obstructions", "Shafts, piles, caps, girders, footings, pipes and boundaries that holes keep clear of.", 0, ObstructionKeys.Obstruction()),
        List("borings", "Boring logs drawn on the elevation.", 0, Map("boring", "A boring log.", BoringKeys()) with { Sources = SourceKeys.OfBorings }),
        List("fixed", "Nails, or whole rows, that the designer pins; what is left out stays as the layout chooses.", 0, Map("fixed nail", "A pinned nail or row.", FixedKeys())),
        List("accept", "Findings that the engineer has accepted, each with reason and by whom.", 0, Map("acceptance", "An accepted finding.", AcceptKeys())),
        Map("sheets", "Plan sheets.", SheetKeys()),
        Text("pay_items", "Name of a pay item set in templates/pay-items, or a file beside the project file.", "generic") with { Default = "generic" },
        Choice("pay_length_from", "From where a nail's pay length is measured.", "face", "face", "back_of_shotcrete") with { Default = "face" },
        Map("rates", "Rates and factors of the take-off, kept over rebuilds; none is assumed.", RateKeys.All()),
        new Key("prices", ValueKind.Names, "Unit prices by pay item number, the user's own.")
        {
            Item = Number("price", "Unit price.", new ValueRange(0, true, 1e9), "52.50"),
            Example = "{SN-1: 52.50}",
        },
        Map("rules", "Rules of the layout.", RuleKeys.All()));

    private static Key[] ProjectKeys() =>
    [
        Text("title", "Title of the project.", "Alder Street underpass") with { Required = true },
        Text("number", "Project or drawing number.", "D-104"),
        Choice("units", "The one length unit: international foot, US survey foot or metre.", "ft", "ft", "us-ft", "m").Also(
            ("feet foot internationalfoot internationalfeet intlft ift", "ft"),
            ("usft ussurveyft ussurveyfoot ussurveyfeet surveyft surveyfoot surveyfeet sft", "us-ft"),
            ("meter meters metre metres metric", "m")) with
        { Required = true },
        .. ProjectFacts,
    ];

    private static Key[] LayoutLineKeys() =>
    [
        Text("name", "Name of the layout line.", "WL-1") with { Required = true },
        Map("start", "Where it starts.",
            Station("station", "Station of the start.", "100+00") with { Required = true },
            Coordinate("northing", "Northing of the start.", "5000.0") with { Required = true },
            Coordinate("easting", "Easting of the start.", "2000.0") with { Required = true },
            Azimuth("azimuth", "Direction up-station at the start, clockwise from north: degrees, 89-30-15, or a bearing such as N 62-15 E.", "90.0") with { Required = true }) with { Required = true },
        List("elements", "Tangents, arcs, spirals and corners one after the other; at least one that has a length, and a corner between two of them.", 1,
            Map("element", "A piece of the layout line.",
                Length("line", "A tangent: its length.", ValueRange.Over0, "60"),
                Map("arc", "A circular arc, tangent to what comes before.",
                    Length("radius", "Radius.", ValueRange.Over0, "250").Usually(15, 1e5, 4.5, 3e4) with { Required = true },
                    Length("length", "Length along the arc; no more than a full circle.", ValueRange.Over0, "45") with { Required = true },
                    Side("turn", "Side to which it turns, looking up-station.", "left") with { Required = true }),
                Map("spiral", "A spiral (clothoid), tangent to what comes before: its curvature changes evenly along it. An end without a radius is straight.",
                    Length("length", "Length along it.", ValueRange.Over0, "200") with { Required = true },
                    Length("start_radius", "Radius where it begins; left out: straight.", ValueRange.Radius, "1000"),
                    Length("end_radius", "Radius where it ends; left out: straight.", ValueRange.Radius, "1000"),
                    Side("turn", "Side to which it turns, looking up-station.", "left") with { Required = true }),
                Angle("kink", "A change of direction too small for a corner, positive to the right, as surveyed alignments have between their pieces: the line goes on as one leg.", new ValueRange(-0.1, true, 0.1), "0.002"),
                Map("corner", "An angle point.",
                    Side("turn", "Side to which the line turns, looking up-station.", "right") with { Required = true },
                    Angle("angle", "Deflection.", new ValueRange(0, false, 180, false), "30") with { Required = true, Surveyed = true }))
            with
            { ExactlyOne = true }) with { Required = true },
        List("station_equations", "Places where stations jump, in order along the line. Where a station then exists twice, it is written with BK or AH: 12+50 BK.", 0, Map("station equation", "A place where stations jump.",
            Station("back", "Station of the place by the stations before it.", "12+50") with { Required = true },
            Station("ahead", "Station of the place by the stations that follow.", "13+00") with { Required = true }) with { Short = ["back", "ahead"] }) with { Example = "[{back: 12+50, ahead: 13+00}]" },
    ];

    private static Key[] BoringKeys() =>
    [
        Text("name", "Name of the boring.", "B-1") with { Required = true },
        ObstructionKeys.Point("at", "Where it stands.", false) with { Required = true },
        Elevation("top", "Elevation of the ground at the boring.", "121.0") with { Required = true },
        Elevation("bottom", "Elevation of its lower end.", "78.0") with { Required = true },
        Elevation("water", "Elevation of the water met.", "96.0"),
        List("layers", "Layers from the top down.", 0, Map("layer", "A layer of soil.",
            Elevation("to", "Elevation of its lower end.", "108.0") with { Required = true },
            Text("name", "Soil.", "stiff clay") with { Required = true },
            Number("plasticity_index", "Plasticity index.", new ValueRange(0, true, 500), "24"))),
    ];

    private static Key[] FixedKeys() =>
    [
        Text("wall", "Wall; may be left out where there is only one.", "Wall 1"),
        Text("section", "Section; may be left out where the wall has only one, or a station is given.", "A"),
        Text("row", "Row, counted from the top; a part row as 3.5.", "3") with { Required = true },
        Station("station", "Station of the nail; without it the whole row is pinned.", "100+32.5"),
        Station("grid_station", "Grid station whose nail it is; left out: the nearest.", "100+31.0"),
        Elevation("elevation", "Elevation of the nail's head; left out: the row's.", "112.5"),
        Angle("splay", "Splay, positive up-station.", new ValueRange(-89, true, 89), "-12"),
        Angle("inclination", "Angle below horizontal.", new ValueRange(-45, true, 89), "15"),
        Length("length", "Length.", ValueRange.Over0, "26"),
        Flag("add", "Said of a nail that stands beside those of the grid stations.", "true") with { Default = "false" },
        Flag("leave_out", "Leaves the grid station nearest to the station without a nail.", "true") with { Default = "false" },
    ];

    private static Key[] AcceptKeys() =>
    [
        Choice("code", "Code of the finding; left out: any.", "nail-obstruction", "nail-nail", "nail-obstruction", "nail-boundary", "nail-face", "cover", "unresolved", "noted-redirect", "left-out"),
        Text("wall", "Wall; may be left out where there is only one.", "Wall 1"),
        List("nails", "Marks of the nails of the finding.", 1, Text("mark", "Mark of a nail.", "A-3-07")) with { Example = "[A-3-07]" },
        Text("obstruction", "Obstruction of the finding.", "S1"),
        StationPair("stations", "Stretch of the finding.", "[100+20, 100+28]"),
        Text("reason", "Why it is accepted.", "shaft to be cut down first") with { Required = true },
        Text("by", "Who accepted it, and when.", "A. B., 2026-01-15") with { Required = true },
    ];

    private static Key[] SheetKeys() =>
    [
        Choice("size", "Sheet size; left out: chosen by the program.", "ANSI D",
            "ANSI B", "ANSI C", "ANSI D", "ANSI E", "ANSI F", "ARCH B", "ARCH C", "ARCH D", "ARCH E", "ARCH E1", "ISO A3", "ISO A2", "ISO A1", "ISO A0"),
        new Key("scale", ValueKind.Scale, "Scale: 10 for 1 in = 10 ft, 100 for 1:100 in metres, or 1:120; left out: the largest that fits.") { Range = new ValueRange(0.5, true, 1e4, false), Example = "10" },
        Text("revision", "Revision in the title block.", "0"),
        Text("date", "Date in the title block, printed as given.", "2026-01-15"),
        Choice("view", "Side from which the elevation is drawn.", "from_front", "from_front", "from_behind") with { Default = "from_front" },
        Flag("half_size", "Whether the sheets are issued at half size: lettering is then at least 3/16 in (4.8 mm) on the full sheet, 3/32 in at half size.", "true") with { Default = "false" },
        Text("title_block", "File of the user's own title block drawing (DXF), beside the project file.", "title-block.dxf"),
        Text("layers", "Name of a layer list in templates/layers, or a file of the user's own beside the project file.", "agency-sample"),
        Text("notes", "Name of a note set in templates/notes, or a file of the user's own beside the project file.", "county-notes.json"),
        Text("language", "Language of the sheets: english, spanish, or a file like those in templates/text beside the project file.", "spanish"),
        Text("section_word", "What the sheets call a section of the wall's design, so that SECTION is left to the cuts; left out: DESIGN ZONE.", "reach"),
        Integer("first_number", "Number of the first sheet, where the set is part of a larger one that is numbered through: the index in a corridor's register tells it.", new ValueRange(1, true, 9999), "41") with { Default = "1" },
        List("revisions", "Rows of the revision table.", 0, Map("revision", "A row of the revision table.",
            Text("number", "Number or letter.", "1") with { Required = true },
            Text("date", "Date.", "2026-02-01") with { Required = true },
            Text("text", "What changed.", "nails moved at shaft S1") with { Required = true })),
    ];
}

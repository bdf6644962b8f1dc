using static SheetGen.ProjectFile.Keys.KeyForms;

namespace SheetGen.ProjectFile.Keys;

/// <summary>The keys of the rates: factors, stock, weights, laps, production and cost, all the user's own.</summary>
internal static class RateKeys
{
    private static readonly ValueRange Weight = new(0, false, 1e5);
    private static readonly ValueRange Money = new(0, true, 1e9);

    public static Key[] All() =>
    [
        Number("grout_overrun", "Grout used as a factor on the theoretical volume.", new ValueRange(1, true, 10), "1.3"),
        Share("shotcrete_loss", "Shotcrete lost as a share of what is supplied.", new ValueRange(0, true, 1, false), "15 %"),
        List("stock_length", "Lengths in which bars are supplied; one number or a list.", 1, Length("length", "A stock length.", ValueRange.Over0, "60")) with { OneAllowed = true, MaxCount = 20, Example = "[40, 60]" },
        Length("least_piece", "Least length of a piece that is coupled: a bar little longer than stock takes it from the piece before (this program's own).", ValueRange.Over0, "3 ft") with { Default = "3 ft", DefaultMetric = "1 m" },
        Length("centralizer_spacing", "Greatest distance between centralizers.", ValueRange.Over0, "8 ft"),
        Length("centralizer_end", "Distance of the outer centralizers from both ends of the hole (common practice, no source).", ValueRange.From0, "2 ft") with { Default = "2 ft", DefaultMetric = "0.6 m" },
        Number("design_bond", "Nominal pullout resistance per length of nail, kip/ft or kN/m; for tests in sections whose design gives no bond.", new ValueRange(0, false, 1e4), "2.2"),
        Length("test_bonded_length", "Bonded length of a verification test nail.", ValueRange.Over0, "10"),
        Length("test_free_length", "Free length of a verification test nail.", ValueRange.Over0, "5"),
        Length("proof_free_length", "Free length of a proof test nail while it is tested.", ValueRange.Over0, "3"),
        Share("contingency", "Contingency as a share of the sum.", new ValueRange(0, true, 10), "10 %"),
        Share("check_limit", "Share by which a checker's value may differ from the program's.", new ValueRange(0, true, 1), "1 %"),
        Number("waler_bars", "Waler bars in a row.", new ValueRange(0, true, 10), "2"),
        Number("bearing_bars", "Bearing bars at a nail.", new ValueRange(0, true, 20), "2"),
        Length("bearing_bar_length", "Length of a bearing bar.", ValueRange.Over0, "3 ft"),
        Number("plate_weight", "Weight of a bearing plate, lb or kg.", Weight, "13.6"),
        Number("nut_weight", "Weight of a nut, lb or kg.", Weight, "0.9"),
        Number("washer_weight", "Weight of a bevelled washer, lb or kg.", Weight, "1.2"),
        Number("coupler_weight", "Weight of a coupler, lb or kg.", Weight, "3.1"),
        Map("mesh", "Sheets of welded wire.",
            Length("length", "Length of a sheet.", ValueRange.Over0, "20 ft") with { Required = true },
            Length("width", "Width of a sheet.", ValueRange.Over0, "8 ft") with { Required = true },
            Length("lap", "How far neighbours lap, both ways.", ValueRange.From0, "8 in") with { Required = true }),
        Share("strip_lap", "What drainage strips need more than their length, for laps and folds.", new ValueRange(0, true, 1), "5 %"),
        Share("spare_nails", "Nails bought as spares, as a share of the production nails.", new ValueRange(0, true, 1), "2 %"),
        Map("pad", "Cross section of the leveling pad.",
            Length("width", "Width.", ValueRange.Over0, "12 in") with { Required = true },
            Length("height", "Height.", ValueRange.Over0, "6 in") with { Required = true }),
        Map("coping", "Cross section of the coping.",
            Length("width", "Width.", ValueRange.Over0, "18 in") with { Required = true },
            Length("height", "Height.", ValueRange.Over0, "12 in") with { Required = true }),
        new Key("drilling", ValueKind.Names, "Length of hole that a rig drills in an hour, by the name of the soil layer in the borings.")
        {
            Item = Number("rate", "Length in an hour.", new ValueRange(0, false, 1e5), "60"),
            Example = "{stiff clay: 60}",
        },
        Number("hours_per_day", "Hours that a drill crew works in a day.", new ValueRange(0, false, 24), "8"),
        Number("rigs", "Drill rigs that work at once.", new ValueRange(0, false, 100), "1"),
        Number("drilling_per_day", "Length of hole that a crew drills in a day, in ft or m; it goes before the rates by soil layer.", new ValueRange(0, false, 1e5), "400"),
        Number("shotcrete_per_day", "Area of face that a crew covers with shotcrete in a day, in ft2 or m2.", new ValueRange(0, false, 1e6), "1200"),
        Number("excavation_per_day", "Volume that a crew digs in a day, in ft3 or m3.", new ValueRange(0, false, 1e7), "5000"),
        new Key("build_up", ValueKind.Names, "Cost of one unit by pay item number.")
        {
            Item = Map("cost", "Cost of one unit of a pay item.",
                Number("crew", "Crew.", Money, "12.50"),
                Number("equipment", "Equipment.", Money, "9.00"),
                Number("material", "Material.", Money, "18.00"),
                Number("subcontract", "Subcontract.", Money, "0")),
            Example = "{SN-1: {crew: 12.50, equipment: 9.00, material: 18.00}}",
        },
        Share("mark_up", "Mark-up on the cost, as a share of it.", new ValueRange(0, true, 10), "15 %"),
    ];
}

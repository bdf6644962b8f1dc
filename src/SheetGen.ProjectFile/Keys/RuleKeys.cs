using static SheetGen.ProjectFile.Keys.KeyForms;

namespace SheetGen.ProjectFile.Keys;

/// <summary>The keys of the layout rules.</summary>
internal static class RuleKeys
{
    private static readonly ValueRange Clearance = new(0, true, 100);

    public static Key[] All() =>
    [
        Map("clearance", "Least clear distances, edge to edge.",
            Length("obstruction", "Hole to obstruction.", Clearance, "6 in").Usually(0, 5, 0, 1.5) with { Default = "0.5 ft", DefaultMetric = "0.15 m" },
            Length("nail", "Hole to hole.", Clearance, "6 in").Usually(0, 3, 0, 1) with { Default = "0.5 ft", DefaultMetric = "0.15 m" },
            Length("boundary", "Hole to right-of-way or easement boundary.", Clearance, "1 ft").Usually(0, 20, 0, 6) with { Default = "1 ft", DefaultMetric = "0.3 m" }),
        Share("drift", "Growth of a hole's radius per length, for drilling deviation.", new ValueRange(0, true, 0.2), "0 %") with { Default = "0 %" },
        Map("redirect", "How far nails may be turned.",
            Angle("field_tolerance", "Largest splay or change of inclination without a plan note (common practice, no source).", new ValueRange(0, true, 80), "10") with { Default = "10 deg" },
            Angle("step", "Step of both angles.", new ValueRange(0.1, true, 80), "1") with { Default = "1 deg" },
            Angle("maximum", "Largest splay, and largest change of inclination.", new ValueRange(0, true, 80), "30") with { Default = "30 deg" },
            List("inclination", "Least and greatest inclination of a turned nail.", 2, Angle("angle", "Angle below horizontal.", new ValueRange(-45, true, 80), "5")) with { MaxCount = 2, Example = "[5, 25]", Default = "[5, 25] deg" },
            Flag("lengthen", "Whether a nail beyond the field tolerance is lengthened to keep its reach behind the face.", "true") with { Default = "true" }),
        Length("shift_step", "Step in which a nail may be moved along its row.", new ValueRange(0.01, true, 10), "0.25").Usually(0.01, 2, 0.001, 0.6) with { Default = "0.25 ft", DefaultMetric = "0.05 m", RangeMetric = new ValueRange(0.001, true, 3) },
        Length("top_max", "Greatest depth of the highest nail below the top (common practice, no source).", ValueRange.Over0, "2.5").Usually(1, 8, 0.3, 2.5) with { Default = "2.5 ft", DefaultMetric = "0.75 m" },
        Length("bottom_max", "Greatest height of the lowest nail above the bottom (common practice, no source).", ValueRange.Over0, "3").Usually(1, 8, 0.3, 2.5) with { Default = "3 ft", DefaultMetric = "0.9 m" },
        Length("min_gap", "Least gap between neighbours in a row.", ValueRange.From0, "2").Usually(0, 8, 0, 2.5) with { Default = "2 ft", DefaultMetric = "0.6 m" },
        Length("moved_gap_max", "Greatest gap beside a moved nail.", ValueRange.Over0, "4.5") with { Default = "the section's horizontal spacing" },
        Length("corner_clear", "Least distance of a head from a corner.", ValueRange.From0, "1").Usually(0, 8, 0, 2.5) with { Default = "1 ft", DefaultMetric = "0.3 m" },
        Length("edge_min", "Least distance of a head from the outline of the face.", ValueRange.From0, "1").Usually(0, 5, 0, 1.5) with { Default = "1 ft", DefaultMetric = "0.3 m" },
        Choice("heads_below_grade", "Nail heads below the finished grade: allowed, allowed with a warning that counts them, or none placed there.", "none", "allow", "warn", "none") with { Default = "warn" },
        Length("bar_projection", "Bar beyond the face (6 in: common practice, no source).", ValueRange.From0, "6 in").Usually(0, 4, 0, 1.2) with { Default = "0.5 ft", DefaultMetric = "0.15 m" },
        Length("length_increment", "Step of nail lengths.", new ValueRange(0.01, true, 100), "1").Usually(0.05, 10, 0.01, 3) with { Default = "1 ft", DefaultMetric = "0.5 m", RangeMetric = new ValueRange(0.001, true, 30) },
    ];
}

using System.Globalization;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Review.Data;

/// <summary>Every rule with its value as the project file would write it, and whether it stands at its default.</summary>
internal static class RuleList
{
    public static IEnumerable<(string Key, string Value, bool IsDefault)> Of(WallProject project)
    {
        Rules rules = project.Rules;
        string unit = Lengths.Symbol(project.Unit);
        string Length(double value) => value.ToString("0.####", CultureInfo.InvariantCulture) + " " + unit;
        string Degrees(double value) => value.ToString("0.##", CultureInfo.InvariantCulture) + " deg";
        (string Key, string Value)[] all =
        [
            ("clearance.obstruction", Length(rules.ObstructionClearance)),
            ("clearance.nail", Length(rules.NailClearance)),
            ("clearance.boundary", Length(rules.BoundaryClearance)),
            ("drift", (rules.Drift * 100).ToString("0.###", CultureInfo.InvariantCulture) + " %"),
            ("redirect.field_tolerance", Degrees(rules.Redirect.FieldTolerance)),
            ("redirect.step", Degrees(rules.Redirect.Step)),
            ("redirect.maximum", Degrees(rules.Redirect.Maximum)),
            ("redirect.inclination", Degrees(rules.Redirect.LeastInclination) + " to " + Degrees(rules.Redirect.GreatestInclination)),
            ("redirect.lengthen", rules.Redirect.Lengthen ? "true" : "false"),
            ("shift_step", Length(rules.ShiftStep)),
            ("top_max", Length(rules.TopMax)),
            ("bottom_max", Length(rules.BottomMax)),
            ("min_gap", Length(rules.MinGap)),
            ("moved_gap_max", rules.MovedGapMax is { } gap ? Length(gap) : "the section's spacing"),
            ("corner_clear", Length(rules.CornerClear)),
            ("edge_min", Length(rules.EdgeMin)),
            ("bar_projection", Length(rules.BarProjection)),
            ("length_increment", Length(rules.LengthIncrement)),
        ];
        return all.Select(r => (r.Key, r.Value, rules.Defaulted.Contains(r.Key) || (r.Key == "moved_gap_max" && rules.MovedGapMax is null)));
    }
}

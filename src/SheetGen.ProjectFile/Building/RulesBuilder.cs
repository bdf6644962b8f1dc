using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>The rules of the layout, with defaults for what the file leaves out.</summary>
internal sealed class RulesBuilder(LengthUnit unit, ProblemList problems)
{
    private readonly HashSet<string> _defaulted = [];

    public Rules Build(MapItem root)
    {
        Rules usual = Rules.Default(unit);
        MapItem map = root.Map("rules") ?? MapItem.Nothing(root.Spot);
        MapItem clearance = map.Map("clearance") ?? MapItem.Nothing(map.Spot);
        return new Rules
        {
            ObstructionClearance = Take(clearance, "obstruction", usual.ObstructionClearance, "clearance."),
            NailClearance = Take(clearance, "nail", usual.NailClearance, "clearance."),
            BoundaryClearance = Take(clearance, "boundary", usual.BoundaryClearance, "clearance."),
            TopMax = Take(map, "top_max", usual.TopMax),
            BottomMax = Take(map, "bottom_max", usual.BottomMax),
            MinGap = Take(map, "min_gap", usual.MinGap),
            MovedGapMax = MovedGapMax(map),
            CornerClear = Take(map, "corner_clear", usual.CornerClear),
            EdgeMin = Take(map, "edge_min", usual.EdgeMin),
            ShiftStep = Take(map, "shift_step", usual.ShiftStep),
            BarProjection = Take(map, "bar_projection", usual.BarProjection),
            LengthIncrement = Take(map, "length_increment", usual.LengthIncrement),
            HeadsBelowGrade = HeadsBelowGradeOf(map),
            Drift = Take(map, "drift", usual.Drift),
            Redirect = Redirect(map.Map("redirect") ?? MapItem.Nothing(map.Spot), usual.Redirect),
            Defaulted = _defaulted,
        };
    }

    private RedirectRules Redirect(MapItem map, RedirectRules usual)
    {
        double tolerance = Take(map, "field_tolerance", usual.FieldTolerance, "redirect.");
        double step = Take(map, "step", usual.Step, "redirect.");
        double maximum = Take(map, "maximum", usual.Maximum, "redirect.");
        (double least, double greatest) = Window(map, usual);
        if (!map.Gives("lengthen"))
            _defaulted.Add("redirect.lengthen");
        if (maximum < tolerance && !map.IsFaulty("maximum") && !map.IsFaulty("field_tolerance"))
            problems.Add(ProblemCodes.MaximumUnderTolerance, map.SpotOf(map.Gives("maximum") ? "maximum" : "field_tolerance"), FormattableString.Invariant($"redirect: maximum {maximum} is under field_tolerance {tolerance}"), "let maximum be at least field_tolerance");
        if (step > maximum && maximum > 0 && !map.IsFaulty("maximum") && !map.IsFaulty("step"))
            problems.Add(ProblemCodes.MaximumUnderTolerance, map.SpotOf(map.Gives("step") ? "step" : "maximum"), FormattableString.Invariant($"redirect: step {step} is larger than maximum {maximum}"), "take a smaller step");
        return new RedirectRules(tolerance, step, maximum, least, greatest, map.Flag("lengthen") ?? usual.Lengthen);
    }

    private (double Least, double Greatest) Window(MapItem map, RedirectRules usual)
    {
        if (!map.Gives("inclination"))
            _defaulted.Add("redirect.inclination");
        if (map.List("inclination") is not { Faulty: false } list || list.Numbers.Count != 2)
            return (usual.LeastInclination, usual.GreatestInclination);
        double least = list.Numbers[0].Value, greatest = list.Numbers[1].Value;
        if (least >= greatest)
            problems.Add(ProblemCodes.RangeReversed, list.Spot, FormattableString.Invariant($"the inclination window [{least}, {greatest}] is empty"), "write [least, greatest]");
        return (least, greatest);
    }

    private HeadsBelowGrade HeadsBelowGradeOf(MapItem map)
    {
        if (!map.Gives("heads_below_grade"))
            _defaulted.Add("heads_below_grade");
        return map.Text("heads_below_grade") switch
        {
            "allow" => HeadsBelowGrade.Allow,
            "none" => HeadsBelowGrade.None,
            _ => HeadsBelowGrade.Warn,
        };
    }

    private double? MovedGapMax(MapItem map)
    {
        if (!map.Gives("moved_gap_max"))
            _defaulted.Add("moved_gap_max");
        return map.Number("moved_gap_max");
    }

    private double Take(MapItem map, string key, double usual, string path = "")
    {
        if (!map.Gives(key))
            _defaulted.Add(path + key);
        return map.Number(key) ?? usual;
    }
}

using System.Text.RegularExpressions;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Set;

/// <summary>
/// Fills the fields of notes from the project. A value that the project leaves out is the program's default and says so; where there is
/// none the field becomes a blank to be filled by hand.
/// </summary>
public static partial class NoteFields
{
    private const string Blank = "__________", Default = " (DEFAULT)";

    public static string Fill(string note, DrawingContext context) =>
        Field().Replace(note, m => ValueOf(m.Groups[1].Value, context));

    private static string ValueOf(string field, DrawingContext context)
    {
        WallProject project = context.Project;
        Printed print = context.Print;
        Rules rules = project.Rules;
        bool feet = Lengths.IsFoot(print.Unit);
        return field switch
        {
            "title" => project.Info.Title.ToUpperInvariant(),
            "number" => project.Info.Number,
            "unit" => print.UnitName,
            "view" => project.Sheets.FromBehind ? "BEHIND THE WALL" : "THE FRONT OF THE WALL",
            "layout" => LayoutWords(context.Layout.Score),
            "projection" => Rule(print.Small(rules.BarProjection), "bar_projection"),
            "tolerance" => Rule(print.Angle(rules.Redirect.FieldTolerance), "redirect.field_tolerance"),
            "clear_obstruction" => Rule(print.Small(rules.ObstructionClearance), "clearance.obstruction"),
            "clear_nail" => Rule(print.Small(rules.NailClearance), "clearance.nail"),
            "clear_boundary" => Rule(print.Short(rules.BoundaryClearance), "clearance.boundary"),
            "drift" => Rule(print.Percent(rules.Drift), "drift"),
            "drain_spacing" => Given(project.Walls.Select(w => w.Drainage?.MaxSpacing), print.Short, feet ? 10 : 3),
            "max_hours" => Given(project.Walls.Select(w => w.Lifts?.MaxHours), h => Printed.Number(h, 1) + " HOURS", 24),
            "max_exposed" => Given(project.Walls.Select(w => w.Lifts?.MaxExposed), print.Short, feet ? 4 : 1.2),
            "test_gap" => Fact(feet ? "1 IN" : "25 MM"),
            "facing_time" => Fact("30 WORKING DAYS"),
            _ => Fact(null),
        };

        string Rule(string value, string key) => rules.Defaulted.Contains(key) ? value + Default : value;
        string Given(IEnumerable<double?> values, Func<double, string> words, double usual) =>
            values.FirstOrDefault(v => v is not null) is double given ? words(given) : words(usual) + Default;
        string Fact(string? usual) => project.Info.Facts.TryGetValue(field, out string? value) && value.Length > 0
            ? value.ToUpperInvariant()
            : usual is null ? Blank : usual + Default;
    }

    private static string LayoutWords(LayoutScore score)
    {
        if (score.IsProvenBest)
            return "NO BETTER LAYOUT EXISTS WITHIN THE RULES";
        return $"UNRESOLVED {Words(score.Unresolved)}, NOTED {Words(score.Noted)}";

        static string Words(FoundAndBound figure) => Printed.Number(figure.Found, 0) + figure.Bound switch
        {
            double bound when bound >= figure.Found => " (NO FEWER ARE POSSIBLE WITHIN THE RULES)",
            double bound => $" (AT LEAST {Printed.Number(bound, 0)} WITHIN THE RULES)",
            null => "",
        };
    }

    [GeneratedRegex("\\{([a-z_]+)\\}", RegexOptions.CultureInvariant)]
    private static partial Regex Field();
}

using System.Text.RegularExpressions;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Composing;

/// <summary>Fills the fields of notes from the project; a field without a value becomes a blank to be filled by hand.</summary>
public static partial class NoteFields
{
    private const string Blank = "__________";

    public static string Fill(string note, DrawingContext context) =>
        Field().Replace(note, m => ValueOf(m.Groups[1].Value, context));

    private static string ValueOf(string field, DrawingContext context)
    {
        WallProject project = context.Project;
        Printed print = context.Print;
        Rules rules = project.Rules;
        return field switch
        {
            "title" => project.Info.Title.ToUpperInvariant(),
            "number" => project.Info.Number,
            "unit" => print.UnitName,
            "view" => project.Sheets.FromBehind ? "BEHIND THE WALL" : "THE FRONT OF THE WALL",
            "projection" => print.Small(rules.BarProjection),
            "tolerance" => Printed.Number(rules.Redirect.FieldTolerance, 2),
            "clear_obstruction" => print.Small(rules.ObstructionClearance),
            "clear_nail" => print.Small(rules.NailClearance),
            "clear_boundary" => print.Short(rules.BoundaryClearance),
            "drift" => print.Percent(rules.Drift),
            "test_gap" => Lengths.IsFoot(print.Unit) ? "1 IN" : "25 MM",
            "drain_spacing" => print.Short(project.Walls.Select(w => w.Drainage?.MaxSpacing).FirstOrDefault(s => s is not null) ?? (Lengths.IsFoot(print.Unit) ? 10 : 3)),
            "max_hours" => Printed.Number(project.Walls.Select(w => w.Lifts?.MaxHours).FirstOrDefault(h => h is not null) ?? 24, 1) + " HOURS",
            "max_exposed" => print.Short(project.Walls.Select(w => w.Lifts?.MaxExposed).FirstOrDefault(h => h is not null) ?? (Lengths.IsFoot(print.Unit) ? 4 : 1.2)),
            "facing_days" => "30 WORKING DAYS",
            _ => project.Info.Facts.TryGetValue(field, out string? value) && value.Length > 0 ? value.ToUpperInvariant() : Blank,
        };
    }

    [GeneratedRegex("\\{([a-z_]+)\\}", RegexOptions.CultureInvariant)]
    private static partial Regex Field();
}

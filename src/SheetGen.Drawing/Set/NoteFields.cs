using System.Text.RegularExpressions;
using SheetGen.Drawing.Templating;
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
    private const string Blank = "__________";

    public static string Fill(string note, DrawingContext context) =>
        Field().Replace(note, m => ValueOf(m.Groups[1].Value, context));

    private static string ValueOf(string field, DrawingContext context)
    {
        WallProject project = context.Project;
        Printed print = context.Print;
        Rules rules = project.Rules;
        var facts = new DesignFacts(context, Blank);
        bool feet = Lengths.IsFoot(print.Unit);
        return field switch
        {
            "title" => project.Info.Title.ToUpperInvariant(),
            "number" => project.Info.Number,
            "unit" => print.UnitName,
            "view" => context.Say(project.Sheets.FromBehind ? Phrase.FromBehindWall : Phrase.FromFrontOfWall),
            "layout" => LayoutWords(context),
            "projection" => Rule(print.Small(rules.BarProjection), "bar_projection"),
            "tolerance" => Rule(print.Angle(rules.Redirect.FieldTolerance), "redirect.field_tolerance"),
            "clear_obstruction" => Rule(print.Small(rules.ObstructionClearance), "clearance.obstruction"),
            "clear_nail" => Rule(print.Small(rules.NailClearance), "clearance.nail"),
            "clear_boundary" => Rule(print.Short(rules.BoundaryClearance), "clearance.boundary"),
            "drift" => Rule(print.Percent(rules.Drift), "drift"),
            "drain_spacing" => Given(w => w.Drainage?.MaxSpacing, facts.StripSpacing),
            "max_hours" => Given(w => w.Lifts?.MaxHours, facts.OpenHours),
            "max_exposed" => Given(w => w.Lifts?.MaxExposed, facts.OpenHeight),
            "test_gap" => Fact(context.Say(feet ? Phrase.TestGapFeet : Phrase.TestGapMetres)),
            "facing_time" => Fact(context.Say(Phrase.FacingTime)),
            _ => Fact(null),
        };

        string Rule(string value, string key) => rules.Defaulted.Contains(key) ? Default(value) : value;
        string Default(string value) => context.Say(Phrase.Default, value);
        string Given(Func<Wall, double?> of, Func<double?, string> words)
        {
            var values = project.Walls.Where(w => of(w) is not null).GroupBy(w => words(of(w))).ToList();
            return values.Count switch
            {
                0 => words(null),
                1 => values[0].Key,
                _ => string.Join(", ", values.Select(v => string.Join(", ", v.Select(w => w.Name.ToUpperInvariant())) + ": " + v.Key)),
            };
        }
        string Fact(string? usual) => facts.Of(field) ?? (usual is null ? Blank : Default(usual));
    }

    private static string LayoutWords(DrawingContext context)
    {
        LayoutScore score = context.Layout.Score;
        if (score.IsProvenBest)
            return context.Say(Phrase.NoBetterLayout);
        return context.Say(Phrase.LayoutFigures, Words(score.Unresolved), Words(score.Noted));

        string Words(FoundAndBound figure) => figure.Bound switch
        {
            double bound when bound >= figure.Found => context.Say(Phrase.NoFewer, Printed.Number(figure.Found, 0)),
            double bound => context.Say(Phrase.AtLeast, Printed.Number(figure.Found, 0), Printed.Number(bound, 0)),
            null => Printed.Number(figure.Found, 0),
        };
    }

    [GeneratedRegex("\\{([a-z_]+)\\}", RegexOptions.CultureInvariant)]
    private static partial Regex Field();
}

using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Drawing.Details;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;

namespace SheetGen.Drawing.Set;

/// <summary>
/// What stands for the names of sheets in views that are drawn before the set is planned: words as wide as a name, so that everything keeps
/// its place when the names are filled in.
/// </summary>
public sealed partial class SheetStandIns
{
    /// <summary>Sheets beyond the views of which the widest name is thought.</summary>
    private const int OtherSheets = 20;

    private const int Base = 4096;

    private readonly IReadOnlyList<ViewSheet> _views;
    private readonly IReadOnlyList<Func<SheetPlan, string>> _names;
    private readonly int _digits;

    public SheetStandIns(DrawingContext context, IReadOnlyList<ViewSheet> views, IReadOnlyList<SectionCut> cuts, IReadOnlyList<DetailView> details)
    {
        _views = views;
        _digits = SheetPlan.NameOf(context.Project.Sheets.FirstNumber + views.Count + OtherSheets).Length - SheetPlan.Prefix.Length;
        _names =
        [
            .. views.Select(v => (Func<SheetPlan, string>)(plan => plan.NameOf(v))), .. views.Select(v => (Func<SheetPlan, string>)(plan => plan.NotesSheetOf(Of(v)))),
            .. cuts.Select(c => (Func<SheetPlan, string>)(plan => plan.SheetOf(c))), .. details.Select(d => (Func<SheetPlan, string>)(plan => plan.SheetOf(d))),
        ];
        Cuts = [.. cuts.Select((c, i) => (c, Word(2 * views.Count + i)))];
        Details = [.. details.Select((d, i) => new DetailPlace(d, i + 1, Word(2 * views.Count + cuts.Count + i)))];
    }

    /// <summary>Every section with what stands for its sheet.</summary>
    public IReadOnlyList<(SectionCut Cut, string Sheet)> Cuts { get; }

    /// <summary>Every detail with its number and what stands for its sheet.</summary>
    public IReadOnlyList<DetailPlace> Details { get; }

    /// <summary>What stands for the name of a view's sheet.</summary>
    public string Of(ViewSheet view) => Word(IndexOf(view));

    /// <summary>What stands for the name of the sheet that takes the notes for which a view's own has no room.</summary>
    public string FurtherOf(ViewSheet view) => Word(_views.Count + IndexOf(view));

    /// <summary>The same with the names that the sheets have in a plan.</summary>
    public SheetContent FillIn(SheetContent content, SheetPlan plan) => content with
    {
        Paper = [.. content.Paper.Select(p => FillIn(p, plan))],
        Model = [.. content.Model.Select(p => FillIn(p, plan))],
        Findings = [.. content.Findings.Select(f => f with { Message = FillIn(f.Message, plan) })],
    };

    private Primitive FillIn(Primitive primitive, SheetPlan plan) => primitive is Text text && HasAny(text.Value) ? text with { Value = FillIn(text.Value, plan) } : primitive;

    private string FillIn(string words, SheetPlan plan) => !HasAny(words) ? words : StandIn().Replace(words, found =>
    {
        int index = (found.Groups[1].Value[0] - TextMeasure.FirstStandIn) * Base + (found.Groups[2].Value[0] - TextMeasure.FirstStandIn);
        return index < _names.Count ? _names[index](plan) : found.Value;
    });

    private static bool HasAny(string words) => words.AsSpan().ContainsAnyInRange(TextMeasure.FirstStandIn, TextMeasure.LastStandIn);

    /// <summary>A name with two letters of private use for its number, and fillers for further digits.</summary>
    private string Word(int index) => string.Create(CultureInfo.InvariantCulture,
        $"{SheetPlan.Prefix}{(char)(TextMeasure.FirstStandIn + index / Base)}{(char)(TextMeasure.FirstStandIn + index % Base)}{new string(TextMeasure.LastStandIn, _digits - 2)}");

    private int IndexOf(ViewSheet view)
    {
        int i = 0;
        while (!ReferenceEquals(_views[i], view))
            i++;
        return i;
    }

    [GeneratedRegex("SN-([\uE000-\uEFFF])([\uE000-\uEFFF])\uF8FF*")]
    private static partial Regex StandIn();
}

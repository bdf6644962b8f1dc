using System.Globalization;
using SheetGen.Model.Studies;
using SheetGen.Writers.Register;

namespace SheetGen.Writers.Studies;

/// <summary>A study as tables, and which of its variants are the best.</summary>
public sealed class StudyTables
{
    public const string Caution = "The design is the engineer's: a study counts and measures layouts, and checks neither stability, capacity, facing nor movement of any variant. "
        + "For review by the engineer of record. Local codes and the project's specifications govern; verify obstructions and utilities before drilling. Not sealed.";

    /// <param name="states">In order of their numbers; number 0, the project file as it is, first.</param>
    /// <param name="unit">ft, us-ft or m.</param>
    public StudyTables(string title, string unit, IReadOnlyList<string> keys, IReadOnlyList<VariantState> states, string version)
    {
        (Title, Unit, Keys, States, Version) = (title, unit, keys, states, version);
        Best =
        [
            .. states.Where(s => s.Number > 0 && s.Figures is not null).OrderBy(s => s.Figures!.Cover).ThenBy(s => s.Figures!.Unresolved).ThenBy(s => s.Figures!.Noted)
                .ThenBy(s => s.Figures!.PayLength ?? s.Figures!.NailLength).ThenBy(s => s.Figures!.Effort).ThenBy(s => s.Number),
        ];
        Front = OnFront();
        Tables = [Table("Variants", "Variants", "In order of their numbers; 0 is the project file as it is.", states), Table("Best", "Variants, best first",
            "First by broken cover, then unresolved, noted, length of nail, effort. \"Front\": no other variant has both less length and fewer noted and unresolved nails.", Best), Problems()];
    }

    public string Title { get; }

    public string Unit { get; }

    public string Version { get; }

    public IReadOnlyList<string> Keys { get; }

    public IReadOnlyList<VariantState> States { get; }

    /// <summary>The variants that were laid out, best first.</summary>
    public IReadOnlyList<VariantState> Best { get; }

    /// <summary>Numbers of the variants that no other beats in both length and turned nails, among those with the least broken cover.</summary>
    public IReadOnlySet<int> Front { get; }

    public IReadOnlyList<RegisterTable> Tables { get; }

    public bool IsMetric => Unit == "m";

    public string InWords
    {
        get
        {
            int variants = States.Count(s => s.Number > 0), laid = Best.Count;
            string best = Best.Count == 0 ? "" : Invariant($"; best: variant {Best[0].Number} ({Named(Best[0])}), {Length(Best[0]):#,##0.##} {Unit} of nail, {Best[0].Figures!.Noted} noted, {Best[0].Figures!.Unresolved} unresolved");
            string given = States.FirstOrDefault(s => s.Number == 0)?.Figures is { } f ? Invariant($"; as given: {f.PayLength ?? f.NailLength:#,##0.##} {Unit}, {f.Noted} noted, {f.Unresolved} unresolved") : "";
            return Invariant($"{laid} of {variants} variants laid out{(laid == variants ? "" : "; the others are named among the problems")}{best}{given}");
        }
    }

    public StudyFile ToFile() => new(1, Title, Version, Unit, Keys, States, [.. Best.Select(b => b.Number)]);

    /// <summary>"horizontal_spacing 4, rows level"</summary>
    public string Named(VariantState state) => state.Number == 0 ? "as given" : string.Join(", ", Keys.Zip(state.Values, (k, v) => k + " " + v));

    /// <summary>Feet or metres of nail.</summary>
    public static double Length(VariantState state) => state.Figures!.PayLength ?? state.Figures.NailLength;

    /// <summary>Nails that the sheets must call out or forbid.</summary>
    public static int Turned(VariantState state) => state.Figures!.Noted + state.Figures.Unresolved;

    private HashSet<int> OnFront()
    {
        var front = new HashSet<int>();
        if (Best.Count == 0)
            return front;
        double cover = Best[0].Figures!.Cover;
        int least = int.MaxValue;
        foreach (var group in Best.Where(b => b.Figures!.Cover <= cover).GroupBy(Length).OrderBy(g => g.Key))
        {
            int fewest = group.Min(Turned);
            if (fewest >= least)
                continue;
            least = fewest;
            front.UnionWith(group.Where(s => Turned(s) == fewest).Select(s => s.Number));
        }
        return front;
    }

    private RegisterTable Table(string name, string title, string note, IReadOnlyList<VariantState> states)
    {
        List<(RegisterColumn Column, Func<VariantState, RegisterCell> Cell)> columns = [(new("No.", true), s => RegisterCell.Of(s.Number))];
        for (int i = 0; i < Keys.Count; i++)
        {
            int at = i;
            columns.Add((new(Keys[i]), s => ValueCell(s.Number == 0 ? "as given" : s.Values[at])));
        }
        void Figure(string head, Func<VariantFigures, double?> of, int decimals = 0, bool printed = true, bool warn = false) =>
            columns.Add((new(head, true, printed), s => RegisterCell.Of(s.Figures is { } f ? of(f) : null, decimals).Warn(warn && s.Figures is { } g && of(g) > 0)));
        columns.Add((new("State"), s => RegisterCell.Of(CorridorRegister.InOneWord(s.Outcome).Replace("built", "laid out", StringComparison.Ordinal)).Warn(s.Figures is null)));
        Figure("Production nails", f => f.Nails);
        Figure($"Nail length, {Unit}", f => f.NailLength, 2, false);
        Figure($"Pay length, {Unit}", f => f.PayLength, 2);
        Figure($"Cover broken, {Unit}", f => f.Cover, 2, warn: true);
        Figure("Unresolved", f => f.Unresolved, warn: true);
        Figure("Unresolved, proven least", f => f.UnresolvedBound, 0, false);
        Figure("Noted", f => f.Noted);
        Figure("Noted, proven least", f => f.NotedBound, 0, false);
        Figure("Redirected", f => f.Redirected);
        Figure("Moved", f => f.Moved);
        Figure("Left out", f => f.LeftOut);
        Figure("Effort", f => f.Effort, 2);
        columns.Add((new("Layout proof"), s => RegisterCell.Of(s.Figures is null ? "" : s.Figures.IsProvenBest ? "proven best" : "not proven best")));
        Figure($"Least clear, {Unit}", f => f.LeastClear, 2);
        Figure($"Area a nail, mean, {Unit.Replace("us-", "", StringComparison.Ordinal)}2", f => f.MeanArea, 2);
        Figure("Errors", f => f.Errors);
        Figure("Warnings", f => f.Warnings, 0, false);
        if (states.Any(s => s.Figures?.Bid is not null))
            Figure("Bid sum", f => f.Bid, 2);
        columns.Add((new("Front"), s => RegisterCell.Of(Front.Contains(s.Number) ? "front" : "")));
        columns.Add((new("Input hash", false, false), s => RegisterCell.Of(s.InputHash)));
        return new RegisterTable(name, title, note, [.. columns.Select(c => c.Column)], [.. states.Select(s => (IReadOnlyList<RegisterCell>)[.. columns.Select(c => c.Cell(s))])]);
    }

    private RegisterTable Problems() => new("Problems", "Problems of the variants", "A variant with an error is not laid out.",
        [new("No.", true), new("Variant"), new("Problem")],
        [.. States.SelectMany(s => s.Problems.Select(p => (IReadOnlyList<RegisterCell>)[RegisterCell.Of(s.Number), RegisterCell.Of(Named(s)), RegisterCell.Of(p).Warn(s.Figures is null)]))]);

    private static RegisterCell ValueCell(string value) =>
        double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && value.Length < 12
            ? RegisterCell.Of(number, value.IndexOf('.', StringComparison.Ordinal) is >= 0 and int dot ? value.Length - dot - 1 : 0) : RegisterCell.Of(value);

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

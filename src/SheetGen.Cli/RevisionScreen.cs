using System.Globalization;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Cli;

/// <summary>What changed between two states, in lines for a person.</summary>
public static class RevisionScreen
{
    private const int MostShown = 200;

    /// <param name="nailsAs">How the nails' block is called.</param>
    public static IEnumerable<string> Lines(RevisionDifference difference, string nailsAs = "nails")
    {
        if (difference.IsEmpty)
        {
            yield return "nothing changed";
        }
        else
        {
            int Count(NailChangeKind kind) => difference.Nails.Count(n => n.Kind == kind);
            yield return Invariant($"{nailsAs}: {Count(NailChangeKind.Added)} added, {Count(NailChangeKind.Removed)} removed, {Count(NailChangeKind.Changed)} changed");
            foreach (string line in Cut(difference.Nails.Select(n => $"  {n.Mark,-10} {n.What}"), "nails"))
                yield return line;
            yield return Invariant($"findings: {difference.Findings.Count(f => f.Before is null)} new, {difference.Findings.Count(f => f.After is null)} gone, {difference.Findings.Count(f => f is { Before: not null, After: not null })} with other figures");
            foreach (string line in Cut(difference.Findings.Select(Line), "findings"))
                yield return line;
            yield return Invariant($"quantities: {difference.Amounts.Count(a => a.Wall.Length == 0)} totals changed");
            foreach (AmountChange a in difference.Amounts)
                yield return $"  {(a.Wall.Length == 0 ? "" : a.Wall + (a.Stage.Length == 0 ? "" : ", " + a.Stage) + ": ")}{a.Text}: {Amount(a.Before)} -> {Amount(a.After)} {a.Unit} ({Signed(a.Difference)})";
            yield return Invariant($"bid items: {difference.Items.Count} changed");
            foreach (ItemChange i in difference.Items)
                yield return $"  {i.Number} {i.Description}: {Amount(i.Before)} -> {Amount(i.After)} {i.Unit} ({Signed((i.After ?? 0) - (i.Before ?? 0))})";
        }
        foreach (string lacking in difference.NotCompared)
            yield return "not compared: " + lacking;
    }

    private static string Line(FindingChange change)
    {
        string state = change.Before is null ? "new" : change.After is null ? "gone" : "changed";
        RevisionFinding shown = (change.After ?? change.Before)!;
        return $"  {state,-8} {ResultWords.Of(shown.Severity)} {shown.Code}: {shown.Message}";
    }

    private static IEnumerable<string> Cut(IEnumerable<string> lines, string what)
    {
        string[] all = [.. lines];
        return all.Length <= MostShown ? all : [.. all.Take(MostShown), Invariant($"  and {all.Length - MostShown} more {what}: --out and --json have them all")];
    }

    private static string Amount(double? amount) => amount is { } a ? a.ToString("#,##0.##", CultureInfo.InvariantCulture) : "none";

    private static string Signed(double amount) => amount.ToString("+#,##0.##;-#,##0.##;0", CultureInfo.InvariantCulture);

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>True where an error is there that was not there before.</summary>
    public static bool HasNewErrors(RevisionDifference difference) => difference.Findings.Any(f => f.After is { Severity: Severity.Error } && f.Before is not { Severity: Severity.Error });

    /// <summary>Name of the unit that figures of a difference are in.</summary>
    public static string Unit(RevisionDifference difference) => Lengths.Symbol(difference.Unit);
}

using System.Globalization;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Cli;

/// <summary>The end of a run in the few lines that a person reads in ten seconds.</summary>
public static class Summary
{
    private const int MostMarksShown = 8;

    /// <param name="last">The results that stood in the folder before, and the new ones; null where there were none.</param>
    /// <param name="folder">Folder of the files written; null where nothing is written.</param>
    public static IEnumerable<string> Lines(
        WallProject project, NailLayout layout, ClearanceReport report, string? folder, IReadOnlyList<string> files,
        (LastBuild.Results Before, LastBuild.Results After)? last = null, LayoutEffect? effect = null)
    {
        string unit = Lengths.Symbol(project.Unit);
        yield return "";
        yield return project.Info.Title;
        foreach ((string name, string text) in Understood.Lines(project, layout))
            yield return Line(name, text);
        yield return "";
        yield return Line("nails", NailsText(project, layout, unit));
        yield return Line("changed", ChangedText(layout));
        yield return Line("unresolved", FoundText(layout.Score.Unresolved) + UnresolvedMarks(layout));
        yield return Line("noted", FoundText(layout.Score.Noted));
        yield return Line("closest", ClosestText(layout, report, project.Unit));
        if (effect is not null)
            yield return Line("loads", LoadSummary.Text(effect));
        yield return Line("findings", FindingsText(report));
        if (layout.Score.IsProvenBest)
            yield return Line("layout", "proven best: no better layout exists within the rules");
        foreach (string help in HelpTexts(layout))
            yield return Line("would help", help);
        foreach (string note in layout.Notes)
            yield return Line("note", note);
        if (last is { } compared)
        {
            string name = "since last";
            foreach (string line in LastBuild.Lines(compared.Before, compared.After, unit))
            {
                yield return Line(name, line);
                name = "";
            }
        }
        if (folder is not null)
            yield return Line("files", $"{folder}: {string.Join(", ", files)}");
    }

    private static string Line(string name, string text) => $"  {name,-11}{(name.Length > 10 ? " " : "")}{text}";

    private static string NailsText(WallProject project, NailLayout layout, string unit)
    {
        int tests = layout.Nails.Count(n => n.Kind == NailKind.Verification);
        IEnumerable<Nail> production = layout.Nails.Where(n => n.Kind != NailKind.Verification);
        string walls = project.Walls.Count == 1 ? "" : Invariant($", {project.Walls.Count} walls");
        string extra = tests == 0 ? "" : Invariant($"; verification test nails {tests}");
        return Invariant($"{layout.Nails.Count - tests} production, {production.Sum(n => n.Length):#,##0.##} {unit} from head to tip{extra}{walls}{WithoutNails(project, production)}");
    }

    /// <summary>Sections that no production nail stands in.</summary>
    private static string WithoutNails(WallProject project, IEnumerable<Nail> production)
    {
        HashSet<(string, string)> with = [.. production.Select(n => (n.Wall.Name, n.Section.Name))];
        string[] bare = [.. project.Walls.SelectMany(w => w.Sections.Where(s => !with.Contains((w.Name, s.Name))).Select(s => $"section {s.Name} of {w.Name}"))];
        string more = bare.Length > MostMarksShown ? Invariant($" and {bare.Length - MostMarksShown} more") : "";
        return bare.Length == 0 ? "" : $"; NONE in {string.Join(", ", bare.Take(MostMarksShown))}{more}";
    }

    private static string ChangedText(NailLayout layout)
    {
        int Count(NailStatus status) => layout.Nails.Count(n => n.Status == status && n.Kind != NailKind.Verification);
        return Invariant($"{Count(NailStatus.Moved)} moved, {Count(NailStatus.Redirected)} redirected within the field tolerance, ")
            + Invariant($"{Count(NailStatus.Noted)} noted beyond it, {layout.LeftOut.Count} grid stations left out");
    }

    private static string FoundText(FoundAndBound figure)
    {
        string found = Invariant($"{figure.Found:0.##}");
        return figure.Bound switch
        {
            null => found + " (no bound known)",
            double bound when bound >= figure.Found => found + " (proven: no layout within the rules has fewer)",
            double bound => Invariant($"{found} (no layout within the rules has fewer than {bound:0.##})"),
        };
    }

    /// <summary>A sentence a group of unresolved nails: what frees them; where nothing does, that.</summary>
    private static IEnumerable<string> HelpTexts(NailLayout layout)
    {
        foreach (var group in layout.Help.GroupBy(h => (h.Wall, string.Join(' ', h.Nails))).Take(MostMarksShown))
        {
            IReadOnlyList<string> nails = group.First().Nails;
            string marks = string.Join(", ", nails.Take(MostMarksShown)) + (nails.Count > MostMarksShown ? Invariant($" and {nails.Count - MostMarksShown} more") : "");
            yield return $"{marks}: " + string.Join("; or ", group.Select(h => h.Value.Length == 0 ? h.Result : $"{h.Relaxation} {h.Value} {h.Result}"));
        }
        int more = layout.Help.GroupBy(h => (h.Wall, string.Join(' ', h.Nails))).Count() - MostMarksShown;
        if (more > 0)
            yield return Invariant($"{more} more groups: see findings.json and the workbook");
    }

    private static string UnresolvedMarks(NailLayout layout)
    {
        List<string> marks = [.. layout.Nails.Where(n => n.Status == NailStatus.Unresolved).Select(n => n.Mark)];
        if (marks.Count == 0)
            return "";
        string more = marks.Count > MostMarksShown ? " ..." : "";
        return $"; do not drill {string.Join(", ", marks.Take(MostMarksShown))}{more}";
    }

    private static string ClosestText(NailLayout layout, ClearanceReport report, LengthUnit unit)
    {
        Nail? least = layout.Nails
            .Where(n => report.Nails.TryGetValue(n.Mark, out NailClearance? c) && double.IsFinite(c.LeastClear))
            .MinBy(n => report.Nails[n.Mark].LeastClear);
        if (least is null)
            return "no hole has anything near it";
        NailClearance clear = report.Nails[least.Mark];
        return $"{PlainNumber.Fixed(clear.LeastClear, Lengths.Decimals(unit))} {Lengths.Symbol(unit)} clear, {least.Mark} to {clear.Nearest}";
    }

    private static string FindingsText(ClearanceReport report)
    {
        int Count(Severity severity) => report.Findings.Count(f => f.Severity == severity);
        int accepted = Count(Severity.Accepted);
        return Plural(Count(Severity.Error), "error") + ", " + Plural(Count(Severity.Warning), "warning") + ", "
            + Plural(Count(Severity.Notice), "notice") + (accepted == 0 ? "" : Invariant($", {accepted} accepted"));
    }

    private static string Plural(int count, string word) => Invariant($"{count} {word}") + (count == 1 ? "" : "s");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

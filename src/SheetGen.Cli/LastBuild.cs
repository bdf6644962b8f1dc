using System.Globalization;
using System.Text;
using System.Text.Json;
using SheetGen.ProjectFile;

namespace SheetGen.Cli;

/// <summary>What changed since the results that a folder holds: nails, feet, findings, a line each.</summary>
public static class LastBuild
{
    private const string Nails = "nails.csv", Findings = "findings.json";
    private const int MostMarks = 6;
    private static readonly string[] Figures = ["station", "elevation", "splay_deg", "inclination_deg", "length"];

    /// <summary>The results that stand in a folder now; null where there are none that can be read.</summary>
    public static Results? Read(string folder)
    {
        try
        {
            string nails = Path.Combine(folder, Nails), findings = Path.Combine(folder, Findings);
            return InputFile.Read(nails, InputFile.MostText).Text(out _) is { } rows && InputFile.Read(findings, InputFile.MostText).Text(out _) is { } told ? Parse(rows, told) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException or FormatException or ArgumentException or KeyNotFoundException or InvalidOperationException or NotSupportedException)
        {
            return null;
        }
    }

    /// <summary>The results of a run that are not yet on disk.</summary>
    public static Results Of(IReadOnlyList<OutputFile> files)
    {
        string Text(string name) => Encoding.UTF8.GetString(files.First(f => f.Name == name).Content);
        return Parse(Text(Nails), Text(Findings));
    }

    /// <summary>Three lines, or one where nothing changed.</summary>
    public static IEnumerable<string> Lines(Results before, Results after, string unit)
    {
        string[] added = [.. after.Nails.Keys.Where(m => !before.Nails.ContainsKey(m))], gone = [.. before.Nails.Keys.Where(m => !after.Nails.ContainsKey(m))];
        string[] changed = [.. after.Nails.Where(n => before.Nails.TryGetValue(n.Key, out string? old) && old != n.Value).Select(n => n.Key)];
        string[] newFindings = [.. after.Findings.Except(before.Findings)], lost = [.. before.Findings.Except(after.Findings)];
        if (added.Length + gone.Length + changed.Length + newFindings.Length + lost.Length == 0)
        {
            yield return "nothing: the same nails and findings as in the last build into this folder";
            yield break;
        }
        yield return Invariant($"nails {before.Nails.Count} -> {after.Nails.Count}: {Counted(added, "new")}, {Counted(gone, "gone")}, {Counted(changed, "moved, turned or of another length")}");
        yield return Invariant($"length {before.Length:#,##0.##} -> {after.Length:#,##0.##} {unit} ({after.Length - before.Length:+#,##0.##;-#,##0.##;0})");
        yield return Invariant($"findings {before.Findings.Count} -> {after.Findings.Count}: {newFindings.Length} new, {lost.Length} gone (each change: sheetgen compare ISSUED-SET NEW-SET)");
    }

    private static string Counted(string[] marks, string what) =>
        Invariant($"{marks.Length} {what}") + (marks.Length == 0 ? "" : $" ({string.Join(", ", marks.Take(MostMarks))}{(marks.Length > MostMarks ? ", ..." : "")})");

    private static Results Parse(string nails, string findings)
    {
        List<List<string>> rows = [.. Rows(nails)];
        List<string> head = rows[0];
        int mark = head.IndexOf("nail"), length = head.IndexOf("length");
        int[] figures = [.. Figures.Select(f => head.IndexOf(f))];
        var byMark = new SortedDictionary<string, string>(StringComparer.Ordinal);
        double sum = 0;
        foreach (List<string> row in rows.Skip(1))
        {
            byMark[row[mark]] = string.Join(' ', figures.Select(f => row[f]));
            sum += double.Parse(row[length], NumberStyles.Float, CultureInfo.InvariantCulture);
        }
        using JsonDocument json = JsonDocument.Parse(findings);
        HashSet<string> found = [.. json.RootElement.GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("severity").GetString() + f.GetProperty("message").GetString())];
        return new Results(byMark, sum, found);
    }

    /// <summary>Rows of a text in the form of RFC 4180.</summary>
    private static IEnumerable<List<string>> Rows(string text)
    {
        var row = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (quoted && c == '"' && i + 1 < text.Length && text[i + 1] == '"')
                cell.Append(text[i++]);
            else if (c == '"')
                quoted = !quoted;
            else if (!quoted && c is ',' or '\n' && !quoted)
            {
                row.Add(cell.ToString().TrimEnd('\r'));
                cell.Clear();
                if (c == '\n')
                {
                    yield return row;
                    row = [];
                }
            }
            else
                cell.Append(c);
        }
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>The nails by mark with the figures that a driller needs, their whole length, and the findings.</summary>
    public sealed record Results(IReadOnlyDictionary<string, string> Nails, double Length, IReadOnlySet<string> Findings);
}

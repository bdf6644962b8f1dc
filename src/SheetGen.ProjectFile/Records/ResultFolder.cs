using System.IO.Compression;
using System.Text;
using System.Text.Json;
using SheetGen.Model.Problems;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.ProjectFile.Records;

/// <summary>Reads the results of a build as a state to compare: nails.csv, and beside it findings.json and tables.zip where they are.</summary>
public static class ResultFolder
{
    private const string Code = "D03";

    /// <param name="nails">Path of nails.csv.</param>
    /// <param name="name">How the state is called.</param>
    /// <param name="alone">True where only nails.csv was named: of the files beside it only the unit is taken.</param>
    public static RevisionState? Read(string nails, string name, bool alone, List<Problem> problems)
    {
        string folder = Path.GetDirectoryName(nails) ?? "";
        if (InputFile.Read(nails, InputFile.MostText).Text(out string why) is not { } text)
        {
            problems.Add(new Problem(Severity.Error, Code, $"the nails cannot be read: {why}", new SourceSpot(nails, 1, 1), "name a project file, a nails.csv, or the folder of a build"));
            return null;
        }
        IReadOnlyList<RevisionNail>? list = NailTable.Read(text, nails, problems, out IReadOnlyDictionary<string, string>? reasons);
        BesideNails? beside = list is null ? null : new BesideNails(list, reasons);
        (LengthUnit? unit, IReadOnlyList<RevisionFinding>? findings) = Findings(Path.Combine(folder, "findings.json"), beside, problems);
        (IReadOnlyList<RevisionAmount>? amounts, IReadOnlyList<RevisionItem>? items) = alone ? (null, null) : Tables(Path.Combine(folder, "tables.zip"), beside, problems);
        return list is null ? null : new RevisionState { Name = name, Unit = unit, Nails = list, Findings = alone ? null : findings, Amounts = amounts, Items = items };
    }

    private static (LengthUnit?, IReadOnlyList<RevisionFinding>?) Findings(string path, BesideNails? beside, List<Problem> problems)
    {
        if (!File.Exists(path))
            return (null, null);
        if (InputFile.Read(path, InputFile.MostText).Text(out string why) is not { } text)
        {
            problems.Add(new Problem(Severity.Warning, Code, $"the findings beside it are not compared: {why}", new SourceSpot(path, 1, 1), "build the wall anew"));
            return (null, null);
        }
        try
        {
            using JsonDocument json = JsonDocument.Parse(text);
            JsonElement root = json.RootElement;
            LengthUnit? unit = root.GetProperty("units").GetString() switch { "ft" => LengthUnit.Foot, "us-ft" => LengthUnit.SurveyFoot, "m" => LengthUnit.Metre, _ => null };
            RevisionFinding[] findings = [.. root.GetProperty("findings").EnumerateArray().Select(Of)];
            if (beside?.Contradiction(root, findings) is { } odd)
            {
                problems.Add(new Problem(Severity.Warning, Code, $"the findings beside it are of another state: {odd}; neither they nor their unit are taken", new SourceSpot(path, 1, 1), "put the findings.json of the same build beside nails.csv, or build the wall anew"));
                return (null, null);
            }
            return (unit, findings);
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            var at = e as JsonException;
            problems.Add(new Problem(Severity.Warning, Code, "the findings beside it are not those of a build; they are not compared",
                new SourceSpot(path, (int)(at?.LineNumber ?? 0) + 1, (int)(at?.BytePositionInLine ?? 0) + 1), "build the wall anew"));
            return (null, null);
        }
    }

    private static RevisionFinding Of(JsonElement f)
    {
        string Words(string key) => f.TryGetProperty(key, out JsonElement v) ? v.GetString() ?? "" : "";
        double? Number(string key) => f.TryGetProperty(key, out JsonElement v) ? v.GetDouble() : null;
        Severity severity = Words("severity") switch { "error" => Severity.Error, "warning" => Severity.Warning, "accepted" => Severity.Accepted, _ => Severity.Notice };
        string[] nails = f.TryGetProperty("nails", out JsonElement list) ? [.. list.EnumerateArray().Select(n => n.GetString() ?? "")] : [];
        return new RevisionFinding(Words("code"), severity, Words("wall"), nails, Words("obstruction"), Number("station"), Number("to_station"), Number("clear"), Number("required"), Words("message"));
    }

    private static (IReadOnlyList<RevisionAmount>?, IReadOnlyList<RevisionItem>?) Tables(string path, BesideNails? beside, List<Problem> problems)
    {
        if (!File.Exists(path))
            return (null, null);
        (IReadOnlyList<RevisionAmount>?, IReadOnlyList<RevisionItem>?) Untold(string why)
        {
            problems.Add(new Problem(Severity.Warning, Code, $"the tables beside it are not compared: {why}", new SourceSpot(path, 1, 1), "build the wall anew"));
            return (null, null);
        }
        InputFile file = InputFile.Read(path, InputFile.MostText);
        if (file.Bytes is not { } bytes)
            return Untold(file.Why);
        try
        {
            using var zip = new ZipArchive(new MemoryStream(bytes));
            if (zip.Entries.FirstOrDefault(e => e.Length > InputFile.MostText) is { } large)
                return Untold(FormattableString.Invariant($"{large.FullName} unpacks to {large.Length:N0} bytes; the limit is {InputFile.MostText:N0}"));
            string? Entry(string name)
            {
                if (zip.GetEntry(name) is not { } entry)
                    return null;
                using var reader = new StreamReader(entry.Open(), Encoding.UTF8);
                return reader.ReadToEnd();
            }
            if (Entry("nail-quantities.csv") is { } nails && beside?.Contradiction(nails) is { } odd)
                return Untold($"they are of another state, {odd}");
            return (Entry("quantities.csv") is { } quantities ? Amounts(quantities) : null, Entry("bid.csv") is { } bid ? Items(bid) : null);
        }
        catch (Exception e) when (e is InvalidDataException or NotSupportedException or IOException)
        {
            return Untold("it is no zip file that a build wrote");
        }
    }

    /// <summary>One column a section: "Wall 1, section A".</summary>
    private static List<RevisionAmount>? Amounts(string text)
    {
        const string Between = ", section ";
        if (Heads(text) is not { } heads || !heads.Contains("Name") || CsvGrid.Read(text, "quantities.csv", Code, ["Name", "Quantity", "Unit"], heads, []) is not { } grid)
            return null;
        return [.. grid.Rows.SelectMany(row => heads.Where(h => h.Contains(Between, StringComparison.Ordinal)).Select(h =>
        {
            int at = h.LastIndexOf(Between, StringComparison.Ordinal);
            return new RevisionAmount(grid.Cell(row, "Name")?.Text ?? "", grid.Cell(row, "Quantity")?.Text ?? "", grid.Cell(row, "Unit")?.Text ?? "", h[..at], h[(at + Between.Length)..], "",
                Number(grid.Cell(row, h)));
        }))];
    }

    private static List<RevisionItem>? Items(string text)
    {
        if (Heads(text) is not { } heads || CsvGrid.Read(text, "bid.csv", Code, ["Item", "Description", "Unit", "Bid quantity"], heads, []) is not { } grid)
            return null;
        return [.. grid.Rows.Select(row => new RevisionItem(grid.Cell(row, "Item")?.Text ?? "", grid.Cell(row, "Description")?.Text ?? "", grid.Cell(row, "Unit")?.Text ?? "",
            Number(grid.Cell(row, "Bid quantity")), Number(grid.Cell(row, "Amount"))))];
    }

    internal static string[]? Heads(string text)
    {
        int end = text.IndexOf('\n', StringComparison.Ordinal);
        return end < 0 ? null : [.. Split(text[..end].TrimEnd('\r'))];
    }

    private static IEnumerable<string> Split(string line)
    {
        var cell = new StringBuilder();
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"')
                quoted = !quoted;
            else if (c == ',' && !quoted)
            {
                yield return cell.ToString();
                cell.Clear();
            }
            else
                cell.Append(c);
        }
        yield return cell.ToString();
    }

    private static double? Number(CsvCell? cell) => cell is not null && CsvGrid.TryNumber(cell.Text, out double value) ? value : null;
}

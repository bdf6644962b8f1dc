using System.Text.Json;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;

namespace SheetGen.ProjectFile.Records;

/// <summary>Asks of the files beside a nails.csv whether they are of the same nails: those of another build would be compared as if they were.</summary>
/// <param name="Reasons">By mark, why a nail is not as on the grid; null where the table does not tell.</param>
internal sealed record BesideNails(IReadOnlyList<RevisionNail> Nails, IReadOnlyDictionary<string, string>? Reasons)
{
    /// <summary>How far a figure may be off between two files that round it otherwise.</summary>
    private const double Rounding = 2e-6;

    /// <summary>What a findings.json says otherwise than the nails; null where they agree.</summary>
    public string? Contradiction(JsonElement root, IReadOnlyList<RevisionFinding> findings)
    {
        var marks = Nails.Select(n => n.Mark).ToHashSet(StringComparer.Ordinal);
        if (findings.Where(f => f.Code != FindingCode.LeftOut).SelectMany(f => f.Nails).FirstOrDefault(m => !marks.Contains(m)) is { } unknown)
            return $"nails.csv has no nail {CsvGrid.Short(unknown)}";
        if (Reasons is null || !root.TryGetProperty("changes", out JsonElement changes))
            return null;
        var told = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (JsonElement change in changes.EnumerateArray())
            told[change.GetProperty("nail").GetString() ?? ""] = (change.GetProperty("reason").GetString() ?? "").Trim();
        string? other = told.Keys.Concat(Reasons.Keys).FirstOrDefault(m => told.GetValueOrDefault(m) != Reasons.GetValueOrDefault(m));
        return other is null ? null : $"{CsvGrid.Short(other)} has another reason in nails.csv";
    }

    /// <summary>What a table of the workbook with a row a nail says otherwise than the nails; null where they agree, or it does not tell.</summary>
    public string? Contradiction(string table)
    {
        const string Mark = "Nail", Station = "Station";
        if (ResultFolder.Heads(table) is not { } heads || heads.FirstOrDefault(h => h.StartsWith("Length from face", StringComparison.Ordinal)) is not { } length
            || CsvGrid.Read(table, "", "", [Mark, Station, length], heads, []) is not { } grid)
            return null;
        var rows = new Dictionary<string, IReadOnlyList<CsvCell>>(StringComparer.Ordinal);
        foreach (IReadOnlyList<CsvCell> row in grid.Rows)
            rows[FormulaText.Plain(grid.Cell(row, Mark)?.Text ?? "")] = row;
        bool Is(IReadOnlyList<CsvCell> row, string head, double value) =>
            grid.Cell(row, head) is { } cell && CsvGrid.TryNumber(cell.Text, out double there) && Math.Abs(there - value) <= Rounding;
        if (Nails.FirstOrDefault(n => !rows.TryGetValue(n.Mark, out IReadOnlyList<CsvCell>? row) || !Is(row, Station, n.Station) || !Is(row, length, n.Length)) is { } other)
            return $"{CsvGrid.Short(other.Mark)} is not there, or otherwise";
        return rows.Count == Nails.Count ? null : "with other nails";
    }
}

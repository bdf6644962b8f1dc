using System.Globalization;
using System.Text;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.ProjectFile.Records;

/// <summary>The as-built record: a line a drilled nail, in any order; a line with nothing but its mark is a nail still to be drilled.</summary>
public static class AsBuiltRecord
{
    private const string Code = "D02";

    public static IReadOnlyList<string> Columns { get; } = ["mark", "station", "elevation", "splay", "inclination", "length", "grout", "date", "remarks"];

    /// <summary>The drilled nails; null where any line is wrong, each of which is a problem.</summary>
    public static IReadOnlyList<AsBuiltNail>? Read(string text, string file, WallProject project, NailLayout layout, List<Problem> problems)
    {
        int before = problems.Count(p => p.Severity == Severity.Error);
        if (CsvGrid.Read(text, file, Code, ["mark"], Columns, problems) is not { } grid)
            return null;
        Dictionary<string, Nail> nails = layout.Nails.ToDictionary(n => n.Mark);
        var lines = new Dictionary<string, int>(StringComparer.Ordinal);
        var drilled = new List<AsBuiltNail>();
        void Fault(SourceSpot spot, string message, string hint) => problems.Add(new Problem(Severity.Error, Code, message, spot, hint));
        foreach (IReadOnlyList<CsvCell> row in grid.Rows)
        {
            if (grid.Cell(row, "mark") is not { } mark)
            {
                Fault(grid.At(row), "this line names no nail", "give the nail's mark in the column mark");
                continue;
            }
            if (!nails.TryGetValue(mark.Text, out Nail? nail))
            {
                Fault(grid.At(mark), $"there is no nail \"{CsvGrid.Short(mark.Text)}\"", Tree.Suggestion.Nearest(mark.Text, [.. nails.Keys]) is { } near ? $"did you mean {near}?" : "write the mark as on the sheets");
                continue;
            }
            if (!lines.TryAdd(mark.Text, mark.Line))
                Fault(grid.At(mark), $"{mark.Text} is there twice; it was in line {lines[mark.Text].ToString(CultureInfo.InvariantCulture)}", "keep the line that counts");
            double? Number(string column, double least, double most, string unit, Func<string, double?>? parse = null)
            {
                if (grid.Cell(row, column) is not { } cell)
                    return null;
                if ((parse?.Invoke(cell.Text) ?? (CsvGrid.TryNumber(cell.Text, out double n) ? n : null)) is not { } value)
                    Fault(grid.At(cell), $"\"{column}\" is no number: \"{CsvGrid.Short(cell.Text)}\"", $"a number in {unit} with a decimal point");
                else if (value < least || value > most)
                    Fault(grid.At(cell), string.Create(CultureInfo.InvariantCulture, $"\"{column}\" is {value:0.###}, which is out of {least:0.##} to {most:0.##} {unit}"), "correct the value");
                else
                    return value;
                return null;
            }
            string symbol = Lengths.Symbol(project.Unit);
            double reach = 20 * nail.Section.HorizontalSpacing;
            double? station = Number("station", nail.Station - reach, nail.Station + reach, symbol + " of station", t => StationOf(t, project.Unit));
            double? elevation = Number("elevation", nail.Elevation - reach, nail.Elevation + reach, symbol);
            double? splay = Number("splay", -89, 89, "degrees, positive up-station"), inclination = Number("inclination", -45, 89, "degrees below horizontal");
            double? length = Number("length", Lengths.Quantum(project.Unit), 5 * nail.Length, symbol), grout = Number("grout", 0, 1e5, symbol + "3");
            string date = grid.Cell(row, "date")?.Text ?? "";
            if (date.Length > 0 && !DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
                Fault(grid.At(grid.Cell(row, "date")!), $"\"date\" is no date: \"{CsvGrid.Short(date)}\"", "write it as 2026-01-15");
            string remarks = grid.Cell(row, "remarks")?.Text ?? "";
            if (station is not null || elevation is not null || splay is not null || inclination is not null || length is not null || grout is not null || date.Length > 0)
                drilled.Add(new AsBuiltNail(mark.Text, station, elevation, splay, inclination, length, grout, date, remarks, grid.At(mark)));
        }
        return problems.Count(p => p.Severity == Severity.Error) > before ? null : drilled;
    }

    /// <summary>A record with a line a nail and nothing filled in.</summary>
    public static string Empty(NailLayout layout)
    {
        var text = new StringBuilder(string.Join(',', Columns)).Append("\r\n");
        foreach (Nail nail in layout.Nails)
            text.Append(nail.Mark.AsSpan().IndexOfAny(",\"") < 0 ? nail.Mark : "\"" + nail.Mark.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"").Append(',', Columns.Count - 1).Append("\r\n");
        return text.ToString();
    }

    private static double? StationOf(string text, LengthUnit unit)
    {
        string[] parts = text.Split('+');
        if (parts.Length == 1)
            return CsvGrid.TryNumber(text, out double plain) ? plain : null;
        return parts.Length == 2 && CsvGrid.TryNumber(parts[0], out double head) && CsvGrid.TryNumber(parts[1], out double rest) && rest >= 0 && rest < Stations.FullStation(unit)
            ? head * Stations.FullStation(unit) + (parts[0].StartsWith('-') ? -rest : rest)
            : null;
    }
}

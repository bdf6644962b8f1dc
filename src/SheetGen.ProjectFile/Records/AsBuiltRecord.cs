using System.Globalization;
using System.Text;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Building;

namespace SheetGen.ProjectFile.Records;

/// <summary>The as-built record: a line a drilled nail, in any order; a line with nothing but its mark is a nail still to be drilled.</summary>
public static class AsBuiltRecord
{
    private const string Code = "D02";

    /// <summary>Name of an empty one.</summary>
    public const string FileName = "asbuilt.csv";

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
            double? Number(string column, double least, double most, string unit, Func<CsvCell, double?>? parse = null)
            {
                if (grid.Cell(row, column) is not { } cell)
                    return null;
                int faults = problems.Count;
                if ((parse is null ? CsvGrid.TryNumber(cell.Text, out double n) ? n : null : parse(cell)) is not { } value)
                {
                    if (problems.Count == faults)
                        Fault(grid.At(cell), $"\"{column}\" is no number: \"{CsvGrid.Short(cell.Text)}\"", $"a number in {unit} with a decimal point");
                }
                else if (value < least || value > most)
                    Fault(grid.At(cell), string.Create(CultureInfo.InvariantCulture, $"\"{column}\" is {value:0.###}, which is out of {least:0.##} to {most:0.##} {unit}"), "correct the value");
                else
                    return value;
                return null;
            }
            string symbol = Lengths.Symbol(project.Unit);
            double reach = 20 * nail.Section.HorizontalSpacing;
            double? station = Number("station", nail.Station - reach, nail.Station + reach, symbol + " of station", c => StationOf(c.Text, nail.Wall, project.Unit, (message, hint) => Fault(grid.At(c), message, hint)));
            double? elevation = Number("elevation", nail.Elevation - reach, nail.Elevation + reach, symbol);
            double? splay = Number("splay", -89, 89, "degrees, positive up-station"), inclination = Number("inclination", -45, 89, "degrees below horizontal");
            double? length = Number("length", Lengths.Quantum(project.Unit), 5 * nail.Length, symbol), grout = Number("grout", 0, 1e5, symbol + "3");
            string date = grid.Cell(row, "date")?.Text ?? "";
            if (date.Length > 0 && !DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
                Fault(grid.At(grid.Cell(row, "date")!), $"\"date\" is no date: \"{CsvGrid.Short(date)}\"", "write it as 2026-01-15");
            string remarks = grid.Cell(row, "remarks")?.Text ?? "";
            if (station is not null || elevation is not null || splay is not null || inclination is not null || length is not null || grout is not null || date.Length > 0)
                drilled.Add(new AsBuiltNail(mark.Text, station, elevation, splay, inclination, length, grout, date, remarks, grid.At(mark)));
            else if (remarks.Length > 0)
                problems.Add(new Problem(Severity.Warning, Code, $"{mark.Text} has a remark alone, so that it counts as still to be drilled", grid.At(grid.Cell(row, "remarks")!), "give its date or its length where it has been drilled"));
        }
        return problems.Count(p => p.Severity == Severity.Error) > before ? null : drilled;
    }

    /// <summary>A record without a line.</summary>
    public static string Heads => string.Join(',', Columns) + "\r\n";

    /// <summary>A record with a line a nail and nothing filled in.</summary>
    public static string Empty(NailLayout layout)
    {
        var text = new StringBuilder(Heads);
        foreach (Nail nail in layout.Nails)
            text.Append(nail.Mark.AsSpan().IndexOfAny(",\"") < 0 ? nail.Mark : "\"" + nail.Mark.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"").Append(',', Columns.Count - 1).Append("\r\n");
        return text.ToString();
    }

    /// <summary>
    /// The internal station: of a plain number itself, as in nails.csv; of a printed one, with its plus sign, the place where the sheets print it, with BK or AH where
    /// it exists twice. Null where it is none.
    /// </summary>
    private static double? StationOf(string text, Wall wall, LengthUnit unit, Action<string, string> fault)
    {
        string word = text.Length > 3 && text[^3] == ' ' && text[^2..].ToUpperInvariant() is "BK" or "AH" ? text[^2..].ToUpperInvariant() : "";
        string[] parts = (word.Length > 0 ? text[..^3] : text).Split('+');
        if (parts.Length == 1 && word.Length == 0)
            return CsvGrid.TryNumber(text, out double plain) ? plain : null;
        if (parts.Length != 2 || !CsvGrid.TryNumber(parts[0], out double head) || !CsvGrid.TryNumber(parts[1], out double rest) || rest < 0 || rest >= PrintedStation.Full(unit))
            return null;
        var printed = new PrintedStation(head * PrintedStation.Full(unit) + (parts[0].StartsWith('-') ? -rest : rest));
        double[] places = [.. wall.LayoutLine.Stationing.PlacesOf(printed)];
        if (places.Length == 0)
            fault($"there is no station {text} on layout line \"{CsvGrid.Short(wall.LayoutLine.Name)}\": it lies in the gap of a station equation", "write the station as the sheets print it");
        else if (word.Length == 0 && places[^1] - places[0] > Tolerance.Length)
            fault($"station {text} exists twice on layout line \"{CsvGrid.Short(wall.LayoutLine.Name)}\"", $"write {text} BK or {text} AH");
        else
            return wall.StationOf(word == "BK" ? places[0] : places[^1]);
        return null;
    }
}

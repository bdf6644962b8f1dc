using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;

namespace SheetGen.ProjectFile.Records;

/// <summary>Reads nails.csv as a build wrote it.</summary>
public static class NailTable
{
    private const string Code = "D03", Hint = "name a nails.csv as a build wrote it";

    private static readonly string[] Required = ["wall", "section", "row", "nail", "kind", "station", "elevation", "splay_deg", "inclination_deg", "length", "bar", "hole_diameter"];

    private static readonly string[] Known =
        [.. Required, "northing", "easting", "status", "tip_northing", "tip_easting", "tip_elevation", "nearest", "least_clear", "margin_obstruction_deg", "margin_nail_deg", "reason", "station_printed"];

    /// <summary>The nails; null where any line is wrong, each of which is a problem.</summary>
    public static IReadOnlyList<RevisionNail>? Read(string text, string file, List<Problem> problems) => Read(text, file, problems, out _);

    /// <param name="reasons">By the mark of each nail that has one, why it stands or points otherwise than on the grid; null where the table has no such column.</param>
    internal static IReadOnlyList<RevisionNail>? Read(string text, string file, List<Problem> problems, out IReadOnlyDictionary<string, string>? reasons)
    {
        reasons = null;
        int before = problems.Count(p => p.Severity == Severity.Error);
        if (CsvGrid.Read(text, file, Code, Required, Known, problems) is not { } grid)
            return null;
        var nails = new List<RevisionNail>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var why = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (IReadOnlyList<CsvCell> row in grid.Rows)
        {
            string Words(string head) => FormulaText.Plain(grid.Cell(row, head)?.Text ?? "");
            double Number(string head)
            {
                if (grid.Cell(row, head) is not { } cell)
                    problems.Add(new Problem(Severity.Error, Code, $"\"{head}\" is empty", grid.At(row), Hint));
                else if (CsvGrid.TryNumber(cell.Text, out double value) && (value > 0 || head is not ("length" or "hole_diameter")))
                    return value;
                else
                    problems.Add(new Problem(Severity.Error, Code, $"\"{head}\" is no {(head is "length" or "hole_diameter" ? "length over 0" : "number")}: \"{CsvGrid.Short(cell.Text)}\"", grid.At(cell), Hint));
                return 0;
            }
            string mark = Words("nail");
            if (mark.Length == 0)
                problems.Add(new Problem(Severity.Error, Code, "\"nail\" is empty", grid.At(row), Hint));
            else if (!seen.Add(mark))
                problems.Add(new Problem(Severity.Error, Code, $"the nail {CsvGrid.Short(mark)} is there twice", grid.At(grid.Cell(row, "nail")!), Hint));
            nails.Add(new RevisionNail(Words("wall"), Words("section"), Words("row"), mark, Words("kind"), Number("station"), Number("elevation"), Number("splay_deg"),
                Number("inclination_deg"), Number("length"), Words("bar"), Number("hole_diameter")));
            if (Words("reason") is { Length: > 0 } reason)
                why[mark] = reason;
        }
        reasons = grid.Has("reason") ? why : null;
        return problems.Count(p => p.Severity == Severity.Error) > before ? null : nails;
    }
}

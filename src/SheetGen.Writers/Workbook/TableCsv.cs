using SheetGen.Model;
using SheetGen.Model.Files;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>All tables of the workbook as CSV files for other programs: RFC 4180, UTF-8, invariant numbers, unrounded.</summary>
public static class TableCsv
{
    /// <summary>Writes every table as a file of one zip; the same tables give the same bytes.</summary>
    public static void WriteZip(
        WallProject project, NailLayout layout, ClearanceReport report, QuantityTable quantities, BidTable bid, RunInfo run, Stream to)
    {
        var files = new SortedDictionary<string, MemoryStream>(StringComparer.Ordinal);
        Write(project, layout, report, quantities, bid, run, name => files[name] = new MemoryStream());
        to.Write(FixedZip.Of(files.Select(f => (f.Key, (Action<Stream>)(entry => entry.Write(f.Value.ToArray()))))));
    }

    /// <summary>Writes every table; the caller opens a stream for a file name such as bars.csv, which is closed here.</summary>
    public static void Write(
        WallProject project, NailLayout layout, ClearanceReport report, QuantityTable quantities, BidTable bid, RunInfo run,
        Func<string, Stream> open)
    {
        var input = new WorkbookInput(project, layout, report, quantities, bid, run);
        foreach ((string name, IEnumerable<IReadOnlyList<string>> rows) in WorkbookSheets.Make(input).Sheets.SelectMany(s => s.Tables))
        {
            using Stream stream = open(name + ".csv");
            using var csv = new CsvRows(stream);
            foreach (IReadOnlyList<string> row in rows)
                csv.Write(row);
        }
    }
}

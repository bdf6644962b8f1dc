using SheetGen.Model.Results;

namespace SheetGen.Writers.Register;

/// <summary>A table as RFC 4180, with unrounded numbers.</summary>
public static class RegisterCsv
{
    public static void Write(RegisterTable table, Stream stream)
    {
        using var csv = new CsvRows(stream);
        csv.Write([.. table.Columns.Select(c => c.Head)]);
        foreach (IReadOnlyList<RegisterCell> row in table.Rows)
            csv.Write([.. row.Select(c => c.Plain)]);
    }
}

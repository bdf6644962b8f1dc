using SheetGen.Model;

namespace SheetGen.Writers.Workbook;

/// <summary>Stations in lists.</summary>
internal static class StationColumns
{
    /// <summary>A column of stations as plain numbers, and where the project has station equations one of what the sheets print, with BK and AH.</summary>
    /// <param name="station">A station that runs on without a jump.</param>
    public static TableBlock<T> Station<T>(this TableBlock<T> table, WorkbookInput input, string key, string head, double width, Func<T, Wall?> wall, Func<T, double?> station)
    {
        table.Number(key, head, width, input.Station, station);
        return input.HasStationEquations
            ? table.Text(key + "_printed", head + ", printed", 16, i => wall(i) is { } w && station(i) is { } s ? w.TextOf(s, input.Project.Unit) : "")
            : table;
    }
}

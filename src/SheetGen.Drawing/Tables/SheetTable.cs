using SheetGen.Model.Results;

namespace SheetGen.Drawing.Tables;

/// <summary>A table with a line below it; columns of the table may break their heads at a line feed.</summary>
public sealed record SheetTable(TableData Data, string Remark = "")
{
    /// <summary>Numeric columns are those whose heads begin with a hash, which is not printed.</summary>
    public static SheetTable Of(string title, string[] heads, IReadOnlyList<IReadOnlyList<string>> rows, string remark = "") =>
        new(new TableData(title, [.. heads.Select(h => new TableColumn(h.TrimStart('#'), h.StartsWith('#')))], rows), remark);
}

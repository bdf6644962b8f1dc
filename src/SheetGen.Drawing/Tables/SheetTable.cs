using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Tables;

/// <summary>A table with a remark below it; columns of the table may break their heads at a line feed.</summary>
public sealed record SheetTable(TableData Data, string Remark = "")
{
    /// <summary>Numeric columns are those whose heads begin with a hash, which is not printed.</summary>
    public static SheetTable Of(string title, string[] heads, IReadOnlyList<IReadOnlyList<string>> rows, string remark = "") =>
        new(new TableData(title, [.. heads.Select(h => new TableColumn(h.TrimStart('#'), h.StartsWith('#')))], rows), remark);

    /// <summary>A table whose heads stand in one phrase, parted by strokes.</summary>
    public static SheetTable Of(DrawingContext context, Phrase title, Phrase heads, IReadOnlyList<IReadOnlyList<string>> rows, Phrase? remark = null) =>
        Of(context.Say(title), context.Say(heads).Split('/'), rows, remark is Phrase words ? context.Say(words) : "");

    /// <summary>A table of the take-off in the sheets' language: its title, heads, first cells and remarks; what agencies and users named stays.</summary>
    public static SheetTable Of(DrawingContext context, TableData data) => new(new TableData(
        context.Language.Term(data.Title),
        [.. data.Columns.Select(c => c with { Head = context.Language.Term(c.Head) })],
        [.. data.Rows.Select(r => (IReadOnlyList<string>)[.. r.Select((c, i) => i == 0 ? context.Language.Term(c) : data.Columns[i].Head == "Remark" ? context.Language.Sentence(c) : context.Language.Cell(c))])]));
}

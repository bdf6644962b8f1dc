using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>The forms in which a nail's mark may stand on a sheet, the fullest first: A-3-07, 3-07, 07.</summary>
public static class MarkForms
{
    /// <summary>The whole mark, its row and column, its column alone; a verification nail's number never stands alone.</summary>
    public static IReadOnlyList<string> Of(Nail nail)
    {
        string mark = nail.Mark;
        int column = mark.LastIndexOf('-');
        int row = column > 0 ? mark.LastIndexOf('-', column - 1) : -1;
        var forms = new List<string> { mark };
        if (row >= 0)
            forms.Add(mark[(row + 1)..]);
        if (column >= 0 && nail.Kind != NailKind.Verification)
            forms.Add(mark[(column + 1)..]);
        return forms;
    }

    /// <summary>True where a form tells the nail's row.</summary>
    public static bool TellsRow(string form) => form.Contains('-', StringComparison.Ordinal);

    /// <summary>What stands before the column in a nail's mark: the name of its row in its section .</summary>
    public static string RowOf(Nail nail) => nail.Mark.LastIndexOf('-') is > 0 and int at ? nail.Mark[..at] : nail.Mark;
}

using System.Globalization;
using SheetGen.Model.Forms;
using SheetGen.Writers.Workbook;

namespace SheetGen.Writers.Form;

/// <summary>Writes a form as a workbook: yellow cells to fill in, each with its hint and what it takes as data validation. The same form gives the same bytes.</summary>
public static class FormWorkbook
{
    private const uint Letter = 1;

    /// <summary>Cell of the form that says the project's unit, by which ranges are chosen.</summary>
    private const string Units = "project_units", UnitsKey = "project.units";

    /// <summary>Rows of a table in which validations hold, beyond those that are laid out.</summary>
    private const int CheckedRows = 2_000;

    /// <summary>Longest texts that a spreadsheet takes for a validation.</summary>
    private const int LongestTitle = 32, LongestPrompt = 255, LongestError = 225;

    /// <summary>Writes the workbook and leaves the stream open.</summary>
    public static void Write(IReadOnlyList<FormSheet> sheets, Stream stream)
    {
        var names = new List<NamedCell>();
        foreach (FormSheet sheet in sheets)
        {
            int row = sheet.Rows.ToList().FindIndex(r => r[0].Text == UnitsKey);
            if (row >= 0)
                names.Add(new NamedCell(Units, CellAddress.Absolute(sheet.Name, 1, FirstRow(sheet) + row)));
        }
        SpreadsheetFile.Write([.. sheets.Select(Content)], names, Letter, stream);
    }

    /// <summary>Title and about, then takes and meaning of the columns where these tell it, then the headings.</summary>
    private static int HeadRow(FormSheet sheet) => sheet.Columns.Any(c => c.Takes.Length > 0) ? 5 : sheet.Columns[0].Heading.Length > 0 ? 3 : 2;

    private static int FirstRow(FormSheet sheet) => HeadRow(sheet) + 1;

    private static SheetContent Content(FormSheet form)
    {
        int head = HeadRow(form), first = head + 1;
        bool isGuide = form.Columns[0].Heading.Length == 0;
        var sheet = new SheetContent(form.Name) { HeadRows = isGuide ? 0 : head, HeadColumns = isGuide ? 0 : 1, IsProtected = false };
        sheet.Put(1, 0, isGuide ? form.About : form.Name, CellStyle.Title);
        if (!isGuide)
            sheet.Put(2, 0, form.About, CellStyle.Note);
        for (int c = 0; c < form.Columns.Count; c++)
        {
            FormHead column = form.Columns[c];
            if (head == 5)
            {
                sheet.Put(3, c, column.Takes, CellStyle.Wrapped);
                sheet.Put(4, c, column.Meaning, CellStyle.Wrapped);
            }
            if (!isGuide)
                sheet.Put(head, c, column.Heading, CellStyle.Head);
            sheet.Widen(c, WidthOf(form, c));
            if (column.Rule is { } rule)
                AddRule(sheet, rule, CellAddress.Of(c, first), $"{CellAddress.Of(c, first)}:{CellAddress.Of(c, first + Math.Max(form.Room, CheckedRows) - 1)}");
        }
        for (int r = 0; r < Math.Max(form.Rows.Count, form.Room); r++)
        {
            for (int c = 0; c < form.Columns.Count; c++)
            {
                FormCell cell = r < form.Rows.Count && c < form.Rows[r].Count ? form.Rows[r][c] : default;
                string address = CellAddress.Of(c, first + r);
                if (cell.Rule is { } own)
                    AddRule(sheet, own, address, address);
                sheet.Put(first + r, c, CellOf(cell, form.Columns[c], cell.Rule ?? form.Columns[c].Rule));
            }
        }
        return sheet;
    }

    private static SheetCell CellOf(FormCell cell, FormHead column, FormRule? rule)
    {
        if (!column.IsInput)
            return SheetCell.Of(cell.Text, CellStyle.Wrapped);
        var style = new CellStyle(CellLook.Input, rule?.IsText == true ? CellFormat.Text : CellFormat.General);
        if (cell.Text.Length == 0)
            return SheetCell.Blank(style);
        return cell.IsNumber ? SheetCell.Of(double.Parse(cell.Text, CultureInfo.InvariantCulture), style) : SheetCell.Of(cell.Text, style);
    }

    private static double WidthOf(FormSheet form, int column)
    {
        if (!form.Columns[column].IsInput)
            return form.Columns.Count == 1 ? 120 : column switch { 0 => 34, 4 => 90, _ => 30 };
        int longest = form.Rows.Select(r => column < r.Count ? r[column].Text.Length : 0).Append(form.Columns[column].Heading.Length).Max();
        return Math.Clamp(longest + 3, 16, 48);
    }

    private static void AddRule(SheetContent sheet, FormRule rule, string first, string cells)
    {
        string range = rule.Feet is null ? "" : rule.Metres is null || rule.Metres == rule.Feet ? rule.Feet.Words : $"{rule.Feet.Words}, or {rule.Metres.Words} in projects in metres";
        string message = rule.Choices.Count > 0 ? "One of: " + string.Join(", ", rule.Choices) : $"{rule.Title} takes {(range.Length > 0 ? range : "another kind of value")}.";
        sheet.Rules.Add(new InputRule(cells, 0, 0, Cut(message, LongestError), string.Join(",", rule.Choices))
        {
            Formula = FormulaOf(rule, first),
            Title = Cut(rule.Title, LongestTitle),
            Prompt = Cut(rule.Hint, LongestPrompt),
        });
    }

    /// <summary>True for a number within the range, and for every other spelling that is no bare number; empty where anything goes.</summary>
    private static string FormulaOf(FormRule rule, string cell)
    {
        if (rule.Feet is not { } feet)
            return rule.OnlyNumber ? $"ISNUMBER({cell})" : "";
        string number = rule.IsText ? $"VALUE({cell})" : cell;
        string within = rule.Metres is not { } metres || metres == feet ? Within(feet, number) : $"IF({Units}=\"m\",{Within(metres, number)},{Within(feet, number)})";
        if (rule.IsText)
            return $"OR(ISERROR({number}),ISNUMBER(FIND(\"-\",{cell},2)),ISNUMBER(FIND(\":\",{cell})),{within})";
        string whole = rule.IsWhole ? $",{cell}=INT({cell})" : "";
        return rule.OnlyNumber ? $"AND(ISNUMBER({cell}){whole},{within})" : $"OR(ISTEXT({cell}),{within})";
    }

    private static string Within(FormRange range, string number) =>
        string.Create(CultureInfo.InvariantCulture, $"AND({number}>{(range.LeastIncluded ? "=" : "")}{range.Least:R},{number}<{(range.MostIncluded ? "=" : "")}{range.Most:R})");

    private static string Cut(string text, int most) => text.Length <= most ? text : text[..(most - 3)] + "...";
}

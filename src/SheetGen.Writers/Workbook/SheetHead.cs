namespace SheetGen.Writers.Workbook;

/// <summary>The first rows of every sheet.</summary>
internal static class SheetHead
{
    public static SheetContent Make(WorkbookInput input, string name, string title, string note)
    {
        var sheet = new SheetContent(name);
        sheet.Put(1, 0, title, CellStyle.Title);
        if (name != SummarySheet.Name)
            sheet.PutLink(2, 0, SummarySheet.Name, $"'{SummarySheet.Name}'!A1");
        sheet.Put(2, name == SummarySheet.Name ? 0 : 1, $"{input.Project.Info.Title}  {input.Project.Info.Number}  (lengths in {Model.Units.Lengths.Symbol(input.Project.Unit)})", CellStyle.Text);
        sheet.Put(3, 0, note, CellStyle.Note);
        return sheet;
    }
}

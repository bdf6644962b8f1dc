using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace SheetGen.Writers.Workbook;

/// <summary>Writes sheets of plain data as an XLSX file; knows nothing of walls.</summary>
internal static class SpreadsheetFile
{
    /// <param name="paper">Paper size code of the format: 3 is 11 x 17 in, 8 is A3.</param>
    public static void Write(IReadOnlyList<SheetContent> sheets, IReadOnlyList<NamedCell> names, uint paper, Stream stream)
    {
        using var raw = new MemoryStream();
        using (SpreadsheetDocument document = SpreadsheetDocument.Create(raw, SpreadsheetDocumentType.Workbook))
        {
            WorkbookPart workbook = document.AddWorkbookPart();
            document.ChangeIdOfPart(workbook, "rId1");
            workbook.AddNewPart<WorkbookStylesPart>("rId1").Stylesheet = StyleTable.Make();
            for (int i = 0; i < sheets.Count; i++)
            {
                WorksheetPart part = workbook.AddNewPart<WorksheetPart>(IdOf(i));
                using OpenXmlWriter writer = OpenXmlWriter.Create(part);
                WriteSheet(writer, sheets[i], paper, i == 0);
            }
            workbook.Workbook = MakeWorkbook(sheets, names);
        }
        raw.Position = 0;
        FixedZip.Rewrite(raw, stream);
    }

    private static string IdOf(int sheet) => "rId" + (sheet + 2).ToString(CultureInfo.InvariantCulture);

    private static DocumentFormat.OpenXml.Spreadsheet.Workbook MakeWorkbook(IReadOnlyList<SheetContent> sheets, IReadOnlyList<NamedCell> names)
    {
        var list = new Sheets();
        var defined = new DefinedNames();
        foreach (NamedCell name in names.OrderBy(n => n.Name, StringComparer.Ordinal))
            defined.Append(new DefinedName(name.Reference) { Name = name.Name });
        for (int i = 0; i < sheets.Count; i++)
        {
            list.Append(new Sheet { Name = sheets[i].Name, SheetId = (uint)i + 1, Id = IdOf(i) });
            string rows = string.Create(CultureInfo.InvariantCulture, $"'{sheets[i].Name}'!$1:${sheets[i].HeadRows}");
            string columns = PagesWide(sheets[i]) > 1 && sheets[i].HeadColumns > 0
                ? $"'{sheets[i].Name}'!$A:${CellAddress.Letter(sheets[i].HeadColumns - 1)}," : "";
            defined.Append(new DefinedName(columns + rows)
            {
                Name = "_xlnm.Print_Titles",
                LocalSheetId = (uint)i,
            });
        }
        return new DocumentFormat.OpenXml.Spreadsheet.Workbook(
            new BookViews(new WorkbookView { ActiveTab = 0 }), list, defined, new CalculationProperties { FullCalculationOnLoad = true });
    }

    private static void WriteSheet(OpenXmlWriter writer, SheetContent sheet, uint paper, bool isFirst)
    {
        writer.WriteStartElement(new Worksheet());
        writer.WriteElement(new SheetProperties(new PageSetupProperties { FitToPage = true }));
        writer.WriteElement(new SheetViews(View(sheet, isFirst)));
        writer.WriteElement(new SheetFormatProperties { DefaultRowHeight = 15 });
        if (sheet.Widths.Count > 0)
        {
            writer.WriteElement(new Columns(sheet.Widths.OrderBy(w => w.Key).Select(w =>
                new Column { Min = (uint)w.Key + 1, Max = (uint)w.Key + 1, Width = w.Value, CustomWidth = true })));
        }
        writer.WriteStartElement(new SheetData());
        foreach ((int row, SortedDictionary<int, SheetCell> cells) in sheet.Rows.OrderBy(r => r.Key))
            WriteRow(writer, row, cells, RowHeight.Of(cells, sheet.Widths));
        writer.WriteEndElement();
        if (sheet.Rules.Count > 0)
            writer.WriteElement(new DataValidations(sheet.Rules.Select(Validation)) { Count = (uint)sheet.Rules.Count });
        writer.WriteElement(new PageMargins { Left = 0.5, Right = 0.5, Top = 0.6, Bottom = 0.6, Header = 0.3, Footer = 0.3 });
        writer.WriteElement(new PageSetup
        {
            PaperSize = paper,
            Orientation = OrientationValues.Landscape,
            PageOrder = PageOrderValues.OverThenDown,
            FitToWidth = PagesWide(sheet),
            FitToHeight = 0,
        });
        writer.WriteElement(new HeaderFooter(new OddFooter("&L&A&RPage &P of &N")));
        writer.WriteEndElement();
    }

    /// <summary>Pages beside each other, so that no sheet is printed too small to read.</summary>
    private static uint PagesWide(SheetContent sheet)
    {
        const double readable = 330;
        return (uint)Math.Max(1, Math.Ceiling(sheet.Widths.Values.Sum() / readable));
    }

    private static SheetView View(SheetContent sheet, bool isFirst)
    {
        string corner = CellAddress.Of(sheet.HeadColumns, sheet.HeadRows + 1);
        var pane = new Pane { TopLeftCell = corner, State = PaneStateValues.Frozen, VerticalSplit = sheet.HeadRows };
        if (sheet.HeadColumns > 0)
            pane.HorizontalSplit = sheet.HeadColumns;
        PaneValues where = sheet.HeadColumns > 0 ? PaneValues.BottomRight : PaneValues.BottomLeft;
        pane.ActivePane = where;
        return new SheetView(pane, new Selection { Pane = where, ActiveCell = corner, SequenceOfReferences = new ListValue<StringValue> { InnerText = corner } })
        {
            WorkbookViewId = 0,
            TabSelected = isFirst,
        };
    }

    private static void WriteRow(OpenXmlWriter writer, int row, SortedDictionary<int, SheetCell> cells, double? height)
    {
        var place = new List<OpenXmlAttribute>(3) { new("r", "", row.ToString(CultureInfo.InvariantCulture)) };
        if (height is { } points)
        {
            place.Add(new OpenXmlAttribute("ht", "", points.ToString("R", CultureInfo.InvariantCulture)));
            place.Add(new OpenXmlAttribute("customHeight", "", "1"));
        }
        writer.WriteStartElement(new Row(), place);
        foreach ((int column, SheetCell cell) in cells)
        {
            var attributes = new List<OpenXmlAttribute>(3)
            {
                new("r", "", CellAddress.Of(column, row)),
                new("s", "", cell.Style.Index.ToString(CultureInfo.InvariantCulture)),
            };
            bool isText = cell.Text is not null;
            if (isText)
                attributes.Add(new OpenXmlAttribute("t", "", cell.Formula is null ? "inlineStr" : "str"));
            writer.WriteStartElement(new Cell(), attributes);
            if (cell.Formula is not null)
                writer.WriteElement(new CellFormula(cell.Formula));
            if (isText && cell.Formula is null)
                writer.WriteElement(new InlineString(new Text(cell.Text!) { Space = SpaceProcessingModeValues.Preserve }));
            else if ((cell.Text ?? cell.NumberText) is { } value)
                writer.WriteElement(new CellValue(value));
            writer.WriteEndElement();
        }
        writer.WriteEndElement();
    }

    private static DataValidation Validation(InputRule rule) => new(
        new Formula1(rule.Least.ToString("R", CultureInfo.InvariantCulture)), new Formula2(rule.Greatest.ToString("R", CultureInfo.InvariantCulture)))
    {
        Type = DataValidationValues.Decimal,
        Operator = DataValidationOperatorValues.Between,
        AllowBlank = true,
        ShowErrorMessage = true,
        ShowInputMessage = true,
        ErrorTitle = "Out of range",
        Error = rule.Message,
        PromptTitle = "Your value",
        Prompt = rule.Message,
        SequenceOfReferences = new ListValue<StringValue> { InnerText = rule.Cells },
    };
}

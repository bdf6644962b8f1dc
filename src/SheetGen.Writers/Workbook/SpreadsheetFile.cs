using System.Globalization;
using System.IO.Packaging;
using System.Text;
using System.Xml;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace SheetGen.Writers.Workbook;

/// <summary>Writes sheets of plain data as an XLSX file; knows nothing of walls.</summary>
internal static class SpreadsheetFile
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    /// <param name="paper">Paper size code of the format: 3 is 11 x 17 in, 8 is A3.</param>
    public static void Write(IReadOnlyList<SheetContent> sheets, IReadOnlyList<NamedCell> names, uint paper, Stream stream)
    {
        using var raw = new MemoryStream();
        using (SpreadsheetDocument document = SpreadsheetDocument.Create(raw, SpreadsheetDocumentType.Workbook))
        {
            document.CompressionOption = CompressionOption.NotCompressed;
            WorkbookPart workbook = document.AddWorkbookPart();
            document.ChangeIdOfPart(workbook, "rId1");
            workbook.AddNewPart<WorkbookStylesPart>("rId1").Stylesheet = StyleTable.Make();
            for (int i = 0; i < sheets.Count; i++)
            {
                WorksheetPart part = workbook.AddNewPart<WorksheetPart>(IdOf(i));
                using Stream sheet = part.GetStream(FileMode.Create);
                using XmlWriter writer = XmlWriter.Create(sheet, Plain);
                WriteSheet(writer, sheets[i], paper, i == 0);
            }
            workbook.Workbook = MakeWorkbook(sheets, names);
        }
        raw.Position = 0;
        FixedZip.Rewrite(raw, stream);
    }

    private static readonly XmlWriterSettings Plain = new() { Encoding = new UTF8Encoding(false), CheckCharacters = false };

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

    private static void WriteSheet(XmlWriter writer, SheetContent sheet, uint paper, bool isFirst)
    {
        writer.WriteStartElement("worksheet", Main);
        new SheetProperties(new PageSetupProperties { FitToPage = true }).WriteTo(writer);
        new SheetViews(View(sheet, isFirst)).WriteTo(writer);
        new SheetFormatProperties { DefaultRowHeight = 15 }.WriteTo(writer);
        if (sheet.Widths.Count > 0)
        {
            new Columns(sheet.Widths.OrderBy(w => w.Key).Select(w =>
                new Column { Min = (uint)w.Key + 1, Max = (uint)w.Key + 1, Width = w.Value, CustomWidth = true })).WriteTo(writer);
        }
        writer.WriteStartElement("sheetData", Main);
        foreach ((int row, SortedList<int, SheetCell> cells) in sheet.Rows.OrderBy(r => r.Key))
            WriteRow(writer, row, cells, RowHeight.Of(cells, sheet.Widths));
        writer.WriteEndElement();
        if (sheet.Rules.Count > 0)
            new DataValidations(sheet.Rules.Select(Validation)) { Count = (uint)sheet.Rules.Count }.WriteTo(writer);
        new PageMargins { Left = 0.5, Right = 0.5, Top = 0.6, Bottom = 0.6, Header = 0.3, Footer = 0.3 }.WriteTo(writer);
        new PageSetup
        {
            PaperSize = paper,
            Orientation = OrientationValues.Landscape,
            PageOrder = PageOrderValues.OverThenDown,
            FitToWidth = PagesWide(sheet),
            FitToHeight = 0,
        }.WriteTo(writer);
        new HeaderFooter(new OddFooter("&L&A&RPage &P of &N")).WriteTo(writer);
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

    private static void WriteRow(XmlWriter writer, int row, SortedList<int, SheetCell> cells, double? height)
    {
        string number = row.ToString(CultureInfo.InvariantCulture);
        writer.WriteStartElement("row", Main);
        writer.WriteAttributeString("r", number);
        if (height is { } points)
        {
            writer.WriteAttributeString("ht", points.ToString("R", CultureInfo.InvariantCulture));
            writer.WriteAttributeString("customHeight", "1");
        }
        foreach ((int column, SheetCell cell) in cells)
        {
            writer.WriteStartElement("c", Main);
            writer.WriteAttributeString("r", CellAddress.Letter(column) + number);
            writer.WriteAttributeString("s", cell.Style.Index.ToString(CultureInfo.InvariantCulture));
            if (cell.Formula is not null)
            {
                if (cell.Text is not null)
                    writer.WriteAttributeString("t", "str");
                writer.WriteElementString("f", Main, cell.Formula);
                if ((cell.Text ?? cell.NumberText) is { } value)
                    writer.WriteElementString("v", Main, value);
            }
            else if (cell.Text is not null)
            {
                writer.WriteAttributeString("t", "inlineStr");
                writer.WriteStartElement("is", Main);
                writer.WriteStartElement("t", Main);
                writer.WriteAttributeString("xml", "space", null, "preserve");
                writer.WriteString(cell.Text);
                writer.WriteEndElement();
                writer.WriteEndElement();
            }
            else if (cell.Number is not null)
            {
                writer.WriteElementString("v", Main, cell.NumberText);
            }
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

using System.Globalization;
using System.Xml;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Spreadsheet;

namespace SheetGen.Writers.Workbook;

/// <summary>A worksheet's part of the file.</summary>
internal static class SheetXml
{
    public const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    public const string DrawingId = "rIdDrawing";

    /// <summary>Relation of a sheet to a table, which is numbered over the whole workbook.</summary>
    public static string TableId(int table) => "rIdTable" + table.ToString(CultureInfo.InvariantCulture);

    public static void Write(XmlWriter writer, SheetContent sheet, uint paper, bool isFirst, int firstTable)
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
        if (sheet.IsProtected)
            Protection.WriteTo(writer);
        if (sheet.Rules.Count > 0)
            new DataValidations(sheet.Rules.Select(Validation)) { Count = (uint)sheet.Rules.Count }.WriteTo(writer);
        if (sheet.Links.Count > 0)
            new Hyperlinks(sheet.Links.Select(l => new Hyperlink { Reference = l.Cell, Location = l.Target })).WriteTo(writer);
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
        if (sheet.Charts.Count > 0)
            new DocumentFormat.OpenXml.Spreadsheet.Drawing { Id = DrawingId }.WriteTo(writer);
        if (sheet.ListTables.Count > 0)
        {
            new TableParts(sheet.ListTables.Select((_, i) => new TablePart { Id = TableId(firstTable + i) })) { Count = (uint)sheet.ListTables.Count }
                .WriteTo(writer);
        }
        writer.WriteEndElement();
    }

    /// <summary>Pages beside each other, so that no sheet is printed too small to read, on 8.5 x 11 in either.</summary>
    public static uint PagesWide(SheetContent sheet)
    {
        const double readable = 290;
        return (uint)Math.Max(1, Math.Ceiling(sheet.Widths.Values.Sum() / readable));
    }

    /// <summary>Without a password; filters, sorting and widths stay free.</summary>
    private static SheetProtection Protection => new()
    {
        Sheet = true,
        AutoFilter = false,
        Sort = false,
        FormatColumns = false,
        FormatRows = false,
        FormatCells = false,
        InsertRows = false,
        DeleteRows = false,
    };

    private static SheetView View(SheetContent sheet, bool isFirst)
    {
        var view = new SheetView { WorkbookViewId = 0, TabSelected = isFirst };
        if (sheet.HeadRows == 0)
            return view;
        string corner = CellAddress.Of(sheet.HeadColumns, sheet.HeadRows + 1);
        var pane = new Pane { TopLeftCell = corner, State = PaneStateValues.Frozen, VerticalSplit = sheet.HeadRows };
        if (sheet.HeadColumns > 0)
            pane.HorizontalSplit = sheet.HeadColumns;
        PaneValues where = sheet.HeadColumns > 0 ? PaneValues.BottomRight : PaneValues.BottomLeft;
        pane.ActivePane = where;
        view.Append(pane, new Selection { Pane = where, ActiveCell = corner, SequenceOfReferences = new ListValue<StringValue> { InnerText = corner } });
        return view;
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
            WriteCell(writer, CellAddress.Letter(column) + number, cell);
        writer.WriteEndElement();
    }

    private static void WriteCell(XmlWriter writer, string address, SheetCell cell)
    {
        writer.WriteStartElement("c", Main);
        writer.WriteAttributeString("r", address);
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

    private static DataValidation Validation(InputRule rule)
    {
        var validation = new DataValidation
        {
            AllowBlank = true,
            ShowErrorMessage = true,
            ErrorTitle = "Not a value for this cell",
            Error = rule.Message,
            SequenceOfReferences = new ListValue<StringValue> { InnerText = rule.Cells },
        };
        if (rule.IsPrompted)
            (validation.ShowInputMessage, validation.PromptTitle, validation.Prompt) = (true, rule.Title, rule.Prompt ?? rule.Message);
        if (rule.Words.Length > 0)
        {
            validation.Type = DataValidationValues.List;
            validation.Append(new Formula1("\"" + rule.Words + "\""));
            return validation;
        }
        if (rule.Formula is { } formula)
        {
            validation.Type = formula.Length > 0 ? DataValidationValues.Custom : DataValidationValues.None;
            if (formula.Length > 0)
                validation.Append(new Formula1(formula));
            return validation;
        }
        validation.Type = DataValidationValues.Decimal;
        validation.Operator = DataValidationOperatorValues.Between;
        validation.Append(
            new Formula1(rule.Least.ToString("R", CultureInfo.InvariantCulture)), new Formula2(rule.Greatest.ToString("R", CultureInfo.InvariantCulture)));
        return validation;
    }
}

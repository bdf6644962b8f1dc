using System.Globalization;
using System.IO.Compression;
using System.IO.Packaging;
using System.Text;
using System.Xml;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using SheetGen.Model.Files;

namespace SheetGen.Writers.Workbook;

/// <summary>
/// Writes sheets of plain data as an XLSX file; knows nothing of walls. The package is made with empty worksheets, whose content goes
/// straight into the finished file, so that no worksheet is ever whole in memory.
/// </summary>
internal static class SpreadsheetFile
{
    private static readonly XmlWriterSettings Plain = new() { Encoding = new UTF8Encoding(false), CheckCharacters = false };

    /// <param name="paper">Paper size code of the format: 3 is 11 x 17 in, 8 is A3.</param>
    public static void Write(IReadOnlyList<SheetContent> sheets, IReadOnlyList<NamedCell> names, uint paper, Stream stream)
    {
        var worksheets = new Dictionary<string, Action<Stream>>();
        using var raw = new MemoryStream();
        using (SpreadsheetDocument document = SpreadsheetDocument.Create(raw, SpreadsheetDocumentType.Workbook))
        {
            document.CompressionOption = CompressionOption.NotCompressed;
            WorkbookPart workbook = document.AddWorkbookPart();
            document.ChangeIdOfPart(workbook, "rId1");
            workbook.AddNewPart<WorkbookStylesPart>("rId1").Stylesheet = StyleTable.Make();
            int tables = 0;
            for (int i = 0; i < sheets.Count; i++)
            {
                WorksheetPart part = workbook.AddNewPart<WorksheetPart>(IdOf(i));
                foreach (ListTable table in sheets[i].ListTables)
                {
                    tables++;
                    Write(part.AddNewPart<TableDefinitionPart>(SheetXml.TableId(tables)), writer => ListTableXml.Write(writer, table, tables));
                }
                if (sheets[i].Charts.Count > 0)
                    AddCharts(part, sheets[i].Charts);
                (SheetContent sheet, bool isFirst, int first) = (sheets[i], i == 0, tables - sheets[i].ListTables.Count + 1);
                Write(part, writer => writer.WriteElementString("worksheet", SheetXml.Main, ""));
                worksheets.Add(part.Uri.OriginalString.TrimStart('/'), to => Write(to, writer => SheetXml.Write(writer, sheet, paper, isFirst, first)));
            }
            workbook.Workbook = MakeWorkbook(sheets, names);
        }
        raw.Position = 0;
        using var loose = new ZipArchive(raw, ZipArchiveMode.Read);
        IEnumerable<ZipArchiveEntry> sorted = loose.Entries.OrderBy(e => e.FullName == "[Content_Types].xml" ? 0 : 1).ThenBy(e => e.FullName, StringComparer.Ordinal);
        stream.Write(FixedZip.Of(sorted.Select(e => (e.FullName, worksheets.GetValueOrDefault(e.FullName) ?? (to => Copy(e, to))))));
    }

    private static void Copy(ZipArchiveEntry entry, Stream to)
    {
        using Stream from = entry.Open();
        from.CopyTo(to);
    }

    private static void AddCharts(WorksheetPart part, List<SheetChart> charts)
    {
        DrawingsPart drawing = part.AddNewPart<DrawingsPart>(SheetXml.DrawingId);
        for (int c = 0; c < charts.Count; c++)
            Write(drawing.AddNewPart<ChartPart>(ChartXml.IdOf(c)), writer => ChartXml.Write(writer, charts[c]));
        Write(drawing, writer => ChartXml.WriteFrames(writer, charts));
    }

    private static void Write(OpenXmlPart part, Action<XmlWriter> content)
    {
        using Stream stream = part.GetStream(FileMode.Create);
        Write(stream, content);
    }

    private static void Write(Stream stream, Action<XmlWriter> content)
    {
        using XmlWriter writer = XmlWriter.Create(stream, Plain);
        content(writer);
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
            if (sheets[i].HeadRows == 0)
                continue;
            string rows = string.Create(CultureInfo.InvariantCulture, $"'{sheets[i].Name}'!$1:${sheets[i].HeadRows}");
            string columns = SheetXml.PagesWide(sheets[i]) > 1 && sheets[i].HeadColumns > 0
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
}

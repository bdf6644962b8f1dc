using System.Globalization;
using System.IO.Compression;
using System.Xml.Linq;

namespace SheetGen.EndToEnd.Support;

/// <summary>A workbook as text: a line a cell with its formula and stored value, read from its parts without a spreadsheet library.</summary>
internal static class WorkbookListing
{
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static readonly XNamespace Rel = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private static readonly XNamespace Package = "http://schemas.openxmlformats.org/package/2006/relationships";

    public static void Write(string workbook, string listing)
    {
        IEnumerable<string> lines = Cells(workbook)
            .Where(c => c.Value is not null || c.Formula is not null)
            .Select(c => $"{c.Place}{(c.Formula is null ? "" : " =" + c.Formula)} {c.Value}".ReplaceLineEndings("\\n"));
        File.WriteAllText(listing, string.Join("\n", lines) + "\n");
    }

    /// <summary>Stored value of each cell with a formula, by sheet and cell.</summary>
    public static IReadOnlyDictionary<string, string> FormulaValues(string workbook) => Cells(workbook)
        .Where(c => c.Formula is not null)
        .ToDictionary(c => c.Place, c => c.Value ?? "");

    private static IEnumerable<(string Place, string? Formula, string? Value)> Cells(string workbook)
    {
        using ZipArchive zip = ZipFile.OpenRead(workbook);
        XDocument book = Part(zip, "xl/workbook.xml");
        Dictionary<string, string> targets = Part(zip, "xl/_rels/workbook.xml.rels").Root!
            .Elements(Package + "Relationship")
            .ToDictionary(r => (string)r.Attribute("Id")!, r => (string)r.Attribute("Target")!);
        List<string> shared = zip.GetEntry("xl/sharedStrings.xml") is null
            ? []
            : [.. Part(zip, "xl/sharedStrings.xml").Root!.Elements(Main + "si").Select(Texts)];
        foreach (XElement sheet in book.Root!.Element(Main + "sheets")!.Elements())
        {
            string target = targets[(string)sheet.Attribute(Rel + "id")!];
            string path = target.StartsWith('/') ? target[1..] : "xl/" + target;
            foreach (XElement cell in Part(zip, path).Descendants(Main + "c"))
                yield return ($"{(string)sheet.Attribute("name")!}!{(string)cell.Attribute("r")!}", cell.Element(Main + "f")?.Value, ValueOf(cell, shared));
        }
    }

    private static string? ValueOf(XElement cell, List<string> shared)
    {
        string? value = cell.Element(Main + "v")?.Value;
        return (string?)cell.Attribute("t") switch
        {
            "s" => shared[int.Parse(value!, CultureInfo.InvariantCulture)],
            "inlineStr" => Texts(cell),
            _ => value,
        };
    }

    private static string Texts(XElement element) => string.Concat(element.Descendants(Main + "t").Select(t => t.Value));

    private static XDocument Part(ZipArchive zip, string name)
    {
        using Stream stream = zip.GetEntry(name)!.Open();
        return XDocument.Load(stream);
    }
}

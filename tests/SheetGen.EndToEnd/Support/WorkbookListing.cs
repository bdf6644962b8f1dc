using System.IO.Compression;
using System.Text;
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
        using ZipArchive zip = ZipFile.OpenRead(workbook);
        XDocument book = Part(zip, "xl/workbook.xml");
        Dictionary<string, string> targets = Part(zip, "xl/_rels/workbook.xml.rels").Root!
            .Elements(Package + "Relationship")
            .ToDictionary(r => (string)r.Attribute("Id")!, r => (string)r.Attribute("Target")!);
        List<string> shared = zip.GetEntry("xl/sharedStrings.xml") is null
            ? []
            : [.. Part(zip, "xl/sharedStrings.xml").Root!.Elements(Main + "si").Select(Texts)];
        var text = new StringBuilder();
        foreach (XElement sheet in book.Root!.Element(Main + "sheets")!.Elements())
        {
            string target = targets[(string)sheet.Attribute(Rel + "id")!];
            string path = target.StartsWith('/') ? target[1..] : "xl/" + target;
            foreach (XElement cell in Part(zip, path).Descendants(Main + "c"))
                text.Append(Line((string)sheet.Attribute("name")!, cell, shared));
        }
        File.WriteAllText(listing, text.ToString());
    }

    private static string Line(string sheet, XElement cell, List<string> shared)
    {
        string? value = cell.Element(Main + "v")?.Value;
        value = (string?)cell.Attribute("t") switch
        {
            "s" => shared[int.Parse(value!, System.Globalization.CultureInfo.InvariantCulture)],
            "inlineStr" => Texts(cell),
            _ => value,
        };
        string formula = cell.Element(Main + "f") is { } f ? " =" + f.Value : "";
        return value is null && formula.Length == 0 ? "" : $"{sheet}!{(string)cell.Attribute("r")!}{formula} {value}".ReplaceLineEndings("\\n") + "\n";
    }

    private static string Texts(XElement element) => string.Concat(element.Descendants(Main + "t").Select(t => t.Value));

    private static XDocument Part(ZipArchive zip, string name)
    {
        using Stream stream = zip.GetEntry(name)!.Open();
        return XDocument.Load(stream);
    }
}

using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Xml.Linq;

namespace SheetGen.Tests.Writers;

/// <summary>A workbook that is edited as a user would: cells written over, rows of a table added and deleted.</summary>
internal sealed class EditedBook
{
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static readonly XNamespace Rel = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private readonly Dictionary<string, XDocument> _parts = [];
    private readonly Dictionary<string, byte[]> _others = [];
    private readonly Dictionary<string, string> _sheets;

    public EditedBook(byte[] workbook)
    {
        using var zip = new ZipArchive(new MemoryStream(workbook), ZipArchiveMode.Read);
        foreach (ZipArchiveEntry entry in zip.Entries)
        {
            using Stream stream = entry.Open();
            if (entry.FullName.Contains("worksheets/sheet", StringComparison.Ordinal) || entry.FullName.Contains("tables/", StringComparison.Ordinal)
                || entry.FullName.EndsWith("workbook.xml", StringComparison.Ordinal) || entry.FullName.EndsWith("workbook.xml.rels", StringComparison.Ordinal))
            {
                _parts[entry.FullName] = XDocument.Load(stream);
                continue;
            }
            using var copy = new MemoryStream();
            stream.CopyTo(copy);
            _others[entry.FullName] = copy.ToArray();
        }
        Dictionary<string, string> targets = _parts["xl/_rels/workbook.xml.rels"].Root!.Elements()
            .ToDictionary(r => r.Attribute("Id")!.Value, r => r.Attribute("Target")!.Value.TrimStart('/'));
        _sheets = _parts["xl/workbook.xml"].Descendants(Main + "sheet").ToDictionary(
            s => s.Attribute("name")!.Value,
            s => targets[s.Attribute(Rel + "id")!.Value] is var t && t.StartsWith("xl/", StringComparison.Ordinal) ? t : "xl/" + targets[s.Attribute(Rel + "id")!.Value]);
    }

    /// <summary>Column letters of a table's head.</summary>
    public string Column(string table, string head)
    {
        List<string> heads = [.. TableOf(table).Descendants(Main + "tableColumn").Select(c => c.Attribute("name")!.Value)];
        int place = heads.FindIndex(h => h == head || h.StartsWith(head + ",", StringComparison.Ordinal));
        return place < 0 ? throw new ArgumentException($"no head {head} among {string.Join("; ", heads)}", nameof(head))
            : place < 26 ? ((char)('A' + place)).ToString() : "A" + (char)('A' + place - 26);
    }

    public EditedBook Number(string sheet, string address, double? value) => Change(sheet, address, cell =>
    {
        if (value is { } number)
            cell.Add(new XElement(Main + "v", number.ToString("R", CultureInfo.InvariantCulture)));
    });

    public EditedBook Text(string sheet, string address, string text) => Change(sheet, address, cell =>
    {
        cell.SetAttributeValue("t", "inlineStr");
        cell.Add(new XElement(Main + "is", new XElement(Main + "t", text)));
    });

    public EditedBook Formula(string sheet, string address, string formula) => Change(sheet, address, cell => cell.Add(new XElement(Main + "f", formula)));

    /// <summary>Value of a named rate; empty where there is none.</summary>
    public EditedBook Rate(string name, double? value)
    {
        XElement row = Rows("Rates").First(r => r.Elements(Main + "c").First().Value == name);
        return Number("Rates", "D" + row.Attribute("r")!.Value, value);
    }

    /// <summary>Copies the last row of a sheet below it, and makes its table larger unless told not to; returns the new row's number.</summary>
    public int AddRow(string sheet, string table, bool inTable = true)
    {
        XElement last = Rows(sheet).Last();
        int number = (int)last.Attribute("r")! + 1;
        var copy = new XElement(last);
        Renumber(copy, number);
        last.AddAfterSelf(copy);
        if (inTable)
            Resize(table, 1);
        return number;
    }

    public EditedBook DeleteRow(string sheet, string table, int row)
    {
        foreach (XElement element in Rows(sheet).Where(r => (int)r.Attribute("r")! >= row).ToList())
        {
            if ((int)element.Attribute("r")! == row)
                element.Remove();
            else
                Renumber(element, (int)element.Attribute("r")! - 1);
        }
        Resize(table, -1);
        return this;
    }

    public byte[] Bytes()
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach ((string path, byte[] content) in _others)
            {
                using Stream entry = zip.CreateEntry(path).Open();
                entry.Write(content);
            }
            foreach ((string path, XDocument xml) in _parts)
            {
                using var writer = new StreamWriter(zip.CreateEntry(path).Open(), new UTF8Encoding(false));
                writer.Write("<?xml version=\"1.0\" encoding=\"utf-8\"?>" + xml.ToString(SaveOptions.DisableFormatting));
            }
        }
        return stream.ToArray();
    }

    private IEnumerable<XElement> Rows(string sheet) => _parts[_sheets[sheet]].Descendants(Main + "row");

    private XElement TableOf(string name) => _parts.Values.Select(p => p.Root!).Single(r => r.Name == Main + "table" && r.Attribute("name")!.Value == name);

    private void Resize(string table, int rows)
    {
        XElement root = TableOf(table);
        string[] ends = root.Attribute("ref")!.Value.Split(':');
        string letters = string.Concat(ends[1].TakeWhile(char.IsAsciiLetter));
        string cells = FormattableString.Invariant($"{ends[0]}:{letters}{int.Parse(ends[1].AsSpan(letters.Length), CultureInfo.InvariantCulture) + rows}");
        root.SetAttributeValue("ref", cells);
        root.Element(Main + "autoFilter")!.SetAttributeValue("ref", cells);
    }

    private static void Renumber(XElement row, int number)
    {
        row.SetAttributeValue("r", number);
        foreach (XElement cell in row.Elements(Main + "c"))
            cell.SetAttributeValue("r", string.Concat(cell.Attribute("r")!.Value.TakeWhile(char.IsAsciiLetter)) + number.ToString(CultureInfo.InvariantCulture));
    }

    private EditedBook Change(string sheet, string address, Action<XElement> change)
    {
        XElement cell = _parts[_sheets[sheet]].Descendants(Main + "c").Single(c => c.Attribute("r")!.Value == address);
        cell.Attribute("t")?.Remove();
        cell.RemoveNodes();
        change(cell);
        return this;
    }
}

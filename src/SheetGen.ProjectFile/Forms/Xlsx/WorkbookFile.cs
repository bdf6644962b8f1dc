using System.IO.Compression;
using System.Xml;

namespace SheetGen.ProjectFile.Forms.Xlsx;

/// <summary>
/// Reads the cells of a workbook (ISO/IEC 29500, transitional and strict). Names of elements are compared without their namespace. Every
/// limit is a count, so that a hostile file costs no more than its limit: entries, bytes unpacked, sheets, cells, shared texts.
/// </summary>
internal sealed class WorkbookFile
{
    public const int MostEntries = 2_000, MostSheets = 250, MostCells = 400_000, MostTexts = 400_000;
    public const long MostBytes = 64_000_000;

    private readonly ZipArchive _zip;
    private long _left = MostBytes;
    private IReadOnlyList<string> _texts = [];
    private NumberFormats _formats = NumberFormats.None;
    private int _cells;

    private WorkbookFile(ZipArchive zip) => _zip = zip;

    /// <summary>The sheets in their order.</summary>
    /// <exception cref="WorkbookException">It is no workbook, is damaged, or has more than a limit.</exception>
    public static IReadOnlyList<GridSheet> Read(byte[] bytes)
    {
        try
        {
            using var zip = new ZipArchive(new MemoryStream(bytes), ZipArchiveMode.Read);
            if (zip.Entries.Count > MostEntries)
                throw new WorkbookException(FormattableString.Invariant($"has more than {MostEntries} parts")) { IsTooLarge = true };
            return new WorkbookFile(zip).Read();
        }
        catch (Exception e) when (e is InvalidDataException or XmlException or IOException or NotSupportedException or FormatException or OverflowException or ArgumentException)
        {
            throw new WorkbookException("is damaged or cut off");
        }
    }

    private IReadOnlyList<GridSheet> Read()
    {
        if (_zip.GetEntry("mimetype") is not null && _zip.GetEntry("content.xml") is not null)
            throw new WorkbookException("is an OpenDocument file; save it as .xlsx");
        string book = Relations("_rels/.rels", "").FirstOrDefault(r => r.Type.EndsWith("/officeDocument", StringComparison.Ordinal)).Target ?? "xl/workbook.xml";
        string folder = book.Contains('/', StringComparison.Ordinal) ? book[..(book.LastIndexOf('/') + 1)] : "";
        (string Id, string Type, string Target)[] parts = [.. Relations($"{folder}_rels/{book[folder.Length..]}.rels", folder)];
        string? PartOf(string type) => parts.FirstOrDefault(r => r.Type.EndsWith(type, StringComparison.Ordinal)).Target;
        var sheets = new List<(string Name, string Part)>();
        bool from1904 = false;
        using (XmlReader reader = Open(book) ?? throw new WorkbookException("is no spreadsheet"))
        {
            while (reader.Read())
            {
                if (reader.NodeType != XmlNodeType.Element)
                    continue;
                if (reader.LocalName == "workbookPr")
                    from1904 = reader.GetAttribute("date1904") is "1" or "true";
                if (reader.LocalName != "sheet")
                    continue;
                string name = reader.GetAttribute("name") ?? "", id = "";
                while (reader.MoveToNextAttribute())
                    id = reader.LocalName == "id" ? reader.Value : id;
                (string Id, string Type, string Target) relation = parts.FirstOrDefault(r => r.Id == id);
                if (relation.Target is { } part && relation.Type.EndsWith("/worksheet", StringComparison.Ordinal))
                    sheets.Add((name, part));
                if (sheets.Count > MostSheets)
                    throw new WorkbookException(FormattableString.Invariant($"has more than {MostSheets} sheets")) { IsTooLarge = true };
            }
        }
        if (PartOf("/styles") is { } styles && Open(styles) is { } styleReader)
        {
            using (styleReader)
                _formats = NumberFormats.Read(styleReader, from1904);
        }
        if (PartOf("/sharedStrings") is { } shared && Open(shared) is { } textReader)
        {
            using (textReader)
                _texts = ReadTexts(textReader);
        }
        return [.. sheets.Select(s => ReadSheet(s.Name, s.Part))];
    }

    private IEnumerable<(string Id, string Type, string Target)> Relations(string part, string folder)
    {
        var found = new List<(string, string, string)>();
        using XmlReader? reader = Open(part);
        while (reader is not null && found.Count <= MostEntries && reader.Read())
        {
            if (reader is { NodeType: XmlNodeType.Element, LocalName: "Relationship" } && reader.GetAttribute("Target") is { } target && reader.GetAttribute("TargetMode") != "External")
                found.Add((reader.GetAttribute("Id") ?? "", reader.GetAttribute("Type") ?? "", target.StartsWith('/') ? target[1..] : Plain(folder + target)));
        }
        return found;
    }

    /// <summary>The path with ./ and ../ taken out.</summary>
    private static string Plain(string path)
    {
        var parts = new List<string>();
        foreach (string part in path.Split('/'))
        {
            if (part == ".." && parts.Count > 0)
                parts.RemoveAt(parts.Count - 1);
            else if (part is not ("." or ".." or ""))
                parts.Add(part);
        }
        return string.Join('/', parts);
    }

    private XmlReader? Open(string part)
    {
        ZipArchiveEntry? entry = _zip.GetEntry(part) ?? _zip.Entries.FirstOrDefault(e => e.FullName.Equals(part, StringComparison.OrdinalIgnoreCase));
        if (entry is null)
            return null;
        var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, CloseInput = true, IgnoreComments = true, IgnoreProcessingInstructions = true };
        return XmlReader.Create(new BoundedStream(entry.Open(), read => (_left -= read) >= 0), settings);
    }

    private static List<string> ReadTexts(XmlReader reader)
    {
        var texts = new List<string>();
        while (reader.Read())
        {
            if (reader is { NodeType: XmlNodeType.Element, LocalName: "si" })
                texts.Add(RichText(reader));
            if (texts.Count > MostTexts)
                throw new WorkbookException(FormattableString.Invariant($"has more than {MostTexts} texts")) { IsTooLarge = true };
        }
        return texts;
    }

    /// <summary>All runs of a text, without what only tells how to say it.</summary>
    private static string RichText(XmlReader reader)
    {
        if (reader.IsEmptyElement)
            return "";
        var text = new System.Text.StringBuilder();
        int depth = reader.Depth, phonetic = 0;
        while (reader.Read() && reader.Depth > depth)
        {
            if (reader is { NodeType: XmlNodeType.Element, LocalName: "rPh", IsEmptyElement: false })
                phonetic++;
            else if (reader is { NodeType: XmlNodeType.EndElement, LocalName: "rPh" })
                phonetic--;
            else if (phonetic == 0 && reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.SignificantWhitespace or XmlNodeType.Whitespace)
                text.Append(reader.Value);
        }
        return text.ToString();
    }

    private GridSheet ReadSheet(string name, string part)
    {
        using XmlReader reader = Open(part) ?? throw new WorkbookException("lacks one of its sheets");
        var rows = new SortedDictionary<int, SortedList<int, GridCell>>();
        var merged = new List<(int, int, int, int)>();
        int row = 0, column = 0;
        while (reader.Read())
        {
            if (reader.NodeType != XmlNodeType.Element)
                continue;
            switch (reader.LocalName)
            {
                case "row":
                    row = reader.GetAttribute("r") is { } given ? CellPlace.Row(given) : row + 1;
                    column = 0;
                    break;
                case "c":
                    (row, column) = reader.GetAttribute("r") is { } place ? CellPlace.Of(place) : (row, column + 1);
                    if (ReadCell(reader, row, column) is { } cell)
                    {
                        if (++_cells > MostCells)
                            throw new WorkbookException(FormattableString.Invariant($"has more than {MostCells} cells with something in them")) { IsTooLarge = true };
                        if (!rows.TryGetValue(row, out SortedList<int, GridCell>? cells))
                            rows[row] = cells = [];
                        cells[column] = cell;
                    }
                    break;
                case "mergeCell" when reader.GetAttribute("ref") is { } area && area.Split(':') is [{ } first, { } last] && merged.Count < MostCells:
                    ((int r1, int c1), (int r2, int c2)) = (CellPlace.Of(first), CellPlace.Of(last));
                    merged.Add((r1, c1, r2, c2));
                    break;
            }
        }
        return new GridSheet(name, [.. rows.Values.Select(r => (IReadOnlyList<GridCell>)[.. r.Values])], merged);
    }

    /// <summary>The cell; null where it holds nothing.</summary>
    private GridCell? ReadCell(XmlReader reader, int row, int column)
    {
        string type = reader.GetAttribute("t") ?? "n", style = reader.GetAttribute("s") ?? "0";
        if (reader.IsEmptyElement)
            return null;
        string? value = null, inline = null;
        bool formula = false;
        int depth = reader.Depth;
        reader.Read();
        while (reader.Depth > depth)
        {
            if (reader is { NodeType: XmlNodeType.Element, LocalName: "v" or "is" } && reader.Depth == depth + 1)
            {
                if (reader.LocalName == "v")
                    value = RichText(reader);
                else
                    inline = RichText(reader);
            }
            else if (reader is { NodeType: XmlNodeType.Element, LocalName: "f" })
                formula = true;
            if (!reader.Read())
                break;
        }
        if (value is { Length: 0 } && type != "str")
            value = null;
        if (formula && value is null && inline is null)
            return new GridCell(row, column, CellKind.NoResult, "");
        GridCell? cell = type switch
        {
            "s" => new GridCell(row, column, CellKind.Text, value is null ? "" : _texts[int.Parse(value, System.Globalization.CultureInfo.InvariantCulture)]),
            "inlineStr" => new GridCell(row, column, CellKind.Text, inline ?? ""),
            "str" => new GridCell(row, column, CellKind.Text, value ?? ""),
            "b" => new GridCell(row, column, CellKind.Flag, value is "1" or "true" ? "true" : "false"),
            "e" => new GridCell(row, column, CellKind.Fault, value ?? "#N/A"),
            "d" => new GridCell(row, column, CellKind.Date, value ?? ""),
            _ => value is null ? null : _formats.Of(row, column, value, style),
        };
        return cell is { Kind: CellKind.Text } text && text.Text.Trim().Length == 0 ? null : cell;
    }
}

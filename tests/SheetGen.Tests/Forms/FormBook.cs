using System.IO.Compression;
using System.Text.RegularExpressions;
using SheetGen.Model.Forms;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Forms;
using SheetGen.Tests.Inputs;
using SheetGen.Writers.Form;

namespace SheetGen.Tests.Forms;

/// <summary>A form that tests fill in, change and read.</summary>
internal sealed class FormBook
{
    private readonly List<FormSheet> _sheets;
    private readonly Dictionary<string, List<(string Cell, string Xml)>> _raw = [];

    public FormBook(string yaml)
    {
        _sheets = [.. FormSheets.Filled(yaml, out IReadOnlyList<string> unread)];
        Unread = unread;
    }

    public IReadOnlyList<string> Unread { get; }

    /// <summary>Fills in a cell of a row below the headings.</summary>
    public FormBook Set(string sheet, string heading, int row, string text, bool isNumber = false)
    {
        int at = _sheets.FindIndex(s => s.Name == sheet);
        FormSheet form = _sheets[at];
        int column = form.Columns.ToList().FindIndex(c => c.Heading == heading);
        List<List<FormCell>> rows = [.. form.Rows.Select(r => r.ToList())];
        while (rows.Count <= row)
            rows.Add([]);
        while (rows[row].Count <= column)
            rows[row].Add(default);
        rows[row][column] = rows[row][column] with { Content = text, IsNumber = isNumber };
        _sheets[at] = form with { Rows = [.. rows] };
        return this;
    }

    /// <summary>Fills in the value of a key on a sheet of keys.</summary>
    public FormBook Set(string sheet, string key, string text, bool isNumber = false) =>
        Set(sheet, "value", _sheets.Find(s => s.Name == sheet)!.Rows.ToList().FindIndex(r => r[0].Text == key), text, isNumber);

    public FormBook Rename(string sheet, string heading, string to)
    {
        int at = _sheets.FindIndex(s => s.Name == sheet);
        _sheets[at] = _sheets[at] with { Columns = [.. _sheets[at].Columns.Select(c => c.Heading == heading ? c with { Heading = to } : c)] };
        return this;
    }

    public FormBook Without(string sheet)
    {
        _sheets.RemoveAll(s => s.Name == sheet);
        return this;
    }

    public FormBook RenameSheet(string sheet, string to)
    {
        int at = _sheets.FindIndex(s => s.Name == sheet);
        _sheets[at] = _sheets[at] with { Name = to };
        return this;
    }

    /// <summary>Puts XML in place of a cell, or with an empty cell before the end of the cells.</summary>
    public FormBook Raw(string sheet, string cell, string xml)
    {
        if (!_raw.TryGetValue(sheet, out List<(string, string)>? list))
            _raw[sheet] = list = [];
        list.Add((cell, xml));
        return this;
    }

    public byte[] Bytes()
    {
        using var stream = new MemoryStream();
        FormWorkbook.Write(_sheets, stream);
        return _raw.Aggregate(stream.ToArray(), (bytes, change) => Edit(bytes, $"xl/worksheets/sheet{_sheets.FindIndex(s => s.Name == change.Key) + 1}.xml", xml => change.Value.Aggregate(xml, Put)));
    }

    /// <summary>The workbook with the text of a part changed.</summary>
    public static byte[] Edit(byte[] bytes, string part, Func<string, string> change)
    {
        using var memory = new MemoryStream();
        memory.Write(bytes);
        using (var zip = new ZipArchive(memory, ZipArchiveMode.Update, leaveOpen: true))
        {
            ZipArchiveEntry entry = zip.GetEntry(part) ?? throw new ArgumentException("no such part", nameof(part));
            string text;
            using (var reader = new StreamReader(entry.Open()))
                text = reader.ReadToEnd();
            entry.Delete();
            using var writer = new StreamWriter(zip.CreateEntry(part).Open());
            writer.Write(change(text));
        }
        return memory.ToArray();
    }

    public ReadResult Read() => Read(Bytes());

    public static ReadResult Read(byte[] bytes)
    {
        using var folder = new InputFolder();
        return Read(folder, bytes);
    }

    public static ReadResult Read(InputFolder folder, byte[] bytes)
    {
        File.WriteAllBytes(folder.Of("wall.xlsx"), bytes);
        return ProjectReader.Read(folder.Of("wall.xlsx"));
    }

    private static string Put(string sheet, (string Cell, string Xml) change)
    {
        if (change.Cell.Length == 0)
            return sheet.Replace("</sheetData>", "</sheetData>" + change.Xml, StringComparison.Ordinal);
        var cell = new Regex($"<c r=\"{change.Cell}\"(?: [^>]*)?(?:/>|>.*?</c>)");
        return cell.IsMatch(sheet) ? cell.Replace(sheet, change.Xml.Replace("$", "$$", StringComparison.Ordinal), 1) : throw new ArgumentException("no such cell");
    }
}

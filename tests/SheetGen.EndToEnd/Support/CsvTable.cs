using System.Text;

namespace SheetGen.EndToEnd.Support;

/// <summary>A CSV file as its cells (RFC 4180), read by a reader of the tests' own.</summary>
internal sealed class CsvTable
{
    private CsvTable(IReadOnlyList<string> columns, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        Columns = columns;
        Rows = rows;
    }

    public IReadOnlyList<string> Columns { get; }

    public IReadOnlyList<IReadOnlyList<string>> Rows { get; }

    public IEnumerable<string> Column(string name)
    {
        int i = Columns.ToList().IndexOf(name);
        return Rows.Select(r => r[i]);
    }

    public static CsvTable Read(string path)
    {
        List<IReadOnlyList<string>> records = Parse(File.ReadAllText(path, new UTF8Encoding(false, true)));
        return new CsvTable(records[0], records.Skip(1).ToList());
    }

    private static List<IReadOnlyList<string>> Parse(string text)
    {
        var records = new List<IReadOnlyList<string>>();
        var record = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (quoted)
            {
                if (c != '"')
                    cell.Append(c);
                else if (i + 1 < text.Length && text[i + 1] == '"')
                    cell.Append(text[i++]);
                else
                    quoted = false;
            }
            else if (c == '"')
            {
                quoted = true;
            }
            else if (c is ',' or '\n')
            {
                record.Add(cell.ToString());
                cell.Clear();
                if (c == '\n')
                {
                    records.Add(record);
                    record = [];
                }
            }
            else if (c != '\r')
            {
                cell.Append(c);
            }
        }
        if (cell.Length > 0 || record.Count > 0)
        {
            record.Add(cell.ToString());
            records.Add(record);
        }
        return records;
    }
}

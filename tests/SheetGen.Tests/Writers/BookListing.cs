using System.Globalization;
using SheetGen.Tests.Outside;

namespace SheetGen.Tests.Writers;

/// <summary>A workbook as ClosedXML reads it, in a process of its own.</summary>
internal sealed class BookListing
{
    private readonly Dictionary<(string Sheet, string Address), string> _cells = [];
    private readonly List<(string Sheet, string Letter, int Row, string Text)> _order = [];

    public static BookListing Read(byte[] workbook)
    {
        var here = new DirectoryInfo(AppContext.BaseDirectory);
        string tail = Path.Combine("SheetGen.BookReader", "bin", here.Parent!.Name, here.Name, "SheetGen.BookReader.dll");
        string reader = Path.Combine(here.Parent.Parent!.Parent!.Parent!.FullName, tail);
        string folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            string file = Path.Combine(folder, "q.xlsx");
            File.WriteAllBytes(file, workbook);
            var listing = new BookListing();
            foreach (string line in OutsideReader.Program("dotnet").Run(reader, file).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries))
            {
                string[] parts = line.Split('\t');
                listing._cells[(parts[0], parts[1])] = parts[2];
                string letter = string.Concat(parts[1].TakeWhile(char.IsAsciiLetter));
                listing._order.Add((parts[0], letter, int.Parse(parts[1].AsSpan(letter.Length), CultureInfo.InvariantCulture), parts[2]));
            }
            return listing;
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    public string Text(string sheet, string address) => _cells.GetValueOrDefault((sheet, address), "");

    /// <summary>The texts of a column from its head in row 5 down.</summary>
    public IEnumerable<string> Column(string sheet, string letter) =>
        _order.Where(c => c.Sheet == sheet && c.Letter == letter && c.Row >= 5 && c.Text.Length > 0).OrderBy(c => c.Row).Select(c => c.Text);

    /// <summary>The number in a column of the row whose first cell has a text.</summary>
    public decimal Number(string sheet, string letter, string first)
    {
        int row = _order.Single(c => c.Sheet == sheet && c.Letter == "A" && c.Text == first).Row;
        return decimal.Parse(Text(sheet, letter + row.ToString(CultureInfo.InvariantCulture)), NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}

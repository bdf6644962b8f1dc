using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SheetGen.Tests.Outside;
using Xunit;

namespace SheetGen.Tests.Writers;

/// <summary>Has another spreadsheet program compute a workbook from a copy without stored values.</summary>
internal static class Recalculation
{
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    private static readonly CultureInfo Comma = CultureInfo.GetCultureInfo("de-DE");

    /// <summary>Compares every formula's stored value with the recalculated one; returns how many there are.</summary>
    public static int AssertEqual(params IReadOnlyList<byte[]> workbooks) => AssertEqual(workbooks, CultureInfo.InvariantCulture);

    /// <summary>As above, in a program whose user writes 1,5 for one and a half.</summary>
    public static int AssertEqualWithDecimalComma(params IReadOnlyList<byte[]> workbooks) => AssertEqual(workbooks, Comma);

    private static int AssertEqual(IReadOnlyList<byte[]> workbooks, CultureInfo culture)
    {
        List<Dictionary<string, string[][]>> computed = Recalculate(workbooks, false, culture);
        int count = 0;
        var differences = new List<string>();
        for (int i = 0; i < workbooks.Count; i++)
        {
            foreach ((string sheet, XDocument xml) in Sheets(workbooks[i]))
            {
                foreach (XElement cell in xml.Descendants(Main + "c").Where(c => c.Element(Main + "f") is not null))
                {
                    string address = cell.Attribute("r")!.Value, stored = cell.Element(Main + "v")?.Value ?? "";
                    string actual = At(computed[i][sheet], address);
                    count++;
                    if (!IsSame(stored, actual, culture))
                        differences.Add($"{i}: {sheet}!{address}: stored {stored}, recalculated {actual}, formula {cell.Element(Main + "f")!.Value}");
                }
            }
        }
        Assert.True(differences.Count == 0, string.Join("\n", differences.Take(20)));
        return count;
    }

    /// <summary>All sheets as texts, recalculated: full precision, or as shown on the screen.</summary>
    public static Dictionary<string, string[][]> Recalculate(byte[] workbook, bool formatted = false) => Recalculate([workbook], formatted, CultureInfo.InvariantCulture)[0];

    private static List<Dictionary<string, string[][]>> Recalculate(IReadOnlyList<byte[]> workbooks, bool formatted, CultureInfo culture)
    {
        string folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            string[] files = [.. workbooks.Select((_, i) => FormattableString.Invariant($"strip{i}.xlsx"))];
            for (int i = 0; i < workbooks.Count; i++)
                File.WriteAllBytes(Path.Combine(folder, files[i]), Stripped(workbooks[i]));
            string shown = formatted ? "true" : "false";
            OutsideResult result = OutsideReader.LibreOffice.RunIn(
                culture == Comma ? "de_DE.UTF-8" : "C.UTF-8",
            [
                "-env:UserInstallation=file://" + folder + "/profile", "--headless", "--convert-to",
                "csv:Text - txt - csv (StarCalc):44,34,76,1,,1033,false,false," + shown + ",false,false,-1", "--outdir", folder, .. files.Select(f => Path.Combine(folder, f)),
            ]);
            Assert.True(result.ExitCode == 0, result.Errors);
            return
            [
                .. workbooks.Select((w, i) => Sheets(w).ToDictionary(
                    s => s.Name, s => Parse(File.ReadAllText(Path.Combine(folder, FormattableString.Invariant($"strip{i}-{s.Name}.csv")))))),
            ];
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    /// <summary>The workbook with another value in a named rate cell.</summary>
    public static byte[] WithRate(byte[] workbook, string name, double value) => Edit(workbook, (path, text) =>
    {
        XDocument xml = XDocument.Parse(text);
        XElement? row = xml.Descendants(Main + "row").FirstOrDefault(r => r.Elements(Main + "c").FirstOrDefault()?.Value == name);
        if (row is null || row.Elements(Main + "c").Count() != 5)
            return text;
        row.Elements(Main + "c").ElementAt(3).SetElementValue(Main + "v", value.ToString(CultureInfo.InvariantCulture));
        return xml.Declaration + xml.ToString(SaveOptions.DisableFormatting);
    });

    private static byte[] Stripped(byte[] workbook) =>
        Edit(workbook, (_, text) => Regex.Replace(text, "(</(?:x:)?f>)<(x:)?v>[^<]*</(?:x:)?v>", "$1"));

    private static byte[] Edit(byte[] workbook, Func<string, string, string> change)
    {
        using var stream = new MemoryStream();
        stream.Write(workbook);
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
        {
            foreach (ZipArchiveEntry entry in zip.Entries.Where(e => e.FullName.Contains("worksheets/sheet", StringComparison.Ordinal)).ToList())
            {
                string text, path = entry.FullName;
                using (var reader = new StreamReader(entry.Open()))
                    text = reader.ReadToEnd();
                entry.Delete();
                using var writer = new StreamWriter(zip.CreateEntry(path).Open(), new UTF8Encoding(false));
                writer.Write(change(path, text));
            }
        }
        return stream.ToArray();
    }

    private static List<(string Name, XDocument Xml)> Sheets(byte[] workbook)
    {
        using var zip = new ZipArchive(new MemoryStream(workbook), ZipArchiveMode.Read);
        XDocument Read(string path)
        {
            using Stream stream = zip.GetEntry(path)!.Open();
            return XDocument.Load(stream);
        }
        Dictionary<string, string> targets = Read("xl/_rels/workbook.xml.rels").Root!.Elements()
            .ToDictionary(r => r.Attribute("Id")!.Value, r => r.Attribute("Target")!.Value.TrimStart('/'));
        XNamespace rel = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        return
        [
            .. Read("xl/workbook.xml").Descendants(Main + "sheet").Select(s =>
            {
                string target = targets[s.Attribute(rel + "id")!.Value];
                return (s.Attribute("name")!.Value, Read(target.StartsWith("xl/", StringComparison.Ordinal) ? target : "xl/" + target));
            }),
        ];
    }

    private static bool IsSame(string stored, string actual, CultureInfo culture)
    {
        if (stored == actual)
            return true;
        double per = actual.EndsWith('%') ? 100 : 1;
        return double.TryParse(stored, NumberStyles.Float, CultureInfo.InvariantCulture, out double a)
            && double.TryParse(actual.TrimEnd('%'), NumberStyles.Float, culture, out double b)
            && Math.Abs(a - b / per) <= 1e-12 * Math.Max(1, Math.Abs(a));
    }

    private static string At(string[][] rows, string address)
    {
        int letters = address.TakeWhile(char.IsAsciiLetter).Count(), column = 0;
        foreach (char c in address[..letters])
            column = column * 26 + c - 'A' + 1;
        int row = int.Parse(address[letters..], CultureInfo.InvariantCulture);
        return row <= rows.Length && column <= rows[row - 1].Length ? rows[row - 1][column - 1] : "";
    }

    private static string[][] Parse(string csv)
    {
        var rows = new List<string[]>();
        var cells = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < csv.Length; i++)
        {
            char c = csv[i];
            if (quoted)
            {
                if (c == '"' && i + 1 < csv.Length && csv[i + 1] == '"')
                    cell.Append(csv[++i]);
                else if (c == '"')
                    quoted = false;
                else
                    cell.Append(c);
            }
            else if (c == '"')
            {
                quoted = true;
            }
            else if (c is ',' or '\n')
            {
                cells.Add(cell.ToString().TrimEnd('\r'));
                cell.Clear();
                if (c == '\n')
                {
                    rows.Add([.. cells]);
                    cells.Clear();
                }
            }
            else
            {
                cell.Append(c);
            }
        }
        return [.. rows];
    }
}

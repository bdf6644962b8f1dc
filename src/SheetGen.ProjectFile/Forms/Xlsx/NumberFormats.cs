using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml;

namespace SheetGen.ProjectFile.Forms.Xlsx;

/// <summary>Which of a workbook's cell styles show a number as a date or a time.</summary>
internal sealed partial class NumberFormats
{
    private const int MostStyles = 100_000;

    private readonly List<int> _styles = [];
    private readonly Dictionary<int, string> _codes = [];
    private readonly DateTime _dayZero;

    private NumberFormats(bool from1904) => _dayZero = from1904 ? new DateTime(1904, 1, 1) : new DateTime(1899, 12, 30);

    public static NumberFormats None { get; } = new(false);

    /// <summary>What in a format is shown as it stands: quoted, escaped or bracketed.</summary>
    [GeneratedRegex("\"[^\"]*\"|\\\\.|_.|\\*.|\\[[^\\]]*\\]")]
    private static partial Regex ShownAsIs();

    public static NumberFormats Read(XmlReader reader, bool from1904)
    {
        var formats = new NumberFormats(from1904);
        bool cells = false;
        while (reader.Read())
        {
            if (reader.LocalName == "cellXfs")
                cells = reader.NodeType == XmlNodeType.Element;
            if (reader.NodeType != XmlNodeType.Element)
                continue;
            if (reader.LocalName == "numFmt" && int.TryParse(reader.GetAttribute("numFmtId"), out int id) && formats._codes.Count < MostStyles)
                formats._codes[id] = reader.GetAttribute("formatCode") ?? "";
            if (cells && reader.LocalName == "xf" && formats._styles.Count < MostStyles)
                formats._styles.Add(int.TryParse(reader.GetAttribute("numFmtId"), out int format) ? format : 0);
        }
        return formats;
    }

    /// <summary>A number's cell. Spreadsheets count to 15 digits, so that 0.1 + 0.2 is 0.3.</summary>
    public GridCell Of(int row, int column, string value, string style)
    {
        double number = double.Parse(value, NumberStyles.Float, CultureInfo.InvariantCulture);
        if (!double.IsFinite(number))
            return new GridCell(row, column, CellKind.Fault, "#NUM!");
        return int.TryParse(style, out int index) && index >= 0 && index < _styles.Count && IsDate(_styles[index]) && number is >= 0 and < 2_900_000
            ? new GridCell(row, column, CellKind.Date, DateText(number))
            : new GridCell(row, column, CellKind.Number, Digits(number));
    }

    private string DateText(double number)
    {
        DateTime at = _dayZero.AddDays(number);
        return at.ToString(number < 1 ? "HH:mm:ss" : at.TimeOfDay < TimeSpan.FromSeconds(1) ? "yyyy-MM-dd" : "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
    }

    /// <summary>A decimal made from a double has 15 digits.</summary>
    private static string Digits(double number) =>
        Math.Abs(number) < 1e27 ? ((decimal)number).ToString(CultureInfo.InvariantCulture) : number.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Codes of the format's own dates and times are fixed (ISO/IEC 29500-1, 18.8.30); others show one by their letters.</summary>
    private bool IsDate(int format) => _codes.TryGetValue(format, out string? code)
        ? ShownAsIs().Replace(code.Split(';')[0], "") is { } left && !left.Contains("General", StringComparison.OrdinalIgnoreCase) && left.Any(c => "ymdhsYMDHS".Contains(c, StringComparison.Ordinal))
        : format is (>= 14 and <= 22) or (>= 27 and <= 36) or (>= 45 and <= 47) or (>= 50 and <= 58);
}

using System.Globalization;
using System.Xml;

namespace SheetGen.Writers.Workbook;

/// <summary>A cell: a text, a number, or a formula with the value that we computed for it ourselves.</summary>
internal readonly record struct SheetCell
{
    private SheetCell(string? formula, string? text, double? number, CellStyle style)
    {
        Formula = formula;
        Text = text;
        Number = number;
        Style = style;
    }

    public string? Formula { get; }

    public string? Text { get; }

    public double? Number { get; }

    public CellStyle Style { get; }

    public static SheetCell Blank(CellStyle style) => new(null, null, null, style);

    public static SheetCell Of(string text, CellStyle style) => new(null, Clean(text), null, style);

    public static SheetCell Of(string text) => Of(text, CellStyle.Text);

    /// <summary>A number; blank where there is none.</summary>
    public static SheetCell Of(double? number, CellStyle style) => new(null, null, number, style);

    /// <summary>A formula with its number; an empty text where there is none.</summary>
    public static SheetCell Calculated(string formula, double? number, CellStyle style) =>
        new(formula, number is null ? "" : null, number, style);

    /// <summary>A formula that gives a text.</summary>
    public static SheetCell Calculated(string formula, string text, CellStyle style) => new(formula, Clean(text), null, style);

    /// <summary>The number as it is stored: the shortest text that reads back as the same number.</summary>
    public string? NumberText => Number?.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Text or unrounded number, without the formula.</summary>
    public string Plain => Text ?? (Number is null ? "" : NumberText!);

    private static string Clean(string text) => text.All(XmlConvert.IsXmlChar) ? text : new string([.. text.Where(XmlConvert.IsXmlChar)]);
}

using System.Globalization;
using System.Xml;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>A cell: a text, a number, or a formula with the value that we computed for it ourselves.</summary>
internal readonly record struct SheetCell
{
    private SheetCell(string? formula, string? text, double? number, CellStyle style)
    {
        Formula = formula;
        Text = text;
        Number = number is { } value ? FiniteNumber.Of(value) : null;
        Style = style;
    }

    public string? Formula { get; }

    public string? Text { get; }

    public double? Number { get; }

    public CellStyle Style { get; }

    public static SheetCell Blank(CellStyle style) => new(null, null, null, style);

    /// <summary>A text. One that a spreadsheet would take for a formula is marked as a text for good.</summary>
    public static SheetCell Of(string text, CellStyle style) =>
        new(null, Clean(text), null, FormulaText.IsLike(text) ? style with { IsQuoted = true } : style);

    public static SheetCell Of(string text) => Of(text, CellStyle.Text);

    /// <summary>A number; blank where there is none.</summary>
    public static SheetCell Of(double? number, CellStyle style) => new(null, null, number, style);

    /// <summary>A formula with its number; an empty text where there is none.</summary>
    public static SheetCell Calculated(string formula, double? number, CellStyle style) =>
        new(formula, number is null ? "" : null, number, style);

    /// <summary>A formula that gives a text.</summary>
    public static SheetCell Calculated(string formula, string text, CellStyle style) => new(formula, Clean(text), null, style);

    /// <summary>The same cell, open to the user while its sheet is protected.</summary>
    public SheetCell Opened() => With(Style with { IsOpen = true });

    /// <summary>The same content in another style.</summary>
    public SheetCell With(CellStyle style) => new(Formula, Text, Number, style);

    /// <summary>About how many characters it shows.</summary>
    public int ShownLength => Text?.Length ?? (Number is { } number ? LengthOf(number, Style.Format) : 0);

    /// <summary>The number as it is stored: the shortest text that reads back as the same number.</summary>
    public string? NumberText => (Number == 0 ? 0 : Number)?.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Text or unrounded number, without the formula.</summary>
    public string Plain => Text ?? (Number is null ? "" : NumberText!);

    private static int LengthOf(double number, CellFormat format)
    {
        double size = Math.Abs(number);
        int whole = size < 10 ? 1 : (int)Math.Log10(size) + 1;
        return format switch
        {
            CellFormat.General => number.ToString("0.##########", CultureInfo.InvariantCulture).Length,
            CellFormat.PlainTwo or CellFormat.StationFeet => whole + 4,
            CellFormat.PlainThree or CellFormat.StationMetres => whole + 5,
            CellFormat.Date => 10,
            CellFormat.Percent => whole + 4,
            _ => whole + (whole - 1) / 3 + 1 + format switch { CellFormat.Whole => 0, CellFormat.One => 2, CellFormat.Two => 3, CellFormat.Three => 4, CellFormat.Four => 5, _ => 7 },
        };
    }

    private static string Clean(string text) => text.All(XmlConvert.IsXmlChar) ? text : new string([.. text.Where(XmlConvert.IsXmlChar)]);
}

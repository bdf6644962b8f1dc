namespace SheetGen.Dxf;

/// <summary>A dimension variable: its name, its group in a DIMSTYLE record and its value (text, real or whole).</summary>
internal sealed record DimVariable(string Name, int Code, object Value)
{
    /// <summary>The variables of a style. Header variables have the same values under their names.</summary>
    internal static IEnumerable<DimVariable> Of(DxfDimStyle style) =>
    [
        new("DIMPOST", 3, style.Affix),
        new("DIMSCALE", 40, style.Scale),
        new("DIMASZ", 41, style.ArrowSize),
        new("DIMEXO", 42, style.ExtensionOffset),
        new("DIMDLI", 43, style.TextHeight * 3),
        new("DIMEXE", 44, style.ExtensionBeyond),
        new("DIMRND", 45, 0.0),
        new("DIMDLE", 46, 0.0),
        new("DIMTOL", 71, 0),
        new("DIMLIM", 72, 0),
        new("DIMTIH", 73, 0),
        new("DIMTOH", 74, 0),
        new("DIMSE1", 75, 0),
        new("DIMSE2", 76, 0),
        new("DIMTAD", 77, style.TextAbove ? 1 : 0),
        new("DIMZIN", 78, ZeroSuppression(style)),
        new("DIMTXT", 140, style.TextHeight),
        new("DIMCEN", 141, 0.0),
        new("DIMTSZ", 142, style.TickSize),
        new("DIMALTF", 143, 25.4),
        new("DIMLFAC", 144, style.MeasureFactor),
        new("DIMTVP", 145, 0.0),
        new("DIMTFAC", 146, 1.0),
        new("DIMGAP", 147, style.TextGap),
        new("DIMALT", 170, 0),
        new("DIMTOFL", 172, 1),
        new("DIMSAH", 173, 0),
        new("DIMTIX", 174, 0),
        new("DIMSOXD", 175, 0),
        new("DIMCLRD", 176, 256),
        new("DIMCLRE", 177, 256),
        new("DIMCLRT", 178, 256),
        new("DIMADEC", 179, 0),
        new("DIMDEC", 271, style.Precision),
        new("DIMTDEC", 272, style.Precision),
        new("DIMFRAC", 276, 2),
        new("DIMLUNIT", 277, (int)style.Format),
        new("DIMDSEP", 278, '.' + 0),
        new("DIMTMOVE", 279, 0),
        new("DIMJUST", 280, 0),
        new("DIMSD1", 281, 0),
        new("DIMSD2", 282, 0),
        new("DIMUPT", 288, 0),
    ];

    internal void WriteRecord(GroupWriter o) => Write(o, Code);

    internal void WriteHeader(GroupWriter o) => Write(o, Value switch { string => 1, double => 40, _ => 70 });

    private static int ZeroSuppression(DxfDimStyle style) =>
        style.Format != DxfLinearFormat.Decimal ? 1 : style.TrimZeros ? 8 : 0;

    private void Write(GroupWriter o, int code)
    {
        if (Value is string text)
            o.Text(code, text);
        else if (Value is double real)
            o.Real(code, real);
        else
            o.Integer(code, (int)Value);
    }
}

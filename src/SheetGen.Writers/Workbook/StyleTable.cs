using DocumentFormat.OpenXml.Spreadsheet;

namespace SheetGen.Writers.Workbook;

/// <summary>The workbook's styles: every look with every format, open or not, quoted or not.</summary>
internal static class StyleTable
{
    private const uint FirstFormat = 164;

    public static Stylesheet Make()
    {
        var formats = new NumberingFormats();
        foreach (CellFormat format in Enum.GetValues<CellFormat>())
        {
            if (CodeOf(format) is { } code)
                formats.Append(new NumberingFormat { NumberFormatId = FirstFormat + (uint)format, FormatCode = code });
        }
        formats.Count = (uint)formats.ChildElements.Count;
        var cells = new CellFormats();
        foreach ((bool open, bool quoted) in (ReadOnlySpan<(bool, bool)>)[(false, false), (false, true), (true, false), (true, true)])
        {
            foreach (CellLook look in Enum.GetValues<CellLook>())
            {
                foreach (CellFormat format in Enum.GetValues<CellFormat>())
                    cells.Append(Make(new CellStyle(look, format) { IsOpen = open, IsQuoted = quoted }));
            }
        }
        cells.Count = (uint)cells.ChildElements.Count;
        return new Stylesheet(
            formats,
            new Fonts(
                FontOf(11, null, false, false), FontOf(14, null, true, false), FontOf(11, null, true, false),
                FontOf(10, "FF595959", false, true), FontOf(11, "FFC00000", true, false), FontOf(11, "FF1F3864", false, false),
                FontOf(11, "FF0563C1", false, false, true))
            { Count = 7 },
            new Fills(
                new Fill(new PatternFill { PatternType = PatternValues.None }), new Fill(new PatternFill { PatternType = PatternValues.Gray125 }),
                Solid("FFD9E2EC"), Solid("FFFFF2CC"))
            { Count = 4 },
            new Borders(
                new Border(new LeftBorder(), new RightBorder(), new TopBorder(), new BottomBorder(), new DiagonalBorder()),
                Boxed(BorderStyleValues.Thin, BorderStyleValues.Thin),
                new Border(
                    new LeftBorder(), new RightBorder(), new TopBorder { Style = BorderStyleValues.Thin },
                    new BottomBorder { Style = BorderStyleValues.Double }, new DiagonalBorder()))
            { Count = 3 },
            new CellStyleFormats(new DocumentFormat.OpenXml.Spreadsheet.CellFormat()) { Count = 1 },
            cells,
            new CellStyles(new DocumentFormat.OpenXml.Spreadsheet.CellStyle { Name = "Normal", FormatId = 0, BuiltinId = 0 }) { Count = 1 });
    }

    private static string? CodeOf(CellFormat format) => format switch
    {
        CellFormat.Whole => "#,##0",
        CellFormat.One => "#,##0.0",
        CellFormat.Two => "#,##0.00",
        CellFormat.Three => "#,##0.000",
        CellFormat.Four => "#,##0.0000",
        CellFormat.Six => "#,##0.000000",
        CellFormat.PlainTwo => "0.00",
        CellFormat.PlainThree => "0.000",
        CellFormat.StationFeet => "0+00.00",
        CellFormat.StationMetres => "0+000.000",
        CellFormat.Date => "yyyy-mm-dd",
        CellFormat.Percent => "0.0%",
        _ => null,
    };

    private static DocumentFormat.OpenXml.Spreadsheet.CellFormat Make(CellStyle style)
    {
        (CellLook look, CellFormat format) = style;
        uint number = format == CellFormat.Text ? 49 : CodeOf(format) is null ? 0 : FirstFormat + (uint)format;
        (uint font, uint fill, uint border) = look switch
        {
            CellLook.Title => (1u, 0u, 0u),
            CellLook.Head => (2u, 2u, 1u),
            CellLook.Strong => (2u, 0u, 0u),
            CellLook.Total => (2u, 0u, 2u),
            CellLook.Input => (5u, 3u, 1u),
            CellLook.Note => (3u, 0u, 0u),
            CellLook.Warning => (4u, 0u, 0u),
            CellLook.Link => (6u, 0u, 0u),
            _ => (0u, 0u, 0u),
        };
        bool isOpen = style.IsOpen || look == CellLook.Input;
        bool wraps = look is CellLook.Head or CellLook.Wrapped;
        bool isText = look is CellLook.Label or CellLook.Wrapped or CellLook.Warning or CellLook.Link;
        return new DocumentFormat.OpenXml.Spreadsheet.CellFormat
        {
            NumberFormatId = number,
            FontId = font,
            FillId = fill,
            BorderId = border,
            FormatId = 0,
            ApplyNumberFormat = number != 0,
            ApplyFont = font != 0,
            ApplyFill = fill != 0,
            ApplyBorder = border != 0,
            QuotePrefix = style.IsQuoted,
            ApplyAlignment = true,
            ApplyProtection = isOpen,
            Alignment = new Alignment
            {
                Vertical = look == CellLook.Head ? VerticalAlignmentValues.Center : VerticalAlignmentValues.Top,
                Horizontal = HorizontalOf(look),
                Indent = isText ? 1u : 0u,
                WrapText = wraps,
            },
            Protection = isOpen ? new Protection { Locked = false } : null,
        };
    }

    private static HorizontalAlignmentValues HorizontalOf(CellLook look) => look switch
    {
        CellLook.Head => HorizontalAlignmentValues.Center,
        CellLook.Label or CellLook.Wrapped or CellLook.Warning or CellLook.Link => HorizontalAlignmentValues.Left,
        _ => HorizontalAlignmentValues.General,
    };

    private static Font FontOf(double size, string? colour, bool bold, bool italic, bool underlined = false)
    {
        var font = new Font();
        if (bold)
            font.Append(new Bold());
        if (italic)
            font.Append(new Italic());
        if (underlined)
            font.Append(new Underline());
        font.Append(new FontSize { Val = size });
        if (colour is not null)
            font.Append(new Color { Rgb = colour });
        font.Append(new FontName { Val = "Arial" });
        return font;
    }

    private static Fill Solid(string colour) =>
        new(new PatternFill(new ForegroundColor { Rgb = colour }, new BackgroundColor { Indexed = 64 }) { PatternType = PatternValues.Solid });

    private static Border Boxed(BorderStyleValues sides, BorderStyleValues ends) => new(
        new LeftBorder { Style = sides }, new RightBorder { Style = sides }, new TopBorder { Style = ends },
        new BottomBorder { Style = ends }, new DiagonalBorder());
}

using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>The summary by section: the same table as on the sheets, cell for cell, with live formulas.</summary>
internal sealed class SectionSheet
{
    public SectionSheet(WorkbookInput input, QuantitySheet quantities)
    {
        Sheet = SheetHead.Make(input, "By section", "Summary by section", "The same table stands on the sheets. Area a nail: Voronoi cells of the heads on the face.");
        Sheet.HeadColumns = 2;
        TableData printed = SummaryTables.BySection(input.Quantities);
        for (int c = 0; c < printed.Columns.Count; c++)
        {
            Sheet.Put(5, c, printed.Columns[c].Head, CellStyle.Head);
            Sheet.Widen(c, Width(printed, c));
        }
        IReadOnlyList<SectionQuantities> sections = input.Quantities.Sections;
        for (int s = 0; s < sections.Count; s++)
            Row(sections[s], printed.Rows[s], 6 + s, s, quantities);
        Totals(input, printed.Rows[^1], 6 + sections.Count);
        Sheet.Tables.Add(("by-section", [[.. printed.Columns.Select(c => c.Head)], .. printed.Rows]));
    }

    public SheetContent Sheet { get; }

    private static readonly (int Column, string Name, CellFormat Format)[] Measured =
    [
        (4, QuantityName.FaceArea, CellFormat.One), (8, QuantityName.NailCount, CellFormat.Whole), (10, QuantityName.PayLength, CellFormat.Two),
        (11, QuantityName.Projection, CellFormat.Two), (12, QuantityName.BarLength, CellFormat.Two),
        (18, QuantityName.VerificationCount, CellFormat.Whole), (19, QuantityName.ProofCount, CellFormat.Whole),
        (20, QuantityName.UnresolvedCount, CellFormat.Whole),
    ];

    private void Row(SectionQuantities section, IReadOnlyList<string> texts, int row, int index, QuantitySheet quantities)
    {
        foreach (int column in new[] { 0, 1, 2, 3, 6, 9, 14 })
            Sheet.Put(row, column, texts[column], CellStyle.Text);
        Sheet.Put(row, 5, SheetCell.Of(section.Rows.Count, CellFormat.Whole));
        Sheet.Put(row, 7, SheetCell.Of(section.Gaps.Count, CellFormat.Whole));
        Sheet.Put(row, 13, SheetCell.Of(double.Parse(texts[13], System.Globalization.CultureInfo.InvariantCulture), CellFormat.Two));
        Sheet.Put(row, 15, SheetCell.Of(section.MeanArea, CellFormat.Two));
        Sheet.Put(row, 16, SheetCell.Of(section.GreatestArea, CellFormat.Two));
        Sheet.Put(row, 17, SheetCell.Of(section.Section.HorizontalSpacing * section.Section.VerticalSpacing, CellFormat.Two));
        foreach ((int column, string name, CellFormat format) in Measured)
            Sheet.Put(row, column, SheetCell.Calculated(quantities.Of(name, index), section.Amounts[name].Amount, format));
    }

    private void Totals(WorkbookInput input, IReadOnlyList<string> texts, int row)
    {
        for (int c = 0; c < texts.Count; c++)
            Sheet.Put(row, c, SheetCell.Blank(new CellStyle(CellLook.Total, CellFormat.General)));
        Sheet.Put(row, 0, texts[0], new CellStyle(CellLook.Total, CellFormat.General));
        foreach ((int column, string name, CellFormat format) in Measured)
            Sheet.Put(row, column, SheetCell.Calculated(QuantitySheet.NameOf(name), input.Quantities.Totals[name].Amount, new CellStyle(CellLook.Total, format)));
        string gaps = CellAddress.Of(7, 6) + ":" + CellAddress.Of(7, Math.Max(6, row - 1));
        Sheet.Put(row, 7, SheetCell.Calculated($"SUM({gaps})", input.Quantities.Sections.Sum(s => s.Gaps.Count), new CellStyle(CellLook.Total, CellFormat.Whole)));
    }

    private static double Width(TableData table, int column) =>
        Math.Clamp(table.Rows.Max(r => r[column].Length) + 3, 11, 40);
}

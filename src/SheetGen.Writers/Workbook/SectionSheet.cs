using System.Globalization;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>The summary by section: the same table as on the sheets, cell for cell, with live formulas.</summary>
internal sealed class SectionSheet
{
    private const int HeadRow = 5;
    private readonly QuantityTable _table;
    private readonly IReadOnlyList<SummaryColumn> _columns;
    private readonly QuantitySheet _quantities;
    private readonly NailSheet _nails;
    private readonly ReconciliationSheet _rows;
    private readonly GapSheet _gaps;
    private readonly LengthSheet _lengths;

    public SectionSheet(WorkbookInput input, QuantitySheet quantities, NailSheet nails, ReconciliationSheet rows, GapSheet gaps, LengthSheet lengths)
    {
        (_table, _quantities, _nails, _rows, _gaps, _lengths) = (input.Quantities, quantities, nails, rows, gaps, lengths);
        Sheet = SheetHead.Make(input, "By section", "Summary by section", "The same table stands on the sheets. Area a nail: Voronoi cells of the heads on the face, as laid out; gaps as laid out.");
        Sheet.HeadColumns = 2;
        _columns = SummaryTables.SectionColumns(_table);
        TableData printed = SummaryTables.BySection(_table);
        for (int c = 0; c < _columns.Count; c++)
        {
            Sheet.Put(HeadRow, c, _columns[c].Head, CellStyle.Head);
            Sheet.Widen(c, Math.Clamp(printed.Rows.Max(r => r[c].Length) + 3, 11, 40));
            for (int s = 0; s < _table.Sections.Count; s++)
                Sheet.Put(HeadRow + 1 + s, c, Cell(_columns[c], _table.Sections[s], s));
            Sheet.Put(HeadRow + 1 + _table.Sections.Count, c, Total(_columns[c], c));
        }
        Sheet.ListTables.Add(new ListTable("BySection", HeadRow, _table.Sections.Count, [.. _columns.Select(c => (c.Head, (string?)null))]));
        Sheet.Tables.Add(("by-section", printed.Rows.Prepend([.. _columns.Select(c => c.Head)])));
    }

    public SheetContent Sheet { get; }

    private SheetCell Cell(SummaryColumn column, SectionQuantities section, int index)
    {
        if (column.Decimals is not { } decimals)
            return column.Key == "lengths" ? _lengths.TextOf(section, index) : SheetCell.Of(column.Text(section), CellStyle.Text);
        CellFormat format = FormatOf(decimals);
        string number = _quantities.NumberCell(index);
        string At(string key) => CellAddress.Of(ColumnOf(key), HeadRow + 1 + index);
        string area = _nails.Table.Range("area"), sections = _nails.Table.Range("no");
        return column.Key switch
        {
            "rows" => SheetCell.Calculated(_rows.RowCount(number), section.Rows.Count, format),
            "gaps" => SheetCell.Calculated(_gaps.Count(number), section.Gaps.Count, format),
            "mean" => SheetCell.Calculated($"IFERROR(IF({At(QuantityName.NailCount)}=0,\"\",SUMIFS({area},{sections},{number})/{At(QuantityName.NailCount)}),\"\")", section.MeanArea, format),
            "greatest" => SheetCell.Calculated($"IFERROR(IF({At(QuantityName.NailCount)}=0,\"\",SUMPRODUCT(MAX(({sections}={number})*{area}))),\"\")", section.GreatestArea, format),
            "product" => SheetCell.Calculated($"{At("horizontal")}*{At("vertical")}", section.Section.HorizontalSpacing * section.Section.VerticalSpacing, format),
            "horizontal" => SheetCell.Of(section.Section.HorizontalSpacing, format),
            "vertical" => SheetCell.Of(section.Section.VerticalSpacing, format),
            "hole" => SheetCell.Of(double.Parse(column.Text(section), CultureInfo.InvariantCulture), format),
            _ => SheetCell.Calculated(_quantities.Of(column.Key, index), section.Amounts[column.Key].Amount, format),
        };
    }

    private SheetCell Total(SummaryColumn column, int place)
    {
        var style = new CellStyle(CellLook.Total, column.Decimals is { } decimals ? FormatOf(decimals) : CellFormat.General);
        if (column.Key == "gaps")
        {
            string cells = CellAddress.Of(place, HeadRow + 1) + ":" + CellAddress.Of(place, Math.Max(HeadRow + 1, HeadRow + _table.Sections.Count));
            return SheetCell.Calculated($"SUM({cells})", _table.Sections.Sum(s => s.Gaps.Count), style);
        }
        if (_table.Totals.TryGetValue(column.Key, out Quantity? total))
            return SheetCell.Calculated(QuantitySheet.NameOf(column.Key), total.Amount, style);
        return column.Total.Length > 0 ? SheetCell.Of(column.Total, style) : SheetCell.Blank(style);
    }

    private int ColumnOf(string key)
    {
        for (int c = 0; c < _columns.Count; c++)
        {
            if (_columns[c].Key == key)
                return c;
        }
        throw new ArgumentException("no column " + key, nameof(key));
    }

    private static CellFormat FormatOf(int decimals) => decimals switch
    {
        0 => CellFormat.Whole,
        1 => CellFormat.One,
        _ => CellFormat.Two,
    };
}

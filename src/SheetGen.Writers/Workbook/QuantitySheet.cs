using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>All quantities by name, in total, by wall and by section: between the bid items and the lists.</summary>
internal sealed class QuantitySheet
{
    private const int FirstRow = 6, TotalColumn = 3;
    private readonly WorkbookInput _input;
    private readonly Sources _sources;
    private readonly int _firstSection;

    public QuantitySheet(WorkbookInput input, Sources sources)
    {
        _input = input;
        _sources = sources;
        Sheet = SheetHead.Make(input, "Quantities", "Quantities", "Unrounded. Each row has a name that the pay items use; the sections are summed from the lists behind.");
        Sheet.HeadColumns = 3;
        QuantityTable table = input.Quantities;
        List<Model.Wall> walls = [.. table.Sections.Select(s => s.Wall).Distinct()];
        int wallColumns = walls.Count > 1 ? walls.Count : 0;
        _firstSection = TotalColumn + 1 + wallColumns;
        int after = _firstSection + table.Sections.Count;
        Heads(walls, wallColumns, after);
        for (int i = 0; i < table.Definitions.Count; i++)
        {
            QuantityDefinition definition = table.Definitions[i];
            int row = FirstRow + i;
            Sheet.Put(row, 0, definition.Name, CellStyle.Text);
            Sheet.Put(row, 1, definition.Text, CellStyle.Text);
            Sheet.Put(row, 2, definition.Unit, CellStyle.Text);
            CellFormat format = definition.Unit == "each" ? CellFormat.Whole : CellFormat.Two;
            for (int s = 0; s < table.Sections.Count; s++)
                Sheet.Put(row, _firstSection + s, SectionCell(definition.Name, table.Sections[s], s, row, format));
            for (int w = 0; w < wallColumns; w++)
                Sheet.Put(row, TotalColumn + 1 + w, SumCell(table, definition.Name, row, i => ReferenceEquals(table.Sections[i].Wall, walls[w]), format));
            SheetCell total = SumCell(table, definition.Name, row, _ => true, format);
            Sheet.Put(row, TotalColumn, total);
            Sheet.Put(row, after, definition.Basis, CellStyle.Text);
            Sheet.Put(row, after + 1, table.Totals[definition.Name].Note, CellStyle.Note);
            Names.Add(new NamedCell(NameOf(definition.Name), CellAddress.Absolute(Sheet.Name, TotalColumn, row)));
        }
        AddTable();
    }

    public SheetContent Sheet { get; }

    public List<NamedCell> Names { get; } = [];

    /// <summary>Name of the cell that holds a quantity's total.</summary>
    public static string NameOf(string quantity) => "q_" + quantity;

    /// <summary>The cell of a quantity in a section, for formulas on any sheet.</summary>
    public string Of(string quantity, int section) => CellAddress.Absolute(Sheet.Name, _firstSection + section, RowOf(quantity));

    private void AddTable()
    {
        int columns = _firstSection + _input.Quantities.Sections.Count + 2;
        var rows = new List<IReadOnlyList<string>>();
        for (int row = FirstRow - 1; row < FirstRow + _input.Quantities.Definitions.Count; row++)
        {
            SortedDictionary<int, SheetCell> cells = Sheet.Rows[row];
            rows.Add([.. Enumerable.Range(0, columns).Select(c => cells.TryGetValue(c, out SheetCell cell) ? cell.Plain : "")]);
        }
        Sheet.Tables.Add(("quantities", rows));
    }

    private int RowOf(string quantity)
    {
        for (int i = 0; i < _input.Quantities.Definitions.Count; i++)
        {
            if (_input.Quantities.Definitions[i].Name == quantity)
                return FirstRow + i;
        }
        throw new ArgumentException("no quantity " + quantity, nameof(quantity));
    }

    private void Heads(List<Model.Wall> walls, int wallColumns, int after)
    {
        (string Text, double Width)[] heads = [("Name", 24), ("Quantity", 44), ("Unit", 8), ("Total", 14)];
        for (int c = 0; c < heads.Length; c++)
            Head(c, heads[c].Text, heads[c].Width);
        for (int w = 0; w < wallColumns; w++)
            Head(TotalColumn + 1 + w, walls[w].Name, 14);
        for (int s = 0; s < _input.Quantities.Sections.Count; s++)
        {
            SectionQuantities section = _input.Quantities.Sections[s];
            Sheet.Put(4, _firstSection + s, SheetCell.Of(s + 1, new CellStyle(CellLook.Note, CellFormat.Whole)));
            Head(_firstSection + s, $"{section.Wall.Name}, section {section.Section.Name}", 14);
        }
        Sheet.Put(4, 0, "Section no. (as in the lists)", CellStyle.Note);
        Head(after, "How it is measured", 60);
        Head(after + 1, "Note", 50);
    }

    private void Head(int column, string text, double width)
    {
        Sheet.Put(5, column, text, CellStyle.Head);
        Sheet.Widen(column, width);
    }

    private SheetCell SumCell(QuantityTable table, string name, int row, Func<int, bool> where, CellFormat format)
    {
        List<int> chosen = [.. Enumerable.Range(0, table.Sections.Count).Where(where)];
        List<double> known = [.. chosen.Select(i => table.Sections[i].Amounts[name].Amount).OfType<double>()];
        string cells = chosen.Count == 0 ? CellAddress.Of(_firstSection, row)
            : CellAddress.Of(_firstSection + chosen[0], row) + ":" + CellAddress.Of(_firstSection + chosen[^1], row);
        return SheetCell.Calculated(
            $"IF(COUNT({cells})=0,\"\",SUM({cells}))", known.Count == 0 ? null : known.Sum(), new CellStyle(CellLook.Strong, format));
    }

    private SheetCell SectionCell(string name, SectionQuantities section, int index, int row, CellFormat format)
    {
        string number = CellAddress.Letter(_firstSection + index) + "$4";
        double? amount = section.Amounts[name].Amount;
        string At(string other) => CellAddress.Of(_firstSection + index, RowOf(other));
        return _sources.FormulaOf(name, number, index, At) is { } formula && (amount is not null || Sources.RestsOnRate(name))
            ? SheetCell.Calculated(formula, amount, format)
            : SheetCell.Of(amount, format);
    }
}

using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>All quantities by name, in total, by wall, by stage and by section: between the bid items and the lists.</summary>
internal sealed class QuantitySheet
{
    private const int TotalColumn = 3, StageRow = 4;
    private const string NoStage = "no stage";
    private readonly WorkbookInput _input;
    private readonly Sources _sources;
    private readonly List<Model.Wall> _walls;
    private readonly List<string> _stages;
    private readonly int _numberRow, _firstStage, _firstSection, _after;

    public QuantitySheet(WorkbookInput input, Sources sources)
    {
        _input = input;
        _sources = sources;
        QuantityTable table = input.Quantities;
        _walls = [.. table.Sections.Select(s => s.Wall).Distinct()];
        if (_walls.Count == 1)
            _walls.Clear();
        _stages = table.Sections.Any(s => s.Section.Stage.Length > 0) ? [.. table.Sections.Select(StageOf).Distinct(StringComparer.OrdinalIgnoreCase)] : [];
        _numberRow = _stages.Count > 0 ? StageRow + 1 : StageRow;
        _firstStage = TotalColumn + 1 + _walls.Count;
        _firstSection = _firstStage + _stages.Count;
        _after = _firstSection + table.Sections.Count;
        Sheet = SheetHead.Make(input, "Quantities", "Quantities", "Unrounded. Each row has a name that the pay items use; the sections are summed from the lists behind.");
        Sheet.HeadColumns = 3;
        Sheet.HeadRows = _numberRow + 1;
        Heads();
        for (int i = 0; i < table.Definitions.Count; i++)
            Line(table, table.Definitions[i], FirstRow + i);
        AddTable();
    }

    private int FirstRow => Sheet.HeadRows + 1;

    private int Checks => (_walls.Count > 0 ? 1 : 0) + (_stages.Count > 0 ? 1 : 0);

    public SheetContent Sheet { get; }

    public List<NamedCell> Names { get; } = [];

    /// <summary>Name of the cell that holds a quantity's total.</summary>
    public static string NameOf(string quantity) => "q_" + quantity;

    /// <summary>The cell of a quantity in a section, for formulas on any sheet.</summary>
    public string Of(string quantity, int section) => CellAddress.Absolute(Sheet.Name, _firstSection + section, RowOf(quantity));

    /// <summary>The cell with a section's number, for formulas on any sheet.</summary>
    public string NumberCell(int section) => CellAddress.Absolute(Sheet.Name, _firstSection + section, _numberRow);

    private void Line(QuantityTable table, QuantityDefinition definition, int row)
    {
        string name = definition.Name;
        Sheet.Put(row, 0, name, CellStyle.Text);
        Sheet.Put(row, 1, definition.Text, CellStyle.Text);
        Sheet.Put(row, 2, definition.Unit, CellStyle.Text);
        CellFormat format = definition.Unit == "each" ? CellFormat.Whole : CellFormat.Two;
        for (int s = 0; s < table.Sections.Count; s++)
            Sheet.Put(row, _firstSection + s, SectionCell(name, table.Sections[s], s, row, format));
        for (int w = 0; w < _walls.Count; w++)
            Sheet.Put(row, TotalColumn + 1 + w, SumCell(table, name, row, i => ReferenceEquals(table.Sections[i].Wall, _walls[w]), format));
        for (int t = 0; t < _stages.Count; t++)
            Sheet.Put(row, _firstStage + t, StageCell(table, name, row, t, format));
        Sheet.Put(row, TotalColumn, SumCell(table, name, row, _ => true, format));
        int check = _after;
        if (_walls.Count > 0)
            Sheet.Put(row, check++, CheckCell(table, name, row, TotalColumn + 1, _walls.Count));
        if (_stages.Count > 0)
            Sheet.Put(row, check++, CheckCell(table, name, row, _firstStage, _stages.Count));
        Sheet.Put(row, check, definition.Basis, CellStyle.Text);
        Sheet.Put(row, check + 1, table.Totals[name].Note, CellStyle.Note);
        Names.Add(new NamedCell(NameOf(name), CellAddress.Absolute(Sheet.Name, TotalColumn, row)));
    }

    private void AddTable()
    {
        int columns = _after + Checks + 2;
        Sheet.Tables.Add(("quantities", Enumerable.Range(Sheet.HeadRows, _input.Quantities.Definitions.Count + 1).Select(r => Sheet.Plain(r, columns))));
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

    private void Heads()
    {
        (string Text, double Width)[] heads = [("Name", 25), ("Quantity", 46), ("Unit", 8), ("Total", 14)];
        for (int c = 0; c < heads.Length; c++)
            Head(c, heads[c].Text, heads[c].Width);
        for (int w = 0; w < _walls.Count; w++)
            Head(TotalColumn + 1 + w, _walls[w].Name, 14);
        for (int t = 0; t < _stages.Count; t++)
        {
            Head(_firstStage + t, _stages[t] == NoStage ? NoStage : "Stage " + _stages[t], 14);
            Sheet.Put(StageRow, _firstStage + t, SheetCell.Of(_stages[t], CellStyle.Note));
        }
        for (int s = 0; s < _input.Quantities.Sections.Count; s++)
        {
            SectionQuantities section = _input.Quantities.Sections[s];
            if (_stages.Count > 0)
                Sheet.Put(StageRow, _firstSection + s, SheetCell.Of(StageOf(section), CellStyle.Note));
            Sheet.Put(_numberRow, _firstSection + s, SheetCell.Of(s + 1, new CellStyle(CellLook.Note, CellFormat.Whole)));
            Head(_firstSection + s, $"{section.Wall.Name}, section {section.Section.Name}", 14);
        }
        if (_stages.Count > 0)
            Sheet.Put(StageRow, 0, "Stage", CellStyle.Note);
        Sheet.Put(_numberRow, 0, "Section no. (as in the lists)", CellStyle.Note);
        int check = _after;
        if (_walls.Count > 0)
            Head(check++, "Walls less total", 12);
        if (_stages.Count > 0)
            Head(check++, "Stages less total", 12);
        Head(check, "How it is measured", 62);
        Head(check + 1, "Note", 50);
    }

    private void Head(int column, string text, double width)
    {
        Sheet.Put(_numberRow + 1, column, text, CellStyle.Head);
        Sheet.Widen(column, width);
    }

    private static string StageOf(SectionQuantities section) => section.Section.Stage.Length > 0 ? section.Section.Stage : NoStage;

    /// <summary>Sum over the sections whose stage in the row of stages is the column's own.</summary>
    private SheetCell StageCell(QuantityTable table, string name, int row, int stage, CellFormat format)
    {
        string Cells(int at, string dollar) =>
            $"{dollar}{CellAddress.Letter(_firstSection)}{dollar}{at}:{dollar}{CellAddress.Letter(_after - 1)}{dollar}{at}";
        string chosen = $"({Cells(StageRow, "$")}={CellAddress.Letter(_firstStage + stage)}${StageRow})", cells = Cells(row, "");
        List<double> known =
        [
            .. table.Sections.Where(s => StageOf(s).Equals(_stages[stage], StringComparison.OrdinalIgnoreCase)).Select(s => s.Amounts[name].Amount).OfType<double>(),
        ];
        return SheetCell.Calculated(
            $"IF(SUMPRODUCT({chosen}*ISNUMBER({cells}))=0,\"\",SUMPRODUCT(--{chosen},{cells}))", known.Count == 0 ? null : known.Sum(), new CellStyle(CellLook.Strong, format));
    }

    /// <summary>Sum of the subtotals less the total: 0.</summary>
    private SheetCell CheckCell(QuantityTable table, string name, int row, int first, int count)
    {
        string total = CellAddress.Of(TotalColumn, row), cells = CellAddress.Of(first, row) + ":" + CellAddress.Of(first + count - 1, row);
        return SheetCell.Calculated($"IF({total}=\"\",\"\",ROUND(SUM({cells})-{total},6))", table.Totals[name].Amount is null ? null : 0, CellFormat.Three);
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
        string number = CellAddress.Letter(_firstSection + index) + "$" + _numberRow;
        double? amount = section.Amounts[name].Amount;
        string At(string other) => CellAddress.Of(_firstSection + index, RowOf(other));
        return _sources.FormulaOf(name, number, index, At) is { } formula && (amount is not null || Sources.RestsOnRate(name))
            ? SheetCell.Calculated(formula, amount, format)
            : SheetCell.Of(amount, format);
    }
}

using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>All quantities by name, in total, by wall, by stage and by section: between the bid items and the lists.</summary>
internal sealed class QuantitySheet
{
    private const int TotalColumn = 3, StateColumn = 4, FirstWall = 5, StageRow = 4;
    public const string Incomplete = "incomplete", NotGiven = "not given", NotAsked = "not asked for";
    private const string NoStage = "no stage", WithoutPlace = " verification nails without a place";
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
        _firstStage = FirstWall + _walls.Count;
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

    /// <summary>Name of the cell that says what a quantity's total lacks; empty where it is whole.</summary>
    public static string StateNameOf(string quantity) => "state_" + quantity;

    public List<Model.Wall> Walls => _walls;

    public List<string> Stages => _stages;

    /// <summary>Cells of the states of all quantities, for formulas on any sheet.</summary>
    public string States => CellAddress.Range(Sheet.Name, StateColumn, FirstRow, FirstRow + _input.Quantities.Definitions.Count - 1);

    /// <summary>Cells with the words of all quantities, for formulas on any sheet.</summary>
    public string Texts => CellAddress.Range(Sheet.Name, 1, FirstRow, FirstRow + _input.Quantities.Definitions.Count - 1);

    /// <summary>The cell of a quantity's name: the place that links lead to.</summary>
    public string PlaceOf(string quantity) => CellAddress.Absolute(Sheet.Name, 0, RowOf(quantity));

    /// <summary>The cell of a quantity for a wall of <see cref="Walls"/>.</summary>
    public string OfWall(string quantity, int wall) => CellAddress.Absolute(Sheet.Name, FirstWall + wall, RowOf(quantity));

    /// <summary>The cell of a quantity for a stage of <see cref="Stages"/>.</summary>
    public string OfStage(string quantity, int stage) => CellAddress.Absolute(Sheet.Name, _firstStage + stage, RowOf(quantity));

    /// <summary>The cell of a quantity in a section, for formulas on any sheet.</summary>
    public string Of(string quantity, int section) => CellAddress.Absolute(Sheet.Name, _firstSection + section, RowOf(quantity));

    /// <summary>The cell with a section's number, for formulas on any sheet.</summary>
    public string NumberCell(int section) => CellAddress.Absolute(Sheet.Name, _firstSection + section, _numberRow);

    /// <summary>Head of a stage's column.</summary>
    public string StageHead(int stage) => _stages[stage] == NoStage ? NoStage : "Stage " + _stages[stage];

    /// <summary>What the state of a quantity says as the take-off has it.</summary>
    public string StoredState(string quantity)
    {
        int without = CountsVerification(quantity) ? _input.Quantities.Tests.Sum(t => t.Asked - t.Verification) : 0;
        if (without > 0)
            return FormattableString.Invariant($"{Incomplete}: {without}{WithoutPlace}");
        List<Quantity> parts = [.. _input.Quantities.Sections.Select(s => s.Amounts[quantity])];
        int known = parts.Count(p => p.Amount is not null), asked = parts.Count(p => p.Amount is not null || p.Missing.Count > 0);
        return asked == 0 ? NotAsked : known == 0 ? NotGiven : known < asked ? FormattableString.Invariant($"{Incomplete}: {known} of {asked} sections") : "";
    }

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
            Sheet.Put(row, FirstWall + w, SumCell(table, name, row, i => ReferenceEquals(table.Sections[i].Wall, _walls[w]), format));
        for (int t = 0; t < _stages.Count; t++)
            Sheet.Put(row, _firstStage + t, StageCell(table, name, row, t, format));
        Sheet.Put(row, StateColumn, StateCell(table, name, row));
        Sheet.Put(row, TotalColumn, SumCell(table, name, row, _ => true, format));
        int check = _after;
        if (_walls.Count > 0)
            Sheet.Put(row, check++, CheckCell(table, name, row, FirstWall, _walls.Count));
        if (_stages.Count > 0)
            Sheet.Put(row, check++, CheckCell(table, name, row, _firstStage, _stages.Count));
        Sheet.Put(row, check, definition.Basis, CellStyle.Text);
        Sheet.Put(row, check + 1, table.Totals[name].Note, CellStyle.Note);
        Names.Add(new NamedCell(NameOf(name), CellAddress.Absolute(Sheet.Name, TotalColumn, row)));
        Names.Add(new NamedCell(StateNameOf(name), CellAddress.Absolute(Sheet.Name, StateColumn, row)));
        if (_sources.Of(name, "0", _ => "0")?.List is { } list)
            Sheet.PutLink(row, 0, name, $"'{list.Name}'!A1");
    }

    private static bool CountsVerification(string quantity) => quantity is QuantityName.VerificationCount or QuantityName.VerificationLength
        or QuantityName.VerificationBarLength or QuantityName.VerificationBarWeight or QuantityName.VerificationGrout;

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
        (string Text, double Width)[] heads = [("Name", 25), ("Quantity", 46), ("Unit", 8), ("Total", 14), ("Incomplete?", 30)];
        for (int c = 0; c < heads.Length; c++)
            Head(c, heads[c].Text, heads[c].Width);
        for (int w = 0; w < _walls.Count; w++)
            Head(FirstWall + w, _walls[w].Name, 14);
        for (int t = 0; t < _stages.Count; t++)
        {
            Head(_firstStage + t, StageHead(t), 14);
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

    public static string StageOf(SectionQuantities section) => section.Section.Stage.Length > 0 ? section.Section.Stage : NoStage;

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

    /// <summary>What the total lacks: parts of sections, or figures of nails.</summary>
    private SheetCell StateCell(QuantityTable table, string name, int row)
    {
        int asked = table.Sections.Count(x => x.Amounts[name].Amount is not null || x.Amounts[name].Missing.Count > 0);
        string cells = CellAddress.Of(_firstSection, row) + ":" + CellAddress.Of(Math.Max(_firstSection, _after - 1), row);
        string state = asked == 0
            ? $"IF(COUNT({cells})=0,\"{NotAsked}\",\"\")"
            : FormattableString.Invariant($"IF(COUNT({cells})>={asked},\"\",IF(COUNT({cells})=0,\"{NotGiven}\",\"{Incomplete}: \"&COUNT({cells})&\" of {asked} sections\"))");
        if (CountsVerification(name))
        {
            string without = _sources.Tests.WithoutPlace;
            state = $"IF({without}>0,\"{Incomplete}: \"&{without}&\"{WithoutPlace}\",{state})";
        }
        if (_sources.Of(name, "0", _ => "0")?.List == _sources.Nails.Sheet)
            state = $"IF({SummarySheet.FaultyNails}>0,\"{Incomplete}: nails with a figure missing\",{state})";
        return SheetCell.Calculated(state, StoredState(name), new CellStyle(asked == 0 ? CellLook.Note : CellLook.Warning, CellFormat.General));
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
        return _sources.Of(name, number, At) is var (formula, list) && (amount is not null || Sources.RestsOnRate(name) || list == _sources.Facing.Sheet)
            ? SheetCell.Calculated($"IFERROR({formula},\"\")", amount, format)
            : SheetCell.Of(amount, format);
    }
}

using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>
/// The independent check: each main quantity as the workbook has it now, as it was laid out, and by a second way, which follows the lists
/// where it is computed from them and stays as it is where it has a source of its own, such as the finished drawing.
/// </summary>
internal sealed class CheckSheet
{
    private const string Look = "look", Agrees = "agrees", NotPossible = "not possible", Compare = "to compare";
    private readonly WorkbookInput _input;
    private readonly QuantitySheet _quantities;
    private readonly Sources _sources;
    private readonly ReconciliationSheet _rows;

    public CheckSheet(WorkbookInput input, QuantitySheet quantities, Sources sources, ReconciliationSheet rows)
    {
        (_input, _quantities, _sources, _rows) = (input, quantities, sources, rows);
        Sheet = SheetHead.Make(input, "Independent check", "Independent check",
            "Each main quantity by a second way. The yellow cells are the checker's: own value by an independent method, initials, date. The checker's limit stands in Rates.");
        Sheet.HeadColumns = 1;
        IReadOnlyList<CheckLine> checks = input.Quantities.Checks;
        Table = new TableBlock<CheckLine>(Sheet, "Checks", 5, checks);
        TableBlock<CheckLine> t = Table;
        const string limit = RateSheet.CheckLimit;
        static CellFormat Format(CheckLine c) => c.Unit == "each" ? CellFormat.One : CellFormat.Two;
        t.Text("text", "Quantity", 44, c => c.Text)
            .Text("unit", "Unit", 8, c => c.Unit)
            .Add("first", "In this workbook", 14, c => SheetCell.Calculated(FirstOf(c), c.First, Format(c)))
            .Number("laid", "As laid out", 14, CellFormat.Two, c => c.First)
            .Formula("changed", "Changed since", 12, CellFormat.Three, $"ROUND({t.This("first")}-{t.This("laid")},6)", _ => 0)
            .Add("second", "Second way", 14, c => SecondOf(c) is { } formula
                ? SheetCell.Calculated($"IFERROR({formula},\"\")", c.Second, Format(c)) : SheetCell.Of(c.Second, Format(c)))
            .Wrapped("way", "How", 44, c => c.Way)
            .Text("source", "Source of the second way", 24, c => c.Source == CheckSource.Stored ? "its own, as laid out" : "the lists, as they are now")
            .Formula("difference", "Difference", 12, CellFormat.Three,
                $"IF({t.This("second")}=\"\",\"\",ROUND({t.This("second")}-{t.This("first")},6))", c => Rounded(c.Second - c.First))
            .Number("allowed", "Limit, share", 10, CellFormat.General, c => c.Limit)
            .FormulaText("verdict", "Verdict", 12, CellStyle.Text,
                $"IF({t.This("difference")}=\"\",\"{NotPossible}\",IF({t.This("allowed")}=\"\",\"{Compare}\",IF(ABS({t.This("difference")})<={t.This("allowed")}*ABS({t.This("first")})+0.000001,\"{Agrees}\",\"{Look}\")))",
                Verdict)
            .Input("checker", "Checker's value", 14, CellFormat.General)
            .Formula("own", "Checker's difference", 13, CellFormat.Three, $"IF({t.This("checker")}=\"\",\"\",{t.This("checker")}-{t.This("first")})", _ => null)
            .FormulaText("judged", "Against the checker's limit", 15, CellStyle.Text,
                $"IF(OR({t.This("own")}=\"\",{limit}=\"\"),\"\",IF(ABS({t.This("own")})<={limit}*ABS({t.This("first")}),\"{Agrees}\",\"{Look}\"))", _ => "")
            .Input("initials", "Initials", 10, CellFormat.Text)
            .Input("date", "Date", 12, CellFormat.Date);
        t.Fill("check");
        Sheet.Rules.Add(new InputRule(t.CellsOf("checker"), -1e12, 1e12, "The checker's own value: a number, or nothing."));
    }

    public SheetContent Sheet { get; }

    public TableBlock<CheckLine> Table { get; }

    /// <summary>How many lines ask for a look, for formulas on any sheet.</summary>
    public string LookCount => $"COUNTIF({Table.Range("verdict")},\"{Look}\")";

    /// <summary>How many lines have changed since the layout, for formulas on any sheet.</summary>
    public string ChangedCount => $"SUMPRODUCT(ISNUMBER({Table.Range("changed")})*({Table.Range("changed")}<>0))";

    public string FirstLook => $"IFERROR(INDEX({Table.Range("text")},MATCH(\"{Look}\",{Table.Range("verdict")},0)),\"\")";

    public static int StoredLooks(WorkbookInput input) => input.Quantities.Checks.Count(c => Verdict(c) == Look);

    public static string StoredFirstLook(WorkbookInput input) => input.Quantities.Checks.FirstOrDefault(c => Verdict(c) == Look)?.Text ?? "";

    private string FirstOf(CheckLine line)
    {
        if (line.Section is { } section)
            return _quantities.Of(line.Name, IndexOf(section));
        return QuantitySheet.NameOf(line.Name);
    }

    /// <summary>The second way over the lists of the workbook; null where it has a source of its own.</summary>
    private string? SecondOf(CheckLine line)
    {
        TableBlock<NailQuantity> nails = _sources.Nails.Table;
        string production = $"--({nails.Range("kind")}<>\"verification\")";
        string Squared(string axis) => $"({nails.Range("tip_" + axis)}-{nails.Range("head_" + axis)})^2";
        switch (line.Source)
        {
            case CheckSource.Grid when line.Section is { } section:
                return $"SUMIFS({_rows.Table.Range("total")},{_rows.Table.Range("no")},{_quantities.NumberCell(IndexOf(section))})";
            case CheckSource.Lifts:
                return $"SUM({_sources.Lifts.Table.Range("area")})";
            case CheckSource.Columns:
                return $"SUMPRODUCT({_sources.Facing.Sections.Range("columns")},{_sources.Facing.Sections.Range("thickness")})";
            case CheckSource.Coordinates:
                return $"SUMPRODUCT({production},SQRT({Squared("n")}+{Squared("e")}+{Squared("z")}))";
            case CheckSource.Density:
                return $"SUMPRODUCT({production},--ISNUMBER({nails.Range("unit_weight")}),{nails.Range("bar_length")},{nails.Range("bar_area")})*{(_input.IsFeet ? 490 : 7850)}";
            case CheckSource.HoleAreas:
                return $"SUMPRODUCT({production},PI()/4*{nails.Range("hole")}^2-{nails.Range("bar_area")},{nails.Range("length")})";
            default:
                return null;
        }
    }

    private int IndexOf(SectionQuantities section) => _input.NumberOf(section.Wall, section.Section) - 1;

    /// <summary>Without the binary noise of a difference of equals, and without a negative zero.</summary>
    private static double? Rounded(double? difference) => difference is { } d ? Math.Round(d, 6) + 0.0 : null;

    private static string Verdict(CheckLine line) => line.Second is not { } second ? NotPossible
        : line.Limit is not { } limit ? Compare
        : Math.Abs(Math.Round(second - line.First, 6)) <= limit * Math.Abs(line.First) + 0.000001 ? Agrees : Look;
}

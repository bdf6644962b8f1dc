using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>What is measured in the field, a row a nail: as-built length, grout take, test and date, with the pay quantity up to a day.</summary>
internal sealed class FieldSheet
{
    private const int HeadRow = 10;
    private const double MostTake = 1.3;
    private const string UpTo = "field_up_to";

    public FieldSheet(WorkbookInput input, NailSheet nails)
    {
        Sheet = SheetHead.Make(input, "Field", "Measured in the field",
            "Yellow cells are filled in on site. Grout take of 100 to 130 % of the theoretical hole volume is usual; outside of it the engineer is told (FHWA-NHI-14-007, 9.3.4 and 9.3.5, as transcribed; check against the original).");
        Sheet.HeadRows = HeadRow;
        Sheet.HeadColumns = 1;
        string l = input.Length, volume = l + "3";
        bool fromBack = input.Project.PayLengthFrom == Model.PayLengthFrom.BackOfShotcrete;
        Table = new TableBlock<NailQuantity>(Sheet, "Field", HeadRow, input.Quantities.Nails, true);
        TableBlock<NailQuantity> t = Table;
        string Nail(string key) => $"INDEX({nails.Table.Range(key)},{t.This("at")})";
        t.Text("nail", "Nail", 14, n => n.Nail.Mark)
            .Formula("at", "Row of the nail list", 10, CellFormat.General, $"MATCH({t.This("nail")},{nails.Table.Range("nail")},0)", n => input.PlaceOf(n))
            .FormulaText("kind", "Kind", 13, CellStyle.Text, $"IFERROR({Nail("kind")},\"not in the nail list\")", n => ResultWords.Of(n.Nail.Kind))
            .Formula("plan", $"Plan length, {l}", 11, CellFormat.Two, Nail("length"), n => n.Nail.Length)
            .Input("built", $"As-built length from face, {l}", 13, CellFormat.Two)
            .Input("date", "Date grouted", 12, CellFormat.Date)
            .Formula("paid_plan", $"Plan pay length, {l}", 11, CellFormat.Two, Nail("pay"), n => n.PayLength)
            .Formula("paid", $"Pay length as built, {l}", 11, CellFormat.Two,
                $"IF(OR(N({t.This("built")})<=0,{t.This("kind")}=\"verification\"),\"\",{t.This("built")}{(fromBack ? $"-{Nail("shotcrete")}" : "")})", _ => null)
            .Formula("over", $"Over or under plan, {l}", 11, CellFormat.Two, $"IF({t.This("paid")}=\"\",\"\",{t.This("paid")}-{t.This("paid_plan")})", _ => null)
            .Formula("hole", $"Theoretical hole volume, {volume}", 12, CellFormat.Three,
                $"{Nail("hole_volume")}*IF(N({t.This("built")})>0,{t.This("built")}/{t.This("plan")},1)", n => n.HoleVolume)
            .Input("grout", $"Grout placed, {volume}", 11, CellFormat.Three)
            .Formula("take", "Take, share of the hole", 11, CellFormat.Percent, $"IF(N({t.This("grout")})<=0,\"\",{t.This("grout")}/{t.This("hole")})", _ => null)
            .FormulaText("verdict", "Take against 100 to 130 %", 18, CellStyle.Text,
                FormattableString.Invariant($"IF({t.This("take")}=\"\",\"\",IF({t.This("take")}<1,\"under: tell the engineer\",IF({t.This("take")}>{MostTake},\"over: tell the engineer\",\"usual\")))"), _ => "")
            .Input("test", "Test", 14, CellFormat.Text)
            .Input("result", "Result of the test", 14, CellFormat.Text)
            .Input("remark", "Remark", 30, CellFormat.Text);
        t.Fill("field");
        Sums(input, t);
        Sheet.Rules.Add(new InputRule(t.CellsOf("built"), 0, 1000, "The length drilled, from the face, or nothing.", "", false));
        Sheet.Rules.Add(new InputRule(t.CellsOf("grout"), 0, 100000, "The volume of grout placed, or nothing.", "", false));
        Sheet.Rules.Add(new InputRule(t.CellsOf("test"), 0, 0, "verification or proof, or nothing.", "verification,proof", false));
        Sheet.Rules.Add(new InputRule(t.CellsOf("result"), 0, 0, "passed, failed or not finished, or nothing.", "passed,failed,not finished", false));
    }

    public SheetContent Sheet { get; }

    public TableBlock<NailQuantity> Table { get; }

    public List<NamedCell> Names { get; } = [];

    /// <summary>Nails, lengths and pay lengths up to a day, in all and against the plan of the same nails.</summary>
    private void Sums(WorkbookInput input, TableBlock<NailQuantity> t)
    {
        string l = input.Length;
        IEnumerable<NailQuantity> production = input.Quantities.Nails.Where(n => !n.IsSacrificial);
        string day = $"IF({UpTo}=\"\",2958465,{UpTo})", date = t.Range("date"), paid = t.Range("paid");
        string built = $"ISNUMBER({paid})*(({UpTo}=\"\")+({date}<>\"\")*({date}<={day})>0)";
        Sheet.Put(4, 0, "Up to and with (date; empty: all)", CellStyle.Text);
        Sheet.Put(4, 4, SheetCell.Blank(new CellStyle(CellLook.Input, CellFormat.Date)));
        Names.Add(new NamedCell(UpTo, CellAddress.Absolute(Sheet.Name, 4, 4)));
        Put(5, 0, "Production nails in the plan", $"COUNTIF({t.Range("kind")},\"pro*\")", production.Count(), CellFormat.Whole);
        Put(5, 6, "of these built", $"SUMPRODUCT({built})", 0, CellFormat.Whole);
        Put(6, 0, $"Pay length in the plan, {l}", $"SUMIFS({t.Range("paid_plan")},{t.Range("kind")},\"pro*\")", production.Sum(n => n.PayLength), CellFormat.Two);
        Put(6, 6, $"Pay length as built, {l}", $"IFERROR(SUMPRODUCT({built},{paid}),0)", 0, CellFormat.Two);
        Put(7, 0, $"of this still to build, {l}", $"{Cell(6, 4)}-{Cell(7, 10)}", production.Sum(n => n.PayLength), CellFormat.Two);
        Put(7, 6, $"Plan of the nails built, {l}", $"IFERROR(SUMPRODUCT({built},{t.Range("paid_plan")}),0)", 0, CellFormat.Two);
        Put(8, 0, "Nails with a take outside 100 to 130 %", $"COUNTIF({t.Range("verdict")},\"*engineer\")", 0, CellFormat.Whole);
        Put(8, 6, $"Over (+) or under (-) plan, {l}", $"ROUND({Cell(6, 10)}-{Cell(7, 10)},6)", 0, CellFormat.Two);

        static string Cell(int row, int column) => CellAddress.Of(column, row);
        void Put(int row, int column, string text, string formula, double value, CellFormat format)
        {
            Sheet.Put(row, column, text, CellStyle.Text);
            Sheet.Put(row, column + 4, SheetCell.Calculated(formula, value, new CellStyle(CellLook.Strong, format)));
        }
    }
}

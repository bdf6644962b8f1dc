using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>The independent check: our own second way, and empty cells for a checker's.</summary>
internal sealed class CheckSheet
{
    public CheckSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Independent check", "Independent check",
            "A second way to each main quantity. The yellow cells are the checker's: own value by an independent method, initials, date. The checker's limit stands in Rates.");
        var t = new TableBlock<CheckLine>(Sheet, 5, input.Quantities.Checks);
        const string limit = RateSheet.CheckLimit;
        static CellFormat Format(CheckLine c) => c.Unit == "each" ? CellFormat.One : CellFormat.Two;
        t.Text("text", "Quantity", 44, c => c.Text)
            .Text("unit", "Unit", 8, c => c.Unit)
            .Add("first", "As measured", 14, (c, _) => SheetCell.Of(c.First, Format(c)))
            .Add("second", "Second way", 14, (c, _) => SheetCell.Of(c.Second, Format(c)))
            .Text("way", "How", 44, c => c.Way)
            .Add("difference", "Difference", 12, (c, r) => SheetCell.Calculated(
                $"IF({t.At("second", r)}=\"\",\"\",ROUND({t.At("second", r)}-{t.At("first", r)},6))", Rounded(c.Second - c.First), CellFormat.Three))
            .Add("allowed", "Limit, share", 10, (c, _) => SheetCell.Of(c.Limit, CellFormat.Percent))
            .Add("verdict", "Verdict", 12, (c, r) => SheetCell.Calculated(
                $"IF({t.At("second", r)}=\"\",\"not possible\",IF(ABS({t.At("difference", r)})<={t.At("allowed", r)}*ABS({t.At("first", r)})+0.000001,\"agrees\",\"look\"))",
                Verdict(c), CellStyle.Text))
            .Add("checker", "Checker's value", 14, (_, _) => SheetCell.Blank(new CellStyle(CellLook.Input, CellFormat.General)))
            .Add("own", "Checker's difference", 13, (_, r) => SheetCell.Calculated(
                $"IF({t.At("checker", r)}=\"\",\"\",{t.At("checker", r)}-{t.At("first", r)})", "", CellFormat.Three))
            .Add("judged", "Against the checker's limit", 15, (_, r) => SheetCell.Calculated(
                $"IF(OR({t.At("checker", r)}=\"\",{limit}=\"\"),\"\",IF(ABS({t.At("own", r)})<={limit}*ABS({t.At("first", r)}),\"agrees\",\"look\"))", "", CellStyle.Text))
            .Add("initials", "Initials", 10, (_, _) => SheetCell.Blank(new CellStyle(CellLook.Input, CellFormat.Text)))
            .Add("date", "Date", 12, (_, _) => SheetCell.Blank(new CellStyle(CellLook.Input, CellFormat.Text)));
        t.Fill("check");
        string cells = t.At("checker", t.FirstRow) + ":" + t.At("checker", t.LastRow);
        Sheet.Rules.Add(new InputRule(cells, -1e12, 1e12, "The checker's own value: a number, or nothing."));
    }

    public SheetContent Sheet { get; }

    /// <summary>Without the binary noise of a difference of equals, and without a negative zero.</summary>
    private static double? Rounded(double? difference) => difference is { } d ? Math.Round(d, 6) + 0.0 : null;

    private static string Verdict(CheckLine line) => line.Second is not { } second ? "not possible"
        : Math.Abs(second - line.First) <= line.Limit * Math.Abs(line.First) + 0.000001 ? "agrees" : "look";
}

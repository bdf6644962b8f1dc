using System.Globalization;
using System.Text;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Tests.Quantities;
using Xunit;

namespace SheetGen.Tests.Writers;

/// <summary>What an estimator does to the workbook, recalculated by LibreOffice: all that depends on it follows, and nothing is silent.</summary>
[Trait("Category", "Outside")]
public class WorkbookEditTests
{
    private const string Wall = "survey feet, panels";
    private static readonly Lazy<byte[]> Written = new(() => WorkbookTests.Write(WorkbookTests.Take(StrangeWallTests.Walls[Wall])));
    private static readonly Lazy<Dictionary<string, string[][]>> Untouched = new(() => Recalculation.Recalculate(Written.Value));

    [Fact]
    public void Untouched_it_lacks_nothing_that_it_does_not_name()
    {
        AssertNoErrors(Untouched.Value);
        Assert.Equal(0, Panel(Untouched.Value, "Nails with a figure missing or wrong"));
        Assert.Equal(0, Panel(Untouched.Value, "Rows below the nail table"));
        Assert.Equal(0, Panel(Untouched.Value, "Lines of the independent check"));
        Assert.Equal(0, Panel(Untouched.Value, "Main quantities that were changed"));
    }

    [Fact]
    public void A_changed_length_reaches_every_sum_and_the_check_notices()
    {
        var book = new EditedBook(Written.Value);
        string[] nail = Untouched.Value["Nails"][5];
        int length = Place(book.Column("Nails", "Length from face"));
        double before = Number(nail[length]), after = before + 1.25;
        Dictionary<string, string[][]> now = Recalculation.Recalculate(book.Number("Nails", book.Column("Nails", "Length from face") + "6", after).Bytes());
        AssertNoErrors(now);
        foreach (string name in new[] { QuantityName.PayLength, QuantityName.BarLength, QuantityName.HoleLength })
            Assert.Equal(1.25, Total(now, name) - Total(Untouched.Value, name), 9);
        Assert.True(Total(now, QuantityName.GroutVolume) > Total(Untouched.Value, QuantityName.GroutVolume));
        Assert.Equal(Total(now, QuantityName.BarLength), BarLengths(now), 9);
        Assert.Contains(now["Bars"].Skip(5), r => r[2].Length > 0 && Number(r[2]) == after && r[4] == "1");
        Assert.Contains(FormattableString.Invariant($"{after:0.###}: 1"), string.Join("|", now["By section"][5]), StringComparison.Ordinal);
        Assert.Equal(Sum(now["Grout"], "Theoretical grout, ft3"), Total(now, QuantityName.GroutVolume), 6);
        Assert.Equal(0, Panel(now, "Bars of nails on no line"));
        Assert.True(Panel(now, "Lines of the independent check") > 0);
        Assert.True(Panel(now, "Main quantities that were changed") > 0);
    }

    [Fact]
    public void An_added_nail_counts_everywhere()
    {
        var book = new EditedBook(Written.Value);
        int row = book.AddRow("Nails", "Nails");
        string at = row.ToString(CultureInfo.InvariantCulture);
        book.Text("Nails", book.Column("Nails", "Nail") + at, "X-1").Text("Nails", book.Column("Nails", "Kind") + at, "production");
        Dictionary<string, string[][]> now = Recalculation.Recalculate(book.Bytes());
        AssertNoErrors(now);
        double length = Number(now["Nails"][row - 1][Place(book.Column("Nails", "Length from face"))]);
        Assert.Equal(1, Total(now, QuantityName.NailCount) - Total(Untouched.Value, QuantityName.NailCount));
        Assert.Equal(length, Total(now, QuantityName.FaceLength) - Total(Untouched.Value, QuantityName.FaceLength), 9);
        Assert.Equal(Total(now, QuantityName.BarLength), BarLengths(now), 9);
        Assert.Equal(0, Panel(now, "Rows below the nail table"));
        Assert.Equal(0, Panel(now, "Nails in no section"));
        Assert.Contains(now["Independent check"], r => r[0].StartsWith("Production nails", StringComparison.Ordinal) && r.Contains("look"));
    }

    [Fact]
    public void A_nail_below_the_table_is_named()
    {
        var book = new EditedBook(Written.Value);
        book.AddRow("Nails", "Nails", inTable: false);
        Dictionary<string, string[][]> now = Recalculation.Recalculate(book.Bytes());
        Assert.Equal(1, Panel(now, "Rows below the nail table"));
        Assert.StartsWith("INCOMPLETE", Status(now), StringComparison.Ordinal);
    }

    [Fact]
    public void A_deleted_nail_is_gone_everywhere()
    {
        Dictionary<string, string[][]> now = Recalculation.Recalculate(new EditedBook(Written.Value).DeleteRow("Nails", "Nails", 8).Bytes());
        AssertNoErrors(now, "Field");
        Assert.Equal(-1, Total(now, QuantityName.NailCount) - Total(Untouched.Value, QuantityName.NailCount));
        Assert.Equal(Total(now, QuantityName.BarLength), BarLengths(now), 9);
        Assert.True(Panel(now, "Lines of the independent check") > 0);
        Assert.Contains(now["Field"], r => r.Length > 2 && r[2] == "not in the nail list");
    }

    [Fact]
    public void A_blank_rate_leaves_blanks_and_says_so()
    {
        Dictionary<string, string[][]> now = Recalculation.Recalculate(new EditedBook(Written.Value).Rate("bar_projection", null).Rate("grout_overrun", null).Bytes());
        AssertNoErrors(now);
        foreach (string name in new[] { QuantityName.BarLength, QuantityName.BarWeight, QuantityName.GroutWithOverrun, QuantityName.Projection })
        {
            string[] row = Row(now, name);
            Assert.Equal("", row[3]);
            Assert.Equal("not given", row[4]);
        }
        Assert.Equal(Total(Untouched.Value, QuantityName.PayLength), Total(now, QuantityName.PayLength), 9);
    }

    [Fact]
    public void Errors_of_the_user_are_named_and_the_sum_says_incomplete()
    {
        var book = new EditedBook(Written.Value);
        string price = book.Column("BidItems", "Unit price");
        Dictionary<string, string[][]> now = Recalculation.Recalculate(book
            .Formula("Bid quantities", price + "7", "1/0").Number("Bid quantities", price + "8", 10)
            .Text("Nails", book.Column("Nails", "Length from face") + "6", "about 20").Formula("Nails", book.Column("Nails", "Hole diameter") + "7", "1/0").Bytes());
        Assert.Equal(1, Panel(now, "Pay items whose price is an error"));
        Assert.True(Panel(now, "Pay items without a price") > 0);
        Assert.Equal(2, Panel(now, "Nails with a figure missing or wrong"));
        Assert.Equal(1, Panel(now, "Cells with an error in the lists"));
        Assert.StartsWith("INCOMPLETE", Status(now), StringComparison.Ordinal);
        Assert.Contains(now["Bid quantities"], r => r[0] == "Sum, INCOMPLETE");
        string[] errors = [.. now.SelectMany(s => s.Value.SelectMany((r, i) => r.Where(IsError).Select(_ => FormattableString.Invariant($"{s.Key} {i + 1}"))))];
        Assert.Equal(["Bid quantities 7", "Nails 7"], errors);
    }

    /// <summary>Rounding up and down, negative, by steps, and nail by nail: the workbook's own formula gives what is stored, also after an edit.</summary>
    [Fact]
    public void Pay_items_round_in_the_workbook_as_they_do_here()
    {
        string[] quantities = ["pay_length", "pay_length - 3 * bar_length", "face_length / 7", "pay_length / 3"];
        string[] rules = ["up, decimals: 0", "down, decimals: 1", "nearest, step: 5", "up, step: 0.25, each: nail", "down, decimals: 0, each: nail", "up, decimals: 0, each: wall"];
        var text = new StringBuilder("format: 1\nname: Own\nnotice: none\nitems:\n");
        foreach ((string quantity, string rule, int i) in quantities.SelectMany(q => rules.Select(r => (q, r))).Select((x, i) => (x.q, x.r, i)))
            text.Append(CultureInfo.InvariantCulture, $"  - {{number: \"{i}\", description: d, unit: LF, unit_metric: m, quantity: {quantity}, rounding: {{direction: {rule}}}, measured: m, subsidiary: []}}\n");
        (WallProject project, NailLayout layout) = StrangeWallTests.Walls["three stages"].Make();
        QuantityTable table = TakeOff.Measure(project, layout);
        var problems = new List<Problem>();
        PayItemSet set = PayItemFile.Read(text.ToString(), "own.yaml", project.Unit, problems)!;
        Assert.Equal([], problems.Select(p => p.Message));
        BidTable bid = BidQuantities.Make(table, set, project.Rates);
        Assert.Contains(bid.Lines, l => l.Rounded < 0);
        Recalculation.AssertEqual(WorkbookTests.Write((project, layout, table, bid)));
    }

    /// <summary>Every rate that the project file can give, with borings and a cost build-up: all that is stored is what is recalculated.</summary>
    [Fact]
    public void Every_rate_reaches_what_rests_on_it()
    {
        TestWall wall = StrangeWallTests.Walls["metric, left"];
        wall = wall with
        {
            Rates = wall.Rates with
            {
                StockLengths = [6, 9],
                LeastPiece = 1,
                CentralizerEnd = 0.5,
                CheckLimit = 0.01,
                WalerBars = 2,
                BearingBars = 4,
                BearingBarLength = 0.9,
                PlateWeight = 6.2,
                NutWeight = 0.6,
                WasherWeight = 0.4,
                CouplerWeight = 1.5,
                MeshLength = 6,
                MeshWidth = 2.4,
                MeshLap = 0.2,
                StripLap = 0.1,
                SpareNails = 0.02,
                PadWidth = 0.5,
                PadHeight = 0.15,
                CopingWidth = 0.4,
                CopingHeight = 0.3,
                MarkUp = 0.12,
                HoursPerDay = 8,
                Rigs = 2,
                Drilling = new Dictionary<string, double> { ["clay"] = 12, ["sand"] = 9, ["above boring B-1"] = 15, ["below boring B-1"] = 5 },
                BuildUp = new Dictionary<string, CostParts> { ["1"] = new(30, 20, 40, null), ["3"] = new(null, null, null, 80) },
            },
        };
        (WallProject project, NailLayout layout) = wall.Make();
        project = project with { Borings = [new Boring("B-1", project.Walls[0].LayoutLine.PointAt(20), 37, 25, null, [new BoringLayer(33.2, "clay", 20), new BoringLayer(25, "sand", null)])] };
        var taken = WorkbookTests.Take(project, layout, "generic");
        Assert.NotEmpty(taken.Table.Soils);
        Assert.NotNull(taken.Table.Cutting);
        Assert.All(taken.Table.Soils, s => Assert.NotNull(s.Hours));
        byte[] book = WorkbookTests.Write(taken);
        Recalculation.AssertEqual(book);
        Dictionary<string, string[][]> sheets = Recalculation.Recalculate(book);
        AssertNoErrors(sheets);
        Assert.True(Sum(sheets["Production"], "Drilling, crew days") > 0);
        double hours = taken.Table.Soils.Where(s => s.Lift > 0).Sum(s => s.Hours!.Value);
        Assert.InRange(Sum(sheets["Production"], "Drilling, crew days") * 16, 0.8 * hours, 1.2 * hours);
        Assert.True(Sum(sheets["Cost build-up"], "Cost with mark-up") > 0);

        // Rates a day: drilling goes before the rates by layer, and each task has its amount over its rate.
        Rates daily = project.Rates with { DrillingPerDay = 50, ShotcretePerDay = 40, ExcavationPerDay = 80 };
        var paced = WorkbookTests.Take(project with { Rates = daily }, layout, "generic");
        byte[] pacedBook = WorkbookTests.Write(paced);
        Recalculation.AssertEqual(pacedBook);
        string[][] production = Recalculation.Recalculate(pacedBook)["Production"];
        Assert.Equal(paced.Table.Lifts.Sum(x => x.CutArea) / 40, Sum(production, "Shotcrete, crew days"), 6);
        Assert.Equal(layout.Nails.Where(n => n.Kind != NailKind.Verification).Sum(n => n.Length) / 50, Sum(production, "Drilling, crew days"), 6);
        Assert.Equal(paced.Table.Lifts.Sum(x => x.Volume ?? 0) / 80, Sum(production, "Excavation, crew days"), 6);
    }

    /// <summary>A nail built longer, one shorter and one with too much grout: paid as built, over and under plan, and the engineer is named.</summary>
    [Fact]
    public void What_is_measured_in_the_field_is_paid_against_the_plan()
    {
        var book = new EditedBook(WorkbookTests.Write(WorkbookTests.Take(StrangeWallTests.Walls["three stages"])));
        string built = book.Column("Field", "As-built length from face"), date = book.Column("Field", "Date grouted"), grout = book.Column("Field", "Grout placed");
        double day = new DateTime(2026, 5, 4).ToOADate(), hole = Math.PI * 0.25 / 4;
        book.Number("Field", built + "11", 25.5).Number("Field", date + "11", day).Number("Field", grout + "11", 25.5 * hole * 1.1)
            .Number("Field", built + "12", 23).Number("Field", date + "12", day).Number("Field", grout + "12", 23 * hole * 1.4)
            .Number("Field", built + "13", 24).Number("Field", date + "13", day + 1).Number("Field", grout + "13", 24 * hole * 0.9).Number("Field", "E4", day);
        string[][] field = Recalculation.Recalculate(book.Bytes())["Field"];
        Assert.Equal("2", field[4][10]);
        Assert.Equal(48.5, Number(field[5][10]), 9);
        Assert.Equal(48, Number(field[6][10]), 9);
        Assert.Equal(0.5, Number(field[7][10]), 9);
        Assert.Equal("2", field[7][4]);
        int verdict = Array.IndexOf(field[9], "Take against 100 to 130 %");
        Assert.Equal(["usual", "over: tell the engineer", "under: tell the engineer"], field[10..13].Select(r => r[verdict]));
    }

    private static void AssertNoErrors(Dictionary<string, string[][]> sheets, string except = "") =>
        Assert.Equal([], sheets.Where(s => s.Key != except).SelectMany(s => s.Value.SelectMany((r, i) => r.Where(IsError).Select(c => FormattableString.Invariant($"{s.Key} {i + 1}: {c}")))));

    private static bool IsError(string text) => text.StartsWith("#DIV", StringComparison.Ordinal) || text is "#VALUE!" or "#REF!" or "#NAME?" or "#NUM!" or "#N/A" or "#NULL!"
        || text.StartsWith("Err:", StringComparison.Ordinal);

    private static string[] Row(Dictionary<string, string[][]> sheets, string quantity) => sheets["Quantities"].Single(r => r[0] == quantity);

    private static double Total(Dictionary<string, string[][]> sheets, string quantity) => Number(Row(sheets, quantity)[3]);

    private static double Panel(Dictionary<string, string[][]> sheets, string line) =>
        Number(sheets["Summary"].Single(r => r[0].StartsWith(line, StringComparison.Ordinal))[1]);

    private static string Status(Dictionary<string, string[][]> sheets) => sheets["Summary"].Single(r => r[0] == "Completeness")[1];

    /// <summary>Total length of the bar list's lines for production nails.</summary>
    private static double BarLengths(Dictionary<string, string[][]> sheets) =>
        sheets["Bars"].Skip(5).Where(r => r[1] == "production" && r[5].Length > 0).Sum(r => Number(r[5]));

    private static double Sum(string[][] sheet, string head)
    {
        int column = Array.IndexOf(sheet[4], head);
        return sheet.Skip(5).Where(r => r[column].Length > 0).Sum(r => Number(r[column]));
    }

    private static int Place(string letters) => letters.Aggregate(0, (n, c) => n * 26 + c - 'A' + 1) - 1;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}

using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using Xunit;

namespace SheetGen.Tests.Quantities;

public class StrangeWallTests
{
    public static TheoryData<string> Names => [.. Walls.Keys];

    internal static IReadOnlyDictionary<string, TestWall> Walls { get; } = new Dictionary<string, TestWall>
    {
        ["one nail"] = new() { End = 4, Elements = [new LayoutElement.Tangent(4)], Top = [new(0, 104)] },
        ["no nail"] = new() { End = 4, Elements = [new LayoutElement.Tangent(4)], Top = [new(0, 101.5)] },
        ["height under one spacing"] = new() { Top = [new(0, 103.5)], Depth = 1.5 },
        ["no panels, no grade"] = new() { Facing = null, Drainage = null, Lifts = null },
        ["top runs out to the bottom"] = new() { Top = [new(0, 100), new(50, 112), new(100, 100)] },
        ["three stages"] = new()
        {
            Limits = [25, 50, 75],
            Stages = ["1", "2b", "1", ""],
            CrossSections = [new CrossSection(0, [new(0, 121), new(20, 121), new(40, 100)]), new CrossSection(100, [new(0, 118), new(10, 110)])],
        },
        ["metric, left"] = new()
        {
            Unit = LengthUnit.Metre,
            Side = Turn.Left,
            End = 40,
            Elements = [new LayoutElement.Tangent(25), new LayoutElement.Bend(Turn.Left, 40), new LayoutElement.Arc(60, 15, Turn.Right)],
            Top = [new(0, 36), new(40, 37.5)],
            Steps = [new(0, 31), new(20, 31.4)],
            Grade = [new(0, 31.8), new(40, 32.2)],
            Spacing = 1.5,
            Depth = 0.6,
            Length = 7.5,
            Hole = 0.15,
            FaceOffset = 0.4,
            Batter = new Batter(6, 31),
            Facing = new Facing { Shotcrete = 0.1, Coping = "cast in place", Kind = FacingKind.CastInPlace, Thickness = 0.25 },
            Drainage = new Drainage(0.3, 3),
            Lifts = new Lifts(0.5, 1.5, 24),
            Limits = [18],
            Rates = new Rates
            {
                GroutOverrun = 1.25,
                ShotcreteLoss = 0.1,
                StockLengths = [6],
                CentralizerSpacing = 2.5,
                DesignBond = 37.6991,
                TestBondedLength = 3,
                TestFreeLength = 1,
                Contingency = 0.1,
                Prices = new Dictionary<string, double> { ["1"] = 120.5, ["2"] = 4000, ["3"] = 95 },
            },
        },
        ["survey feet, panels"] = new()
        {
            Unit = LengthUnit.SurveyFoot,
            Elements = [new LayoutElement.Tangent(60), new LayoutElement.Bend(Turn.Right, 30), new LayoutElement.Tangent(40)],
            Top = [new(0, 118), new(60, 121.5)],
            Steps = [new(0, 102), new(40, 102.5)],
            Grade = [new(0, 104), new(100, 106)],
            Panels = new Panels(10, 5, 0),
            Breaks = [10, 20, 30, 40, 50, 60, 70, 80, 90],
            Limits = [60],
            From = PayLengthFrom.BackOfShotcrete,
            Rates = new Rates { StockLengths = [20], GroutOverrun = 1.3, ShotcreteLoss = 0.15, CentralizerSpacing = 8 },
        },
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void Is_measured_without_a_break(string name)
    {
        (WallProject project, NailLayout layout) = Walls[name].Make();
        QuantityTable table = TakeOff.Measure(project, layout);
        Assert.All(table.Totals.Values, q => Assert.True(q.Amount is null || double.IsFinite(q.Amount.Value), q.Name));
        Assert.All(table.Totals.Values, q => Assert.True(q.Amount is not null || q.Note.Length > 0, q.Name));
        Assert.Equal(layout.Nails.Count(n => n.Kind != NailKind.Verification), table.Totals[QuantityName.NailCount].Amount);
        if (table.Nails.Any(n => !n.IsSacrificial))
        {
            double cells = table.Nails.Sum(n => n.Area ?? 0), face = table.Totals[QuantityName.FaceArea].Amount!.Value;
            Assert.InRange(cells, face * 0.999, face * 1.001);
        }
        Assert.Equal(table.Totals[QuantityName.FaceArea].Amount!.Value, table.Lifts.Sum(l => l.CutArea), 6);
        Assert.All(table.Checks.Where(c => c.Limit < 0.2), c =>
            Assert.True(Math.Abs(c.First - c.Second!.Value) <= c.Limit * Math.Abs(c.First) + 1e-6, $"{c.Text}: {c.First} against {c.Second} ({c.Way})"));
        TableData summary = SummaryTables.BySection(table);
        Assert.All(summary.Rows, r => Assert.Equal(summary.Columns.Count, r.Count));
    }
}

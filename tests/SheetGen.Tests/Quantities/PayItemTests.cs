using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Quantities;

public class PayItemTests
{
    [Theory]
    [InlineData("1 + 2 * 3", 7)]
    [InlineData("(1 + 2) * 3", 9)]
    [InlineData("8 / 2 / 2", 2)]
    [InlineData("10 - 4 - 3", 3)]
    [InlineData("pay_length / 27", 2)]
    [InlineData("2 * (pay_length - 4) / 5", 20)]
    public void Expressions(string text, double value)
    {
        PayExpression? expression = PayExpression.Parse(text, out PayExpressionFault? fault);
        Assert.Null(fault);
        Assert.Equal(value, expression!.Evaluate(_ => 54, out _)!.Value, 12);
    }

    [Theory]
    [InlineData("", "the expression ends too early")]
    [InlineData("1 +", "the expression ends too early")]
    [InlineData("(1 + 2", "'(' without ')' at character 1")]
    [InlineData("1 + 2)", "')' without '(' at character 6")]
    [InlineData("1 2", "unexpected '2' at character 3")]
    [InlineData("* 2", "unexpected '*' at character 1")]
    [InlineData("a ^ 2", "unexpected '^' at character 3")]
    [InlineData("SUM(a)", "unexpected 'SUM(' at character 1")]
    [InlineData("a + -2", "unexpected '-' at character 5")]
    [InlineData("PAY", "unexpected 'PAY' at character 1")]
    [InlineData("a[North]", "unexpected '[' at character 2")]
    [InlineData("1.2.3", "not a number at character 1")]
    [InlineData("()", "unexpected ')' at character 2")]
    public void Bad_expressions(string text, string message)
    {
        Assert.Null(PayExpression.Parse(text, out PayExpressionFault? fault));
        Assert.Equal(message, fault!.Message);
    }

    [Fact]
    public void Missing_amount_gives_no_value_and_what_has_none_is_a_fault()
    {
        Assert.Null(PayExpression.Parse("a + 1", out _)!.Evaluate(_ => null, out PayExpressionFault? none));
        Assert.Null(none);
        Assert.Null(PayExpression.Parse("1 / a", out _)!.Evaluate(_ => 0, out PayExpressionFault? zero));
        Assert.Equal("division by zero at character 3", zero!.Message);
        string large = new('9', 300);
        Assert.Null(PayExpression.Parse($"{large} * {large}", out _)!.Evaluate(_ => 0, out PayExpressionFault? beyond));
        Assert.StartsWith("the value is beyond all numbers", beyond!.Message);
    }

    [Theory]
    [InlineData("pay_length + face_area", null)]
    [InlineData("pay_length * 2 + 10", "a length")]
    [InlineData("pay_length + nail_count * 0.5 ft", "a length")]
    [InlineData("pay_length + nail_count", null)]
    [InlineData("face_area / pay_length", "a length")]
    [InlineData("bar_weight / 2000", "a weight")]
    [InlineData("nail_count + 3", "a number")]
    public void Unlike_things_are_not_added(string text, string? dimension)
    {
        Dimension Of(QuantityReference r) => Dimension.OfUnit(QuantityCatalog.For(LengthUnit.Foot).Single(d => d.Name == r.Name).Unit);
        PayExpression expression = PayExpression.Parse(text, out _)!;
        Assert.Equal(dimension, expression.DimensionOf(Of, out PayExpressionFault? fault)?.ToString());
        Assert.Equal(dimension is null, fault is not null);
    }

    [Theory]
    [InlineData(RoundingDirection.Nearest, 1, 2.5, 3)]
    [InlineData(RoundingDirection.Nearest, 1, -2.5, -3)]
    [InlineData(RoundingDirection.Nearest, 0.1, 2.449999, 2.4)]
    [InlineData(RoundingDirection.Up, 1, 2.0000000001, 2)]
    [InlineData(RoundingDirection.Up, 1, 600.000004, 600)]
    [InlineData(RoundingDirection.Up, 1, 600.0001, 601)]
    [InlineData(RoundingDirection.Up, 1, 2.001, 3)]
    [InlineData(RoundingDirection.Up, 1, -2.001, -3)]
    [InlineData(RoundingDirection.Up, 0.1, 2.01, 2.1)]
    [InlineData(RoundingDirection.Up, 0.1, 600.4, 600.4)]
    [InlineData(RoundingDirection.Up, 10, 101, 110)]
    [InlineData(RoundingDirection.Nearest, 100, 149, 100)]
    [InlineData(RoundingDirection.Down, 1, 2.9999, 2)]
    [InlineData(RoundingDirection.Down, 1, 2.99999, 3)]
    [InlineData(RoundingDirection.Down, 1, -2.5, -2)]
    [InlineData(RoundingDirection.Up, 5, 101, 105)]
    [InlineData(RoundingDirection.Up, 0.25, 101.01, 101.25)]
    [InlineData(RoundingDirection.Down, 0.25, 101.49, 101.25)]
    [InlineData(RoundingDirection.Nearest, 0.25, 101.375, 101.5)]
    public void Rounding(RoundingDirection direction, double step, double value, double rounded) =>
        Assert.Equal(rounded, new PayRounding(direction, step).Round(value), 12);

    [Fact]
    public void Every_set_reads_for_every_unit()
    {
        Assert.Equal(["generic", "harrow-county", "northlake-authority"], PayItemFile.BuiltInNames);
        foreach (string name in PayItemFile.BuiltInNames)
        {
            foreach (LengthUnit unit in Enum.GetValues<LengthUnit>())
            {
                var problems = new List<Problem>();
                Assert.NotNull(PayItemFile.Read(PayItemFile.BuiltIn(name)!, name, unit, problems));
                Assert.Empty(problems);
            }
        }
    }

    [Fact]
    public void Every_fault_of_a_set_is_reported()
    {
        const string text = """
            format: 1
            name: N
            items:
              - {number: "1", description: a, unit: EA, quantity: nail_cuont, rounding: {direction: up, decimals: 0}, measured: m}
              - {number: "1", description: b, quantity: "1", rounding: {direction: up, decimals: 0}, measured: m}
              - {number: "3", description: c, unit: EA, quantity: 1 +, rounding: {direction: sideways, decimals: 9}, measured: m}
            """;
        var problems = new List<Problem>();
        Assert.Null(PayItemFile.Read(text, "items.yaml", LengthUnit.Foot, problems));
        Assert.Equal(
            [
                "items.yaml:4:55 Q01 no quantity is named \"nail_cuont\"",
                "items.yaml:5:5 R11 \"unit\" is missing in a pay item",
                "items.yaml:5:14 Q01 the pay item number 1 is used twice",
                "items.yaml:6:55 Q01 quantity \"1 +\": the expression ends too early",
                "items.yaml:6:82 R16 \"direction\" cannot be \"sideways\"",
                "items.yaml:6:102 R15 \"decimals\" cannot be 9",
            ],
            problems.Select(p => $"{p.Spot} {p.Code} {p.Message}"));
    }

    [Theory]
    [InlineData("{", "items.yaml:1:2 R02")]
    [InlineData("", "items.yaml:1:1 R02")]
    [InlineData("format: 2\nname: N\nitems: [{}]", "items.yaml:1:9 R15")]
    [InlineData("format: 1\nnmae: N\nitems: []", "items.yaml:2:1 R10")]
    public void Broken_file_is_a_problem_with_its_place(string text, string first)
    {
        var problems = new List<Problem>();
        Assert.Null(PayItemFile.Read(text, "items.yaml", LengthUnit.Foot, problems));
        Assert.Equal(first, $"{problems[0].Spot} {problems[0].Code}");
    }

    [Fact]
    public void Agencies_measure_differently()
    {
        (WallProject project, NailLayout layout) = new TestWall().Make();
        QuantityTable table = TakeOff.Measure(project, layout);
        BidLine First(string set) => BidQuantities.Make(
            table, PayItemFile.Read(PayItemFile.BuiltIn(set)!, set, project.Unit, [])!, new Rates { Prices = new Dictionary<string, double> { ["1"] = 50 } }).Lines[0];
        Assert.Equal((1920, 1920, 96000), (First("generic").Raw, First("generic").Rounded, First("generic").Amount));
        double back = 80 * (24 - 1.0 / 3 / Math.Cos(Angles.ToRadians(10)));
        Assert.Equal(back, First("harrow-county").Raw!.Value, 9);
        Assert.Equal(Math.Ceiling(back), First("harrow-county").Rounded);
        Assert.Equal(222.2, First("northlake-authority").Rounded);
    }

    [Fact]
    public void What_an_item_lacks_is_said()
    {
        (WallProject project, NailLayout layout) = new TestWall { Facing = null }.Make();
        BidTable bid = BidQuantities.Make(
            TakeOff.Measure(project, layout), PayItemFile.Read(PayItemFile.BuiltIn("harrow-county")!, "h", project.Unit, [])!, project.Rates);
        BidLine line = bid.Lines.Single(b => b.Item.Number == "611-10");
        Assert.Null(line.Rounded);
        Assert.Equal("no shotcrete thickness (facing: shotcrete): Wall 1", line.Note);
    }
}

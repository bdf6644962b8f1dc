using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Quantities;

/// <summary>What an estimator computed by hand, each with its closed form.</summary>
public class EstimatorTests
{
    private static QuantityTable Measure(TestWall wall)
    {
        (WallProject project, NailLayout layout) = wall.Make();
        return TakeOff.Measure(project, layout);
    }

    private static double Total(QuantityTable table, string name) => table.Totals[name].Amount!.Value;

    // The ring between the face's radius 40.5 and 20.5, 30 m of a 40 m arc: 0.75 rad / 2 x (40.5^2 - 20.5^2) x 7 m high.
    [Fact]
    public void Soil_in_front_of_an_arc_lies_on_shorter_paths()
    {
        QuantityTable table = Measure(new TestWall
        {
            Unit = LengthUnit.Metre,
            Elements = [new LayoutElement.Arc(40, 40, Turn.Left)],
            Start = 5,
            End = 35,
            FaceOffset = 0.5,
            Top = [new(0, 107)],
            Spacing = 1.5,
            Depth = 0.7,
            CrossSections = [new CrossSection(20, [new(0, 107), new(20, 107)])],
        });
        Assert.Equal(0.75 / 2 * (40.5 * 40.5 - 20.5 * 20.5) * 7, Total(table, QuantityName.ExcavationVolume), 6);
    }

    // Two legs of 50 ft, 20 ft of soil 20 ft high, and the kite between them: 20^2 x tan(20 deg) x 20 (outside), the same less (inside).
    [Theory]
    [InlineData(Turn.Right, 1)]
    [InlineData(Turn.Left, -1)]
    public void Soil_in_front_of_a_corner_reaches_to_the_bisector(Turn turn, int sign)
    {
        QuantityTable table = Measure(new TestWall
        {
            Elements = [new LayoutElement.Tangent(50), new LayoutElement.Bend(turn, 40), new LayoutElement.Tangent(50)],
            CrossSections = [new CrossSection(10, [new(0, 120), new(20, 120)])],
        });
        Assert.Equal(40000 + sign * 400 * Math.Tan(Angles.ToRadians(20)) * 20, Total(table, QuantityName.ExcavationVolume), 6);
    }

    [Fact]
    public void Soil_in_front_of_an_opening_is_dug_too()
    {
        var wall = new TestWall { CrossSections = [new CrossSection(0, [new(0, 120), new(20, 120)])] };
        var open = wall with { Openings = [new Opening("Culvert", 20, 28, 103, 109, TestWall.Spot)] };
        Assert.Equal(40000, Total(Measure(open), QuantityName.ExcavationVolume), 6);
        Assert.Equal(48, Total(Measure(wall), QuantityName.FaceArea) - Total(Measure(open), QuantityName.FaceArea), 9);
        Assert.Equal(Total(Measure(open), QuantityName.FaceArea), Measure(open).Lifts.Sum(l => l.CutArea), 6);
    }

    // A 45 degree corner takes offset x tan(22.5 deg) from each of four ends of a row at an offset of 2 ft; the opening takes 8 ft.
    [Fact]
    public void Walers_break_at_openings_and_mitres()
    {
        double cut = 2 * Math.Tan(Angles.ToRadians(22.5));
        QuantityTable table = Measure(new TestWall
        {
            Elements = [new LayoutElement.Tangent(50), new LayoutElement.Bend(Turn.Right, 45), new LayoutElement.Tangent(50)],
            FaceOffset = 2,
            Openings = [new Opening("Culvert", 20, 28, 107, 109, TestWall.Spot)],
        });
        // Rows at 118, 113, 108 and 103: the third runs into the opening.
        Assert.Equal(4 * (100 - 2 * cut) - 8, Total(table, QuantityName.WalerLength), 6);
    }

    [Theory]
    [InlineData(Turn.Right, 560, 8, 4)]
    [InlineData(Turn.Left, 640, 12, 4)]
    public void Panels_end_at_the_mitre(Turn turn, double area, int full, int partial)
    {
        QuantityTable table = Measure(new TestWall
        {
            Elements = [new LayoutElement.Tangent(30), new LayoutElement.Bend(turn, 90), new LayoutElement.Tangent(30)],
            End = 60,
            FaceOffset = 2,
            Top = [new(0, 110)],
            Panels = new Panels(10, 5, 0),
        });
        Assert.Equal(area, table.PanelPieces.Sum(p => p.Area), 9);
        Assert.Equal((full, partial, 0.0), (table.PanelPieces.Count(p => p.Size == PanelSize.Full), table.PanelPieces.Count(p => p.Size == PanelSize.Partial), Total(table, QuantityName.PanelsSpecial)));
        Assert.Equal(area, Total(table, QuantityName.PanelArea), 9);
    }

    // A face of radius 40.5 m over 30 m of a 40 m line is 30.375 m: ten columns of 3 m and a sliver of 0.375 m.
    [Fact]
    public void Panels_of_an_arc_are_full_whatever_the_batter_and_slivers_are_named()
    {
        TestWall wall = new()
        {
            Unit = LengthUnit.Metre,
            Elements = [new LayoutElement.Arc(40, 40, Turn.Left)],
            Start = 5,
            End = 35,
            FaceOffset = 0.5,
            Batter = new Batter(4, 100),
            Top = [new(0, 106)],
            Spacing = 1.5,
            Depth = 0.7,
            Panels = new Panels(3, 1.5, 5),
        };
        QuantityTable table = Measure(wall);
        Assert.Equal(40, Total(table, QuantityName.PanelsFull));
        Assert.Equal(4, Total(table, QuantityName.PanelsPartial));
        Assert.All(table.PanelPieces.Where(p => p.Size == PanelSize.Partial), p => Assert.Equal(0.375, p.Width, 9));
        Assert.Equal(30.375 * 6, Total(table, QuantityName.PanelArea), 9);
        // A line 0.3 m longer at the face leaves a sliver under 0.3 m.
        IReadOnlyList<Finding> findings = Findings(wall with { End = 34.7 });
        Assert.Contains(findings, f => f.Code == FindingCode.Guidance && f.Message.Contains("0.071 m wide", StringComparison.Ordinal));
        Assert.DoesNotContain(Findings(wall), f => f.Code == FindingCode.Guidance);
    }

    [Fact]
    public void A_panel_that_an_opening_cuts_is_no_full_panel_and_has_a_mark_of_its_own()
    {
        QuantityTable table = Measure(new TestWall { Panels = new Panels(10, 5, 0), Openings = [new Opening("Culvert", 32, 36, 106, 109, TestWall.Spot)] });
        Panel cut = Assert.Single(table.PanelPieces, p => p.CutBy.Count > 0);
        Assert.Equal((PanelSize.Partial, 38.0, 4), (cut.Size, Math.Round(cut.Area, 9), cut.Column));
        Assert.Equal(39, Total(table, QuantityName.PanelsFull));
        Assert.Equal(["P1", "P2"], table.PanelPieces.Select(p => p.Mark).Distinct().Order());
        Assert.Single(table.Panels, p => p.Mark == cut.Mark && p.Area is > 37.9 and < 38.1);
    }

    [Fact]
    public void Panels_are_counted_only_where_the_facing_has_panels()
    {
        var wall = new TestWall { Panels = new Panels(10, 5, 0) };
        Assert.Equal(QuantityState.NotAsked, Measure(wall with { Facing = wall.Facing! with { Kind = FacingKind.PermanentShotcrete } }).Totals[QuantityName.PanelCount].State);
        Assert.Equal(QuantityState.Missing, Measure(wall with { Panels = null }).Totals[QuantityName.PanelCount].State);
    }

    // A part row 0.6 ft under a row's cut is no lift: it is drilled from the next one.
    [Fact]
    public void A_sliver_is_no_lift()
    {
        (WallProject project, NailLayout layout) = new TestWall { Lifts = new Lifts(1.5, null, null) }.Make();
        Wall wall = project.Walls[0];
        var part = new NailRow(wall, wall.Sections[0], 0, new RowNumber(110), true, 117.4, 24, [50]);
        QuantityTable table = TakeOff.Measure(project, layout with { Rows = [.. layout.Rows, part] });
        Assert.Equal([3.5, 5, 5, 5, 1.5], table.Lifts.Select(l => Math.Round(l.Exposed, 6)));
        Assert.Equal(["1.1", "2"], table.Lifts[1].Rows.Select(r => r.ToString()));
        Assert.Equal(2000, table.Lifts.Sum(l => l.CutArea), 6);
    }

    // Strips 20 ft high on a level stretch, and on a top that rises by a tenth: no noise of sampling beside the place.
    [Fact]
    public void Heights_are_exact_and_round_up_to_themselves()
    {
        QuantityTable table = Measure(new TestWall { Top = [new(0, 120), new(50, 125), new(100, 120)] });
        double sum = Total(table, QuantityName.StripLength);
        Assert.Equal(table.Strips.Sum(s => 20 + 5 - Math.Abs(s.Along - 50) / 10), sum, 9);
        Assert.Equal(200, new PayRounding(RoundingDirection.Up, 1).Round(Total(Measure(new TestWall()), QuantityName.StripLength)));
    }

    [Fact]
    public void Strips_are_as_few_as_the_spacing_asks_and_only_where_asked_for()
    {
        Assert.Equal(10, Total(Measure(new TestWall()), QuantityName.StripCount));
        Assert.Equal(11, Total(Measure(new TestWall { End = 100, Drainage = new Drainage(1, 9.9) }), QuantityName.StripCount));
        Assert.Equal(QuantityState.NotAsked, Measure(new TestWall { Drainage = null }).Totals[QuantityName.StripLength].State);
    }

    // 24 ft of hole, 2 ft from each end, at most 8 ft apart: 20 / 8 = 2.5, so 4. A 20 ft hole: 16 / 8 = 2, so 3.
    [Theory]
    [InlineData(24, 8, 2, 4)]
    [InlineData(20, 8, 2, 3)]
    [InlineData(4, 8, 2, 1)]
    [InlineData(5, 8, 2, 2)]
    [InlineData(8, 2.5, 0.5, 4)]
    public void Centralizers_stand_from_each_end_and_between(double length, double spacing, double end, int count) =>
        Assert.Equal(count, NailTakeOff.Centralizers(length, spacing, end));

    [Fact]
    public void A_bar_without_a_published_weight_asks_for_it()
    {
        Bar bar = BarTable.Find("#8", 150)!;
        Quantity weight = Measure(new TestWall { Bar = bar }).Totals[QuantityName.BarWeight];
        Assert.Equal((QuantityState.Missing, "no published weight of #8 Gr 150 (bar: weight): Wall 1, section A"), (weight.State, weight.Note));
        Assert.Equal(3.01 * 80 * 24.5, Total(Measure(new TestWall { Bar = bar.WithWeight(3.01, false) }), QuantityName.BarWeight), 6);
        Assert.Equal(4.48, bar.WithWeight(3.01, false).KilogramsPerMetre, 2);
    }

    // 6.15 m of stock 6 m: a stub of 0.15 m. The plan couples 5.15 and 1 m; nails of 5.85 m would need no coupler.
    [Fact]
    public void No_stub_is_bought_with_a_coupler_and_the_length_that_avoids_it_is_said()
    {
        Assert.Equal([5.15, 1], StockPlan.Pieces(6.15, 6, 1));
        Assert.Equal([6, 6, 2.5], StockPlan.Pieces(14.5, 6, 1));
        var wall = new TestWall { Unit = LengthUnit.Metre, Length = 6, Hole = 0.15, Rates = new Rates { StockLengths = [6] } };
        Assert.Contains(Findings(wall), f => f.Message.Contains("nails of 5.85 m, or stock of 6.15 m, would need none", StringComparison.Ordinal));
    }

    // Ten bars of 24.5 ft from stock of 40 and 60 ft: two from each 60, 11 of 60 left over a bar.
    [Fact]
    public void The_cutting_plan_takes_the_stock_that_leaves_least()
    {
        (WallProject project, NailLayout layout) = new TestWall { Tests = TestNails.None, Rates = new Rates { StockLengths = [40, 60] } }.Make();
        CuttingPlan plan = TakeOff.Measure(project, layout).Cutting!;
        CutPattern only = Assert.Single(plan.Patterns);
        Assert.Equal((60.0, 40, 11.0), (only.StockLength, only.Count, only.Drop));
        Assert.Equal(11.0 / 60, plan.DropShare, 9);
        Assert.Equal(80 * 24.5, plan.Used, 6);
    }

    [Fact]
    public void A_sum_with_parts_missing_says_so_everywhere()
    {
        (WallProject project, NailLayout layout) = TwoWalls();
        QuantityTable table = TakeOff.Measure(project, layout);
        Quantity shotcrete = table.Totals[QuantityName.ShotcreteVolume];
        Assert.Equal(QuantityState.Incomplete, shotcrete.State);
        Assert.Equal("incomplete: no shotcrete thickness (facing: shotcrete): wall South", shotcrete.Note);
        BidTable bid = BidQuantities.Make(table, PayItemFile.Read(PayItemFile.BuiltIn("harrow-county")!, "h", project.Unit, [])!,
            new Rates { Prices = new Dictionary<string, double> { ["611-01"] = 60, ["99"] = 5 } });
        Assert.False(bid.IsComplete);
        Assert.Equal(["99"], bid.UnmatchedPrices);
        Assert.Equal(["611-02", "611-03", "611-10", "611-20"], bid.WithoutPrice.Select(l => l.Item.Number));
        IReadOnlyList<Finding> findings = TakeOffFindings.Make(project, table, bid);
        Assert.All(findings, f => Assert.Equal((FindingCode.Incomplete, Severity.Warning), (f.Code, f.Severity)));
        Assert.Contains(findings, f => f.Message == "pay item 611-10 (Shotcrete, temporary) is incomplete: no shotcrete thickness (facing: shotcrete): wall South" && f.Wall!.Name == "South");
        Assert.Contains(findings, f => f.Message.Contains("price of item 99", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("LF", "pay_length + face_area", "Q01")]
    [InlineData("LF", "face_area", "Q01")]
    [InlineData("CY", "shotcrete_volume", "Q01")]
    [InlineData("CY", "shotcrete_volume / 27", null)]
    [InlineData("m", "pay_length", "Q01")]
    [InlineData("LF", "pay_length / 0", "Q01")]
    [InlineData("FURLONG", "pay_length", "Q02")]
    [InlineData("TON", "bar_weight / 2000", null)]
    [InlineData("LS", "1", null)]
    public void A_unit_must_fit_its_quantity(string unit, string quantity, string? code)
    {
        var problems = new List<Problem>();
        PayItemFile.Read(Set(unit, quantity, ""), "items.yaml", LengthUnit.Foot, problems);
        Assert.Equal(code is null ? [] : [code], problems.Select(p => p.Code));
        Assert.All(problems, p => Assert.Equal(4, p.Spot.Line));
    }

    [Fact]
    public void Nothing_is_converted_unless_the_item_says_so()
    {
        var problems = new List<Problem>();
        Assert.Null(PayItemFile.Read(Set("LF", "pay_length", ""), "items.yaml", LengthUnit.Metre, problems));
        Assert.Contains("does not belong to a project in m", problems[0].Message, StringComparison.Ordinal);
        PayItemSet set = PayItemFile.Read(Set("LF", "pay_length", "convert: true, "), "items.yaml", LengthUnit.Metre, [])!;
        Assert.Equal(1 / 0.3048, set.Items[0].Factor, 12);
        Assert.Equal(1.0 / 27, PayItemFile.Read(Set("CY", "face_area * 1 ft", "convert: true, "), "items.yaml", LengthUnit.Foot, [])!.Items[0].Factor, 12);
    }

    [Fact]
    public void Quantities_of_one_wall_and_rounding_wall_by_wall()
    {
        (WallProject project, NailLayout layout) = TwoWalls();
        QuantityTable table = TakeOff.Measure(project, layout);
        BidLine Line(string quantity, string rounding) => BidQuantities.Make(
            table, PayItemFile.Read(Set("LF", quantity, "", rounding), "items.yaml", project.Unit, [])!, project.Rates).Lines[0];
        double north = table.Sections[0].Amounts[QuantityName.BackLength].Amount!.Value;
        Assert.Equal(north, Line("back_length[wall North]", "direction: up, decimals: 0").Raw!.Value, 9);
        Assert.Equal(Math.Ceiling(north) + 1920, Line("back_length", "direction: up, decimals: 0, each: wall").Rounded);
        Assert.Equal(80 * Math.Ceiling(north / 80) + 1920, Line("back_length", "direction: up, decimals: 0, each: nail").Rounded);
        BidTable unknown = BidQuantities.Make(table, PayItemFile.Read(Set("LF", "pay_length[wall East]", ""), "items.yaml", project.Unit, [])!, project.Rates);
        Assert.Equal("no wall is named \"East\"", Assert.Single(unknown.Faults).Fault.Message);
    }

    /// <summary>Once a pay quantity of -99,682 m was handed out.</summary>
    [Theory]
    [InlineData("pay_length - 5000", "", "the quantity is -3080 LF, less than nothing")]
    [InlineData("(0 - pay_length)", ", each: nail", "the quantity is -1920 LF, less than nothing")]
    [InlineData("pay_length - 1920.3", "", "the quantity is -0.3 LF, less than nothing")]
    [InlineData("pay_length - 1920", "", null)]
    [InlineData("pay_length - 1919", "", null)]
    [InlineData("pay_length - pay_length / 3 - pay_length / 3 - pay_length / 3", "", null)]
    public void A_pay_quantity_is_never_less_than_nothing(string quantity, string each, string? fault)
    {
        (WallProject project, NailLayout layout) = new TestWall().Make();
        PayItemSet set = PayItemFile.Read(Set("LF", quantity, "", $"direction: nearest, decimals: 0{each}"), "items.yaml", project.Unit, [])!;
        BidTable bid = BidQuantities.Make(TakeOff.Measure(project, layout), set, project.Rates);
        Assert.Equal(fault is null ? [] : [fault], bid.Faults.Select(f => f.Fault.Message));
    }

    /// <summary>Once a foot taken from the nails of one wall was taken from every nail of the others too.</summary>
    [Theory]
    [InlineData("pay_length[wall North] - 1", ", each: nail", "is -1 where nothing is counted, so that it would count that for every nail of the project")]
    [InlineData("pay_length + 2 ft", ", each: wall", "is 2 where nothing is counted, so that it would count that for every wall of the project")]
    [InlineData("pay_length - 1", "", null)]
    [InlineData("pay_length * 1.05 - hole_length * 0.5", ", each: nail", null)]
    [InlineData("pay_length - pay_length[wall North]", ", each: wall", null)]
    public void What_is_rounded_piece_by_piece_is_nothing_where_there_is_nothing(string quantity, string each, string? fault)
    {
        var problems = new List<Problem>();
        PayItemFile.Read(Set("LF", quantity, "", $"direction: nearest, decimals: 0{each}"), "items.yaml", LengthUnit.Foot, problems);
        Assert.Equal(fault is null ? [] : [$"quantity \"{quantity}\" {fault}"], problems.Select(p => p.Message));
        Assert.All(problems, p => Assert.Equal(4, p.Spot.Line));
    }

    [Fact]
    public void Division_by_a_quantity_of_nothing_is_a_fault_with_a_place()
    {
        (WallProject project, NailLayout layout) = new TestWall().Make();
        BidTable bid = BidQuantities.Make(
            TakeOff.Measure(project, layout), PayItemFile.Read(Set("LF", "pay_length / unresolved_count", ""), "items.yaml", project.Unit, [])!, project.Rates);
        Assert.Equal(("items.yaml", 4, "division by zero at character 12"), (bid.Faults[0].Item.Spot.File, bid.Faults[0].Item.Spot.Line, bid.Faults[0].Fault.Message));
    }

    // 2 in of gap, 5.5 in of facing on a straight plumb wall of 2000 ft2; 8 in laps of 20 x 8 ft sheets.
    [Fact]
    public void Volumes_of_facing_gap_pad_coping_and_laps()
    {
        QuantityTable table = Measure(new TestWall
        {
            Panels = new Panels(10, 5, 0),
            Rates = new Rates
            {
                MeshLength = 20,
                MeshWidth = 8,
                MeshLap = 2.0 / 3,
                PadWidth = 1,
                PadHeight = 0.5,
                CopingWidth = 1.5,
                CopingHeight = 1,
                StripLap = 0.05,
                PlateWeight = 13.6,
                SpareNails = 0.02,
                WalerBars = 2,
                BearingBars = 2,
                BearingBarLength = 3,
                StockLengths = [20],
                CouplerWeight = 3,
            },
        });
        Assert.Equal(2000 * 5.5 / 12, Total(table, QuantityName.FacingVolume), 6);
        Assert.Equal(2000 * 0.5, Total(table, QuantityName.GapVolume), 6);
        Assert.Equal(100 * 0.5, Total(table, QuantityName.PadVolume), 6);
        Assert.Equal(100 * 1.5, Total(table, QuantityName.CopingVolume), 6);
        Assert.Equal(2000 * 160 / ((20 - 2.0 / 3) * (8 - 2.0 / 3)), Total(table, QuantityName.MeshWithLaps), 6);
        Assert.Equal(Total(table, QuantityName.MeshWithLaps) / 160, Total(table, QuantityName.MeshSheets), 6);
        Assert.Equal(200 * 1.05, Total(table, QuantityName.StripSupplied), 6);
        Assert.Equal((80 * 13.6, 1.6, 81.0, 243.0), (Total(table, QuantityName.PlateWeight), Total(table, QuantityName.SpareNails), Total(table, QuantityName.Couplers), Total(table, QuantityName.CouplerWeight)));
        Assert.Equal((800.0, 480.0), (Total(table, QuantityName.WalerBarLength), Total(table, QuantityName.BearingBarLength)));
    }

    private static IReadOnlyList<Finding> Findings(TestWall wall)
    {
        (WallProject project, NailLayout layout) = wall.Make();
        QuantityTable table = TakeOff.Measure(project, layout);
        return TakeOffFindings.Make(project, table, BidQuantities.Make(table, new PayItemSet("none", "", []), project.Rates));
    }

    /// <summary>Two walls alike; the southern gives neither shotcrete thickness nor finished grade.</summary>
    private static (WallProject Project, NailLayout Layout) TwoWalls()
    {
        (WallProject project, NailLayout layout) = new TestWall { Grade = [new(0, 104)], Tests = TestNails.None }.Make();
        Wall north = project.Walls[0] with { Name = "North" };
        Section section = north.Sections[0] with { Name = "B" };
        Wall south = north with { Name = "South", Facing = null, FinishedGrade = null, Sections = [section] };
        return (
            project with { Walls = [north, south] },
            layout with
            {
                Nails = [.. layout.Nails.Select(n => n with { Wall = north }), .. layout.Nails.Select(n => n with { Wall = south, Section = section, Mark = "S" + n.Mark })],
                Rows = [.. layout.Rows.Select(r => r with { Wall = north }), .. layout.Rows.Select(r => r with { Wall = south, Section = section })],
            });
    }

    private static string Set(string unit, string quantity, string more, string rounding = "direction: up, decimals: 0") => $$"""
        format: 1
        name: N
        items:
          - {number: "1", description: a, unit: {{unit}}, quantity: "{{quantity}}", {{more}}rounding: { {{rounding}} }, measured: m}
        """;
}

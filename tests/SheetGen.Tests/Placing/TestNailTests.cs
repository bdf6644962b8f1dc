using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Verification test nails stand beside the grid; proof test nails are production nails.</summary>
public sealed class TestNailTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(20, 1)]
    [InlineData(21, 2)]
    [InlineData(100, 5)]
    [InlineData(137, 7)]
    [InlineData(400, 20)]
    public void Five_percent_of_production_nails_rounded_up(int production, int expected) =>
        Assert.Equal(expected, ProofMarks.Count(new TestNails(0, 0.05, false, false), production));

    // One test nail of the wall's two stands in B, which asks for one of its own: they were both B-V-1, and the run ended as a fault of the program.
    [Fact]
    public void Test_nails_of_the_wall_and_of_a_section_have_marks_of_their_own()
    {
        string yaml = new PlacingWall
        {
            Length = 28,
            Tests = "{verification: 2, verification_per: wall}",
            Blocks = ["      - {name: B, stations: [14, 28], horizontal_spacing: 3.5, vertical_spacing: 3.5, top_row_depth: 2, inclination: 15, lengths: 20, bar: \"#8 Gr 75\", hole: 6 in, test_nails: {verification: 1}}"],
        }.Yaml.Replace("        stations: [0, 28]", "        stations: [0, 14]", StringComparison.Ordinal);
        WallProject project = PlacingWall.Read(yaml);
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        Assert.Equal(["A-V-1", "B-V-1", "B-V-2"], layout.Nails.Where(n => n.Kind == NailKind.Verification).Select(n => n.Mark).Order(StringComparer.Ordinal));
        Assert.DoesNotContain(Checker.Check(project, layout).Findings, f => f.Severity == Severity.Error);
    }

    [Fact]
    public void Verification_nails_are_extra_and_clear_of_everything()
    {
        var wall = new PlacingWall
        {
            Length = 42,
            Tests = "{verification: 2, proof: 5 %}",
            Blocks = ["obstructions:", "  - {name: S1, kind: shaft, at: {station: 10, offset: 6}, diameter: 3, top: 120, bottom: 80}"],
        };
        WallProject project = wall.Project;
        NailLayout with = Placer.Place(project, new PlacingOptions());
        NailLayout without = (wall with { Tests = "{verification: 0, proof: 5 %}" }).Layout;
        Nail[] tests = [.. with.Nails.Where(n => n.Kind == NailKind.Verification)];
        Assert.Equal(["A-V-1", "A-V-2"], tests.Select(n => n.Mark));
        Assert.Equal(tests, with.Nails.TakeLast(2));
        Assert.Equal(without.Nails.Select(n => (n.Mark, n.Hole)), with.Nails.SkipLast(2).Select(n => (n.Mark, n.Hole)));
        Assert.All(tests, n => Assert.Equal(new RowNumber(0), n.Row));
        foreach (Nail test in tests)
        {
            Assert.All(project.Obstructions.SelectMany(o => o.Solids), s => Assert.True(HoleDistance.ToSolid(test.Hole, s).Clear >= 0.5 - 1e-6));
            foreach (Nail other in with.Nails.Where(n => n != test))
            {
                Assert.True((other.Hole.Head - test.Hole.Head).Length >= 1 - 1e-6, $"heads of {test.Mark} and {other.Mark}");
                Assert.True(HoleDistance.Between(test.Hole, other.Hole).Clear >= 0.5 - 1e-6, $"{test.Mark} and {other.Mark}");
            }
        }
    }

    // Rows at 116, 112.5, 109, 105.5 and 102, columns from 1.75 every 3.5 ft: the place half way between two columns that is nearest to the middle of the wall, and in
    // the row nearest to the mean elevation, 109; as long as that row's nails. Four of them: half way between columns nearest to each eighth, quarter and so on.
    [Fact]
    public void Verification_nails_stand_half_way_between_neighbours_near_their_target()
    {
        Nail test = Assert.Single(new PlacingWall { Tests = "{verification: 1, proof: 0 %}", Lengths = "[24, 23, 22, 21, 20]" }.Layout.Nails, n => n.Kind == NailKind.Verification);
        Assert.Equal((10.5, 109.0, 0.0, 15.0, 22.0, NailStatus.Grid), (test.Station, test.Elevation, test.Splay, test.Inclination, test.Length, test.Status));
        Nail[] four = [.. new PlacingWall { Length = 56, Tests = "{verification: 4, proof: 0 %}" }.Layout.Nails.Where(n => n.Kind == NailKind.Verification)];
        Assert.Equal([7.0, 21, 35, 49], four.Select(n => n.Station));
        Assert.All(four, n => Assert.Equal(109, n.Elevation));
    }

    // The bonded length that is tested, and the free length before it where the project gives one.
    [Theory]
    [InlineData("test_bonded_length: 10", 10)]
    [InlineData("test_bonded_length: 10, test_free_length: 3.5", 13.5)]
    public void A_verification_nail_is_as_long_as_its_test_asks(string test, double length)
    {
        WallProject project = new PlacingWall { Tests = "{verification: 1, proof: 0 %}", Blocks = [$"rates: {{{test}}}"] }.Project;
        Assert.Equal(length, Assert.Single(Placer.Place(project, new PlacingOptions()).Nails, n => n.Kind == NailKind.Verification).Length);
    }

    /// <summary>Where a column is left out nothing is tested half way between its neighbours, 7 ft apart: the place beside it is taken.</summary>
    [Fact]
    public void No_verification_nail_stands_for_a_station_that_was_left_out()
    {
        NailLayout layout = new PlacingWall
        {
            Length = 24.5,
            Tests = "{verification: 1, proof: 0 %}",
            Blocks = ["fixed:", .. Enumerable.Range(1, 5).Select(r => $"  - {{wall: Wall 1, row: {r}, station: 12.25, leave_out: true}}")],
        }.Layout;
        Assert.Equal(7, Assert.Single(layout.Nails, n => n.Kind == NailKind.Verification).Station);
    }

    /// <summary>Half way between all columns nails are forbidden: elsewhere on the face the nail is as long as those of the row next above it.</summary>
    [Fact]
    public void A_verification_nail_between_other_places_has_the_length_of_the_row_above()
    {
        var wall = new PlacingWall
        {
            Lengths = "[24, 23, 22, 21, 20]",
            WallKeys = ["no_nails: [" + string.Join(", ", Enumerable.Range(1, 5).Select(i => FormattableString.Invariant($"{{stations: [{3.5 * i - 0.5}, {3.5 * i + 0.5}]}}"))) + "]"],
            Tests = "{verification: 1, proof: 0 %}",
        };
        NailLayout layout = wall.Layout;
        Nail test = Assert.Single(layout.Nails, n => n.Kind == NailKind.Verification);
        Assert.DoesNotContain(Enumerable.Range(1, 5), i => Math.Abs(test.Station - 3.5 * i) < 0.49);
        Nail above = layout.Nails.Where(n => n.Kind != NailKind.Verification && n.Elevation >= test.Elevation).MinBy(n => n.Elevation)!;
        Assert.Equal(above.Length, test.Length);
        Assert.True(test.Length is > 20 and < 24);
    }

    [Fact]
    public void Marks_of_proof_nails_are_spread_evenly_where_asked()
    {
        NailLayout layout = new PlacingWall { Length = 84, Tests = "{verification: 0, proof: 5 %, proof_marks: spread}" }.Layout;
        double[] proof = [.. layout.Nails.Where(n => n.Kind == NailKind.Proof).Select(n => n.Along).Order()];
        Assert.Equal(120, layout.Nails.Count);
        Assert.Equal(6, proof.Length);
        for (int i = 0; i < proof.Length; i++)
            Assert.InRange(proof[i], 84 * i / 6.0, 84 * (i + 1) / 6.0);
        // Six marks on five rows: no row takes more than two, and no two of them share a column.
        Assert.All(layout.Nails.Where(n => n.Kind == NailKind.Proof).GroupBy(n => n.Row), r => Assert.InRange(r.Count(), 1, 2));
        Assert.InRange(layout.Nails.Where(n => n.Kind == NailKind.Proof).Select(n => n.Row).Distinct().Count(), 4, 5);
        Assert.DoesNotContain(new PlacingWall { Length = 84, Tests = "{verification: 0, proof: 5 %}" }.Layout.Nails, n => n.Kind == NailKind.Proof);
    }

    /// <summary>A verification nail that is asked for and not there is a warning.</summary>
    [Fact]
    public void A_verification_nail_without_a_place_is_told()
    {
        WallProject project = new PlacingWall { Length = 21, Tests = "{verification: 1, proof: 5 %}" }.Project;
        NailLayout whole = Placer.Place(project, new PlacingOptions());
        NailLayout without = whole with { Nails = [.. whole.Nails.Where(n => n.Kind != NailKind.Verification)] };
        Assert.Equal(whole.Nails.Count - 1, without.Nails.Count);
        Assert.DoesNotContain(Checker.Check(project, whole).Findings, f => f.Code == FindingCode.TestNail);
        Finding told = Assert.Single(Checker.Check(project, without).Findings, f => f.Code == FindingCode.TestNail);
        Assert.Equal(Severity.Warning, told.Severity);

        // It is missing from the take-off and from the bid, and says so there.
        QuantityTable table = TakeOff.Measure(project, without);
        foreach (string name in (string[])[QuantityName.VerificationCount, QuantityName.VerificationLength, QuantityName.VerificationBarWeight, QuantityName.VerificationGrout])
        {
            Quantity quantity = table.Totals[name];
            Assert.Equal(QuantityState.Incomplete, quantity.State);
            Assert.Equal("place for 1 of 1 verification test nail", Assert.Single(quantity.Missing).What);
            Assert.Equal(QuantityState.Complete, TakeOff.Measure(project, whole).Totals[name].State);
        }
        Assert.Equal((1, 0), (Assert.Single(table.Tests).Asked, table.Tests[0].Verification));
        Assert.StartsWith("1 of 1 verification test nail found no place", table.Tests[0].Note, StringComparison.Ordinal);
    }
}

using System.Globalization;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing.Elevation;

public class MarkTests
{
    /// <summary>Set <c>SHEETGEN_MARK_WALLS</c> to 200 for the long run.</summary>
    private static ulong Walls =>
        ulong.TryParse(Environment.GetEnvironmentVariable("SHEETGEN_MARK_WALLS"), CultureInfo.InvariantCulture, out ulong walls) ? walls : 60;

    /// <summary>No nail without its mark, none with a mark nearer to another, no row with marks on two sides of its heads, on walls made at random.</summary>
    [Fact]
    public void Every_nail_of_random_walls_is_marked_unmistakably()
    {
        int nails = 0, full = 0, leaders = 0, rows = 0;
        var hopping = new List<string>();
        var wrong = new List<string>();
        for (ulong seed = 500; seed < 500 + Walls; seed++)
        {
            WallProject project = SampleLayout.Read(RandomWall.Yaml(seed));
            NailLayout layout = SampleLayout.Make(project, (int)seed);
            DrawnMarks marks = DrawnMarks.Of(SampleSheets.Compose(project, layout), layout);
            (nails, full, leaders, rows) = (nails + marks.Nails, full + marks.Full, leaders + marks.Leaders, rows + marks.Rows);
            hopping.AddRange(marks.Hopping.Select(h => $"{seed}: {h}"));
            wrong.AddRange(marks.Wrong.Select(w => $"{seed}: {w}"));
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant(
            $"{Walls} walls: {nails} nails, {full} whole marks, {leaders} with leaders, {wrong.Count} wrong; {rows} rows, {hopping.Count} hop\n{string.Join("\n", hopping)}"));
        Assert.True(wrong.Count == 0, string.Join("\n", wrong.Take(40)));
        Assert.True(full > 0.8 * nails, "few marks are whole");
        Assert.True(hopping.Count == 0, string.Join("\n", hopping));
    }

    /// <summary>The demos, placed by the search and as the program draws them.</summary>
    [Theory]
    [InlineData("heron-street-bridge")]
    [InlineData("quarry-lane")]
    public void Every_nail_of_a_demo_is_marked_unmistakably(string demo)
    {
        WallProject project = SampleLayout.Read(Repository.Read("demo", demo, "wall.yaml"));
        NailLayout layout = Placer.Place(project, new PlacingOptions());

        DrawnMarks marks = DrawnMarks.Of(SampleSheets.Compose(project, layout), layout);

        Assert.Equal(layout.Nails.Count, marks.Nails);
        Assert.Equal("", string.Join("\n", marks.Wrong.Take(40)));
        Assert.Empty(marks.Hopping);
    }

    /// <summary>Random walls as the search places them, with the part rows and turned nails that the plain layouts have not.</summary>
    [Fact]
    [Trait("Category", "Long")]
    public void Every_nail_of_placed_random_walls_is_marked_unmistakably()
    {
        var wrong = new List<string>();
        var hopping = new List<string>();
        int rows = 0;
        for (ulong seed = 900; seed < 900 + Math.Max(12, Walls / 5); seed++)
        {
            WallProject project = SampleLayout.Read(RandomWall.Yaml(seed));
            NailLayout layout = Placer.Place(project, new PlacingOptions());
            DrawnMarks marks = DrawnMarks.Of(SampleSheets.Compose(project, layout), layout);
            rows += marks.Rows;
            wrong.AddRange(marks.Wrong.Select(w => $"{seed}: {w}"));
            hopping.AddRange(marks.Hopping.Select(w => $"{seed}: {w}"));
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{rows} rows, {hopping.Count} hop\n{string.Join("\n", hopping)}"));
        Assert.True(wrong.Count == 0, string.Join("\n", wrong.Take(40)));
        // Of part rows a few nails stand so near to the next row that only the other side of the head is free.
        Assert.True(hopping.Count <= 0.02 * rows, string.Join("\n", hopping));
    }

    /// <summary>Random walls on small paper, where marks that find no room after those of the rows must come before them.</summary>
    [Theory]
    [Trait("Category", "Long")]
    [InlineData(930002, "ANSI B")]
    [InlineData(930003, "ISO A3")]
    [InlineData(930007, "ISO A3")]
    public void Every_nail_is_marked_unmistakably_on_small_paper(ulong seed, string size)
    {
        WallProject project = SampleLayout.Read(RandomWall.Yaml(seed, new RandomWallOptions { Nails = 120 }) + $"sheets: {{size: {size}}}\n");
        NailLayout layout = Placer.Place(project, new PlacingOptions());

        DrawnMarks marks = DrawnMarks.Of(SampleSheets.Compose(project, layout), layout);

        Assert.Equal(layout.Nails.Count, marks.Nails);
        Assert.Equal("", string.Join("\n", marks.Wrong.Take(40)));
    }

    public static TheoryData<string> Placed => new(MarkWalls.Arc, MarkWalls.TwoOnASmallSheet, MarkWalls.Corner, MarkWalls.Long);

    /// <summary>Walls with part rows, an arc with a batter, corners, a small sheet, several walls; placed by the search.</summary>
    [Theory]
    [MemberData(nameof(Placed))]
    public void Every_nail_of_a_placed_wall_is_marked_unmistakably(string yaml)
    {
        WallProject project = SampleLayout.Read(yaml);
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        SheetSet set = SampleSheets.Compose(project, layout);

        DrawnMarks marks = DrawnMarks.Of(set, layout);

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant(
            $"{marks.Nails} nails, {marks.Full} whole marks, {marks.Leaders} with leaders, {marks.Wrong.Count} wrong"));
        Assert.Equal("", string.Join("\n", marks.Wrong.Take(40)));
    }

    [Fact]
    public void The_measure_sees_a_mark_that_is_missing_one_that_stands_at_another_head_and_one_on_another()
    {
        WallProject project = SampleLayout.Read(SampleWalls.Metric);
        NailLayout layout = SampleLayout.Make(project);
        SheetSet set = SampleSheets.Compose(project, layout);
        BlockReference[] nails = [.. set.Model.OfType<BlockReference>().Where(b => b.Shown is not null).Take(2)];
        SheetSet With(BlockReference other) => set with { Model = [.. set.Model.Select(p => p == nails[0] ? other : p)] };

        Assert.Empty(DrawnMarks.Of(set, layout).Wrong);
        Assert.Contains(DrawnMarks.Of(With(nails[0] with { Shown = null, Attributes = [.. nails[0].Attributes.Select(a => KeyValuePair.Create(a.Key, ""))] }), layout).Wrong,
            w => w.EndsWith("shows no mark", StringComparison.Ordinal));
        IReadOnlyList<string> moved = DrawnMarks.Of(With(nails[0] with { Shown = nails[0].Shown! with { Text = nails[1].Shown!.Text with { Value = nails[0].Nail! } } }), layout).Wrong;
        Assert.Contains(moved, w => w.Contains("is nearer to", StringComparison.Ordinal));
        Assert.Contains(moved, w => w.Contains("lies on", StringComparison.Ordinal));
    }

    [Fact]
    public void A_scale_without_room_for_the_marks_gives_way_to_a_larger_one_and_says_so()
    {
        WallProject project = SampleLayout.Read(MarkWalls.TwoOnASmallSheet);
        project = project with { Sheets = project.Sheets with { Scale = 60 } };
        NailLayout layout = Placer.Place(project, new PlacingOptions());

        SheetSet set = SampleSheets.Compose(project, layout);

        Assert.Contains(set.Findings, f => f.Message.Contains("1 IN = 60 FT marks or callouts of nails have no room", StringComparison.Ordinal));
        Assert.Empty(DrawnMarks.Of(set, layout).Wrong);
    }

    [Theory]
    [InlineData(300, "3")]
    [InlineData(340, "3D")]
    [InlineData(50, "0E")]
    [InlineData(390, "3J")]
    [InlineData(345, "3DE")]
    [InlineData(305, "3KE")]
    public void A_part_row_has_a_name_to_call_out(int hundredths, string name) => Assert.Equal(name, new RowNumber(hundredths).Name);

    [Fact]
    public void No_two_rows_between_two_grid_rows_share_a_name() =>
        Assert.Equal(100, Enumerable.Range(300, 100).Select(h => new RowNumber(h).Name).Distinct().Count());
}

using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.Tests.Drawing.Details;
using SheetGen.Tests.Drawing.Elevation;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

/// <summary>
/// Views, tables and words take a third of every sheet. No sheet is empty for more than a third at a stretch, and ink stands in more than a fifth of small squares of every sheet: a page of words fills
/// two thirds of them, details with the room about them a quarter. The last of a set, which holds what is left, is told apart.
/// </summary>
public class SheetFillTests
{
    /// <summary>Squares into which the drawing area is divided, 14 mm on small paper: one with anything in it counts as used. Border and title block count for nothing.</summary>
    private const int Across = 24, Down = 16;

    private static readonly Dictionary<string, string> Walls = new()
    {
        ["heron"] = Repository.Read("demo", "heron-street-bridge", "wall.yaml"),
        ["quarry"] = Repository.Read("demo", "quarry-lane", "wall.yaml"),
        ["two walls"] = SampleWalls.TwoWalls,
        ["metric"] = SampleWalls.Metric,
        ["details"] = DetailWalls.Feet(DetailWalls.Facts),
        ["metres"] = DetailWalls.Metres,
        ["arc"] = MarkWalls.Arc,
        ["small"] = MarkWalls.TwoOnASmallSheet,
        ["corner"] = MarkWalls.Corner,
        ["long"] = MarkWalls.Long,
    };

    public static TheoryData<string, string> Sets
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (string wall in Walls.Keys)
            {
                foreach (string paper in wall is "heron" or "quarry" ? ["ANSI B", "ISO A1"] : new[] { wall is "arc" or "long" or "metric" ? "ISO A3" : "ANSI B" })
                    data.Add(wall, paper);
            }
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void No_sheet_but_the_last_is_empty_for_a_third_at_a_stretch(string wall, string paper)
    {
        string yaml = Regex.Replace(Walls[wall], "size: (ANSI|ARCH|ISO) [A-E0-4]+", "size: " + paper);
        SheetSet set = SampleSheets.Compose(yaml);

        Assert.Equal(paper, set.Sheets[0].Size);
        (string Name, double Used, double Gap)[] shares = [.. set.Sheets.SkipLast(1).Select(s => ($"{s.Name} {s.Title}", Share(Squares(set, s)), Gap(Squares(set, s))))];
        TestContext.Current.TestOutputHelper?.WriteLine(string.Join("\n", shares.Select(s => FormattableString.Invariant($"{s.Name}: used {s.Used:0.00}, empty at a stretch {s.Gap:0.00}"))));
        Assert.All(shares, s => Assert.True(s.Used > 0.2, FormattableString.Invariant($"{s.Name} is used for {s.Used:0.00}")));
        Assert.All(shares, s => Assert.True(s.Gap <= 0.34, FormattableString.Invariant($"{s.Name} is empty for {s.Gap:0.00} at a stretch")));
    }

    /// <summary>Papers of US sheets and of metric ones; the last for issue at half size.</summary>
    private static string[] Papers(LengthUnit unit) => unit == LengthUnit.Metre ? ["ISO A1", "ISO A3", "ISO A1"] : ["ANSI D", "ANSI B", "ANSI D"];

    [Theory]
    [InlineData("heron")]
    [InlineData("quarry")]
    [InlineData("two walls")]
    [InlineData("metric")]
    [InlineData("details")]
    [InlineData("arc")]
    [InlineData("small")]
    [InlineData("corner")]
    [InlineData("long")]
    public void No_sheet_is_two_thirds_empty(string wall) => Assert.Empty(Empty(wall, Walls[wall], 1 / 3.0));

    /// <summary>Less than a third: an elevation of 40 ft at the largest customary scale takes 0.29, a last sheet with the notes of dense small paper 0.23.</summary>
    [Fact]
    [Trait("Category", "Long")]
    public void No_sheet_of_random_walls_is_much_emptier() =>
        Assert.Empty(Enumerable.Range(3100, 20).SelectMany(seed => Empty(seed.ToString(CultureInfo.InvariantCulture), RandomWall.Yaml((ulong)seed), 0.2)));

    /// <summary>What is continued stands behind what it continues, on whichever sheets tables find room.</summary>
    [Theory]
    [InlineData("heron", "ANSI B", false)]
    [InlineData("heron", "ANSI D", true)]
    [InlineData("quarry", "ISO A3", false)]
    [InlineData("long", "ANSI B", false)]
    public void Tables_go_on_behind_their_beginnings(string wall, string paper, bool half)
    {
        WallProject project = SampleLayout.Read(Walls[wall]);
        SheetSet set = SampleSheets.Compose(project with { Sheets = project.Sheets with { Size = paper, IsForHalfSize = half } }, SampleLayout.Make(project));
        (string Block, int Sheet)[] tables = [.. set.Sheets.SelectMany((s, i) => s.Paper.OfType<BlockReference>().Where(b => b.Block.StartsWith("TABLE-", StringComparison.Ordinal)).Select(b => (b.Block, i)))];
        (string Block, int Sheet)[] further = [.. tables.Where(t => Regex.IsMatch(t.Block, "[0-9]X+$"))];

        Assert.True(further.Length > 0 || !half);
        Assert.All(further, f => Assert.True(tables.Single(t => t.Block == f.Block[..^1]).Sheet <= f.Sheet, f.Block));
    }

    /// <summary>Tables of a sheet stand in columns: left edges that differ by less than 5 mm do not occur.</summary>
    [Theory]
    [InlineData("small", "ANSI B")]
    [InlineData("two walls", "ANSI B")]
    [InlineData("heron", "ANSI B")]
    [InlineData("quarry", "ISO A3")]
    public void Tables_stand_in_columns(string wall, string paper)
    {
        WallProject project = SampleLayout.Read(Walls[wall]);
        SheetSet set = SampleSheets.Compose(project with { Sheets = project.Sheets with { Size = paper } }, SampleLayout.Make(project));
        int tables = 0;
        foreach (Sheet sheet in set.Sheets)
        {
            double[] lefts = [.. sheet.Paper.OfType<BlockReference>().Where(b => b.Block.StartsWith("TABLE-", StringComparison.Ordinal)).Select(b => b.Position.X).Order()];
            tables += lefts.Length;
            Assert.All(lefts.Zip(lefts.Skip(1)), p => Assert.True(p.Second - p.First is < 0.01 or > 5, FormattableString.Invariant($"{sheet.Name}: {p.First} and {p.Second}")));
        }
        Assert.True(tables > 5);
    }

    /// <summary>On sheets for half size sections with plans of passed shafts share sheets: none but the last of a set stands alone.</summary>
    [Theory]
    [InlineData("heron", "ANSI D", 16)]
    [InlineData("quarry", "ISO A1", 10)]
    public void Half_size_sets_keep_few_sheets(string wall, string paper, int most)
    {
        WallProject project = SampleLayout.Read(Walls[wall]);
        SheetSet set = SampleSheets.Compose(project with { Sheets = project.Sheets with { Size = paper, IsForHalfSize = true } }, SampleLayout.Make(project));
        int[] sections = [.. set.Sheets.Where(s => s.Title.StartsWith("SECTIONS", StringComparison.Ordinal)).Select(s => s.Paper.OfType<Text>().Count(t => Regex.IsMatch(t.Value, "^SECTION [0-9]+, ")))];

        Assert.True(set.Sheets.Count <= most, $"{set.Sheets.Count} sheets");
        Assert.NotEmpty(sections);
        Assert.All(sections.SkipLast(1), n => Assert.True(n >= 2));
        Assert.DoesNotContain(set.Sheets, s => s.Title == "NOTES");
    }

    /// <summary>Sheets of a wall, on all its papers, of which views, tables and words take less than a share.</summary>
    private static List<string> Empty(string wall, string yaml, double least)
    {
        var empty = new List<string>();
        WallProject project = SampleLayout.Read(yaml);
        NailLayout layout = SampleLayout.Make(project);
        foreach ((string paper, int i) in Papers(project.Unit).Select((p, i) => (p, i)))
        {
            SheetSet set = SampleSheets.Compose(project with { Sheets = project.Sheets with { Size = paper, IsForHalfSize = i == 2 } }, layout);
            (string Name, double Covered)[] shares = [.. set.Sheets.Select(s => (FormattableString.Invariant($"{wall}, {paper}{(i == 2 ? " for half size" : "")}, {s.Name} of {set.Sheets.Count} {s.Title}"), Covered(set, s)))];
            TestContext.Current.TestOutputHelper?.WriteLine(string.Join("\n", shares.Where(s => s.Covered < 0.45).Select(s => FormattableString.Invariant($"{s.Name}: {s.Covered:0.00}"))));
            empty.AddRange(shares.Where(s => s.Covered < least).Select(s => FormattableString.Invariant($"{s.Name} is covered for {s.Covered:0.00}")));
        }
        return empty;
    }

    /// <summary>Low sections on a small sheet leave room below them, which their details take.</summary>
    [Fact]
    public void Details_stand_where_sections_leave_room()
    {
        SheetSet set = SampleSheets.Compose(MarkWalls.TwoOnASmallSheet);

        Assert.Contains(set.Sheets, s => s.Title == "SECTIONS AND DETAILS");
        Assert.DoesNotContain(set.Sheets, s => s.Title == "SECTIONS");
    }

    private static double Share(bool[,] squares) => squares.Cast<bool>().Count(s => s) / (double)squares.Length;

    /// <summary>Share of the largest rectangle of squares with nothing in them.</summary>
    private static double Gap(bool[,] squares)
    {
        int largest = 0;
        for (int left = 0; left < Across; left++)
        {
            for (int right = left; right < Across; right++)
            {
                int run = 0;
                for (int row = 0; row < Down; row++)
                {
                    run = Enumerable.Range(left, right - left + 1).Any(c => squares[c, row]) ? 0 : run + 1;
                    largest = Math.Max(largest, run * (right - left + 1));
                }
            }
        }
        return largest / (double)(Across * Down);
    }

    /// <summary>Share of the drawing area that lies within the frame of a view or the rectangle about a table or a line of words, with 3 mm about it.</summary>
    private static double Covered(SheetSet set, Sheet sheet)
    {
        Box area = AreaOf(set);
        Box BoxOf(Primitive primitive) => Box.Around(Ink(set, primitive));
        IEnumerable<Box> paper = sheet.Paper.Where(p => p is not BlockReference r || !r.Block.StartsWith("SHEET-", StringComparison.Ordinal))
            .Select(p => p is BlockReference r ? set.Blocks.Single(b => b.Name == r.Block).Expand(r).Select(BoxOf).Aggregate((a, b) => a.Union(b)) : BoxOf(p));
        bool[,] covered = new bool[Across * 4, Down * 4];
        foreach (Box box in sheet.Viewports.Select(v => v.Frame).Concat(paper).Select(b => b.Grown(3).Within(area)).OfType<Box>())
        {
            for (int x = Square(box.Left - area.Left, area.Width, Across); x <= Square(box.Right - area.Left, area.Width, Across); x++)
            {
                for (int y = Square(box.Bottom - area.Bottom, area.Height, Down); y <= Square(box.Top - area.Bottom, area.Height, Down); y++)
                    covered[x, y] = true;
            }
        }
        return Share(covered);

        static int Square(double at, double length, int count) => Math.Clamp((int)(at / length * count * 4), 0, count * 4 - 1);
    }

    private static Box AreaOf(SheetSet set)
    {
        BlockDefinition frame = set.Blocks.Single(b => b.Name.StartsWith("SHEET-", StringComparison.Ordinal));
        return Box.Around(Extents.Points(frame.Primitives[0])) with { Right = ((Line)frame.Primitives[1]).From.X };
    }

    private static bool[,] Squares(SheetSet set, Sheet sheet)
    {
        Box area = AreaOf(set);
        bool[,] used = new bool[Across, Down];
        foreach ((Primitive primitive, Box? window) in SheetPicture.Of(set, sheet).Where(p => p.Primitive.Layer is not (LayerRole.Border or LayerRole.TitleBlock)))
        {
            Box room = window is Box w ? w.Within(area) ?? default : area;
            foreach (Point2 p in Ink(set, primitive).Where(p => room.Grown(-0.01).Contains(p)))
                used[(int)((p.X - area.Left) / area.Width * Across), (int)((p.Y - area.Bottom) / area.Height * Down)] = true;
        }
        return used;
    }

    /// <summary>Points a few millimetres apart on what is drawn.</summary>
    private static IEnumerable<Point2> Ink(SheetSet set, Primitive primitive)
    {
        Point2[] points = [.. Extents.Points(primitive)];
        if (primitive is Text text)
        {
            double width = TextMeasure.Measure(text.Value, text.Height, set.Templates.Texts[text.Role]);
            double first = text.Align switch { HorizontalAlign.Left => 0, HorizontalAlign.Center => -width / 2, _ => -width };
            points = [.. new[] { first, first + width }.Select(x => text.Position + new Point2(x, text.Height / 2).Turned(text.Rotation * Math.PI / 180))];
        }
        else if (primitive is not (Line or Polyline))
        {
            Box box = Box.Around(points);
            points = [new(box.Left, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top), new(box.Right, box.Bottom)];
        }
        for (int i = 0; i + 1 < points.Length; i++)
        {
            int steps = (int)((points[i + 1] - points[i]).Length / 3) + 1;
            for (int k = 0; k <= steps; k++)
                yield return points[i] + (points[i + 1] - points[i]) * (k / (double)steps);
        }
    }
}

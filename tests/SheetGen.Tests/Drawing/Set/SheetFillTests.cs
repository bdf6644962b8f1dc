using System.Text.RegularExpressions;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Tests.Drawing.Details;
using SheetGen.Tests.Drawing.Elevation;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

/// <summary>
/// No sheet is empty for more than a third at a stretch, and ink stands in more than a fifth of small squares of every sheet: a page of words fills
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

    private static bool[,] Squares(SheetSet set, Sheet sheet)
    {
        BlockDefinition frame = set.Blocks.Single(b => b.Name.StartsWith("SHEET-", StringComparison.Ordinal));
        Box border = Box.Around(Extents.Points(frame.Primitives[0]));
        Box area = border with { Right = ((Line)frame.Primitives[1]).From.X };
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

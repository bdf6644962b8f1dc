using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

/// <summary>First sheets of sets with many sheets: the index once ran off the paper, and a key plan without room stood at the corner of the sheet.</summary>
public class FrontSheetTests
{
    private static readonly DrawingContext Context = Of(SampleLayout.Read(RandomWall.Yaml(4100)));

    [Theory]
    [InlineData(760, 520)]
    [InlineData(380, 240)]
    public void An_index_of_any_length_stands_whole_on_the_sheets_and_leaves_room_for_a_key_plan(double width, double height)
    {
        var area = new Box(25, 15, 25 + width, 15 + height);
        int cut = 0;
        foreach (int others in new[] { 4, 40, 70, 80, 90, 100, 130, 300 })
        {
            FrontSheets front = FrontSheets.Plan(Context, area, others, needsViews: true);
            (string Name, string Title)[] index = [.. Enumerable.Range(1, front.Count + others).Select(i => (SheetPlan.NameOf(i), "PLAN AND ELEVATION, STA 100+00 TO 101+00"))];
            IReadOnlyList<SheetContent> drawn = front.Draw(index);
            Assert.Equal(front.Count, drawn.Count);
            BlockReference[] pieces = [.. drawn.SelectMany(d => d.Paper.OfType<BlockReference>())];
            Assert.Equal(index.Select(i => i.Name), pieces.SelectMany(p => p.Attributes.Where(a => a.Key.EndsWith("C1", StringComparison.Ordinal)).Select(a => a.Value)));
            Assert.Equal(pieces.Length, drawn.SelectMany(d => d.Blocks).Select(b => b.Name).Distinct().Count());
            foreach (SheetContent sheet in drawn)
            {
                Box[] tables = [.. sheet.Paper.OfType<BlockReference>().Select(p => Box.Around(sheet.Blocks.Single(b => b.Name == p.Block).Primitives.SelectMany(Extents.Points).Select(q => q + p.Position)))];
                Assert.All(tables, t => Assert.True(area.Grown(0.01).Contains(t), $"{others} sheets: {t} is not within {area}"));
                Assert.All(tables, t => Assert.DoesNotContain(sheet.Paper.OfType<Text>(), x => t.Contains(x.Position)));
                Assert.All(tables, t => Assert.DoesNotContain(tables, u => t != u && t.Overlaps(u)));
            }
            Assert.True(HasRoom(drawn[^1], area, 75 * Context.StyleOf(TextRole.Label).Height / 2.4), $"{others} sheets leave no room for a key plan");
            cut += pieces.Length > 1 ? 1 : 0;
        }
        Assert.InRange(cut, 2, 8);
    }

    [Theory]
    [InlineData(3, 1)]
    [InlineData(60, 5)]
    [InlineData(200, 20)]
    public void A_key_plan_of_many_sheets_names_some_and_says_which(int sheets, int most)
    {
        Wall wall = Context.Project.Walls[0];
        double each = (wall.End - wall.Start) / sheets;
        (SheetWindow, string)[] windows = [.. Enumerable.Range(0, sheets).Select(i => (new SheetWindow(wall, wall.Start + i * each, wall.Start + (i + 1) * each, false, false), SheetPlan.NameOf(i + 2)))];
        var room = new Box(0, 0, 220, 160);
        SheetContent plan = KeyPlan.Draw(Context, room, "SN-01", windows);
        Assert.Empty(plan.Findings);
        Text[] texts = [.. plan.Paper.OfType<Text>()];
        string[] names = [.. texts.Select(t => t.Value).Where(v => v.StartsWith(SheetPlan.Prefix, StringComparison.Ordinal))];
        Assert.Equal("SN-02", names.Min(StringComparer.Ordinal));
        Assert.Contains(wall.Name.ToUpperInvariant(), texts.Select(t => t.Value));
        Assert.DoesNotContain(texts, t => t.Value.StartsWith('('));
        Assert.All(texts, t => Assert.True(room.Contains(t.Position)));
        string? said = texts.Select(t => t.Value).SingleOrDefault(v => v.Contains("ONE SHEET IN", StringComparison.Ordinal));
        if (names.Length == sheets)
        {
            Assert.Null(said);
            return;
        }
        int step = new[] { 2, 5, 10, 20, 50 }.Single(s => said!.EndsWith($"ONE SHEET IN {s} NAMED, THE OTHERS IN ORDER", StringComparison.Ordinal));
        Assert.InRange(step, 2, most);
        // The sheet at the middle has the wall's name, too.
        Assert.Equal(Enumerable.Range(0, sheets).Where(i => i % step == 0).Select(i => SheetPlan.NameOf(i + 2)).Append(SheetPlan.NameOf(sheets / 2 + 2)).Distinct().Order(StringComparer.Ordinal), names.Order(StringComparer.Ordinal));
    }

    /// <summary>True where a square of a size stands free of texts and tables somewhere on a sheet.</summary>
    private static bool HasRoom(SheetContent sheet, Box area, double side)
    {
        Box[] taken =
        [
            .. sheet.Paper.OfType<Text>().Select(t => TextMeasure.BoxOf(t, Context.StyleOf(t.Role))),
            .. sheet.Paper.OfType<BlockReference>().Select(p => Box.Around(sheet.Blocks.Single(b => b.Name == p.Block).Primitives.SelectMany(Extents.Points).Select(q => q + p.Position))),
        ];
        for (double x = area.Left; x + side <= area.Right; x += 2)
        {
            for (double y = area.Bottom; y + side <= area.Top; y += 2)
            {
                var square = new Box(x, y, x + side, y + side);
                if (!taken.Any(t => t.Overlaps(square)))
                    return true;
            }
        }
        return false;
    }

    private static DrawingContext Of(WallProject project)
    {
        NailLayout layout = SampleLayout.Make(project);
        return new DrawingContext(project, layout, SampleLayout.Report(layout), SampleLayout.Measure(project, layout), [], new RunInfo("0.1.0"), TemplateReader.Default());
    }
}

using SheetGen.Model;
using SheetGen.Tests.Quantities;
using SheetGen.Tests.Walls;

namespace SheetGen.Tests.Rows;

/// <summary>Random walls for tests of rows: bends, arcs and spirals, sloping tops, steps, batter, openings, one section or two. Rules in feet: edge_min and corner_clear 1, min_gap 2.</summary>
internal static class RandomRows
{
    public static TestWall Wall(int seed)
    {
        var random = new WallRandom((ulong)seed * 6151);
        double Tangent() => random.Between(20, 40, 0.5);
        LayoutElement Bend() => new LayoutElement.Bend(random.Of(Turn.Left, Turn.Right), random.Between(10, 80, 5));
        LayoutElement Arc() => new LayoutElement.Arc(random.Between(60, 150, 5), random.Between(20, 40, 0.5), random.Of(Turn.Left, Turn.Right));
        LayoutElement[] elements = random.Of(0, 0, 1, 2, 3, 4) switch
        {
            0 => [new LayoutElement.Tangent(50)],
            1 => [new LayoutElement.Tangent(Tangent()), Bend(), new LayoutElement.Tangent(Tangent())],
            2 => [Arc(), Bend(), new LayoutElement.Tangent(Tangent())],
            3 => [new LayoutElement.Tangent(Tangent()), Arc()],
            _ => [new LayoutElement.Tangent(20), new LayoutElement.Spiral(150, 80, 30, random.Of(Turn.Left, Turn.Right))],
        };
        double length = elements.Sum(e => e switch { LayoutElement.Tangent t => t.Length, LayoutElement.Arc a => a.Length, LayoutElement.Spiral s => s.Length, _ => 0 });
        double third = Math.Round(length / 3), limit = Math.Round(length * random.Between(0.3, 0.7, 0.05) * 2) / 2;
        return new TestWall
        {
            Elements = elements,
            End = length,
            Side = random.Of(Turn.Left, Turn.Right),
            FaceOffset = random.Of(0, 0, 1, -1.5, 2),
            Batter = random.Chance(0.4) ? new Batter(random.Between(3, 9, 1), 104) : null,
            Top = random.Chance(0.3) ? [new(0, 118)] : [new(0, random.Between(110, 118, 0.5)), new(third, random.Between(110, 120, 0.5)), new(length, random.Between(108, 118, 0.5))],
            Steps = random.Chance(0.3) ? [new(0, 100)] : [new(0, 100), new(third, random.Between(98, 102, 0.5)), new(2 * third, random.Between(98, 103, 0.5))],
            Openings = random.Chance(0.3) ? [new Opening("Culvert", third + 2, third + 7, 103, 107, TestWall.Spot)] : [],
            Limits = random.Chance(0.4) ? [limit] : [],
            Spacing = random.Of(4, 4.5, 5, 6),
            Depth = random.Of(1.5, 2, 2.5),
            Panels = null,
        };
    }

    /// <summary>The wall with rows of a kind and pattern that the seed chooses.</summary>
    public static WallProject Project(TestWall wall, int seed)
    {
        var random = new WallRandom((ulong)seed * 104_729);
        RowKind rows = random.Of(RowKind.Level, RowKind.Level, RowKind.Parallel, RowKind.TopParallel);
        Pattern pattern = random.Of(Pattern.Square, Pattern.Staggered);
        CornerRows corners = random.Of(CornerRows.Continuous, CornerRows.Shifted);
        (WallProject project, _) = wall.Make();
        Wall made = project.Walls[0];
        return project with { Walls = [made with { Sections = [.. made.Sections.Select(s => s with { Rows = rows, Pattern = pattern, CornerRows = corners })] }] };
    }
}

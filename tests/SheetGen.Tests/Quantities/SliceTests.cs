using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Quantities;

/// <summary>Areas and volumes of fifty random walls with arcs, corners, batter and openings, by a second integration in fine slices.</summary>
[Trait("Category", "Long")]
public class SliceTests
{
    public static TheoryData<int> Seeds() => [.. Enumerable.Range(1, 50)];

    private static TestWall Random(int seed, bool level)
    {
        var random = new WallRandom((ulong)seed * 7919);
        double Tangent() => random.Between(25, 45, 0.5);
        LayoutElement Bend() => new LayoutElement.Bend(random.Of(Turn.Left, Turn.Right), random.Between(5, 80, 1));
        LayoutElement Arc() => new LayoutElement.Arc(random.Between(60, 200, 1), random.Between(20, 50, 0.5), random.Of(Turn.Left, Turn.Right));
        LayoutElement[] elements = random.Of(0, 1, 2, 3) switch
        {
            0 => [new LayoutElement.Tangent(Tangent()), Bend(), new LayoutElement.Tangent(Tangent())],
            1 => [Arc()],
            2 => [new LayoutElement.Tangent(Tangent()), Arc()],
            _ => [new LayoutElement.Tangent(Tangent()), Bend(), new LayoutElement.Tangent(Tangent()), Arc()],
        };
        double length = elements.Sum(e => e switch { LayoutElement.Tangent t => t.Length, LayoutElement.Arc a => a.Length, _ => 0 });
        double first = random.Between(8, length / 2 - 8, 0.5);
        return new TestWall
        {
            Elements = elements,
            End = length,
            Side = random.Of(Turn.Left, Turn.Right),
            FaceOffset = random.Between(-3, 3, 0.25),
            Batter = random.Chance(0.6) ? new Batter(random.Between(1, 10, 0.5), 104) : null,
            Top = level ? [new(0, 118)] : [new(0, random.Between(112, 120, 0.5)), new(length / 2, random.Between(112, 120, 0.5)), new(length, random.Between(112, 120, 0.5))],
            Steps = level ? [new(0, 100)] : [new(0, 100), new(length / 3, 101.5), new(2 * length / 3, 100.5)],
            Openings = random.Chance(0.5) ? [new Opening("Culvert", first, first + 6, 103, 108, TestWall.Spot)] : [],
            Panels = new Panels(10, 5, 0),
            CrossSections = level ? [new CrossSection(0, [new(0, 118), new(random.Between(5, 15, 0.5), 117), new(22, 99)])] : [],
        };
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Face_area(int seed)
    {
        TestWall made = Random(seed, false);
        (WallProject project, NailLayout layout) = made.Make();
        QuantityTable table = TakeOff.Measure(project, layout);
        double area = table.Totals[QuantityName.FaceArea].Amount!.Value, slices = SlicedWall.FaceArea(project.Walls[0]);
        Assert.InRange(area / slices, 0.996, 1.004);
        double panels = table.PanelPieces.Sum(p => p.Area), plumb = SlicedWall.FaceArea(project.Walls[0] with { Batter = null });
        Assert.InRange(panels / plumb, 0.996, 1.004);
        Assert.All(table.Checks, c => Assert.True(c.Second is null || c.Limit is null || Math.Abs(c.Second.Value - c.First) <= c.Limit.Value * Math.Abs(c.First) + 1e-6, c.Text));
    }

    /// <summary>A fiftieth too much or too little of any main quantity asks for a look, whichever of the two ways it stands in.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_phantom_of_two_percent_shows_in_the_check(int seed)
    {
        (WallProject project, NailLayout layout) = Random(seed, false).Make();
        List<CheckLine> lines = [.. TakeOff.Measure(project, layout).Checks.Where(c => c is { First: > 0, Second: not null, Limit: not null })];
        string[] main = [QuantityName.NailCount, QuantityName.FaceArea, QuantityName.FaceLength, QuantityName.BarWeight, QuantityName.GroutVolume, QuantityName.ShotcreteVolume, QuantityName.PanelArea];
        Assert.Empty(main.Except(lines.Select(c => c.Name)));
        foreach (CheckLine line in lines)
        {
            Assert.False(AsksForALook(line, line.First), line.Text);
            Assert.True(AsksForALook(line, line.First * 1.02), line.Text);
            Assert.True(AsksForALook(line, line.First * 0.98), line.Text);
        }
    }

    private static bool AsksForALook(CheckLine line, double first) => Math.Abs(line.Second!.Value - first) > line.Limit!.Value * Math.Abs(first) + 1e-6;

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Soil_in_front(int seed)
    {
        (WallProject project, NailLayout layout) = Random(seed, true).Make();
        double volume = TakeOff.Measure(project, layout).Totals[QuantityName.ExcavationVolume].Amount!.Value;
        Assert.InRange(volume / SlicedWall.SoilInFront(project.Walls[0]), 0.9995, 1.0005);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Strips_keep_their_spacing_at_every_elevation(int seed)
    {
        (WallProject project, NailLayout layout) = Random(seed, false).Make();
        Wall wall = project.Walls[0];
        var face = new Face(wall);
        QuantityTable table = TakeOff.Measure(project, layout);
        foreach (Leg leg in face.Legs)
        {
            for (double z = 100.25; z < 120; z += 0.5)
            {
                double start = leg.Start + (leg.StartCorner is { } opens ? face.MitreCut(opens, z) : 0), end = leg.End - (leg.EndCorner is { } closes ? face.MitreCut(closes, z) : 0);
                double[] at = [.. table.Strips.Select(s => s.Along).Where(a => a > Math.Min(start, leg.Start) && a < Math.Max(end, leg.End) && a >= start && a <= end && face.LegAt(a) == leg)];
                Assert.NotEmpty(at);
                Assert.InRange(Distance(face, leg, start, at[0], z), -1e-6, 5.001);
                Assert.InRange(Distance(face, leg, at[^1], end, z), -1e-6, 5.001);
                for (int i = 0; i + 1 < at.Length; i++)
                    Assert.InRange(Distance(face, leg, at[i], at[i + 1], z), 1e-6, 10.001);
            }
        }
    }

    private static double Distance(Face face, Leg leg, double from, double to, double z)
    {
        double first = Math.Clamp(from, leg.Start, leg.End), last = Math.Clamp(to, leg.Start, leg.End);
        return face.Distance(first, last, z) + first - from + to - last;
    }
}

/// <summary>A few of the walls of <see cref="SliceTests"/>, for the quick round.</summary>
public class FewSlicesTests
{
    [Theory]
    [InlineData(10)]
    [InlineData(29)]
    [InlineData(35)]
    [InlineData(46)]
    public void Areas_volumes_and_strips(int seed)
    {
        var all = new SliceTests();
        all.Face_area(seed);
        all.A_phantom_of_two_percent_shows_in_the_check(seed);
        all.Soil_in_front(seed);
        all.Strips_keep_their_spacing_at_every_elevation(seed);
    }
}

using SheetGen.Layout.Clearance;
using SheetGen.Model.Geometry;
using SheetGen.Tests.Geometry;
using Xunit;

namespace SheetGen.Tests.Clearance;

public class HoleIndexTests
{
    [Fact]
    public void TenThousandHolesGiveThePairsOfBruteForce()
    {
        Hole[] holes = Wall(10_000, 3);
        List<HolePair> expected = BruteForce(holes, 1.0);
        Assert.InRange(expected.Count, 500, 100_000);
        Assert.Equal(expected, new HoleIndex(holes).PairsCloserThan(1.0));
    }

    [Theory]
    [InlineData("every direction")]
    [InlineData("back to back")]
    [InlineData("one place")]
    [InlineData("far apart")]
    [InlineData("one")]
    [InlineData("none")]
    public void OddSetsGiveThePairsOfBruteForce(string kind)
    {
        Hole[] holes = Odd(kind);
        var index = new HoleIndex(holes);
        foreach (double limit in (double[])[-0.1, 0, 0.7, 4])
            Assert.Equal(BruteForce(holes, limit), index.PairsCloserThan(limit));
    }

    [Fact]
    public void ThreadsChangeNothing()
    {
        var index = new HoleIndex(Wall(6000, 4));
        IReadOnlyList<HolePair> one = index.PairsCloserThan(1.0);
        for (int threads = 2; threads <= 5; threads++)
            Assert.Equal(one, index.PairsCloserThan(1.0, threads));
    }

    [Fact]
    public void ACandidateMeetsTheHolesOfBruteForce()
    {
        Hole[] holes = Wall(3000, 5);
        var index = new HoleIndex(holes);
        var found = new List<int>();
        int all = 0;
        foreach (Hole candidate in Wall(300, 6, 3000 * 0.2))
        {
            foreach (double limit in (double[])[0, 0.5, 5])
            {
                found.Clear();
                index.CloserThan(candidate, limit, found);
                found.Sort();
                Assert.Equal(Enumerable.Range(0, holes.Length).Where(i => HoleDistance.Between(candidate, holes[i]).Clear < limit), found);
                all += found.Count;
            }
        }
        Assert.True(all > 300);
    }

    [Fact]
    public void ShiftedHolesGiveTheSamePairs()
    {
        Hole[] holes = Wall(3000, 8);
        var far = new Vector3D(9e6, -4e6, 0);
        Hole[] shifted = Array.ConvertAll(holes, h => h with { Head = h.Head + far });
        Assert.Equal(
            new HoleIndex(holes).PairsCloserThan(1.0).Select(p => (p.First, p.Second)),
            new HoleIndex(shifted).PairsCloserThan(1.0).Select(p => (p.First, p.Second)));
    }

    private static List<HolePair> BruteForce(Hole[] holes, double limit)
    {
        var pairs = new List<HolePair>();
        for (int i = 0; i < holes.Length; i++)
        {
            for (int j = i + 1; j < holes.Length; j++)
            {
                if ((holes[i].Head - holes[j].Head).Length > holes[i].Length + holes[j].Length + 5)
                    continue;
                double clear = HoleDistance.Between(holes[i], holes[j]).Clear;
                if (clear < limit)
                    pairs.Add(new HolePair(i, j, clear));
            }
        }
        return pairs;
    }

    /// <summary>Eight rows on a circle's arc, one nail in four turned.</summary>
    private static Hole[] Wall(int count, int seed, double radius = 0)
    {
        var random = new RandomShapes(seed);
        var holes = new Hole[count];
        radius = radius > 0 ? radius : count * 0.2;
        for (int i = 0; i < count; i++)
        {
            double at = i / 8 * 3.5 / radius, splay = random.Whole(4) == 0 ? random.Between(-0.4, 0.4) : 0;
            double down = random.Whole(4) == 0 ? random.Between(0.1, 0.4) : 0.26;
            var head = new Vector3D(radius * Math.Cos(at), radius * Math.Sin(at), 100 - 3.5 * (i % 8));
            Vector2D plan = Vector2D.FromAzimuth(at + splay) * Math.Cos(down);
            holes[i] = new Hole(head, plan.At(-Math.Sin(down)), random.Between(18, 26), 0.25, 0.004);
        }
        return holes;
    }

    private static Hole[] Odd(string kind)
    {
        var random = new RandomShapes(70);
        return kind switch
        {
            "every direction" => Many(900, _ => random.Hole(60)),
            "back to back" => Many(1000, i => random.Hole(20) with { Direction = new Vector3D(i % 2 == 0 ? 1 : -1, 0, 0) }),
            "one place" => Many(450, _ => new Hole(default, new Vector3D(1, 0, 0), 10, 0.25, 0)),
            "far apart" => Many(600, i => random.Hole(10) with { Head = new Vector3D(Math.Pow(2, i / 20.0), random.Between(-20, 20), 0) }),
            "one" => Many(1, _ => random.Hole()),
            _ => [],
        };
        static Hole[] Many(int count, Func<int, Hole> make) => Enumerable.Range(0, count).Select(make).ToArray();
    }
}

using FsCheck.Xunit;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.ProjectFile.Building;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

public sealed class FootprintTests
{
    [Fact]
    public void A_concave_footprint_becomes_several_convex_prisms_of_the_same_area()
    {
        WallProject project = BaseWall.Read(BaseWall.With(
            "[[10+20, 3], [10+50, 3], [10+50, 7], [10+20, 7]]",
            "[[10+20, 3], [10+50, 3], [10+50, 13], [10+40, 13], [10+40, 7], [10+20, 7]]"));

        Obstruction cap = project.Obstructions[1];
        PrismSolid[] prisms = [.. cap.Solids.Cast<PrismSolid>()];
        Assert.Equal(2, prisms.Length);
        Assert.Equal(30 * 4 + 10 * 6, prisms.Sum(p => Footprints.Area(p.Footprint)), 1e-9);
        Assert.All(prisms, p => Assert.Equal((115.0, 119.0), (p.Bottom, p.Top)));
        Assert.Equal(6, cap.Shape.Count);
    }

    [Fact]
    public void A_convex_footprint_stays_one_prism_whatever_the_sense_of_its_corners()
    {
        Vector2D[] square = [new(0, 0), new(0, 5), new(0, 10), new(10, 10), new(10, 0)];

        Assert.Equal(4, Assert.Single(Footprints.ConvexPieces(square)).Count);
        Assert.Equal(4, Assert.Single(Footprints.ConvexPieces([.. square.Reverse()])).Count);
    }

    /// <summary>Star-shaped polygons with random radii: pieces are convex, keep the area, and hold exactly the points of the polygon.</summary>
    [Property(MaxTest = 300)]
    public bool Pieces_are_convex_and_fill_the_polygon(byte[] radii, bool turned)
    {
        if (radii.Length < 3)
            return true;
        int n = Math.Min(radii.Length, 40);
        Vector2D[] star = [.. Enumerable.Range(0, n).Select(i => Vector2D.FromAzimuth((turned ? -1 : 1) * 2 * Math.PI * i / n) * (1 + radii[i] % 20))];
        if (Footprints.Crossing(star) is not null)
            return false;
        IReadOnlyList<IReadOnlyList<Vector2D>> pieces = Footprints.ConvexPieces(star);
        double area = pieces.Sum(Footprints.Area);
        if (Math.Abs(area - Footprints.Area(star)) > 1e-9 * area || !pieces.All(IsConvex))
            return false;
        for (double x = -20.0137; x <= 20; x += 2.7131)
        {
            for (double y = -20.0291; y <= 20; y += 2.3117)
            {
                var p = new Vector2D(x, y);
                if (Has(star, p) != pieces.Any(piece => Has(piece, p)))
                    return false;
            }
        }
        return true;
    }

    [Property(MaxTest = 300)]
    public bool A_crossing_is_found_exactly_where_the_slow_twin_finds_one(short[] numbers)
    {
        Vector2D[] p = [.. numbers.Chunk(2).Where(c => c.Length == 2).Select(c => new Vector2D(c[0] % 50, c[1] % 50)).Distinct().Take(7)];
        return p.Length < 4 || IsGeneric(p) is false || (Footprints.Crossing(p) is not null) == CrossesSlowly(p);
    }

    private static bool IsConvex(IReadOnlyList<Vector2D> p)
    {
        double[] turns = [.. Enumerable.Range(0, p.Count).Select(i => (p[(i + 1) % p.Count] - p[i]).CrossRight(p[(i + 2) % p.Count] - p[(i + 1) % p.Count]))];
        return turns.All(t => t >= -1e-9) || turns.All(t => t <= 1e-9);
    }

    /// <summary>Even-odd rule.</summary>
    private static bool Has(IReadOnlyList<Vector2D> polygon, Vector2D p)
    {
        bool inside = false;
        for (int i = 0, j = polygon.Count - 1; i < polygon.Count; j = i++)
        {
            Vector2D a = polygon[i], b = polygon[j];
            if (a.E > p.E != b.E > p.E && p.N < (b.N - a.N) * (p.E - a.E) / (b.E - a.E) + a.N)
                inside = !inside;
        }
        return inside;
    }

    /// <summary>No three points on one line, so that crossings are proper ones.</summary>
    private static bool IsGeneric(Vector2D[] p) =>
        !(from i in Enumerable.Range(0, p.Length)
          from j in Enumerable.Range(0, i)
          from k in Enumerable.Range(0, j)
          select (p[i] - p[j]).CrossRight(p[k] - p[j])).Contains(0);

    /// <summary>Solves for the common point of each two sides that are no neighbours.</summary>
    private static bool CrossesSlowly(Vector2D[] p)
    {
        int n = p.Length;
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                if (i == j || (i + 1) % n == j || (j + 1) % n == i)
                    continue;
                Vector2D u = p[(i + 1) % n] - p[i], v = p[(j + 1) % n] - p[j], w = p[j] - p[i];
                double d = u.CrossRight(v);
                if (d != 0 && w.CrossRight(v) / d is >= 0 and <= 1 && w.CrossRight(u) / d is >= 0 and <= 1)
                    return true;
            }
        }
        return false;
    }
}

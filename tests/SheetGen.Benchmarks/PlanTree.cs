using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;
using SheetGen.Model.Geometry;

namespace SheetGen.Benchmarks;

/// <summary>The peer: near pairs by an STRtree of NetTopologySuite over plan boxes, then elevations, then the same exact test.</summary>
internal static class PlanTree
{
    public static List<(int First, int Second)> Pairs(Hole[] holes, double limit, bool quick)
    {
        var tree = new STRtree<int>();
        var boxes = new Bounds[holes.Length];
        for (int i = 0; i < holes.Length; i++)
        {
            boxes[i] = Bounds.Of(holes[i]);
            tree.Insert(Plan(boxes[i]), i);
        }
        tree.Build();
        var found = new List<(int, int)>();
        for (int i = 0; i < holes.Length; i++)
        {
            Bounds reach = boxes[i].Grow(limit);
            foreach (int j in tree.Query(Plan(reach)))
            {
                if (j > i && boxes[j].Meets(reach) && IsNear(holes[i], holes[j], limit, quick))
                    found.Add((i, j));
            }
        }
        return found;
    }

    /// <summary>The same exact test, or with the quick look at the axes before it.</summary>
    private static bool IsNear(in Hole a, in Hole b, double limit, bool quick) =>
        quick ? HoleDistance.CloserThan(a, b, limit) : HoleDistance.Between(a, b).Clear < limit;

    private static Envelope Plan(Bounds box) => new(box.Low.N, box.High.N, box.Low.E, box.High.E);
}

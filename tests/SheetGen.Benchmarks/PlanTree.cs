using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;
using SheetGen.Model.Geometry;

namespace SheetGen.Benchmarks;

/// <summary>The peer: near pairs by an STRtree of NetTopologySuite over plan boxes, then elevations, then the same exact test.</summary>
internal static class PlanTree
{
    public static List<(int First, int Second)> Pairs(Hole[] holes, double limit)
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
                if (j > i && boxes[j].Meets(reach) && HoleDistance.CloserThan(holes[i], holes[j], limit))
                    found.Add((i, j));
            }
        }
        return found;
    }

    private static Envelope Plan(Bounds box) => new(box.Low.N, box.High.N, box.Low.E, box.High.E);
}

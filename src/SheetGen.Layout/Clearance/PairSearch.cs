using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>All near pairs of a tree of holes: first which leaves come near each other, then their holes.</summary>
internal static class PairSearch
{
    public static List<HolePair> Find(HoleTree tree, double limit, int threads)
    {
        if (tree.Count == 0)
            return [];
        var tasks = new List<(int A, int B)>();
        Collect(tree, 0, Math.Max(0, limit), tasks);
        int parts = Math.Max(1, Math.Min(threads, tasks.Count));
        var found = new List<HolePair>[parts];
        Parallel.For(0, parts, new ParallelOptions { MaxDegreeOfParallelism = parts }, part =>
        {
            var mine = new List<HolePair>();
            for (int i = part; i < tasks.Count; i += parts)
                Search(tree, tree.Nodes[tasks[i].A], tree.Nodes[tasks[i].B], limit, mine);
            found[part] = mine;
        });
        List<HolePair> all = found[0];
        for (int part = 1; part < parts; part++)
            all.AddRange(found[part]);
        all.Sort();
        return all;
    }

    private static void Collect(HoleTree tree, int at, double limit, List<(int A, int B)> tasks)
    {
        ref readonly HoleTree.Node node = ref tree.Nodes[at];
        if (node.IsLeaf)
        {
            tasks.Add((at, at));
            return;
        }
        Collect(tree, at + 1, limit, tasks);
        Collect(tree, node.Second, limit, tasks);
        Collect(tree, at + 1, node.Second, limit, tasks);
    }

    private static void Collect(HoleTree tree, int a, int b, double limit, List<(int A, int B)> tasks)
    {
        ref readonly HoleTree.Node first = ref tree.Nodes[a];
        ref readonly HoleTree.Node second = ref tree.Nodes[b];
        if (!first.World.Grow(limit).Meets(second.World))
            return;
        if (first.IsLeaf && second.IsLeaf)
        {
            tasks.Add((a, b));
        }
        else if (second.IsLeaf || (!first.IsLeaf && first.Count >= second.Count))
        {
            Collect(tree, a + 1, b, limit, tasks);
            Collect(tree, first.Second, b, limit, tasks);
        }
        else
        {
            Collect(tree, a, b + 1, limit, tasks);
            Collect(tree, a, second.Second, limit, tasks);
        }
    }

    private static void Search(HoleTree tree, in HoleTree.Node a, in HoleTree.Node b, double limit, List<HolePair> found)
    {
        float grow = (float)Math.Max(0, limit) * 1.000001f;
        if (a.Start == b.Start)
        {
            SearchWithin(tree, a, limit, grow, found);
            return;
        }
        ReadOnlySpan<FrameBox> boxes = tree.Boxes.Slice(a.Start, a.Count);
        FrameBox all = a.Local.Grow(grow);
        Bounds world = a.World.Grow(Math.Max(0, limit));
        for (int j = b.Start; j < b.Start + b.Count; j++)
        {
            ref readonly Hole hole = ref tree.Holes[j];
            if (!Bounds.Of(hole).Meets(world))
                continue;
            FrameBox box = a.Frame.BoxOf(hole);
            if (!box.Meets(all))
                continue;
            box = box.Grow(grow);
            for (int i = 0; i < boxes.Length && boxes[i].XLow <= box.XHigh; i++)
            {
                if (boxes[i].Meets(box))
                    Decide(tree, a.Start + i, j, limit, found);
            }
        }
    }

    private static void SearchWithin(HoleTree tree, in HoleTree.Node leaf, double limit, float grow, List<HolePair> found)
    {
        ReadOnlySpan<FrameBox> boxes = tree.Boxes.Slice(leaf.Start, leaf.Count);
        for (int i = 0; i < boxes.Length; i++)
        {
            FrameBox box = boxes[i].Grow(grow);
            for (int j = i + 1; j < boxes.Length && boxes[j].XLow <= box.XHigh; j++)
            {
                if (boxes[j].Meets(box))
                    Decide(tree, leaf.Start + i, leaf.Start + j, limit, found);
            }
        }
    }

    private static void Decide(HoleTree tree, int i, int j, double limit, List<HolePair> found)
    {
        int a = tree.Ids[i], b = tree.Ids[j];
        // The smaller number goes first into the formula too, so that a pair has the same digits whichever leaf it was found in.
        ref readonly Hole first = ref tree.Holes[a < b ? i : j];
        ref readonly Hole second = ref tree.Holes[a < b ? j : i];
        if (HoleDistance.CloserThan(first, second, limit))
            found.Add(new HolePair(Math.Min(a, b), Math.Max(a, b), HoleDistance.Between(first, second).Clear));
    }
}

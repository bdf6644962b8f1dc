using System.Runtime.InteropServices;
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
        List<HolePair> all = parts == 1 ? SearchPart(tree, tasks, 0, 1, limit) : SearchInParallel(tree, tasks, parts, limit);
        Sort(all);
        return all;
    }

    private static List<HolePair> SearchInParallel(HoleTree tree, List<(int A, int B)> tasks, int parts, double limit)
    {
        var found = new List<HolePair>[parts];
        var options = new ParallelOptions { MaxDegreeOfParallelism = parts };
        Parallel.For(0, parts, options, part => found[part] = SearchPart(tree, tasks, part, parts, limit));
        return [.. found.SelectMany(part => part)];
    }

    private static List<HolePair> SearchPart(HoleTree tree, List<(int A, int B)> tasks, int part, int parts, double limit)
    {
        var found = new List<HolePair>();
        for (int i = part; i < tasks.Count; i += parts)
            Search(tree, tree.Nodes[tasks[i].A], tree.Nodes[tasks[i].B], limit, found);
        return found;
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
        float grow = (float)Math.Max(0, limit) * (float)(1 + ClearanceTolerance.SinglePrecision);
        if (a.Start == b.Start)
        {
            SearchWithin(tree, a, limit, grow, found);
            return;
        }
        ReadOnlySpan<FrameBox> boxes = tree.Boxes.Slice(a.Start, a.Count), others = tree.Boxes.Slice(b.Start, b.Count);
        FrameBox all = a.Local.Grow(grow), allSeenFromOther = b.Frame.BoxOf(a.Frame, all);
        for (int j = 0; j < others.Length && others[j].XLow <= allSeenFromOther.XHigh; j++)
        {
            if (!others[j].Meets(allSeenFromOther))
                continue;
            FrameBox box = a.Frame.BoxOf(tree.Holes[tree.Ids[b.Start + j]]);
            if (!box.Meets(all))
                continue;
            box = box.Grow(grow);
            for (int i = 0; i < boxes.Length && boxes[i].XLow <= box.XHigh; i++)
            {
                if (boxes[i].Meets(box))
                    Decide(tree, a.Start + i, b.Start + j, limit, found);
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
        // The smaller number goes first into the formula too, so that a pair has the same digits whichever leaf it was found in.
        int a = Math.Min(tree.Ids[i], tree.Ids[j]), b = Math.Max(tree.Ids[i], tree.Ids[j]);
        if (HoleDistance.CloserThan(tree.Holes[a], tree.Holes[b], limit, out double clear))
            found.Add(new HolePair(a, b, clear));
    }

    private static void Sort(List<HolePair> pairs)
    {
        ulong[] keys = new ulong[pairs.Count];
        for (int i = 0; i < keys.Length; i++)
            keys[i] = ((ulong)pairs[i].First << 32) | (uint)pairs[i].Second;
        keys.AsSpan().Sort(CollectionsMarshal.AsSpan(pairs));
    }
}

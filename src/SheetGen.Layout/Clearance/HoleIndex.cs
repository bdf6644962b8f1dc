using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>
/// Finds the holes that come near each other, or near a candidate, without looking at all of them. Boxes only leave out what is certainly
/// far; every decision is the exact distance in double precision. Reading it from several threads at once is safe.
/// </summary>
/// <param name="holes">Not copied: they may not change while the index is used.</param>
internal sealed class HoleIndex(Hole[] holes)
{
    private readonly HoleTree _tree = new(holes);

    public int Count => _tree.Count;

    /// <summary>All pairs whose clear distance is under the limit, in order of their numbers, whatever the number of threads.</summary>
    public IReadOnlyList<HolePair> PairsCloserThan(double limit, int threads = 1) => PairSearch.Find(_tree, limit, threads);

    /// <summary>Adds the numbers of all holes whose clear distance to the candidate is under the limit; in no order that means something.</summary>
    public void CloserThan(in Hole candidate, double limit, List<int> found)
    {
        if (_tree.Count == 0)
            return;
        Bounds reach = Bounds.Of(candidate).Grow(Math.Max(0, limit));
        ReadOnlySpan<HoleTree.Node> nodes = _tree.Nodes;
        Span<int> later = stackalloc int[HoleTree.MostDepth];
        int waiting = 0, at = 0;
        while (true)
        {
            ref readonly HoleTree.Node node = ref nodes[at];
            bool meets = node.World.Meets(reach);
            if (meets && !node.IsLeaf)
            {
                later[waiting++] = node.Second;
                at++;
                continue;
            }
            if (meets)
                SearchLeaf(node, candidate, limit, found);
            if (waiting == 0)
                return;
            at = later[--waiting];
        }
    }

    private void SearchLeaf(in HoleTree.Node leaf, in Hole candidate, double limit, List<int> found)
    {
        FrameBox box = leaf.Frame.BoxOf(candidate).Grow((float)Math.Max(0, limit));
        if (!box.Meets(leaf.Local))
            return;
        ReadOnlySpan<FrameBox> boxes = _tree.Boxes.Slice(leaf.Start, leaf.Count);
        for (int i = 0; i < boxes.Length && boxes[i].XLow <= box.XHigh; i++)
        {
            int id = _tree.Ids[leaf.Start + i];
            if (boxes[i].Meets(box) && HoleDistance.CloserThan(candidate, _tree.Holes[id], limit))
                found.Add(id);
        }
    }
}

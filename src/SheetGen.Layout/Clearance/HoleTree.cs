using System.Runtime.InteropServices;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>
/// Holes sorted into groups that lie and point alike: a binary tree that halves the widest of the six coordinates of heads and tips.
/// Each leaf has a frame of its own with a box for each hole, in order of their low x.
/// </summary>
internal sealed class HoleTree
{
    private const int LeafSize = 192;

    /// <summary>No tree of fewer than 2^31 holes is deeper: each part has at least an eighth of its whole.</summary>
    public const int MostDepth = 128;

    private readonly Hole[] _holes;
    private readonly int[] _ids;
    private readonly FrameBox[] _boxes;
    private readonly List<Node> _nodes = [];

    public HoleTree(ReadOnlySpan<Hole> holes)
    {
        _holes = GC.AllocateUninitializedArray<Hole>(holes.Length);
        _ids = GC.AllocateUninitializedArray<int>(holes.Length);
        _boxes = GC.AllocateUninitializedArray<FrameBox>(holes.Length);
        if (holes.Length == 0)
            return;
        HoleKey[] keys = GC.AllocateUninitializedArray<HoleKey>(holes.Length);
        Vector3D origin = holes[0].Head;
        for (int i = 0; i < holes.Length; i++)
            keys[i] = new HoleKey(holes[i], origin, i);
        Build(holes, keys, 0, holes.Length);
    }

    public int Count => _holes.Length;

    /// <summary>Nodes in depth-first order: the first child of an inner node is the next one.</summary>
    public ReadOnlySpan<Node> Nodes => CollectionsMarshal.AsSpan(_nodes);

    /// <summary>Holes in the order of the leaves.</summary>
    public ReadOnlySpan<Hole> Holes => _holes;

    /// <summary>The number that each hole has outside.</summary>
    public ReadOnlySpan<int> Ids => _ids;

    /// <summary>Box of each hole in its leaf's frame.</summary>
    public ReadOnlySpan<FrameBox> Boxes => _boxes;

    private Bounds Build(ReadOnlySpan<Hole> holes, HoleKey[] keys, int start, int count)
    {
        if (count <= LeafSize)
            return MakeLeaf(holes, keys.AsSpan(start, count), start);
        int at = _nodes.Count;
        _nodes.Add(default);
        int first = HoleKey.Split(keys.AsSpan(start, count));
        Bounds box = Build(holes, keys, start, first);
        int second = _nodes.Count;
        box = box.With(Build(holes, keys, start + first, count - first));
        _nodes[at] = new Node(box, start, count, second, default, default);
        return box;
    }

    private Bounds MakeLeaf(ReadOnlySpan<Hole> holes, ReadOnlySpan<HoleKey> keys, int start)
    {
        int count = keys.Length;
        Vector3D direction = default, origin = holes[keys[0].Id].Head;
        foreach (HoleKey key in keys)
            direction += holes[key.Id].Direction;
        var frame = new HoleFrame(origin, direction);
        Span<float> low = stackalloc float[count];
        Span<int> order = stackalloc int[count];
        Span<FrameBox> boxes = stackalloc FrameBox[count];
        for (int i = 0; i < count; i++)
        {
            boxes[i] = frame.BoxOf(holes[keys[i].Id]);
            low[i] = boxes[i].XLow;
            order[i] = i;
        }
        low.Sort(order);
        Bounds world = Bounds.Of(holes[keys[0].Id]);
        FrameBox all = boxes[0];
        for (int i = 0; i < count; i++)
        {
            int id = keys[order[i]].Id;
            _holes[start + i] = holes[id];
            _ids[start + i] = id;
            _boxes[start + i] = boxes[order[i]];
            world = world.With(Bounds.Of(holes[id]));
            all = all.With(boxes[i]);
        }
        _nodes.Add(new Node(world, start, count, 0, frame, all));
        return world;
    }

    /// <param name="World">Box in northing, easting, elevation.</param>
    /// <param name="Start">Place of its first hole.</param>
    /// <param name="Second">Number of the second child; 0 for a leaf.</param>
    /// <param name="Frame">Frame of a leaf.</param>
    /// <param name="Local">Box of a leaf in its frame.</param>
    internal readonly record struct Node(Bounds World, int Start, int Count, int Second, HoleFrame Frame, FrameBox Local)
    {
        public bool IsLeaf => Second == 0;
    }
}

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
    private readonly Vector3D _origin;

    public HoleTree(Hole[] holes)
    {
        _holes = holes;
        _ids = GC.AllocateUninitializedArray<int>(holes.Length);
        _boxes = GC.AllocateUninitializedArray<FrameBox>(holes.Length);
        if (holes.Length == 0)
            return;
        HoleKey[] keys = GC.AllocateUninitializedArray<HoleKey>(holes.Length);
        _origin = holes[0].Head;
        for (int i = 0; i < holes.Length; i++)
            keys[i] = new HoleKey(holes[i], _origin, i);
        Build(keys);
    }

    public int Count => _holes.Length;

    /// <summary>Nodes in depth-first order: the first child of an inner node is the next one.</summary>
    public ReadOnlySpan<Node> Nodes => CollectionsMarshal.AsSpan(_nodes);

    /// <summary>The holes in the order in which they were given.</summary>
    public ReadOnlySpan<Hole> Holes => _holes;

    /// <summary>Numbers of the holes in the order of the leaves.</summary>
    public ReadOnlySpan<int> Ids => _ids;

    /// <summary>Box of each hole in its leaf's frame, in the order of the leaves.</summary>
    public ReadOnlySpan<FrameBox> Boxes => _boxes;

    private void Build(Span<HoleKey> keys, int start = 0)
    {
        HoleKey.Extent extent = HoleKey.ExtentOf(keys);
        Bounds world = extent.World(_origin);
        if (keys.Length <= LeafSize)
        {
            MakeLeaf(keys, start, world);
            return;
        }
        int at = _nodes.Count;
        _nodes.Add(default);
        int first = HoleKey.Split(keys, extent);
        Build(keys[..first], start);
        _nodes[at] = new Node(world, start, keys.Length, _nodes.Count, default, default);
        Build(keys[first..], start + first);
    }

    private void MakeLeaf(ReadOnlySpan<HoleKey> keys, int start, Bounds world)
    {
        int count = keys.Length;
        Vector3D direction = default;
        foreach (HoleKey key in keys)
            direction += _holes[key.Id].Direction;
        var frame = new HoleFrame(_holes[keys[0].Id].Head, direction);
        Span<float> low = stackalloc float[LeafSize];
        Span<int> order = stackalloc int[LeafSize];
        Span<FrameBox> boxes = stackalloc FrameBox[LeafSize];
        FrameBox all = frame.BoxOf(_holes[keys[0].Id]);
        for (int i = 0; i < count; i++)
        {
            boxes[i] = frame.BoxOf(_holes[keys[i].Id]);
            all = all.With(boxes[i]);
            low[i] = boxes[i].XLow;
            order[i] = i;
        }
        low[..count].Sort(order[..count]);
        for (int i = 0; i < count; i++)
        {
            _ids[start + i] = keys[order[i]].Id;
            _boxes[start + i] = boxes[order[i]];
        }
        _nodes.Add(new Node(world, start, count, 0, frame, all));
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

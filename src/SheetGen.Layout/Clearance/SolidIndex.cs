using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>Finds the solids whose box comes near a box. Reading it from several threads at once is safe.</summary>
internal sealed class SolidIndex
{
    private const int LeafSize = 4;
    private const int MostDepth = 64;

    private readonly int[] _order;
    private readonly Bounds[] _boxes;
    private readonly List<Node> _nodes = [];

    public SolidIndex(IReadOnlyList<Solid> solids)
    {
        _boxes = solids.Select(s => s.Bounds).ToArray();
        _order = Enumerable.Range(0, solids.Count).ToArray();
        if (solids.Count > 0)
            Build(0, solids.Count);
    }

    /// <summary>Adds the numbers of all solids whose box meets the given one.</summary>
    public void Near(in Bounds reach, List<int> found)
    {
        if (_nodes.Count == 0)
            return;
        Span<int> later = stackalloc int[MostDepth];
        int waiting = 0, at = 0;
        while (true)
        {
            Node node = _nodes[at];
            bool meets = node.Box.Meets(reach);
            if (meets && node.Second > 0)
            {
                later[waiting++] = node.Second;
                at++;
                continue;
            }
            for (int i = node.Start; meets && i < node.Start + node.Count; i++)
            {
                if (_boxes[_order[i]].Meets(reach))
                    found.Add(_order[i]);
            }
            if (waiting == 0)
                return;
            at = later[--waiting];
        }
    }

    private void Build(int start, int count)
    {
        Bounds box = _boxes[_order[start]];
        for (int i = 1; i < count; i++)
            box = box.With(_boxes[_order[start + i]]);
        int at = _nodes.Count;
        _nodes.Add(new Node(box, start, count, 0));
        if (count <= LeafSize)
            return;
        bool byNorthing = box.High.N - box.Low.N >= box.High.E - box.Low.E;
        Array.Sort(_order, start, count, Comparer<int>.Create((x, y) =>
        {
            int byMiddle = Middle(_boxes[x], byNorthing).CompareTo(Middle(_boxes[y], byNorthing));
            return byMiddle != 0 ? byMiddle : x.CompareTo(y);
        }));
        Build(start, count / 2);
        _nodes[at] = new Node(box, start, count, _nodes.Count);
        Build(start + count / 2, count - count / 2);
    }

    private static double Middle(in Bounds box, bool byNorthing) => byNorthing ? box.Low.N + box.High.N : box.Low.E + box.High.E;

    /// <param name="Second">Number of the second child; 0 for a leaf. The first child is the next node.</param>
    private readonly record struct Node(Bounds Box, int Start, int Count, int Second);
}

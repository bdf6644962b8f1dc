using SheetGen.Model.Problems;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Forms;

/// <summary>A block of keys that is put together from the cells of several rows and sheets.</summary>
internal sealed class Draft(SourceSpot spot)
{
    private readonly List<(ScalarNode Key, object Value)> _entries = [];

    public SourceSpot Spot => spot;

    /// <summary>Puts a value under a path of keys; the place of the value that stands there already, and then nothing is put.</summary>
    public SourceSpot? Put(IReadOnlyList<string> path, Node value)
    {
        Draft block = path.Count == 1 ? this : Block(path.SkipLast(1), value.Spot);
        if (block.Find(path[^1]) is { } there)
            return there is Node node ? node.Spot : spot;
        block._entries.Add((new ScalarNode(path[^1], false, value.Spot), value));
        return null;
    }

    /// <summary>Puts the first or the second value of a pair.</summary>
    public void PutPart(IReadOnlyList<string> path, int part, Node value)
    {
        Draft block = path.Count == 1 ? this : Block(path.SkipLast(1), value.Spot);
        if (block.Find(path[^1]) is not SortedList<int, Node> parts)
            block._entries.Add((new ScalarNode(path[^1], false, value.Spot), parts = []));
        parts[part] = value;
    }

    /// <summary>Adds an item, a <see cref="Draft"/> or a node, to the list under a path.</summary>
    public void Add(IReadOnlyList<string> path, SourceSpot at, object item)
    {
        Draft block = path.Count == 1 ? this : Block(path.SkipLast(1), at);
        if (block.Find(path[^1]) is not List<object> list)
            block._entries.Add((new ScalarNode(path[^1], false, at), list = []));
        list.Add(item);
    }

    /// <summary>The blocks of the list under a path.</summary>
    public IReadOnlyList<Draft> Items(IReadOnlyList<string> path)
    {
        Draft? block = this;
        foreach (string key in path.SkipLast(1))
            block = block?.Find(key) as Draft;
        return block?.Find(path[^1]) is List<object> list ? [.. list.OfType<Draft>()] : [];
    }

    /// <summary>The name of the block; null where it has none.</summary>
    public string? Name => (Find("name") as ScalarNode)?.Text.Trim();

    /// <summary>The block as a node of the project file's tree.</summary>
    public MapNode Node() => new([.. _entries.Select(e => new KeyValuePair<ScalarNode, Node>(e.Key, NodeOf(e.Value, e.Key.Spot)))], spot);

    private static Node NodeOf(object value, SourceSpot at) => value switch
    {
        Draft block => block.Node(),
        SortedList<int, Node> parts => new ListNode([.. parts.Values], at),
        List<object> list => new ListNode([.. list.Select(i => NodeOf(i, at))], at),
        _ => (Node)value,
    };

    private Draft Block(IEnumerable<string> path, SourceSpot at)
    {
        Draft block = this;
        foreach (string key in path)
        {
            if (block.Find(key) is not Draft inner)
                block._entries.Add((new ScalarNode(key, false, at), inner = new Draft(at)));
            block = inner;
        }
        return block;
    }

    private object? Find(string key) => _entries.Find(e => e.Key.Text == key).Value;
}

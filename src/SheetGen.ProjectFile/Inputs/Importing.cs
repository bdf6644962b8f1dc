using SheetGen.Model.Units;
using SheetGen.ProjectFile.Building;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs;

/// <summary>
/// Puts what files of other programs hold into the project file's tree, in the place of the blocks that name them, so that it is checked
/// like everything else; places in faults are then those of that file.
/// </summary>
internal sealed class Importing(ForeignFiles files, LengthUnit unit, ProblemList problems)
{
    private readonly TreeReader _reader = new(unit, problems);
    private readonly LandXml.LandXmlSource _landXml = new(files, unit);
    private readonly Csv.CsvSource _csv = new(files, unit);
    private readonly Dxf.DxfSource _dxf = new(files, unit);

    /// <summary>The tree with every such block replaced; the same tree where there is none.</summary>
    public Node Expand(Node root)
    {
        if (root is not MapNode file || !Mentions(root))
            return root;
        Node lines = Walk(ValueOf(file, "layout_lines") ?? root, KeyTable.Root.Children.First(k => k.Name == "layout_lines"), null);
        file = With(file, "layout_lines", lines);
        var places = Places(file);
        return file with
        {
            Entries =
            [
                .. file.Entries.Select(e => e.Key.Text switch
                {
                    "walls" when e.Value is ListNode walls => new KeyValuePair<ScalarNode, Node>(e.Key, walls with { Items = [.. walls.Items.Select((w, i) => Walk(w, Child("walls").Item!, places.Walls.ElementAtOrDefault(i)))] }),
                    "obstructions" or "borings" => new(e.Key, Walk(e.Value, Child(e.Key.Text), null, places.Lines)),
                    _ => e,
                }),
            ],
        };
    }

    private static Key Child(string name) => KeyTable.Root.Children.First(k => k.Name == name);

    private static bool Mentions(Node node) => node switch
    {
        MapNode map => map.Entries.Any(e => e.Key.Text is SourceKeys.LandXml or SourceKeys.Dxf or SourceKeys.Csv || Mentions(e.Value)),
        ListNode list => list.Items.Any(Mentions),
        _ => false,
    };

    private Node Walk(Node node, Key key, WallPlace? wall, LayoutLines? lines = null)
    {
        if (key.Kind == ValueKind.List && key.Item!.Sources.Count > 0)
            return WalkList(node, key.Item, key, wall, lines);
        if (node is ListNode list && key.Kind == ValueKind.List)
            return list with { Items = [.. list.Items.Select(i => Walk(i, key.Item!, wall, lines))] };
        if (node is not MapNode map || key.Kind != ValueKind.Map)
            return node;
        MapNode walked = map with
        {
            Entries = [.. map.Entries.Select(e => key.Children.FirstOrDefault(c => c.Name == e.Key.Text) is { } child ? new(e.Key, Walk(e.Value, child, wall, lines)) : e)],
        };
        return SourceOf(walked, key) is { } source && key.FromSource.Count > 0 ? Merged(walked, key, source, wall) : walked;
    }

    private Node WalkList(Node node, Key item, Key list, WallPlace? wall, LayoutLines? lines)
    {
        IReadOnlyList<Node> items = node is ListNode many ? many.Items : SourceOf(node, item) is not null && item.FromSource.Count == 0 ? [node] : [];
        if (items.Count == 0)
            return node;
        var nodes = new List<Node>();
        foreach (Node one in items)
        {
            if (item.FromSource.Count == 0 && SourceOf(one, item) is { } source && one is MapNode map)
                nodes.AddRange(TakeMany(map, source, item, list, wall, lines) ?? [new FaultyNode(one.Spot)]);
            else
                nodes.Add(Walk(one, item, wall, lines));
        }
        return new ListNode(nodes, node.Spot);
    }

    private static Key? SourceOf(Node node, Key key) =>
        node is MapNode map ? key.Sources.FirstOrDefault(s => map.Entries.Any(e => e.Key.Text == s.Name)) : null;

    /// <summary>The block with the keys that the file gives.</summary>
    private MapNode Merged(MapNode map, Key key, Key source, WallPlace? wall)
    {
        ScalarNode name = map.Entries.First(e => e.Key.Text == source.Name).Key;
        var kept = map.Entries.Where(e => e.Key.Text != source.Name).ToList();
        foreach (ScalarNode given in kept.Select(e => e.Key).Where(k => key.FromSource.Contains(k.Text) || key.Sources.Any(s => s.Name == k.Text)))
            problems.Add(ProblemCodes.NotHere, given.Spot, $"\"{given.Text}\" comes from the file of {source.Name}", "remove one of the two", name.Spot);
        kept.RemoveAll(e => key.FromSource.Contains(e.Key.Text) || key.Sources.Any(s => s.Name == e.Key.Text));
        string called = kept.FirstOrDefault(e => e.Key.Text == "name").Value is ScalarNode text ? text.Text : "";
        IReadOnlyList<(string Key, Node Value)>? taken = Block(map, source) is not { } block ? null : source.Name switch
        {
            SourceKeys.LandXml => _landXml.LayoutLine(block, called),
            SourceKeys.Dxf => _dxf.LayoutLine(block),
            _ => _csv.LayoutLine(block),
        };
        taken ??= [.. key.FromSource.Where(f => f != "station_equations").Select(f => (f, (Node)new FaultyNode(name.Spot)))];
        return map with { Entries = [.. kept, .. taken.Select(t => new KeyValuePair<ScalarNode, Node>(new ScalarNode(t.Key, false, name.Spot), t.Value))] };
    }

    private IReadOnlyList<Node>? TakeMany(MapNode map, Key source, Key item, Key list, WallPlace? wall, LayoutLines? lines)
    {
        foreach (ScalarNode other in map.Entries.Select(e => e.Key).Where(k => k.Text != source.Name))
            problems.Add(ProblemCodes.NotHere, other.Spot, $"\"{Shown.Short(other.Text)}\" does not go beside {source.Name}", "put it into the block, or remove it");
        if (Block(map, source) is not { } block)
            return null;
        if (item.Shared == "profile point" || item.Name == "cross section")
        {
            if (wall is null)
                return null; // The wall's layout line is faulty, which is reported.
            return source.Name == SourceKeys.Csv ? _csv.Profile(block, wall, list.Name)
                : item.Name == "cross section" ? _landXml.CrossSections(block, wall) : _landXml.Profile(block, wall, list.Name);
        }
        return source.Name == SourceKeys.Dxf ? lines is null ? null : _dxf.Obstructions(block, lines) : _csv.Borings(block);
    }

    private MapItem? Block(MapNode map, Key source)
    {
        (ScalarNode name, Node value) = map.Entries.First(e => e.Key.Text == source.Name);
        bool before = problems.HasErrors;
        var item = _reader.Read(value, source, name.Spot) as MapItem;
        return item is null || item.Keys.Keys.Any(item.IsFaulty) || source.Children.Any(c => c.Required && !item.Gives(c.Name)) ? null : item;
    }

    /// <summary>The layout lines and the walls' places on them, as far as they are whole; their faults are reported when the project is built.</summary>
    private (LayoutLines Lines, IReadOnlyList<WallPlace?> Walls) Places(MapNode file)
    {
        var silent = new ProblemList();
        var reader = new TreeReader(unit, silent);
        MapItem root = MapOf(file, reader, "layout_lines");
        var lines = new LayoutLines(root, unit, silent);
        var walls = new List<WallPlace?>();
        Key wallKey = Child("walls").Item!;
        foreach (Node node in ValueOf(file, "walls") is ListNode list ? list.Items : [])
        {
            walls.Add(null);
            if (node is not MapNode map)
                continue;
            var values = new Dictionary<string, Item>();
            foreach (string name in new[] { "layout_line", "retained_side", "face_offset", "stations" })
            {
                if (ValueOf(map, name) is { } value && reader.Read(value, wallKey.Children.First(k => k.Name == name), map.Spot) is { } item)
                    values[name] = item;
            }
            var block = new MapItem(values, values.ToDictionary(v => v.Key, v => v.Value.Spot), map.Spot);
            if (lines.Find(block) is not { } line || block.Text("retained_side") is not { } side)
                continue;
            (double Start, double End)? stretch = Stretches.Read(block, line, unit, silent);
            walls[^1] = new WallPlace(line, lines.Origin, side == "right" ? 1 : -1, block.Number("face_offset") ?? 0, stretch?.Start, stretch?.End);
        }
        return (lines, walls);
    }

    private static MapItem MapOf(MapNode file, TreeReader reader, string key)
    {
        var values = new Dictionary<string, Item>();
        if (ValueOf(file, key) is { } node && reader.Read(node, Child(key), file.Spot) is { } item)
            values[key] = item;
        return new MapItem(values, values.ToDictionary(v => v.Key, v => v.Value.Spot), file.Spot);
    }

    private static Node? ValueOf(MapNode map, string key) => map.Entries.FirstOrDefault(e => e.Key.Text == key).Value;

    private static MapNode With(MapNode map, string key, Node value) =>
        ValueOf(map, key) is null ? map : map with { Entries = [.. map.Entries.Select(e => e.Key.Text == key ? new(e.Key, value) : e)] };
}

using System.Globalization;
using SheetGen.Model.Forms;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Forms;

/// <summary>Takes the values of a project file's tree apart into the cells of the form, and keeps count of what found a cell.</summary>
/// <param name="root">Null for an empty form.</param>
internal sealed class FormFilling(MapNode? root)
{
    private readonly HashSet<Node> _placed = new(ReferenceEqualityComparer.Instance);

    /// <summary>The value of a row of a sheet of keys.</summary>
    public FormCell Value(FormColumn column) => root is null ? default : Cell(root, column, KeyTable.Root);

    /// <summary>The rows of a table.</summary>
    public IReadOnlyList<IReadOnlyList<FormCell>> Rows(FormTable table)
    {
        var rows = new List<IReadOnlyList<FormCell>>();
        if (root is not null)
            Walk(root, KeyTable.Root, table, 0, [], rows);
        return rows;
    }

    /// <summary>The rows of a sheet of names.</summary>
    public IReadOnlyList<IReadOnlyList<FormCell>> Rows(FormNames names)
    {
        Node? node = root;
        foreach (string key in names.Path)
            node = node is MapNode map ? Find(map, key) : null;
        if (node is not MapNode block)
            return [];
        Key item = FormPlan.At(names.Path).Item!;
        return [.. block.Entries.Select(e => (IReadOnlyList<FormCell>)
            [new FormCell(e.Key.Text), .. names.Columns.Select(c => c.Path.Count == 0 ? CellOf(e.Value, c.Key) : Cell(e.Value, c, item))])];
    }

    /// <summary>The rows that name files of other programs.</summary>
    public IReadOnlyList<IReadOnlyList<FormCell>> SourceRows()
    {
        var rows = new List<IReadOnlyList<FormCell>>();
        if (root is null)
            return rows;
        foreach ((string place, bool ofWall, IReadOnlyList<Key> sources) in FormPlan.Places)
        {
            if (!ofWall && place != "layout_line")
            {
                Add(place, "", Find(root, place), sources, rows);
                continue;
            }
            foreach (MapNode owner in Items(Find(root, ofWall ? "walls" : "layout_lines")).OfType<MapNode>())
                Add(place, (Find(owner, "name") as ScalarNode)?.Text ?? "", ofWall ? Find(owner, place) : owner, sources, rows);
        }
        return rows;
    }

    /// <summary>line:column of each value that found no cell.</summary>
    public IReadOnlyList<string> Unread()
    {
        var unread = new List<string>();
        void Look(Node node)
        {
            if (_placed.Contains(node))
                return;
            if (node is ScalarNode)
                unread.Add(FormattableString.Invariant($"{node.Spot.Line}:{node.Spot.Column}"));
            foreach (Node inner in node is MapNode map ? map.Entries.Select(e => e.Value) : node is ListNode list ? list.Items : [])
                Look(inner);
        }
        if (root is not null)
            Look(root);
        return unread;
    }

    private void Add(string place, string of, Node? node, IReadOnlyList<Key> sources, List<IReadOnlyList<FormCell>> rows)
    {
        foreach (Node item in node is MapNode ? [node] : Items(node))
        {
            foreach (Key source in sources)
            {
                if (item is MapNode map && Find(map, source.Name) is { } block)
                    rows.Add([new FormCell(place), new FormCell(of), new FormCell(source.Name), .. FormPlan.SourceColumns.Select(c => source.Children.FirstOrDefault(k => k.Name == c.Heading) is { } key ? Cell(block, c with { Key = key }, source) : default)]);
            }
        }
    }

    private void Walk(MapNode block, Key key, FormTable table, int level, IReadOnlyList<string> names, List<IReadOnlyList<FormCell>> rows)
    {
        Node? node = block;
        foreach (string name in table.Lists[level])
        {
            key = (key.Kind == ValueKind.List ? key.Item! : key).Children.First(k => k.Name == name);
            node = node is MapNode map ? Find(map, name) : null;
        }
        Key item = key.Item!;
        foreach (Node one in Items(node))
        {
            MapNode? map = AsMap(one, item);
            if (map is null || (item.Sources.Count > 0 && item.FromSource.Count == 0 && item.Sources.Any(s => Find(map, s.Name) is not null)))
                continue;
            string name = (Find(map, "name") as ScalarNode)?.Text ?? "";
            if (level + 1 < table.Lists.Count)
                Walk(map, item, table, level + 1, [.. names, name], rows);
            else if (table.Kinds.Count == 0 || table.Kinds.Contains(Find(map, "kind") is ScalarNode kind ? item.Children.First(k => k.Name == "kind").ChoiceOf(kind.Text) : null))
                rows.AddRange(RowsOf(map, item, table, table.Names ? [.. names, name] : names));
        }
    }

    private IEnumerable<IReadOnlyList<FormCell>> RowsOf(MapNode map, Key item, FormTable table, IReadOnlyList<string> names)
    {
        if (table.Kinds.Count == 1)
            _placed.Add(Find(map, "kind")!);
        var groups = table.Groups.ToDictionary(g => g.Key, g => GroupItems(map, item, g.First().Group!));
        FormCell[] first = [.. table.Own.Select(c => Cell(map, c, item))];
        int count = Math.Max(groups.Values.Select(g => g.Items.Count).DefaultIfEmpty(0).Max(), table.Names && first.All(c => c.Text.Length == 0) ? 0 : 1);
        for (int i = 0; i < count; i++)
        {
            int own = 0;
            var row = new List<FormCell>(i == 0 ? names.Select(n => new FormCell(n)) : names.Select(_ => default(FormCell)));
            foreach (FormColumn column in table.Columns.Skip(names.Count))
            {
                if (column.Group is null)
                    row.Add(i == 0 ? first[own++] : default);
                else
                    row.Add(groups[string.Join('.', column.Group)] is var (items, key) && i < items.Count ? Cell(items[i], column, key) : default);
            }
            yield return row;
        }
    }

    private static (IReadOnlyList<Node> Items, Key Key) GroupItems(MapNode map, Key item, IReadOnlyList<string> path)
    {
        Node? node = map;
        IEnumerable<Key> children = [.. item.Children, .. item.Variants.Values.SelectMany(v => v)];
        Key key = item;
        foreach (string name in path)
        {
            key = children.First(k => k.Name == name);
            children = key.Children;
            node = node is MapNode block ? Find(block, name) : null;
        }
        // What stands for a file is filled in on its own sheet.
        return ([.. Items(node).Where(i => i is not MapNode block || !key.Item!.Sources.Any(s => Find(block, s.Name) is not null))], key.Item!);
    }

    /// <summary>The cell of a column of a block; short forms are written out by the names of their values.</summary>
    private FormCell Cell(Node block, FormColumn column, Key key)
    {
        Node? node = block;
        foreach (string name in column.Path)
        {
            MapNode? map = node is null ? null : AsMap(node, key);
            key = key.Children.Concat(key.Variants.Values.SelectMany(v => v)).First(k => k.Name == name);
            node = map is null ? null : Find(map, name);
        }
        if (column.Part > 0)
            node = node is ListNode pair ? pair.Items.ElementAtOrDefault(column.Part - 1) : null;
        return node is null ? default : CellOf(node, column.Key);
    }

    private FormCell CellOf(Node node, Key key)
    {
        Place(node);
        switch (node)
        {
            case ScalarNode scalar:
                return new FormCell(scalar.Text, !scalar.Quoted && !FormSheets.IsText(key) && double.TryParse(scalar.Text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _));
            case ListNode list when list.Items.All(i => i is ScalarNode):
                return new FormCell(string.Join("; ", list.Items.Select(i => ((ScalarNode)i).Text)));
            default:
                return new FormCell(YamlText.Flow(node));
        }
    }

    private void Place(Node node)
    {
        _placed.Add(node);
        foreach (Node inner in node is MapNode map ? map.Entries.Select(e => e.Value) : node is ListNode list ? list.Items : [])
            Place(inner);
    }

    /// <summary>The block that a node is, or that it says in short; null for none.</summary>
    private MapNode? AsMap(Node node, Key key)
    {
        if (node is MapNode map)
            return map;
        if (node is ListNode list && key.Short.Count == list.Items.Count)
            return new MapNode([.. key.Short.Zip(list.Items, (name, item) => new KeyValuePair<ScalarNode, Node>(new ScalarNode(name, false, item.Spot), item))], node.Spot);
        if (node is not ScalarNode scalar || key.Name != "bar")
            return null;
        _placed.Add(node);
        return Shorthand.BarOf(scalar);
    }

    private static IReadOnlyList<Node> Items(Node? node) => node switch { ListNode list => list.Items, MapNode map => [map], _ => [] };

    private static Node? Find(MapNode map, string key) => map.Entries.FirstOrDefault(e => e.Key.Text == key).Value;
}

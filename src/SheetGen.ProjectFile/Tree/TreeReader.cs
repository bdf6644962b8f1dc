using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Values;

namespace SheetGen.ProjectFile.Tree;

/// <summary>Checks a node tree against the key table and turns it into values in project units; every fault is reported, none stops it.</summary>
internal sealed class TreeReader(LengthUnit unit, ProblemList problems)
{
    private readonly ScalarReader _scalars = new(unit, problems);

    /// <summary>The value of a node; null where it is faulty.</summary>
    /// <param name="keySpot">Place of the key, for a value that is empty.</param>
    public Item? Read(Node node, Key key, SourceSpot keySpot)
    {
        if (node is FaultyNode)
            return null;
        if (node is ScalarNode { IsEmpty: true } or ScalarNode { Text.Length: 0 })
        {
            problems.Add(ProblemCodes.EmptyValue, keySpot, $"{Called(key)} has no value", EmptyHint(key));
            return null;
        }
        return key.Kind switch
        {
            ValueKind.Map => ReadMap(node, key),
            ValueKind.List => ReadList(node, key),
            ValueKind.Names => ReadNames(node, key),
            _ => node is ScalarNode scalar ? _scalars.Read(scalar, key) : WrongType(node, key),
        };
    }

    private MapItem? ReadMap(Node node, Key key)
    {
        if (node is ListNode list && key.Short.Count > 0)
            return ReadShort(list, key);
        if (node is not MapNode map)
        {
            WrongType(node, key);
            return null;
        }
        IReadOnlyList<Key> known = KnownKeys(map, key, out bool whole);
        var values = new Dictionary<string, Item>();
        var given = new Dictionary<string, SourceSpot>();
        var meant = new HashSet<string?>();
        foreach ((ScalarNode name, Node value) in map.Entries)
        {
            Key? child = known.FirstOrDefault(k => k.Name == name.Text);
            if (child is null)
            {
                if (whole)
                    meant.Add(ReportUnknown(name, key, known));
                continue;
            }
            given[child.Name] = name.Spot;
            if (Read(value, child, name.Spot) is { } item)
                values[child.Name] = item;
        }
        foreach (Key child in known.Where(k => k.Required && !given.ContainsKey(k.Name) && !meant.Contains(k.Name)))
            problems.Add(ProblemCodes.MissingKey, map.Spot, $"\"{child.Name}\" is missing in {Called(key)}", Example(child));
        if (key.ExactlyOne && given.Count != 1)
        {
            string names = string.Join(", ", known.Select(k => k.Name));
            if (given.Count > 1 || meant.Count == 0)
                problems.Add(ProblemCodes.ExactlyOne, map.Spot, $"{Called(key)} takes exactly one of {names}", given.Count > 1 ? "keep one of them" : "give one of them");
            return null;
        }
        return new MapItem(values, given, map.Spot);
    }

    /// <summary>The keys that a block knows, with those of its variant.</summary>
    /// <param name="whole">False where the variant is not known, so that a key cannot be called unknown.</param>
    private static IReadOnlyList<Key> KnownKeys(MapNode map, Key key, out bool whole)
    {
        whole = true;
        if (key.VariantKey is null)
            return key.Children;
        Node? node = map.Entries.FirstOrDefault(e => e.Key.Text == key.VariantKey).Value;
        string? chosen = node is ScalarNode scalar ? key.Children.First(k => k.Name == key.VariantKey).ChoiceOf(scalar.Text) : null;
        if (chosen is not null && key.Variants.TryGetValue(chosen, out IReadOnlyList<Key>? more))
            return [.. key.Children, .. more];
        whole = false;
        return key.Children;
    }

    private MapItem? ReadShort(ListNode list, Key key)
    {
        if (list.Items.Count != key.Short.Count)
        {
            problems.Add(ProblemCodes.WrongCount, list.Spot, FormattableString.Invariant($"{Called(key)} takes [{string.Join(", ", key.Short)}], found {Count(list.Items.Count)}"), CommaHint(list));
            return null;
        }
        var values = new Dictionary<string, Item>();
        var given = new Dictionary<string, SourceSpot>();
        for (int i = 0; i < key.Short.Count; i++)
        {
            Key child = key.Children.First(k => k.Name == key.Short[i]);
            given[child.Name] = list.Items[i].Spot;
            if (Read(list.Items[i], child, list.Items[i].Spot) is { } item)
                values[child.Name] = item;
        }
        return new MapItem(values, given, list.Spot);
    }

    private ListItem? ReadList(Node node, Key key)
    {
        Key item = key.Item!;
        IReadOnlyList<Node> nodes;
        if (node is ListNode list)
        {
            nodes = list.Items;
        }
        else if (key.OneAllowed && (node is ScalarNode || (item.Kind == ValueKind.Map && node is MapNode)))
        {
            nodes = [node];
        }
        else
        {
            WrongType(node, key);
            return null;
        }
        if (nodes.Count < key.MinCount || nodes.Count > key.MaxCount)
        {
            string takes = key.MinCount == key.MaxCount ? $"{key.MinCount}"
                : nodes.Count < key.MinCount ? $"at least {key.MinCount}" : $"at most {key.MaxCount}";
            problems.Add(ProblemCodes.WrongCount, node.Spot, $"\"{key.Name}\" takes {takes} {(takes.EndsWith(" 1", StringComparison.Ordinal) ? "value" : "values")}, found {Count(nodes.Count)}", node is ListNode whole ? CommaHint(whole) : "");
            return null;
        }
        var items = new List<Item>();
        foreach (Node one in nodes)
        {
            if (Read(one, item, one.Spot) is { } read)
                items.Add(read);
        }
        return new ListItem(items, items.Count < nodes.Count, node.Spot);
    }

    private MapItem? ReadNames(Node node, Key key)
    {
        if (node is not MapNode map)
        {
            WrongType(node, key);
            return null;
        }
        var values = new Dictionary<string, Item>();
        foreach ((ScalarNode name, Node value) in map.Entries)
        {
            if (Read(value, key.Item! with { Name = Shown.Short(name.Text) }, name.Spot) is { } item)
                values[name.Text] = item;
        }
        return new MapItem(values, map.Entries.ToDictionary(e => e.Key.Text, e => e.Key.Spot), map.Spot);
    }

    /// <summary>A hint where two neighbours of a list look like one number with a thousands comma; else empty.</summary>
    private static string CommaHint(ListNode list)
    {
        for (int i = 0; i + 1 < list.Items.Count; i++)
        {
            if (list.Items[i] is ScalarNode { Quoted: false } a && list.Items[i + 1] is ScalarNode { Quoted: false } b
                && a.Spot.Line == b.Spot.Line && b.Spot.Column - a.Spot.Column == a.Text.Length + 1
                && a.Text.Length <= 3 && a.Text.All(char.IsAsciiDigit) && b.Text.Split('.')[0] is { Length: 3 } thousand && thousand.All(char.IsAsciiDigit))
                return $"a comma parts values: write {a.Text}{b.Text} without it";
        }
        return "";
    }

    /// <summary>Reports an unknown key; the key that was probably meant, which is then not called missing too.</summary>
    private string? ReportUnknown(ScalarNode name, Key key, IReadOnlyList<Key> known)
    {
        string[] names = [.. known.Select(k => k.Name)];
        if (name.Text.Split(':') is [{ } before, { Length: > 0 } after] && names.Contains(before))
        {
            problems.Add(ProblemCodes.UnknownKey, name.Spot, $"unknown key \"{Shown.Short(name.Text)}\" in {Called(key)}", $"put a blank after the colon: {before}: {Shown.Short(after)}");
            return before;
        }
        if (known.FirstOrDefault(k => k.Formerly.ContainsKey(name.Text)) is { } now)
        {
            problems.Add(ProblemCodes.UnknownKey, name.Spot, $"\"{name.Text}\" in {Called(key)} is now \"{now.Name}\"", now.Formerly[name.Text]);
            return now.Name;
        }
        string? near = names.FirstOrDefault(n => Spelling.Bare(n) == Spelling.Bare(name.Text)) ?? Suggestion.Nearest(name.Text, names);
        string hint = near is null ? "known here: " + string.Join(", ", names) : $"did you mean \"{near}\"?";
        problems.Add(ProblemCodes.UnknownKey, name.Spot, $"unknown key \"{Shown.Short(name.Text)}\" in {Called(key)}", hint);
        return near;
    }

    private static string EmptyHint(Key key) => key switch
    {
        { Name: "size" } => "write the size in quotes: \"#8\"",
        { Required: true } => "give a value",
        { Kind: ValueKind.List, MinCount: 0 } => "leave the key out, or write []",
        _ => "give a value, or leave the key out",
    };

    private Item? WrongType(Node node, Key key)
    {
        string found = node switch
        {
            ListNode => "a list",
            MapNode => "a block of keys",
            ScalarNode s => $"\"{Shown.Short(s.Text)}\"",
            _ => "something else",
        };
        string needed = key.Kind switch
        {
            ValueKind.Map when key.Short.Count > 0 => $"[{string.Join(", ", key.Short)}] or a block of keys",
            ValueKind.Map or ValueKind.Names => "a block of keys",
            ValueKind.List => "a list",
            _ => "a single value",
        };
        string hint = key.Short.Count > 1 && node is ScalarNode ? $"write pairs in brackets of their own: [[{string.Join(", ", key.Short)}], ...]" : Example(key);
        problems.Add(ProblemCodes.WrongType, node.Spot, $"{Called(key)} takes {needed}, found {found}", hint);
        return null;
    }

    private static string Called(Key key) => key.Name.Contains(' ') ? $"a {key.Name}".Replace("a project file", "the project file") : $"\"{key.Name}\"";

    private static string Example(Key key) => key.Example.Length == 0 ? "" : $"for example {key.Name}: {key.Example}";

    private static string Count(int count) => count == 0 ? "none" : FormattableString.Invariant($"{count}");
}

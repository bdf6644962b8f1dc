using System.Text.RegularExpressions;
using SheetGen.ProjectFile.Keys;

namespace SheetGen.ProjectFile.Tree;

/// <summary>Writes out what a project file says in short: defaults of sections, and a bar in one text. Places stay those of the file.</summary>
internal static partial class Shorthand
{
    public const string Defaults = "section_defaults";

    [GeneratedRegex(@"^(?<size>(?:#|no\.?\s*)?[0-9]{1,2})\s*[,;x]?\s*(?:bars?\s*,?\s*)?(?<grade>gr(?:ade)?\.?\s*[0-9]{2,3}(?:\s*ksi)?|[0-9]{2,3}\s*(?:ksi|mpa))$", RegexOptions.IgnoreCase)]
    private static partial Regex BarText();

    /// <summary>The tree with every section written out.</summary>
    public static Node Expand(Node root)
    {
        if (root is not MapNode file || ValueOf(file, "walls") is not ListNode walls)
            return root;
        MapNode? forAll = ValueOf(file, Defaults) as MapNode;
        var expanded = new ListNode([.. walls.Items.Select(w => w is MapNode wall ? Expand(wall, forAll) : w)], walls.Spot);
        return With(With(file, "walls", expanded), Defaults, forAll is null ? null : WithBar(forAll));
    }

    private static MapNode Expand(MapNode wall, MapNode? forAll)
    {
        MapNode? own = ValueOf(wall, Defaults) as MapNode;
        if (own is not null)
            wall = With(wall, Defaults, WithBar(own));
        if (ValueOf(wall, "sections") is not ListNode sections)
            return wall;
        MapNode?[] defaults = [own, forAll];
        return With(wall, "sections", new ListNode([.. sections.Items.Select(s => s is MapNode section ? Filled(WithBar(section), defaults) : s)], sections.Spot));
    }

    private static MapNode Filled(MapNode section, IEnumerable<MapNode?> defaults) =>
        defaults.OfType<MapNode>().Select(WithBar).Aggregate(section, Merge);

    /// <summary>The block with the keys that it lacks; blocks in it are filled in the same way.</summary>
    private static MapNode Merge(MapNode block, MapNode defaults)
    {
        var entries = new List<KeyValuePair<ScalarNode, Node>>(block.Entries);
        foreach ((ScalarNode name, Node value) in defaults.Entries.Where(e => WallKeys.IsDefault(e.Key.Text)))
        {
            int at = entries.FindIndex(e => e.Key.Text == name.Text);
            if (at < 0)
                entries.Add(new(name, value));
            else if (entries[at].Value is MapNode own && value is MapNode inner)
                entries[at] = new(entries[at].Key, MergeInner(own, inner));
        }
        return block with { Entries = entries };
    }

    private static MapNode MergeInner(MapNode own, MapNode defaults) =>
        own with { Entries = [.. own.Entries, .. defaults.Entries.Where(d => own.Entries.All(e => e.Key.Text != d.Key.Text))] };

    private static MapNode WithBar(MapNode section) =>
        ValueOf(section, "bar") is ScalarNode bar ? With(section, "bar", BarOf(bar)) : section;

    /// <summary>The block that a bar in one text stands for.</summary>
    public static MapNode BarOf(ScalarNode bar)
    {
        Match match = BarText().Match(Values.Spelling.Plain(bar.Text));
        return match.Success
            ? Block(bar, ("size", match.Groups["size"].Value), ("grade", match.Groups["grade"].Value))
            : Block(bar, ("size", bar.Text));
    }

    private static MapNode Block(ScalarNode at, params (string Name, string Text)[] values) =>
        new([.. values.Select(v => new KeyValuePair<ScalarNode, Node>(new ScalarNode(v.Name, false, at.Spot), new ScalarNode(v.Text, true, at.Spot)))], at.Spot);

    private static Node? ValueOf(MapNode map, string key) => map.Entries.FirstOrDefault(e => e.Key.Text == key).Value;

    private static MapNode With(MapNode map, string key, Node? value) =>
        value is null ? map : map with { Entries = [.. map.Entries.Select(e => e.Key.Text == key ? new(e.Key, value) : e)] };
}

using System.Text.RegularExpressions;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Studies;

/// <summary>A key of the project file with the blocks that it stands in, and which wall and section are meant.</summary>
/// <param name="Blocks">Names from the root down to the key.</param>
/// <param name="Key">The key.</param>
internal sealed partial record KeyPath(IReadOnlyList<string> Blocks, Key Key, string? Wall, string? Section)
{
    private static readonly IReadOnlyList<(string[] Blocks, Key Key)> Known = [.. Below([], KeyTable.Root.Children)];

    /// <summary>horizontal_spacing, rules.clearance.nail, inclination[section A], inclination[wall North, section A]</summary>
    [GeneratedRegex(@"^(?<path>[a-z_]+(?:\.[a-z_]+)*)\s*(?:\[\s*(?:wall\s+(?<wall>[^,\]]+?))?\s*,?\s*(?:section\s+(?<section>[^,\]]+?))?\s*\])?$")]
    private static partial Regex Form();

    /// <summary>Finds the key that a text names; null where there is none or more than one, which is reported.</summary>
    public static KeyPath? Find(ScalarNode name, string? wall, string? section, ProblemList problems)
    {
        Match match = Form().Match(name.Text.Trim());
        if (!match.Success)
        {
            problems.Add(ProblemCodes.StudyKey, name.Spot, $"\"{Shown.Short(name.Text)}\" is not the name of a key", "write horizontal_spacing, rules.clearance.nail or inclination[section A]");
            return null;
        }
        string[] asked = match.Groups["path"].Value.Split('.');
        (string[] Blocks, Key Key)[] found = [.. Known.Where(k => k.Blocks.TakeLast(asked.Length).SequenceEqual(asked))];
        // A single word means the design grid's key, where the grid has one of that name.
        if (found.Length > 1 && asked.Length == 1 && found.Where(f => f.Blocks is ["walls", "sections", _]).ToArray() is [{ } ofSection])
            found = [ofSection];
        if (found.Length == 1)
        {
            string? Of(string group, string? otherwise) => match.Groups[group].Success ? match.Groups[group].Value : otherwise;
            return new KeyPath(found[0].Blocks, found[0].Key, Of("wall", wall), Of("section", section));
        }
        string hint = found.Length > 1 ? "write one of " + string.Join(", ", found.Select(f => string.Join('.', f.Blocks)))
            : Suggestion.Nearest(asked[^1], Known.Select(k => k.Blocks[^1]).Distinct()) is { } near ? $"did you mean \"{near}\"?" : "docs/project-file.md lists the keys";
        problems.Add(ProblemCodes.StudyKey, name.Spot, found.Length > 1 ? $"\"{Shown.Short(name.Text)}\" may be several keys" : $"no single value of the project file is named \"{Shown.Short(name.Text)}\"", hint);
        return null;
    }

    /// <summary>The tree with the value in all places that are meant.</summary>
    /// <param name="places">Gets how many there were.</param>
    public Node Put(Node root, ScalarNode name, Node value, out int places)
    {
        int count = 0;
        Node changed = Put(root, 0);
        places = count;
        return changed;

        Node Put(Node at, int depth)
        {
            if (at is ListNode list)
                return list with { Items = [.. list.Items.Select(i => IsMeant(i, Blocks[depth - 1]) ? Put(i, depth) : i)] };
            if (at is not MapNode map)
                return at;
            var entries = new List<KeyValuePair<ScalarNode, Node>>(map.Entries);
            int found = entries.FindIndex(e => e.Key.Text == Blocks[depth]);
            bool isLast = depth == Blocks.Count - 1;
            if (found < 0)
                entries.Add(new(new ScalarNode(Blocks[depth], false, name.Spot), isLast ? value : new MapNode([], value.Spot)));
            int place = found < 0 ? entries.Count - 1 : found;
            if (isLast)
                count++;
            entries[place] = new(entries[place].Key, isLast ? value : Put(entries[place].Value, depth + 1));
            return map with { Entries = entries };
        }
    }

    private bool IsMeant(Node item, string list) => list switch
    {
        "walls" => Wall is null || NameOf(item) == Wall,
        "sections" => Section is null || NameOf(item) == Section,
        _ => true,
    };

    private static string? NameOf(Node item) => item is MapNode map && map.Entries.FirstOrDefault(e => e.Key.Text == "name").Value is ScalarNode name ? name.Text.Trim() : null;

    /// <summary>Every key with a value of its own. Lists of blocks other than walls and sections have no names to be meant by.</summary>
    private static IEnumerable<(string[] Blocks, Key Key)> Below(string[] above, IEnumerable<Key> keys)
    {
        foreach (Key key in keys)
        {
            string[] at = [.. above, key.Name];
            // The units are no value of the wall: lengths of variants in feet and in metres could not be compared.
            if (key.Name is Shorthand.Defaults or "name" or "format" || at is ["project", "units"])
                continue;
            if (key.Kind == ValueKind.Map)
            {
                foreach (var below in Below(at, key.Children))
                    yield return below;
            }
            else if (key is { Kind: ValueKind.List, Item.Kind: ValueKind.Map })
            {
                if (key.Name is "walls" or "sections")
                {
                    foreach (var below in Below(at, key.Item.Children))
                        yield return below;
                }
                else if (key.Item.Short.Count > 0)
                {
                    yield return (at, key);
                }
            }
            else if (key.Kind != ValueKind.Names)
            {
                yield return (at, key);
            }
        }
    }
}

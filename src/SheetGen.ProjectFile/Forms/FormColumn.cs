using SheetGen.ProjectFile.Keys;

namespace SheetGen.ProjectFile.Forms;

/// <summary>A column of a table of the form, or a row of a sheet of keys: one value of a block.</summary>
/// <param name="Heading">What stands over it: the names of the keys down to it, parted by dots; the two values of a pair end in .1 and .2.</param>
/// <param name="Key">What it takes.</param>
/// <param name="Path">Names of the keys from the row's block down to it.</param>
internal sealed record FormColumn(string Heading, Key Key, IReadOnlyList<string> Path)
{
    /// <summary>Path of the list to which its row adds an item; null for a value of the row's own block.</summary>
    public IReadOnlyList<string>? Group { get; init; }

    /// <summary>1 or 2 for a value of a pair; else 0.</summary>
    public int Part { get; init; }

    /// <summary>True where it names the item of a list that the row belongs to.</summary>
    public bool IsReference { get; init; }

    /// <summary>Columns for the values of a block.</summary>
    /// <param name="apart">Paths, parted by dots, of what has a sheet of its own.</param>
    /// <param name="groups">Paths of lists whose items stand in rows below each other, beside the block.</param>
    /// <param name="whole">Paths of what is written into one cell, in brackets as in a project file.</param>
    public static IEnumerable<FormColumn> Of(IEnumerable<Key> keys, IReadOnlyList<string> apart, IReadOnlyList<string> groups, IReadOnlyList<string> whole) =>
        keys.SelectMany(k => Of(k, [], apart, groups, whole));

    private static IEnumerable<FormColumn> Of(Key key, IReadOnlyList<string> above, IReadOnlyList<string> apart, IReadOnlyList<string> groups, IReadOnlyList<string> whole)
    {
        string[] path = [.. above, key.Name];
        string heading = string.Join('.', path);
        if (apart.Contains(heading))
            return [];
        if (groups.Contains(heading))
            return key.Item!.Children.SelectMany(k => Of(k, [], [], [], [])).Select(c => c with { Heading = $"{heading}.{c.Heading}", Group = path });
        if (key.Kind == ValueKind.Map && !whole.Contains(heading))
            return key.Children.SelectMany(k => Of(key.Required ? k : k with { Required = false }, path, apart, groups, whole));
        if (key is { Kind: ValueKind.List, MinCount: 2, MaxCount: 2 } && key.Item!.Kind is not (ValueKind.Map or ValueKind.List))
            return [new FormColumn(heading + ".1", key.Item with { Name = key.Name, Meaning = key.Meaning, Required = key.Required }, path) { Part = 1 }, new FormColumn(heading + ".2", key.Item with { Name = key.Name, Meaning = key.Meaning, Required = key.Required }, path) { Part = 2 }];
        return [new FormColumn(heading, key, path)];
    }
}

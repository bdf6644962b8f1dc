namespace SheetGen.ProjectFile.Keys;

/// <summary>The names of all keys, wherever they stand.</summary>
internal static class KeyNames
{
    public static IReadOnlySet<string> All { get; } = Collect(KeyTable.Root).Concat(Collect(PayItemKeys.Root)).Concat(Collect(Corridors.CorridorKeys.Root)).Concat(Collect(Studies.StudyKeys.Root)).ToHashSet();

    private static IEnumerable<string> Collect(Key key) =>
        key.Children.Concat(key.Variants.Values.SelectMany(v => v)).SelectMany(child => Collect(child).Prepend(child.Name))
            .Concat(key.Item is null ? [] : Collect(key.Item));
}

namespace SheetGen.ProjectFile.Tree;

/// <summary>Whether two values that were read are one, however they were written: 4.5, 4.50, 54 in.</summary>
internal static class SameValue
{
    /// <summary>How far two numbers may be off, as a share, that differ in no more than the way from their units.</summary>
    private const double Share = 1e-12;

    public static bool Is(Item? a, Item? b) => (a, b) switch
    {
        (NumberItem x, NumberItem y) => x.Mark == y.Mark && Math.Abs(x.Value - y.Value) <= Share * Math.Max(Math.Abs(x.Value), Math.Abs(y.Value)),
        (TextItem x, TextItem y) => x.Text == y.Text,
        (FlagItem x, FlagItem y) => x.Value == y.Value,
        (ListItem x, ListItem y) => x.Items.Count == y.Items.Count && x.Items.Zip(y.Items).All(p => Is(p.First, p.Second)),
        (MapItem x, MapItem y) => x.Values.Count == y.Values.Count && x.Values.All(v => Is(v.Value, y.Value(v.Key))),
        _ => false,
    };
}

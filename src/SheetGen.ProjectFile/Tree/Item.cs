using SheetGen.Model.Problems;

namespace SheetGen.ProjectFile.Tree;

/// <summary>A value that the key table has approved, in project units. What is faulty is reported and left out.</summary>
internal abstract record Item(SourceSpot Spot);

/// <summary>A number. The exact value keeps the digits of the file, so that differences of large coordinates lose nothing.</summary>
/// <param name="Mark">Which of two equal stations is meant; of stations only.</param>
internal sealed record NumberItem(double Value, decimal Exact, SourceSpot Spot, StationMark Mark = StationMark.None) : Item(Spot);

internal sealed record TextItem(string Text, SourceSpot Spot) : Item(Spot);

internal sealed record FlagItem(bool Value, SourceSpot Spot) : Item(Spot);

/// <param name="Faulty">True where an item was faulty and left out, so that the list is not whole.</param>
internal sealed record ListItem(IReadOnlyList<Item> Items, bool Faulty, SourceSpot Spot) : Item(Spot)
{
    public IEnumerable<MapItem> Maps => Items.OfType<MapItem>();

    public IReadOnlyList<NumberItem> Numbers => [.. Items.OfType<NumberItem>()];
}

/// <param name="Keys">The places of all known keys that the file gives here, faulty ones included.</param>
internal sealed record MapItem(
    IReadOnlyDictionary<string, Item> Values, IReadOnlyDictionary<string, SourceSpot> Keys, SourceSpot Spot) : Item(Spot)
{
    /// <summary>True where the file gives the key, be its value good or faulty.</summary>
    public bool Gives(string key) => Keys.ContainsKey(key);

    /// <summary>True where the file gives the key with a faulty value.</summary>
    public bool IsFaulty(string key) => Keys.ContainsKey(key) && !Values.ContainsKey(key);

    public Item? Value(string key) => Values.GetValueOrDefault(key);

    public NumberItem? NumberItem(string key) => Value(key) as NumberItem;

    public double? Number(string key) => NumberItem(key)?.Value;

    public string? Text(string key) => (Value(key) as TextItem)?.Text;

    public bool? Flag(string key) => (Value(key) as FlagItem)?.Value;

    public MapItem? Map(string key) => Value(key) as MapItem;

    public ListItem? List(string key) => Value(key) as ListItem;

    public IEnumerable<MapItem> Maps(string key) => List(key)?.Maps ?? [];

    /// <summary>The place of the value, else of the key, else of the block.</summary>
    public SourceSpot SpotOf(string key) =>
        Values.TryGetValue(key, out Item? value) ? value.Spot : Keys.GetValueOrDefault(key, Spot);

    /// <summary>A block without any key, for what the file leaves out.</summary>
    public static MapItem Nothing(SourceSpot spot) =>
        new(new Dictionary<string, Item>(), new Dictionary<string, SourceSpot>(), spot);
}

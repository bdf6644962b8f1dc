using SheetGen.Model.Units;

namespace SheetGen.ProjectFile.Keys;

/// <summary>
/// A key of the project file: what it means, what it takes, its default and an example. The checks, the document, and the editor's
/// schema are all made from these.
/// </summary>
public sealed record Key(string Name, ValueKind Kind, string Meaning)
{
    public bool Required { get; init; }

    /// <summary>The default in words for feet; null where there is none.</summary>
    public string? Default { get; init; }

    /// <summary>The default in words for metres, where it differs.</summary>
    public string? DefaultMetric { get; init; }

    public string Example { get; init; } = "";

    public ValueRange? Range { get; init; }

    /// <summary>The range in metres, where it differs.</summary>
    public ValueRange? RangeMetric { get; init; }

    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>The keys of a block.</summary>
    public IReadOnlyList<Key> Children { get; init; } = [];

    /// <summary>True where exactly one of the children is given.</summary>
    public bool ExactlyOne { get; init; }

    /// <summary>Names of the children that a short form [a, b] gives, in order.</summary>
    public IReadOnlyList<string> Short { get; init; } = [];

    /// <summary>The child whose value decides which further keys the block has.</summary>
    public string? VariantKey { get; init; }

    /// <summary>Further keys by the value of the variant key.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<Key>> Variants { get; init; } = new Dictionary<string, IReadOnlyList<Key>>();

    /// <summary>Name under which a block that many keys share is described once; null for a block of its own.</summary>
    public string? Shared { get; init; }

    /// <summary>What the items of a list, or the values of names, are.</summary>
    public Key? Item { get; init; }

    public int MinCount { get; init; }

    public int MaxCount { get; init; } = 10_000;

    /// <summary>True where a single value stands for a list of one.</summary>
    public bool OneAllowed { get; init; }

    public ValueRange? RangeFor(LengthUnit unit) => unit == LengthUnit.Metre ? RangeMetric ?? Range : Range;

    public string? DefaultFor(LengthUnit unit) => unit == LengthUnit.Metre ? DefaultMetric ?? Default : Default;
}

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

    /// <summary>What a figure with a unit other than length is; null for all others.</summary>
    public Measure? Measure { get; init; }

    /// <summary>What is usual; outside of it the value is taken with a warning (common practice, no source).</summary>
    public ValueRange? Usual { get; init; }

    /// <summary>What is usual in metres, where it differs.</summary>
    public ValueRange? UsualMetric { get; init; }

    /// <summary>True for a surveyed angle, where 62-15 can only be degrees and minutes.</summary>
    public bool Surveyed { get; init; }

    /// <summary>The words that it takes; of a figure, those that it takes as well.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>Keys of older project files that this one stands for now, each with what to write instead.</summary>
    public IReadOnlyDictionary<string, string> Formerly { get; init; } = NoSynonyms;

    /// <summary>Other words for the choices, in small letters without blanks, hyphens and dots.</summary>
    public IReadOnlyDictionary<string, string> Synonyms { get; init; } = NoSynonyms;

    private static readonly IReadOnlyDictionary<string, string> NoSynonyms = new Dictionary<string, string>();

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

    /// <summary>Blocks that stand in this block's place, or in it, and name a file of another program to take the values from.</summary>
    public IReadOnlyList<Key> Sources { get; init; } = [];

    /// <summary>Names of the children that a source gives; empty where a source stands for the whole block.</summary>
    public IReadOnlyList<string> FromSource { get; init; } = [];

    public int MinCount { get; init; }

    public int MaxCount { get; init; } = 10_000;

    /// <summary>True where a single value stands for a list of one.</summary>
    public bool OneAllowed { get; init; }

    public ValueRange? RangeFor(LengthUnit unit) => unit == LengthUnit.Metre ? RangeMetric ?? Range : Range;

    public ValueRange? UsualFor(LengthUnit unit) => unit == LengthUnit.Metre ? UsualMetric ?? Usual : Usual;

    /// <summary>The choice that a word means: the choice itself in any spelling, or one of its other words; null for none.</summary>
    public string? ChoiceOf(string word)
    {
        string bare = Values.Spelling.Bare(word);
        return Choices.FirstOrDefault(c => c == word) ?? Choices.FirstOrDefault(c => Values.Spelling.Bare(c) == bare) ?? Synonyms.GetValueOrDefault(bare);
    }

    public string? DefaultFor(LengthUnit unit) => unit == LengthUnit.Metre ? DefaultMetric ?? Default : Default;
}

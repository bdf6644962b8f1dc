using System.Numerics;

namespace SheetGen.Layout.Placing;

/// <summary>Some candidates of a station, as bits; never changed once made.</summary>
internal sealed class CandidateSet
{
    private readonly ulong[] _words;

    private CandidateSet(ulong[] words)
    {
        _words = words;
        Count = words.Sum(BitOperations.PopCount);
    }

    public int Count { get; }

    public bool this[int candidate] => (_words[candidate >> 6] >> (candidate & 63) & 1) != 0;

    public static CandidateSet All(int count) => Of(count, _ => true);

    public static CandidateSet Of(int count, Func<int, bool> holds)
    {
        var words = new ulong[(count + 63) / 64];
        for (int i = 0; i < count; i++)
        {
            if (holds(i))
                words[i >> 6] |= 1UL << (i & 63);
        }
        return new CandidateSet(words);
    }

    /// <summary>Those that hold something.</summary>
    public CandidateSet Where(Func<int, bool> holds)
    {
        var words = (ulong[])_words.Clone();
        foreach (int candidate in Members())
        {
            if (!holds(candidate))
                words[candidate >> 6] &= ~(1UL << (candidate & 63));
        }
        return new CandidateSet(words);
    }

    public CandidateSet Without(CandidateSet other) => new([.. _words.Select((w, i) => w & ~other._words[i])]);

    public CandidateSet And(CandidateSet other) => new([.. _words.Select((w, i) => w & other._words[i])]);

    /// <summary>In order.</summary>
    public IEnumerable<int> Members()
    {
        for (int word = 0; word < _words.Length; word++)
        {
            for (ulong left = _words[word]; left != 0; left &= left - 1)
                yield return word * 64 + BitOperations.TrailingZeroCount(left);
        }
    }
}

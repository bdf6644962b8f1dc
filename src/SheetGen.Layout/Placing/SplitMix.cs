namespace SheetGen.Layout.Placing;

/// <summary>
/// Random numbers of the search: SplitMix64 (Steele, Lea, Flood, Fast splittable pseudorandom number generators, OOPSLA 2014; constants from
/// memory). Our own, so that a seed gives the same layout on every machine and version.
/// </summary>
internal sealed class SplitMix(ulong seed)
{
    private ulong _state = seed;

    public ulong Next()
    {
        _state += 0x9E3779B97F4A7C15UL;
        ulong z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>A whole number from 0 to under a limit, over 0.</summary>
    public int Below(int limit) => (int)(((Next() >> 32) * (ulong)limit) >> 32);

    /// <summary>The lesser of two numbers under a limit: the first are likelier.</summary>
    public int EarlyBelow(int limit) => Math.Min(Below(limit), Below(limit));

    /// <summary>True in so many of 1,000 cases.</summary>
    public bool Chance(int perMille) => Below(1000) < perMille;

    public void Shuffle<T>(List<T> list)
    {
        for (int i = list.Count - 1; i > 0; i--)
        {
            int j = Below(i + 1);
            (list[i], list[j]) = (list[j], list[i]);
        }
    }
}

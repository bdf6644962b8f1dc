namespace SheetGen.Tests.Walls;

/// <summary>A small generator of random numbers (SplitMix64) that gives the same numbers on every machine and version.</summary>
public sealed class WallRandom(ulong seed)
{
    // Mixed once, so that neighbouring seeds do not give shifted copies of one sequence.
    private ulong _state = Mix(seed + 0x632BE59BD9B4E019UL);

    /// <summary>A number from 0 to under 1.</summary>
    public double Next()
    {
        _state += 0x9E3779B97F4A7C15UL;
        return (Mix(_state) >> 11) * (1.0 / (1UL << 53));
    }

    private static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    public double Between(double low, double high) => low + (high - low) * Next();

    /// <summary>A multiple of the step between two limits.</summary>
    public double Between(double low, double high, double step) =>
        Math.Round(Math.Round(Between(low, high) / step) * step, 6);

    public int Whole(int low, int high) => low + (int)((high - low + 1) * Next());

    public bool Chance(double share) => Next() < share;

    public T Of<T>(params T[] values) => values[(int)(values.Length * Next())];
}

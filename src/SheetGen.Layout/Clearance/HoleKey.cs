using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>Head and tip of a hole in single precision, to sort holes into groups by; no decision about distance rests on it.</summary>
internal readonly struct HoleKey(in Hole hole, Vector3D origin, int id)
{
    private readonly Six _at = new(hole.Head - origin, hole.Tip - origin);

    public int Id { get; } = id;

    /// <summary>Reorders the keys so that those up to the number returned lie apart from the others in the widest coordinate.</summary>
    public static int Split(Span<HoleKey> keys)
    {
        Six low = keys[0]._at, high = low;
        foreach (ref readonly HoleKey key in keys)
        {
            for (int k = 0; k < Six.Count; k++)
            {
                low[k] = Math.Min(low[k], key._at[k]);
                high[k] = Math.Max(high[k], key._at[k]);
            }
        }
        int widest = 0;
        for (int k = 1; k < Six.Count; k++)
        {
            if (high[k] - low[k] > high[widest] - low[widest])
                widest = k;
        }
        int first = Part(keys, widest, low[widest] + (high[widest] - low[widest]) / 2);
        int least = keys.Length / 8;
        if (first >= least && first <= keys.Length - least)
            return first;
        keys.Sort((x, y) => x._at[widest] != y._at[widest] ? x._at[widest].CompareTo(y._at[widest]) : x.Id.CompareTo(y.Id));
        return keys.Length / 2;
    }

    private static int Part(Span<HoleKey> keys, int dimension, float middle)
    {
        int i = 0, j = keys.Length - 1;
        while (true)
        {
            while (i <= j && keys[i]._at[dimension] <= middle)
                i++;
            while (i <= j && keys[j]._at[dimension] > middle)
                j--;
            if (i >= j)
                return i;
            (keys[i], keys[j]) = (keys[j], keys[i]);
        }
    }

    [System.Runtime.CompilerServices.InlineArray(Count)]
    private struct Six
    {
        public const int Count = 6;

        private float _first;

        public Six(Vector3D head, Vector3D tip)
        {
            this[0] = (float)head.N;
            this[1] = (float)head.E;
            this[2] = (float)head.Z;
            this[3] = (float)tip.N;
            this[4] = (float)tip.E;
            this[5] = (float)tip.Z;
        }
    }
}

using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>Head and tip of a hole in single precision, to sort holes into groups by; no decision about distance rests on it.</summary>
internal readonly struct HoleKey
{
    private const int Coordinates = 6;
    private const int IdLane = 6;
    private const int RadiusLane = 7;

    /// <summary>Northing, easting and elevation of the head and of the tip, the hole's number (as bits) and its greatest radius.</summary>
    private readonly Vector256<float> _at;

    public HoleKey(in Hole hole, Vector3D origin, int id)
    {
        Vector3D head = hole.Head - origin, tip = hole.Tip - origin;
        float radius = (float)Math.Max(hole.Radius, hole.RadiusAt(hole.Length));
        _at = Vector256.Create(
            (float)head.N, (float)head.E, (float)head.Z, (float)tip.N, (float)tip.E, (float)tip.Z, BitConverter.Int32BitsToSingle(id), radius);
    }

    public int Id => _at.AsInt32().GetElement(IdLane);

    /// <summary>Least and greatest values of all keys.</summary>
    public static Extent ExtentOf(ReadOnlySpan<HoleKey> keys)
    {
        Vector256<float> low = keys[0]._at, high = low;
        foreach (ref readonly HoleKey key in keys)
        {
            low = Vector256.MinNative(low, key._at);
            high = Vector256.MaxNative(high, key._at);
        }
        return new Extent(low, high);
    }

    /// <summary>Reorders the keys so that those up to the number returned lie apart from the others in the widest coordinate.</summary>
    public static int Split(Span<HoleKey> keys, Extent extent)
    {
        Vector256<float> width = extent.High - extent.Low;
        int widest = 0;
        for (int k = 1; k < Coordinates; k++)
        {
            if (width[k] > width[widest])
                widest = k;
        }
        int first = Part(keys, widest, extent.Low[widest] + width[widest] / 2);
        int least = keys.Length / 8;
        if (first >= least && first <= keys.Length - least)
            return first;
        keys.Sort((x, y) => x._at[widest] != y._at[widest] ? x._at[widest].CompareTo(y._at[widest]) : x.Id.CompareTo(y.Id));
        return keys.Length / 2;
    }

    /// <summary>Brings the keys up to the middle to the front, without a branch that the processor could guess wrong.</summary>
    private static int Part(Span<HoleKey> keys, int coordinate, float middle)
    {
        ReadOnlySpan<float> numbers = MemoryMarshal.Cast<HoleKey, float>(keys);
        int front = 0;
        for (int i = 0; i < keys.Length; i++)
        {
            int isLow = numbers[i * Vector256<float>.Count + coordinate] <= middle ? 1 : 0;
            HoleKey key = keys[i];
            keys[i] = keys[front];
            keys[front] = key;
            front += isLow;
        }
        return front;
    }

    /// <summary>Least and greatest values of some keys.</summary>
    internal readonly record struct Extent(Vector256<float> Low, Vector256<float> High)
    {
        /// <summary>A box around the holes, never too small.</summary>
        public Bounds World(Vector3D origin)
        {
            float size = 0;
            for (int k = 0; k < Coordinates; k++)
                size = Math.Max(size, Math.Max(Math.Abs(Low[k]), Math.Abs(High[k])));
            double grow = (double)High[RadiusLane] * (1 + ClearanceTolerance.SinglePrecision) + size * ClearanceTolerance.SinglePrecision;
            var low = new Vector3D(Math.Min(Low[0], Low[3]), Math.Min(Low[1], Low[4]), Math.Min(Low[2], Low[5]));
            var high = new Vector3D(Math.Max(High[0], High[3]), Math.Max(High[1], High[4]), Math.Max(High[2], High[5]));
            return new Bounds(low + origin, high + origin).Grow(grow + ClearanceTolerance.LeastGrowth);
        }
    }
}

using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The holes of all directions of one place, tested against another hole four at a time. Whatever rounding could decide is asked of the exact
/// test of two holes, so that the answers are that test's on every machine.
/// </summary>
internal sealed class DirectionFan(RowTask row, HeadChoice choice, DirectionTable table)
{
    private const int Lanes = 4;

    private readonly double _radius = row.Radius;
    private readonly double _drift = row.Bay.Rules.Drift;

    /// <summary>A hole as it is seen from the place.</summary>
    /// <param name="Required">Clear distance that is asked for.</param>
    /// <param name="IsOpen">True for a body whose ends reach less far than the hole's round ones: near them only the exact test says that it is met.</param>
    /// <param name="Head">Where its head lies from the place: inward, up-station and down.</param>
    /// <param name="Direction">Its direction in the same parts.</param>
    public readonly record struct Seen(Hole Hole, double Required, bool IsOpen, Vector3D Head, Vector3D Direction)
    {
        public double Length { get; } = Hole.Length;

        public double Radius { get; } = Hole.Radius;

        public double Drift { get; } = Hole.Drift;

        /// <summary>Square of the distance of both heads.</summary>
        public double Square { get; } = Head.Dot(Head);

        /// <summary>The way from the place to its head along its own direction.</summary>
        public double Forward { get; } = Head.Dot(Direction);
    }

    public Seen See(in Hole hole, double required, bool isOpen = false) => new(hole, required, isOpen, choice.PartsOf(hole.Head - choice.Point), choice.PartsOf(hole.Direction));

    /// <summary>Those of some directions of a word that are surely too close to another hole, and those that the exact test must decide.</summary>
    public (ulong Close, ulong Open) Decide(int word, ulong among, in Seen other)
    {
        ulong close = 0, clear = 0;
        for (ulong left = among; left != 0;)
        {
            int lane = BitOperations.TrailingZeroCount(left) & ~(Lanes - 1);
            left &= ~(0xFUL << lane);
            DecideFour(word * FreeDirections.WordSize + lane, other, out uint yes, out uint no);
            close |= (ulong)yes << lane;
            clear |= (ulong)no << lane;
        }
        return (close & among, among & ~(close | clear));
    }

    /// <summary>
    /// Four directions by the least distance of the axes (by clamping: Ericson, Real-Time Collision Detection, 5.1.9): clear where it is over the
    /// reach at the widest, or where what the radii gain with depth cannot make up for it; too close where it is so already at the nearest points.
    /// With D the least distance, reached at (u, v), the axes are at least sqrt(D^2 + k p^2) apart at a distance p from (u, v), k = 1 - |cosine|,
    /// while the radii grow by at most G p, G^2 the sum of the squared drifts: so the clear distance is at least D sqrt(1 - G^2 / k) less the radii there.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void DecideFour(int at, in Seen other, out uint close, out uint clear)
    {
        Vector256<double> inward = Load(table.Inward, at), up = Load(table.UpStation, at), down = Load(table.Down, at), length = Load(table.Length, at);
        Vector256<double> xa = inward * other.Head.N + up * other.Head.E + down * other.Head.Z;
        Vector256<double> cosine = inward * other.Direction.N + up * other.Direction.E + down * other.Direction.Z;
        Vector256<double> sine2 = Vector256<double>.One - cosine * cosine;
        Vector256<double> zero = Vector256<double>.Zero, far = Vector256.Create(other.Length), xb = Vector256.Create(other.Forward);
        Vector256<double> u = Clamp((xa - cosine * xb) / sine2, length);
        Vector256<double> free = cosine * u - xb, v = Clamp(free, far);
        Vector256<double> isInside = Vector256.Equals(free, v);
        u = Vector256.ConditionalSelect(isInside, u, Clamp(xa + cosine * v, length));
        Vector256<double> square = Vector256.Create(other.Square) + v * v + u * u + (v * xb - u * xa - u * v * cosine) * 2;
        Vector256<double> wide = Vector256.Create(_radius + other.Radius + other.Required);
        Vector256<double> reach = wide + length * _drift + far * other.Drift, here = wide + u * _drift + v * other.Drift;
        Vector256<double> narrow = (Vector256<double>.One + reach * reach) * SearchTolerance.ExactReach + (Vector256.Create(other.Square) + length * length + far * far) * SearchTolerance.ExactSquare;
        Vector256<double> decides = Vector256.GreaterThan(sine2, Vector256.Create(SearchTolerance.NearlyParallel)) & Vector256.GreaterThan(here, zero);
        Vector256<double> isClear = Vector256.GreaterThan(square, reach * reach + narrow);
        double gain = _drift * _drift + other.Drift * other.Drift;
        if (gain > 0)
        {
            Vector256<double> share = Vector256<double>.One - Vector256.Create(gain) / (Vector256<double>.One - Vector256.Abs(cosine));
            isClear |= Vector256.GreaterThan(share, zero) & Vector256.GreaterThan(square * share, here * here + narrow);
        }
        Vector256<double> isClose = Vector256.LessThan(square, here * here - narrow);
        if (other.IsOpen)
            isClose &= isInside & Vector256.GreaterThan(v, Vector256.Create(SearchTolerance.ExactReach)) & Vector256.LessThan(v, far - Vector256.Create(SearchTolerance.ExactReach));
        close = Vector256.ExtractMostSignificantBits(isClose & decides);
        clear = Vector256.ExtractMostSignificantBits(isClear & decides);
    }

    private static Vector256<double> Load(double[] parts, int at) => Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(parts), (nuint)at);

    private static Vector256<double> Clamp(Vector256<double> value, Vector256<double> high) =>
        Vector256.MinNative(Vector256.MaxNative(value, Vector256<double>.Zero), high);
}

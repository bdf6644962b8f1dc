using System.Numerics;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using SheetGen.Layout.Placing;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Costs against whole numbers of any size (System.Numerics), and figure by figure.</summary>
public sealed class CostTests
{
    private readonly record struct Figures(int Unresolved, int Noted, long Effort, int Nails, long Shift)
    {
        public Cost Cost => new(Unresolved, Noted, Effort, Nails, Shift);

        public BigInteger Number => ((((((((BigInteger)Unresolved << 18) + Noted) << 40) + Effort) << 18) + Nails) << 26) + Shift;
    }

    private static Figures Of(int seed)
    {
        // Half of the figures small, so that equal ones and carries from figure to figure come up.
        var random = new System.Random(seed);
        long Any(long limit) => random.Next(2) == 0 ? random.Next(0, 3) : random.NextInt64(limit);
        return new((int)Any(1 << 20), (int)Any(1 << 17), Any(1L << 39), (int)Any(1 << 17), Any(1 << 25));
    }

    [Property(MaxTest = 2000)]
    public Property Sums_differences_and_order_are_those_of_numbers(int first, int second, int third)
    {
        Figures a = Of(first), b = Of(second), c = Of(third);
        Cost left = a.Cost + b.Cost - c.Cost - c.Cost, right = b.Cost.Twice - a.Cost;
        BigInteger leftNumber = a.Number + b.Number - 2 * c.Number, rightNumber = 2 * b.Number - a.Number;
        bool order = Math.Sign(left.CompareTo(right)) == leftNumber.CompareTo(rightNumber)
            && left < right == leftNumber < rightNumber && left > right == leftNumber > rightNumber && left == right == (leftNumber == rightNumber);
        return order.Label($"{a} {b} {c}");
    }

    [Property(MaxTest = 2000)]
    public void Figures_are_read_back(int seed, int other)
    {
        Figures a = Of(seed), b = Of(other);
        Cost sum = a.Cost + b.Cost;
        Assert.Equal((a.Unresolved + b.Unresolved, a.Noted + b.Noted, a.Effort + b.Effort, a.Nails + b.Nails, a.Shift + b.Shift),
            (sum.Unresolved, sum.Noted, sum.Effort, sum.Nails, sum.Shift));
        Assert.Equal(a.Cost, sum - b.Cost);
    }

    [Property(MaxTest = 2000)]
    public void A_part_is_as_near_as_doubles_are(int first, int second, byte part)
    {
        Figures a = Of(first), b = Of(second);
        double factor = part / 100.0;
        Cost difference = a.Cost - b.Cost, found = difference.Times(factor);
        double exact = (double)(a.Number - b.Number) * factor, slack = Math.Abs(exact) * 1e-14 + 1;
        // Read by comparison, since a difference cannot be read figure by figure.
        Assert.InRange(NumberOf(found), exact - slack, exact + slack);
    }

    private static double NumberOf(Cost cost)
    {
        bool isNegative = cost < default(Cost);
        Cost size = isNegative ? default(Cost) - cost : cost;
        BigInteger number = new Figures(size.Unresolved, size.Noted, size.Effort, size.Nails, size.Shift).Number;
        return (double)(isNegative ? -number : number);
    }
}

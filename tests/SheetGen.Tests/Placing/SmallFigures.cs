using SheetGen.Model.Results;

namespace SheetGen.Tests.Placing;

/// <summary>Figures of a layout in their order: length of face uncovered, then unresolved, noted and effort in one whole number.</summary>
internal readonly record struct SmallFigures(double Cover, long Cost) : IComparable<SmallFigures>
{
    /// <summary>Lengths of uncovered face that are one: heads are rounded to more.</summary>
    public const double SameCover = 1e-4;

    public const long NoCost = long.MaxValue / 4;

    private const long OneNoted = 1_000_000, OneUnresolved = 1_000_000_000;

    /// <summary>More than any layout's.</summary>
    public static SmallFigures None { get; } = new(double.PositiveInfinity, NoCost);

    public int Unresolved => (int)(Cost / OneUnresolved);

    public int Noted => (int)(Cost % OneUnresolved / OneNoted);

    public double Effort => Cost % OneNoted;

    /// <exception cref="ArgumentException">Effort that is no whole number.</exception>
    public static long CostOf(int unresolved, int noted, double effort)
    {
        double whole = Math.Round(effort);
        return Math.Abs(whole - effort) < 1e-6 ? unresolved * OneUnresolved + noted * OneNoted + (long)whole : throw new ArgumentException($"effort {effort}", nameof(effort));
    }

    public static SmallFigures Of(LayoutScore score) => new(score.Cover.Found, CostOf((int)score.Unresolved.Found, (int)score.Noted.Found, score.Effort.Found));

    public int CompareTo(SmallFigures other) => Math.Abs(Cover - other.Cover) < SameCover ? Cost.CompareTo(other.Cost) : Cover.CompareTo(other.Cover);

    public static SmallFigures operator +(SmallFigures a, SmallFigures b) => new(a.Cover + b.Cover, a.Cost + b.Cost);

    public static bool operator <(SmallFigures a, SmallFigures b) => a.CompareTo(b) < 0;

    public static bool operator >(SmallFigures a, SmallFigures b) => b < a;

    public override string ToString() => FormattableString.Invariant($"uncovered {Cover:0.####}, unresolved {Unresolved}, noted {Noted}, effort {Effort}");
}

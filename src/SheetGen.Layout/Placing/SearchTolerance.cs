namespace SheetGen.Layout.Placing;

/// <summary>Tolerances of the search, each with its reason. Those of the rules that it keeps are the checker's, in <see cref="Rows.Tolerance"/>.</summary>
internal static class SearchTolerance
{
    /// <summary>Decimals of uncovered lengths that whole layouts are compared by: heads are rounded to a hundredth of a foot or less, sums of them to less than this.</summary>
    public const int CoverDecimals = 3;

    /// <summary>Holes that turn less than this against each other (the square of the sine) are left to the exact test: the nearest points of their axes are rounding.</summary>
    public const double NearlyParallel = 1e-4;

    /// <summary>
    /// Share of a squared reach that is left to the exact test, and the length that a nearest point keeps from the ends of a hole: a thousand times
    /// what the divisions by a sine of <see cref="NearlyParallel"/> may lose.
    /// </summary>
    public const double ExactReach = 1e-7;

    /// <summary>Share of squared coordinates that is left to the exact test: their sum loses some ten of its last 53 bits, 1e-16 each, and is divided by the squared sine.</summary>
    public const double ExactSquare = 1e-11;

    /// <summary>Least cell of the index of nails, in project units: an index of nails without length has cells too.</summary>
    public const double LeastCell = 1e-3;

    /// <summary>What the radius of a ball keeps from that at which two holes through it are just too close: two that pass it are so without doubt.</summary>
    public const double BallRadius = 1e-6;
}

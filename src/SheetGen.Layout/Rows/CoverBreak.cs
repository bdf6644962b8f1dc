namespace SheetGen.Layout.Rows;

/// <summary>A span where the cover rule is broken.</summary>
/// <param name="Upper">Level of the nail above the lack (elevation, or minus the depth where rows are parallel); NaN where there is none.</param>
/// <param name="Lower">Level of the nail below the lack; NaN where there is none.</param>
/// <param name="Amount">What was found: depth, height or distance.</param>
internal readonly record struct CoverBreak(Along Start, Along End, Lack Lack, double Upper, double Lower, double Amount);

/// <summary>What the cover rule misses.</summary>
internal enum Lack
{
    /// <summary>No nail near enough.</summary>
    Nails,

    /// <summary>The highest nail is too deep below the top.</summary>
    Top,

    /// <summary>The lowest nail is too high above the bottom.</summary>
    Bottom,

    /// <summary>Two neighbours, one above the other, are too far apart.</summary>
    Gap,
}

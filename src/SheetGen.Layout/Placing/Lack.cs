namespace SheetGen.Layout.Placing;

/// <summary>What the cover rule misses.</summary>
public enum Lack
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

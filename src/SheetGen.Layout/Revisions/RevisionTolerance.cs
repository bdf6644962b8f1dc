namespace SheetGen.Layout.Revisions;

/// <summary>Tolerances of comparing states and of reading them back, each with its reason.</summary>
internal static class RevisionTolerance
{
    /// <summary>Angles nearer than half of the last decimal that is printed are one.</summary>
    public const double SameAngle = 0.005;

    /// <summary>Share by which an amount converted from another unit may differ: half of the fourth figure, as old amounts are read from print.</summary>
    public const double SameConverted = 5e-4;

    /// <summary>Share by which a bid quantity in another unit may differ, beside one whole unit: both were rounded for print.</summary>
    public const double SameConvertedItem = 0.002;

    /// <summary>Factor on what two roundings may add up to, so that the sum of both is still within.</summary>
    public const double OverRounding = 1.001;

    /// <summary>Angles in degrees that differ by less are one step of turning: far under any step, far over rounding.</summary>
    public const double SameTurn = 1e-6;

    /// <summary>Decimals of stations and elevations by which nails of two layouts are alike: one more than any that is printed.</summary>
    public const int FigureDecimals = 4;

    /// <summary>Decimals of metric guidance that is published in feet: whole millimetres.</summary>
    public const int GuidanceDecimals = 3;

    /// <summary>Parts of a wall at whose ends its profile is looked at, and a little more: so the last place is on the wall and not behind its end.</summary>
    public const double ProfileParts = 200.0001;
}

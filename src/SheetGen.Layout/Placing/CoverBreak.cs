namespace SheetGen.Layout.Placing;

/// <summary>A stretch where the cover rule is broken.</summary>
/// <param name="Upper">Level of the nail above the lack (elevation, or minus the depth where rows are parallel); NaN where there is none.</param>
/// <param name="Lower">Level of the nail below the lack; NaN where there is none.</param>
/// <param name="Amount">What was found: depth, height or distance.</param>
public readonly record struct CoverBreak(double Start, double End, Lack Lack, double Upper, double Lower, double Amount);

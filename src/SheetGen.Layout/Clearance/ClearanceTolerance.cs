namespace SheetGen.Layout.Clearance;

/// <summary>Tolerances of boxes and iterations of the clearance query, each with its reason. They make boxes larger and never change an answer.</summary>
internal static class ClearanceTolerance
{
    /// <summary>Share of a coordinate that boxes in single precision are grown by: sixteen times what its 24 bits lose.</summary>
    public const double SinglePrecision = 1e-6;

    /// <summary>The same for coordinates near nothing.</summary>
    public const double LeastGrowth = 1e-6;

    /// <summary>A direction shorter than this is none: its parts would be rounding.</summary>
    public const double NoDirection = 1e-6;

    /// <summary>Clear distance at which a ratio is met: a step of the iteration less than this gains nothing that prints.</summary>
    public const double RatioMet = 1e-12;
}

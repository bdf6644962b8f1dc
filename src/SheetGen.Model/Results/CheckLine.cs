namespace SheetGen.Model.Results;

/// <summary>A main quantity reached in a second way.</summary>
/// <param name="Name">Name of the quantity.</param>
/// <param name="First">As measured.</param>
/// <param name="Second">As reached the second way; null where what it needs is missing.</param>
/// <param name="Way">What the second way is.</param>
/// <param name="Limit">Share of the first by which the two may differ; null for a figure that only serves to compare.</param>
public sealed record CheckLine(string Name, string Text, string Unit, double First, double? Second, string Way, double? Limit)
{
    public CheckSource Source { get; init; } = CheckSource.Stored;

    /// <summary>The section that it is about; null for all.</summary>
    public SectionQuantities? Section { get; init; }
}

/// <summary>From what the second way is computed.</summary>
public enum CheckSource
{
    /// <summary>A figure of its own, that does not change when a list is edited.</summary>
    Stored,

    /// <summary>Grid stations, less those left out, plus nails added.</summary>
    Grid,

    /// <summary>Cut areas of the excavation lifts.</summary>
    Lifts,

    /// <summary>Areas by columns, times thickness.</summary>
    Columns,

    /// <summary>Coordinates of heads and tips.</summary>
    Coordinates,

    /// <summary>Bar lengths, nominal areas and the density of steel.</summary>
    Density,

    /// <summary>Areas of hole and bar, times hole length.</summary>
    HoleAreas,
}

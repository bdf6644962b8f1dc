using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;

namespace SheetGen.Model.Results;

/// <summary>Something that the checker found on the finished layout. What does not apply is null.</summary>
public sealed record Finding
{
    public required string Code { get; init; }

    public required Severity Severity { get; init; }

    public Wall? Wall { get; init; }

    /// <summary>Marks of the nails concerned.</summary>
    public IReadOnlyList<string> Nails { get; init; } = [];

    public string? Obstruction { get; init; }

    /// <summary>Printed station.</summary>
    public double? Station { get; init; }

    public double? ToStation { get; init; }

    public double? Elevation { get; init; }

    public double? Clear { get; init; }

    public double? Required { get; init; }

    /// <summary>Both nearest points, relative to the project's origin.</summary>
    public IReadOnlyList<Vector3D> Points { get; init; } = [];

    /// <summary>Depths along the holes of the nearest points.</summary>
    public IReadOnlyList<double> Depths { get; init; } = [];

    /// <summary>The acceptance that covers it; null where nobody accepted it.</summary>
    public Acceptance? AcceptedBy { get; init; }

    public required string Message { get; init; }
}

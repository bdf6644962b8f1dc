using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;

namespace SheetGen.Model;

/// <summary>
/// Something behind the face that holes must keep clear of. The convex solids together are its body;
/// the least distance to any of them counts.
/// </summary>
public sealed record Obstruction
{
    public required string Name { get; init; }

    public required ObstructionKind Kind { get; init; }

    public required IReadOnlyList<Solid> Solids { get; init; }

    /// <summary>
    /// The shape as given, for drawing: axis ends (shaft, pile: upper end first), footprint corners (solid, beam), axis points (pipe),
    /// polyline points (boundary). Elevations are 0 where the shape gives none.
    /// </summary>
    public required IReadOnlyList<Vector3D> Shape { get; init; }

    /// <summary>Outside diameter of shaft, pile or pipe; 0 otherwise.</summary>
    public double Diameter { get; init; }

    /// <summary>Lowest elevation; minus infinity for a boundary.</summary>
    public double Bottom { get; init; } = double.NegativeInfinity;

    /// <summary>Highest elevation; plus infinity for a boundary.</summary>
    public double Top { get; init; } = double.PositiveInfinity;

    /// <summary>Owner, state, quality level and source, as given; printed on the sheets.</summary>
    public IReadOnlyDictionary<string, string> Facts { get; init; } = new Dictionary<string, string>();

    /// <summary>True where the project file says that it lies in front of the face.</summary>
    public bool KnownInFront { get; init; }

    public SourceSpot Spot { get; init; }
}

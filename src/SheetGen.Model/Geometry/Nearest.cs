namespace SheetGen.Model.Geometry;

/// <summary>A measured clear distance with its evidence.</summary>
/// <param name="Clear">Free distance edge to edge in project units; negative where the two run into each other.</param>
/// <param name="OnFirst">Point of the first hole's axis where the clear distance is least.</param>
/// <param name="OnSecond">The nearest point of the other: on its axis for a hole, on its surface for a solid.</param>
/// <param name="DepthFirst">Depth along the first hole.</param>
/// <param name="DepthSecond">Depth along the other hole; NaN where the other is a solid.</param>
public readonly record struct Nearest(double Clear, Vector3D OnFirst, Vector3D OnSecond, double DepthFirst, double DepthSecond)
{
    private const double Touching = 1e-9;

    /// <summary>True where the first hole's axis itself meets the other's axis or surface: it crosses a boundary or a face.</summary>
    public bool IsCrossing => (OnFirst - OnSecond).Length < Touching;

    /// <summary>True where the two run into each other; false where they just touch.</summary>
    public bool RunsInto => Clear < -Touching;
}

using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>One convex piece of something that holes keep clear of: of an obstruction, or of a leg of a wall's face.</summary>
/// <param name="Name">Name of the obstruction, or of the face as printed in messages.</param>
/// <param name="Required">Clear distance that the rules ask for.</param>
/// <param name="Obstruction">The obstruction; null for a face.</param>
public sealed record Obstacle(string Name, Solid Solid, double Required, Obstruction? Obstruction)
{
    /// <summary>Wall and leg of a face; null for an obstruction.</summary>
    internal FaceLeg? Leg { get; init; }

    /// <summary>A box that holds every hole that comes too close to it, in part.</summary>
    public Bounds Reach { get; } = Solid.Bounds.Grow(Required);

    /// <summary>
    /// For a straight round body (pipe, shaft) a hole without drift along its axis with its radius: the body itself, or longer by its round ends; else null.
    /// </summary>
    internal Hole? Rod { get; } = Solid switch
    {
        CapsuleSolid pipe => RodOf(pipe.End1, pipe.End2, pipe.Radius),
        CylinderSolid shaft => RodOf(shaft.End1, shaft.End2, shaft.Radius),
        _ => null,
    };

    /// <summary>True where a hole that starts from the given leg has to keep clear of this: not of the face that it starts from.</summary>
    internal bool Concerns(FaceLeg start) => Leg is null || Leg != start;

    private static Hole RodOf(Vector3D end1, Vector3D end2, double radius)
    {
        Vector3D axis = end2 - end1;
        double length = axis.Length;
        return new Hole(end1, length > 0 ? axis * (1 / length) : new Vector3D(0, 0, 1), length, radius, 0);
    }
}

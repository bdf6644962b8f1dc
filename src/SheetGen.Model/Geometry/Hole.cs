namespace SheetGen.Model.Geometry;

/// <summary>
/// A drilled hole: a straight axis from the head on the face to the back of the hole, with round ends,
/// whose radius grows with depth: r(u) = Radius + Drift * u.
/// </summary>
/// <param name="Head">Point on the face where the hole starts.</param>
/// <param name="Direction">Unit vector into the ground.</param>
/// <param name="Length">Length in project units, over 0.</param>
/// <param name="Radius">Radius at the head, half of the hole's diameter, over 0.</param>
/// <param name="Drift">Allowance for drilling deviation, a ratio, 0 or more.</param>
public readonly record struct Hole(Vector3D Head, Vector3D Direction, double Length, double Radius, double Drift)
{
    public Vector3D Tip => At(Length);

    public Vector3D At(double depth) => Head + Direction * depth;

    public double RadiusAt(double depth) => Radius + Drift * depth;
}

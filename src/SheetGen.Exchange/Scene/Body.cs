using SheetGen.Model.Geometry;

namespace SheetGen.Exchange.Scene;

/// <summary>A shape in space, relative to the project's origin, in project units.</summary>
internal abstract record Body;

/// <summary>A cylinder with flat ends.</summary>
internal sealed record Cylinder(Vector3D Start, Vector3D End, double Radius) : Body;

/// <summary>A round tube along a line of two points or more.</summary>
internal sealed record Tube(IReadOnlyList<Vector3D> Points, double Radius) : Body;

/// <summary>Triangles over shared points, counter-clockwise seen from outside.</summary>
/// <param name="Closed">True where they enclose a volume; false for a surface without thickness.</param>
internal sealed record Mesh(IReadOnlyList<Vector3D> Points, IReadOnlyList<(int A, int B, int C)> Triangles, bool Closed) : Body;

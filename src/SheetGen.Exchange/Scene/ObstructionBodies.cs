using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Exchange.Scene;

/// <summary>The bodies of an obstruction as the checker measures to them.</summary>
internal static class ObstructionBodies
{
    public static IReadOnlyList<Body> Of(Obstruction obstruction, WallProject project)
    {
        if (obstruction.Kind == ObstructionKind.Pipe)
            return Pipe(obstruction);
        var bodies = new List<Body>();
        var surface = new MeshBuilder();
        foreach (Solid solid in obstruction.Solids)
        {
            switch (solid)
            {
                case CylinderSolid c when c.End1 != c.End2 && c.Radius > 0:
                    bodies.Add(new Cylinder(c.End1, c.End2, c.Radius));
                    break;
                case CapsuleSolid c when c.End1 != c.End2 && c.Radius > 0:
                    bodies.Add(new Tube([c.End1, c.End2], c.Radius));
                    break;
                case PrismSolid p when p.Footprint.Count > 2 && p.Top > p.Bottom:
                    var prism = new MeshBuilder();
                    prism.AddPrism([.. p.Footprint.Select(f => f.At(p.Bottom))], [.. p.Footprint.Select(f => f.At(p.Top))]);
                    bodies.Add(prism.ToMesh());
                    break;
                case FaceSolid f:
                    surface.AddSurface(f.Corners);
                    break;
                case BoundarySolid b when b.End1 != b.End2:
                    (double low, double high) = Heights(project);
                    surface.AddSurface([b.End1.At(low), b.End2.At(low), b.End2.At(high), b.End1.At(high)]);
                    break;
            }
        }
        if (!surface.IsEmpty)
            bodies.Add(surface.ToMesh());
        return bodies;
    }

    /// <summary>A boundary has no ends upward and downward: it is shown over the height of the walls.</summary>
    private static (double Low, double High) Heights(WallProject project) => (
        project.Walls.Min(w => w.Bottom.Points.Min(p => p.Elevation)), project.Walls.Max(w => w.Top.Points.Max(p => p.Elevation)));

    private static IReadOnlyList<Body> Pipe(Obstruction obstruction)
    {
        var points = new List<Vector3D>();
        foreach (CapsuleSolid piece in obstruction.Solids.OfType<CapsuleSolid>())
        {
            foreach (Vector3D end in new[] { piece.End1, piece.End2 })
            {
                if (points.Count == 0 || (end - points[^1]).Length > 1e-9)
                    points.Add(end);
            }
        }
        double radius = obstruction.Solids.OfType<CapsuleSolid>().Select(c => c.Radius).FirstOrDefault();
        return points.Count > 1 && radius > 0 ? [new Tube(points, radius)] : [];
    }
}

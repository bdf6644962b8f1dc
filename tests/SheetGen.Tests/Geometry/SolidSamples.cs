using SheetGen.Model.Geometry;

namespace SheetGen.Tests.Geometry;

/// <summary>Points on the surfaces of solids, and what lies inside, from the shapes' definitions alone.</summary>
internal static class SolidSamples
{
    public static bool Contains(Solid solid, Vector3D p)
    {
        switch (solid)
        {
            case CylinderSolid c:
                double t = (p - c.End1).Dot(c.End2 - c.End1) / (c.End2 - c.End1).Dot(c.End2 - c.End1);
                return t is > 0 and < 1 && (p - (c.End1 + (c.End2 - c.End1) * t)).Length < c.Radius;
            case CapsuleSolid c:
                return Enumerable.Range(0, 20001).Any(i => (c.End1 + (c.End2 - c.End1) * (i / 20000.0) - p).Length < c.Radius);
            case PrismSolid prism:
                int crossings = 0;
                for (int i = 0; i < prism.Footprint.Count; i++)
                {
                    Vector2D a = prism.Footprint[i], b = prism.Footprint[(i + 1) % prism.Footprint.Count];
                    if (a.E > p.E != b.E > p.E && p.N < a.N + (p.E - a.E) * (b.N - a.N) / (b.E - a.E))
                        crossings++;
                }
                return crossings % 2 == 1 && p.Z > prism.Bottom && p.Z < prism.Top;
            default:
                return false;
        }
    }

    public static IEnumerable<Vector3D> Surface(Solid solid, RandomShapes shapes, double level)
    {
        const int count = 6000;
        switch (solid)
        {
            case CylinderSolid c:
                Vector3D axis = (c.End2 - c.End1) * (1 / (c.End2 - c.End1).Length);
                for (int i = 0; i < count; i++)
                {
                    Vector3D side = axis.Cross(shapes.Direction());
                    side *= c.Radius / side.Length;
                    yield return c.End1 + (c.End2 - c.End1) * shapes.Between(0, 1) + side;
                    yield return (i % 2 == 0 ? c.End1 : c.End2) + side * Math.Sqrt(shapes.Between(0, 1));
                }
                break;
            case CapsuleSolid c:
                for (int i = 0; i < 2 * count; i++)
                {
                    Vector3D around = (c.End2 - c.End1).Cross(shapes.Direction());
                    yield return c.End1 + (c.End2 - c.End1) * shapes.Between(0, 1) + around * (c.Radius / around.Length);
                    Vector3D onBall = (i % 2 == 0 ? c.End1 : c.End2) + shapes.Direction() * c.Radius;
                    if (!IsWellInside(c, onBall))
                        yield return onBall;
                }
                break;
            case PrismSolid prism:
                for (int i = 0; i < count; i++)
                {
                    int at = shapes.Whole(prism.Footprint.Count);
                    Vector2D a = prism.Footprint[at], b = prism.Footprint[(at + 1) % prism.Footprint.Count];
                    yield return (a + (b - a) * shapes.Between(0, 1)).At(shapes.Between(prism.Bottom, prism.Top));
                    yield return Mixed(prism.Footprint, shapes).At(i % 2 == 0 ? prism.Bottom : prism.Top);
                }
                break;
            case BoundarySolid b:
                for (int i = 0; i < count; i++)
                    yield return (b.End1 + (b.End2 - b.End1) * shapes.Between(0, 1)).At(level);
                break;
            case FaceSolid face:
                for (int i = 0; i < count; i++)
                {
                    Vector3D a = face.Corners[shapes.Whole(face.Corners.Count)], b = face.Corners[shapes.Whole(face.Corners.Count)];
                    Vector3D onChord = a + (b - a) * shapes.Between(0, 1);
                    Vector3D c = face.Corners[shapes.Whole(face.Corners.Count)];
                    yield return onChord + (c - onChord) * shapes.Between(0, 1);
                }
                break;
        }
    }

    public static Solid Shift(Solid solid, Vector3D by) => solid switch
    {
        CylinderSolid c => new CylinderSolid(c.End1 + by, c.End2 + by, c.Radius),
        CapsuleSolid c => new CapsuleSolid(c.End1 + by, c.End2 + by, c.Radius),
        PrismSolid p => new PrismSolid(p.Footprint.Select(c => c + by.Plan).ToList(), p.Bottom + by.Z, p.Top + by.Z),
        BoundarySolid b => new BoundarySolid(b.End1 + by.Plan, b.End2 + by.Plan),
        FaceSolid f => new FaceSolid(f.Corners.Select(c => c + by).ToList()),
        _ => throw new ArgumentOutOfRangeException(nameof(solid)),
    };

    private static bool IsWellInside(CapsuleSolid c, Vector3D p)
    {
        Vector3D d = c.End2 - c.End1;
        double t = Math.Clamp((p - c.End1).Dot(d) / d.Dot(d), 0, 1);
        return (p - c.End1 - d * t).Length < c.Radius - 1e-12;
    }

    private static Vector2D Mixed(IReadOnlyList<Vector2D> corners, RandomShapes shapes)
    {
        int first = 1 + shapes.Whole(corners.Count - 2);
        double s = shapes.Between(0, 1), t = shapes.Between(0, 1);
        if (s + t > 1)
            (s, t) = (1 - s, 1 - t);
        return corners[0] + (corners[first] - corners[0]) * s + (corners[first + 1] - corners[0]) * t;
    }
}

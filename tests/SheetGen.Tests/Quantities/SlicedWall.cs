using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Tests.Quantities;

/// <summary>
/// A second way to areas and volumes: the face as small flat cells in space, the soil in front as flat slices whose plan is a polygon
/// between two offset lines. Mitres come from where the lines of two legs meet, not from a formula.
/// </summary>
internal static class SlicedWall
{
    /// <summary>True area of the face by cells, openings deducted.</summary>
    public static double FaceArea(Wall wall, double cell = 0.1)
    {
        var face = new Face(wall);
        double low = wall.Bottom.Points.Min(p => p.Elevation), high = wall.Top.Points.Max(p => p.Elevation), sum = 0;
        foreach (Leg leg in face.Legs)
        {
            for (double z = low + cell / 2; z < high; z += cell)
            {
                double from = MitreAt(face, leg, true, face.OffsetAt(z)), to = MitreAt(face, leg, false, face.OffsetAt(z));
                int count = Math.Max(1, (int)((to - from) / cell));
                double step = (to - from) / count;
                for (int i = 0; i < count && step > 0; i++)
                {
                    double s = from + (i + 0.5) * step, inside = Math.Clamp(s, leg.Start, leg.End - 1e-6);
                    if (z > wall.Top.At(inside) || z < wall.Bottom.At(inside) || wall.Openings.Any(o => s > o.Start && s < o.End && z > o.Bottom && z < o.Top))
                        continue;
                    Vector3D along = Point(face, leg, s + step / 2, z) - Point(face, leg, s - step / 2, z);
                    Vector3D up = Point(face, leg, s, z + cell / 2) - Point(face, leg, s, z - cell / 2);
                    sum += along.Cross(up).Length;
                }
            }
        }
        return sum;
    }

    /// <summary>Soil in front of a wall with one falling cross section, slice by slice.</summary>
    public static double SoilInFront(Wall wall, double slice = 0.02)
    {
        var face = new Face(wall);
        double low = wall.Bottom.Points[0].Elevation, high = wall.Top.Points[0].Elevation, sum = 0;
        for (double z = low + slice / 2; z < high; z += slice)
            sum += slice * BandArea(face, face.OffsetAt(z), face.OffsetAt(z) - Reach(wall.CrossSections[0], z));
        return sum;
    }

    /// <summary>How far in front of the face falling ground stands above an elevation.</summary>
    private static double Reach(CrossSection section, double z)
    {
        double reach = 0;
        for (int i = 0; i + 1 < section.Ground.Count; i++)
        {
            CrossSectionPoint a = section.Ground[i], b = section.Ground[i + 1];
            if (b.Elevation >= z)
                reach = b.InFront;
            else if (a.Elevation > z)
                reach = a.InFront + (b.InFront - a.InFront) * (a.Elevation - z) / (a.Elevation - b.Elevation);
        }
        return reach;
    }

    /// <summary>Plan area between two offset lines, by shoelace.</summary>
    private static double BandArea(Face face, double back, double front)
    {
        double sum = 0;
        foreach (Leg leg in face.Legs)
        {
            List<Vector2D> ring = [.. Line(face, leg, back), .. Line(face, leg, front).AsEnumerable().Reverse()];
            double twice = 0;
            for (int i = 0; i < ring.Count; i++)
            {
                Vector2D a = ring[i] - ring[0], b = ring[(i + 1) % ring.Count] - ring[0];
                twice += a.N * b.E - a.E * b.N;
            }
            sum += Math.Abs(twice) / 2;
        }
        return sum;
    }

    private static List<Vector2D> Line(Face face, Leg leg, double offset)
    {
        double from = MitreAt(face, leg, true, offset), to = MitreAt(face, leg, false, offset);
        const int count = 400;
        return [.. Enumerable.Range(0, count + 1).Select(i => Plan(face, leg, from + (to - from) * i / count, offset))];
    }

    /// <summary>Where the offset line of a leg meets that of its neighbour, as a distance along the leg's own line.</summary>
    private static double MitreAt(Face face, Leg leg, bool atStart, double offset)
    {
        Corner? corner = atStart ? leg.StartCorner : leg.EndCorner;
        if (corner is null)
            return atStart ? leg.Start : leg.End;
        LayoutLine line = face.Wall.LayoutLine;
        Vector2D tangent = Vector2D.FromAzimuth(line.AzimuthAt(corner.Along)), before = Vector2D.FromAzimuth(line.AzimuthBefore(corner.Along));
        (Vector2D own, Vector2D other) = atStart ? (tangent, before) : (before, tangent);
        Vector2D p = own.Right * (face.Wall.Side * offset), q = other.Right * (face.Wall.Side * offset);
        // p + own u = q + other v, both from the corner's point.
        Vector2D d = q - p;
        double u = (d.N * other.E - d.E * other.N) / (own.N * other.E - own.E * other.N);
        return corner.Along + u;
    }

    private static Vector3D Point(Face face, Leg leg, double along, double z) => Plan(face, leg, along, face.OffsetAt(z)).At(z);

    private static Vector2D Plan(Face face, Leg leg, double along, double offset)
    {
        LayoutLine line = face.Wall.LayoutLine;
        LayoutPiece piece = line.PieceAt(Math.Clamp(along, leg.Start, leg.End - 1e-6));
        return piece.PointAt(along) + Vector2D.FromAzimuth(piece.AzimuthAt(along)).Right * (face.Wall.Side * offset);
    }
}

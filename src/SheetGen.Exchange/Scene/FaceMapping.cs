using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Exchange.Scene;

/// <summary>
/// From the developed elevation (distance along the layout line, elevation) of one leg into space. Beyond the leg's corners it goes on
/// straight, as the mitre needs it at an inside corner.
/// </summary>
internal sealed class FaceMapping(Face face, Leg leg)
{
    private readonly LayoutLine _line = face.Wall.LayoutLine;

    /// <summary>Unit normal of the face into the soil at a place; it looks down where the face leans.</summary>
    public Vector3D NormalAt(double along)
    {
        double rise = face.OffsetAt(1) - face.OffsetAt(0), size = Math.Sqrt(1 + rise * rise);
        return (Normal(along) * (1 / size)).At(-rise / size);
    }

    /// <summary>Point of the face.</summary>
    public Vector3D PointAt(double along, double elevation) => (PlanAt(along) + Normal(along) * face.OffsetAt(elevation)).At(elevation);

    /// <summary>Places where the face must be broken so that no chord leaves its arc by more than a distance; empty on tangents.</summary>
    public IEnumerable<double> Stops(double from, double to, double sagitta)
    {
        foreach (LayoutPiece piece in _line.Pieces)
        {
            double start = Math.Max(Math.Max(piece.Start, leg.Start), from), end = Math.Min(Math.Min(piece.End, leg.End), to);
            if (end <= start)
                continue;
            yield return start;
            if (piece.IsCurved)
            {
                double step = Math.Sqrt(8 * sagitta / Math.Abs(piece.Sharpest));
                int chords = Math.Max(1, (int)Math.Ceiling((end - start) / step));
                for (int i = 1; i < chords; i++)
                    yield return start + (end - start) * i / chords;
            }
            yield return end;
        }
    }

    private Vector2D PlanAt(double along)
    {
        double inside = Math.Clamp(along, leg.Start, leg.End);
        return _line.PointAt(inside) + Vector2D.FromAzimuth(Azimuth(inside)) * (along - inside);
    }

    private Vector2D Normal(double along) => Vector2D.FromAzimuth(Azimuth(Math.Clamp(along, leg.Start, leg.End))).Right * face.Wall.Side;

    private double Azimuth(double inside) => inside >= leg.End && leg.EndCorner is not null ? _line.AzimuthBefore(leg.End) : _line.AzimuthAt(inside);
}

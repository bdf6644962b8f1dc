using SheetGen.Model.Geometry;
using SheetGen.Model.Units;

namespace SheetGen.Model;

/// <summary>
/// The front surface of a wall's temporary shotcrete: P(s) + n(s) * (face_offset + (z - batter_elevation) * tan(batter)),
/// cut at the mitre at every corner.
/// </summary>
public sealed class Face
{
    private readonly double _batterSlope;

    public Face(Wall wall)
    {
        Wall = wall;
        _batterSlope = wall.Batter is null ? 0 : Math.Tan(Angles.ToRadians(wall.Batter.Angle));
        Legs = MakeLegs(wall);
        IsCurved = wall.LayoutLine.Pieces.Any(p => p.IsCurved);
    }

    public Wall Wall { get; }

    public IReadOnlyList<Leg> Legs { get; }

    /// <summary>True where a piece of the layout line is an arc or a spiral, so that distances along the face and along the line differ.</summary>
    public bool IsCurved { get; }

    /// <summary>Offset of the face from the layout line at an elevation, positive into the retained side.</summary>
    public double OffsetAt(double elevation) =>
        Wall.FaceOffset + (Wall.Batter is null ? 0 : (elevation - Wall.Batter.Elevation) * _batterSlope);

    /// <summary>Unit horizontal normal into the retained side.</summary>
    public Vector2D NormalAt(double along) => Wall.LayoutLine.TangentAt(along).Right * Wall.Side;

    public Vector3D PointAt(double along, double elevation) =>
        (Wall.LayoutLine.PointAt(along) + NormalAt(along) * OffsetAt(elevation)).At(elevation);

    /// <summary>Direction of a hole; splay in degrees positive up-station, inclination in degrees positive downward.</summary>
    public Vector3D Direction(double along, double splay, double inclination)
    {
        double a = Angles.ToRadians(splay), i = Angles.ToRadians(inclination);
        Vector2D plan = NormalAt(along) * Math.Cos(a) + Wall.LayoutLine.TangentAt(along) * Math.Sin(a);
        return (plan * Math.Cos(i)).At(-Math.Sin(i));
    }

    public Hole HoleAt(double along, double elevation, double splay, double inclination, double length, double diameter, double drift) =>
        new(PointAt(along, elevation), Direction(along, splay, inclination), length, diameter / 2, drift);

    /// <summary>The leg that a place belongs to.</summary>
    public Leg LegAt(double along)
    {
        foreach (Leg leg in Legs)
        {
            if (leg.Has(along))
                return leg;
        }
        return along < Legs[0].Start ? Legs[0] : Legs[^1];
    }

    /// <summary>Length along the face per length along the layout line, at a place and elevation: 1 on a tangent.</summary>
    public double Scale(double along, double elevation) =>
        1 - CurvatureAt(along) * Wall.Side * OffsetAt(elevation);

    /// <summary>True where the layout line is straight: lengths along the face are those along the line there, at every elevation.</summary>
    public bool IsStraightAt(double along) => CurvatureAt(along) == 0;

    /// <summary>Curvature of the layout line at a place; beyond its ends that of the end.</summary>
    private double CurvatureAt(double along)
    {
        LayoutPiece piece = Wall.LayoutLine.PieceAt(along);
        return piece.IsSpiral ? piece.CurvatureAt(Math.Clamp(along, piece.Start, piece.End)) : piece.Curvature;
    }

    /// <summary>
    /// What the mitre of a corner takes from each leg at an elevation, along the layout line; negative where the legs reach beyond the
    /// corner's station.
    /// </summary>
    public double MitreCut(Corner corner, double elevation) =>
        OffsetAt(elevation) * Math.Tan(corner.Deflection * Wall.Side / 2);

    /// <summary>True for an outside corner: the soil's angle is under 180 degrees, holes converge behind it.</summary>
    public bool IsOutside(Corner corner) => corner.Deflection * Wall.Side > 0;

    /// <summary>Distance along the face between two places of one leg at an elevation.</summary>
    public double Distance(double from, double to, double elevation)
    {
        if (!IsCurved)
            return Math.Abs(to - from);
        if (to < from)
            return Distance(to, from, elevation);
        IReadOnlyList<LayoutPiece> pieces = Wall.LayoutLine.Pieces;
        double sum = 0, at = from, offset = OffsetAt(elevation);
        for (int i = 0; i < pieces.Count && at < to; i++)
        {
            double end = i == pieces.Count - 1 ? to : Math.Min(pieces[i].End, to);
            if (end <= at)
                continue;
            // The curvature changes evenly, so that the one in the middle counts for the whole stretch.
            sum += (end - at) * (1 - pieces[i].CurvatureAt((at + end) / 2) * Wall.Side * offset);
            at = end;
        }
        return sum;
    }

    /// <summary>
    /// The place at a distance along the face from another, positive up-station, at an elevation: the inverse of <see cref="Distance"/>.
    /// Beyond the layout line's ends the last piece counts.
    /// </summary>
    public double PlaceAt(double from, double distance, double elevation)
    {
        IReadOnlyList<LayoutPiece> pieces = Wall.LayoutLine.Pieces;
        double at = from, left = Math.Abs(distance);
        bool up = distance >= 0;
        for (int k = 0; k < pieces.Count; k++)
        {
            LayoutPiece piece = up ? pieces[k] : pieces[^(k + 1)];
            bool isLast = k == pieces.Count - 1;
            double run = up ? piece.End - at : at - piece.Start;
            if (run <= 0 && !isLast)
                continue;
            double scale = 1 - piece.CurvatureAt(up ? (at + piece.End) / 2 : (at + piece.Start) / 2) * Wall.Side * OffsetAt(elevation);
            if (piece.IsSpiral && run > 0 && run * scale >= left)
                return OnSpiral(piece, at, up ? left : -left, elevation);
            if (isLast || run * scale >= left)
                return at + (up ? left : -left) / scale;
            left -= run * scale;
            at = up ? piece.End : piece.Start;
        }
        return at;
    }

    /// <summary>The place on a spiral at a distance along the face, positive up-station: the root of d = x (1 - (k + c x / 2) o) nearest to the start.</summary>
    private double OnSpiral(LayoutPiece piece, double at, double distance, double elevation)
    {
        double offset = Wall.Side * OffsetAt(elevation), b = 1 - piece.CurvatureAt(at) * offset, a = -piece.Sharpness * offset / 2;
        return at + 2 * distance / (b + Math.Sqrt(Math.Max(0, b * b + 4 * a * distance)));
    }

    /// <summary>Where the face of a leg starts at an elevation, by place along the layout line: at the mitre, or at the leg's start where it reaches beyond.</summary>
    public double StartOf(Leg leg, double elevation) => leg.StartCorner is { } corner && MitreCut(corner, elevation) is > 0 and double cut
        ? PlaceAt(leg.Start, cut, elevation)
        : leg.Start;

    /// <summary>Where the face of a leg ends at an elevation, by place along the layout line.</summary>
    public double EndOf(Leg leg, double elevation) => leg.EndCorner is { } corner && MitreCut(corner, elevation) is > 0 and double cut
        ? PlaceAt(leg.End, -cut, elevation)
        : leg.End;

    /// <summary>Distance along the face from a place of a leg to its nearer mitre at an elevation; negative beyond it; infinite for a leg without corner.</summary>
    public double ToMitre(Leg leg, double along, double elevation)
    {
        double least = double.PositiveInfinity;
        if (leg.StartCorner is { } first)
            least = SignedDistance(leg.Start, along, elevation) - MitreCut(first, elevation);
        if (leg.EndCorner is { } last)
            least = Math.Min(least, SignedDistance(along, leg.End, elevation) - MitreCut(last, elevation));
        return least;
    }

    /// <summary>Distance along the face from one place to another, negative down-station.</summary>
    public double SignedDistance(double from, double to, double elevation) =>
        to >= from ? Distance(from, to, elevation) : -Distance(to, from, elevation);

    private static List<Leg> MakeLegs(Wall wall)
    {
        var legs = new List<Leg>();
        double start = wall.Start;
        Corner? open = null;
        foreach (Corner corner in wall.LayoutLine.Corners)
        {
            if (corner.Along <= wall.Start || corner.Along >= wall.End)
                continue;
            legs.Add(new Leg(legs.Count, start, corner.Along, open, corner));
            start = corner.Along;
            open = corner;
        }
        legs.Add(new Leg(legs.Count, start, wall.End, open, null));
        return legs;
    }
}

using SheetGen.Model.Geometry;

namespace SheetGen.Model;

/// <summary>
/// A wall's face as flat convex pieces by leg, between bottom and top, with batter, cut or lengthened to the mitre at corners.
/// Arcs become chords that leave the arc by less than <see cref="Sagitta"/>.
/// </summary>
public static class FacePanels
{
    /// <summary>Greatest distance of a chord from its arc, in project units.</summary>
    public const double Sagitta = 1e-4;

    /// <summary>The pieces of each leg, in the order of the face's legs.</summary>
    public static IReadOnlyList<IReadOnlyList<FaceSolid>> Of(Face face)
    {
        var legs = new List<IReadOnlyList<FaceSolid>>();
        foreach (Leg leg in face.Legs)
            legs.Add(OfLeg(face, leg));
        return legs;
    }

    private static List<FaceSolid> OfLeg(Face face, Leg leg)
    {
        var panels = new List<FaceSolid>();
        List<double> stops = Stops(face, leg);
        for (int i = 0; i + 1 < stops.Count; i++)
        {
            double from = stops[i], to = stops[i + 1], middle = from + (to - from) / 2;
            LayoutPiece piece = middle >= leg.End ? face.Wall.LayoutLine.PieceBefore(leg.End) : face.Wall.LayoutLine.PieceAt(Math.Max(middle, leg.Start));
            int chords = Chords(face, piece, leg, from, to);
            for (int k = 0; k < chords; k++)
            {
                double a = from + (to - from) * k / chords, b = k + 1 == chords ? to : from + (to - from) * (k + 1) / chords;
                AddPanel(panels, face, leg, piece, a, b);
            }
        }
        return panels;
    }

    /// <summary>
    /// Places where a piece of the layout line, the top or the bottom changes; first and last lie as far out as the mitre may reach.
    /// </summary>
    private static List<double> Stops(Face face, Leg leg)
    {
        var stops = new SortedSet<double> { leg.Start, leg.End };
        foreach (LayoutPiece piece in face.Wall.LayoutLine.Pieces)
            AddInside(piece.Start);
        foreach (ProfilePoint point in face.Wall.Top.Points)
            AddInside(point.Along);
        foreach (ProfilePoint point in face.Wall.Bottom.Points)
            AddInside(point.Along);
        if (leg.StartCorner is { } first && Reach(face, first) is > 0 and double before)
            stops.Add(leg.Start - before);
        if (leg.EndCorner is { } last && Reach(face, last) is > 0 and double after)
            stops.Add(leg.End + after);
        return [.. stops];

        void AddInside(double along)
        {
            if (along > leg.Start && along < leg.End)
                stops.Add(along);
        }
    }

    /// <summary>How far the legs reach beyond a corner's station at most.</summary>
    private static double Reach(Face face, Corner corner)
    {
        (double low, double high) = Heights(face, corner.Along);
        return Math.Max(-face.MitreCut(corner, low), -face.MitreCut(corner, high));
    }

    private static (double Low, double High) Heights(Face face, double along)
    {
        Profile top = face.Wall.Top, bottom = face.Wall.Bottom;
        return (Math.Min(bottom.At(along), bottom.Before(along)), Math.Max(top.At(along), top.Before(along)));
    }

    private static int Chords(Face face, LayoutPiece piece, Leg leg, double from, double to)
    {
        if (!piece.IsCurved || from < leg.Start || to > leg.End)
            return 1;
        (double low, double high) = Heights(face, from);
        double at = Math.Abs(piece.CurvatureAt(to)) > Math.Abs(piece.CurvatureAt(from)) ? to : from, curvature = Math.Abs(piece.CurvatureAt(at));
        double scale = Math.Max(Math.Abs(1 - piece.CurvatureAt(at) * face.Wall.Side * face.OffsetAt(low)), Math.Abs(1 - piece.CurvatureAt(at) * face.Wall.Side * face.OffsetAt(high)));
        double turn = curvature * (to - from), radius = scale / curvature;
        return Math.Max(1, (int)Math.Ceiling(turn / Math.Sqrt(8 * 0.99 * Sagitta / radius)));
    }

    private static void AddPanel(List<FaceSolid> panels, Face face, Leg leg, LayoutPiece piece, double from, double to)
    {
        Profile top = face.Wall.Top, bottom = face.Wall.Bottom;
        double inFrom = Math.Clamp(from, leg.Start, leg.End), inTo = Math.Clamp(to, leg.Start, leg.End);
        bool before = to <= leg.Start, after = from >= leg.End;
        double bottomFrom = after ? bottom.Before(inFrom) : bottom.At(inFrom), bottomTo = before ? bottom.At(inTo) : bottom.Before(inTo);
        double topFrom = after ? top.Before(inFrom) : top.At(inFrom), topTo = before ? top.At(inTo) : top.Before(inTo);
        double low = Math.Min(bottomFrom, bottomTo), high = Math.Max(topFrom, topTo);
        if (high <= low)
            return;
        List<Vector2D> shape = [new(from, low), new(to, low), new(to, high), new(from, high)];
        double width = to - from;
        shape = Cut(shape, p => p.E - (bottomFrom + (bottomTo - bottomFrom) * (p.N - from) / width));
        shape = Cut(shape, p => topFrom + (topTo - topFrom) * (p.N - from) / width - p.E);
        List<Vector3D> outline = shape.ConvertAll(p => InSpace(face, leg, piece, from, to, p));
        if (leg.StartCorner is { } first)
            outline = Cut(outline, p => BeyondMitre(face, first, p));
        if (leg.EndCorner is { } last)
            outline = Cut(outline, p => -BeyondMitre(face, last, p));
        if (outline.Count >= 3)
            panels.Add(new FaceSolid(outline));
    }

    /// <summary>Distance of a point from the vertical plane that halves a corner's angle, positive up-station (times a factor).</summary>
    private static double BeyondMitre(Face face, Corner corner, Vector3D p)
    {
        LayoutLine line = face.Wall.LayoutLine;
        Vector2D across = Vector2D.FromAzimuth(line.AzimuthBefore(corner.Along)) + line.TangentAt(corner.Along);
        return (new Vector2D(p.N, p.E) - line.PointAt(corner.Along)).Dot(across);
    }

    /// <summary>The part of a convex outline (place, elevation) where a linear function is not negative.</summary>
    private static List<Vector2D> Cut(List<Vector2D> shape, Func<Vector2D, double> inside) =>
        Cut(shape, inside, (a, b, t) => a + (b - a) * t);

    private static List<Vector3D> Cut(List<Vector3D> shape, Func<Vector3D, double> inside) =>
        Cut(shape, inside, (a, b, t) => a + (b - a) * t);

    private static List<T> Cut<T>(List<T> shape, Func<T, double> inside, Func<T, T, double, T> between)
    {
        var kept = new List<T>();
        for (int i = 0; i < shape.Count; i++)
        {
            T a = shape[i], b = shape[(i + 1) % shape.Count];
            double fa = inside(a), fb = inside(b);
            if (fa >= 0)
                kept.Add(a);
            if ((fa > 0 && fb < 0) || (fa < 0 && fb > 0))
                kept.Add(between(a, b, fa / (fa - fb)));
        }
        return kept;
    }

    /// <summary>
    /// A point between the two lines up the face that bound a piece; both lie in one plane, with batter on an arc too. Beyond a corner's
    /// station a leg goes on straight to the mitre.
    /// </summary>
    private static Vector3D InSpace(Face face, Leg leg, LayoutPiece piece, double from, double to, Vector2D p)
    {
        double t = (p.N - from) / (to - from), offset = face.OffsetAt(p.E) * face.Wall.Side;
        Vector2D a = OnLine(from), b = OnLine(to);
        return (a * (1 - t) + b * t).At(p.E);

        Vector2D OnLine(double along)
        {
            double held = Math.Clamp(along, leg.Start, leg.End);
            Vector2D tangent = Vector2D.FromAzimuth(piece.AzimuthAt(held));
            return piece.PointAt(held) + tangent * (along - held) + tangent.Right * offset;
        }
    }
}

using SheetGen.Model.Geometry;
using SheetGen.Model.Units;

namespace SheetGen.Model;

/// <summary>
/// The plan alignment of a wall: tangents, arcs, spirals and corners with stations along it.
/// Inside the program a place on it is a distance along it from its start ("along"); a station is that distance counted
/// from the start's station (internal), and what is printed of it may jump at station equations (<see cref="Stationing"/>).
/// Beyond its ends it goes on straight.
/// </summary>
public sealed class LayoutLine
{
    private LayoutLine(string name, Stationing stations, IReadOnlyList<LayoutPiece> pieces, IReadOnlyList<Corner> corners)
    {
        Name = name;
        Stationing = stations;
        Pieces = pieces;
        Corners = corners;
    }

    public string Name { get; }

    /// <summary>How places are called on paper.</summary>
    public Stationing Stationing { get; }

    public double StartStation => Stationing.StartStation;

    public IReadOnlyList<LayoutPiece> Pieces { get; }

    public IReadOnlyList<Corner> Corners { get; }

    public double Length => Pieces[^1].End;

    /// <summary>Places the elements one after the other from a start point and azimuth (radians).</summary>
    /// <exception cref="ArgumentException">No tangent, arc or spiral among the elements.</exception>
    public static LayoutLine Build(string name, double startStation, Vector2D start, double azimuth, IEnumerable<LayoutElement> elements) =>
        Build(name, new Stationing(startStation, []), start, azimuth, elements);

    /// <summary>As above, with station equations.</summary>
    /// <exception cref="ArgumentException">No tangent, arc or spiral among the elements.</exception>
    public static LayoutLine Build(string name, Stationing stations, Vector2D start, double azimuth, IEnumerable<LayoutElement> elements)
    {
        var pieces = new List<LayoutPiece>();
        var corners = new List<Corner>();
        double along = 0, heading = azimuth;
        Vector2D at = start;
        foreach (LayoutElement element in elements)
        {
            if (element is LayoutElement.Bend bend)
            {
                double turned = Angles.ToRadians(bend.Deflection) * Sign(bend.Turn);
                corners.Add(new Corner(along, turned));
                heading += turned;
                continue;
            }
            if (element is LayoutElement.Kink kink)
            {
                heading += Angles.ToRadians(kink.Degrees);
                continue;
            }
            LayoutPiece piece = element switch
            {
                LayoutElement.Tangent t => new(along, t.Length, at, heading, 0),
                LayoutElement.Arc a => new(along, a.Length, at, heading, Sign(a.Turn) / a.Radius),
                LayoutElement.Spiral s => new(along, s.Length, at, heading, Sign(s.Turn) / s.StartRadius, Sign(s.Turn) * (1 / s.EndRadius - 1 / s.StartRadius) / s.Length),
                _ => throw new ArgumentException("unknown layout element", nameof(elements)),
            };
            pieces.Add(piece);
            along = piece.End;
            at = piece.PointAt(along);
            heading = piece.AzimuthAt(along);
        }
        if (pieces.Count == 0)
            throw new ArgumentException("a layout line needs a tangent, an arc or a spiral", nameof(elements));
        return new LayoutLine(name, stations, pieces, corners);
    }

    /// <summary>Distance along the line of an internal station.</summary>
    public double AlongOf(double station) => station - StartStation;

    /// <summary>Internal station of a distance along the line: it runs on from the start's, whatever station equations the line has.</summary>
    public double StationOf(double along) => along + StartStation;

    /// <summary>The printed station of a distance along the line.</summary>
    public string StationText(double along, LengthUnit unit) => Stationing.Text(along, unit);

    /// <summary>The piece that counts at a place: at a corner, or where two pieces meet, the one that starts there.</summary>
    public LayoutPiece PieceAt(double along)
    {
        int low = 0, high = Pieces.Count - 1;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            if (Pieces[middle].Start <= along + Tiny)
                low = middle;
            else
                high = middle - 1;
        }
        return Pieces[low];
    }

    /// <summary>The piece that ends at a place, or goes through it.</summary>
    public LayoutPiece PieceBefore(double along)
    {
        for (int i = Pieces.Count - 1; i > 0; i--)
        {
            if (Pieces[i].Start < along - Tiny)
                return Pieces[i];
        }
        return Pieces[0];
    }

    public Vector2D PointAt(double along) => PointOn(PieceAt(along), along);

    /// <summary>Unit tangent, up-station.</summary>
    public Vector2D TangentAt(double along) => Vector2D.FromAzimuth(AzimuthAt(along));

    public double AzimuthAt(double along) => AzimuthOn(PieceAt(along), along);

    /// <summary>Azimuth of the piece that ends at this place.</summary>
    public double AzimuthBefore(double along) => AzimuthOn(PieceBefore(along), along);

    /// <summary>Plan point at a distance along the line and an offset to the right.</summary>
    public Vector2D PointAt(double along, double right) => PointAt(along) + TangentAt(along).Right * right;

    private const double Tiny = 1e-9;

    private static double Sign(Turn turn) => turn == Turn.Right ? 1 : -1;

    private Vector2D PointOn(LayoutPiece piece, double along)
    {
        double clamped = Math.Clamp(along, 0, Length);
        Vector2D at = piece.PointAt(clamped);
        return clamped == along ? at : at + Vector2D.FromAzimuth(piece.AzimuthAt(clamped)) * (along - clamped);
    }

    private double AzimuthOn(LayoutPiece piece, double along) => piece.AzimuthAt(Math.Clamp(along, 0, Length));
}

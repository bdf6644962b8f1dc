using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>A place where a nail of a row may start, standing for one of the row's grid stations.</summary>
internal sealed class HeadChoice
{
    private readonly Vector2D _normal;
    private readonly Vector2D _tangent;
    private FreeDirections? _directions;

    public HeadChoice(Face face, Head head, int ordinal, double shift, Turnings turnings, bool isPinned, double? pinnedLength)
    {
        Head = head;
        Ordinal = ordinal;
        Shift = shift;
        Turnings = turnings;
        IsPinned = isPinned;
        PinnedLength = pinnedLength;
        Point = face.PointAt(head);
        _normal = face.NormalAt(head.Along);
        _tangent = face.Wall.LayoutLine.TangentAt(head.Along);
    }

    /// <summary>The same place with a length that the designer pinned.</summary>
    public HeadChoice WithLength(Face face, double length) => new(face, Head, Ordinal, Shift, Turnings, IsPinned, length) { IsAdded = IsAdded };

    public Head Head { get; }

    /// <summary>Index of the grid station that it stands for.</summary>
    public int Ordinal { get; }

    /// <summary>Signed distance from the grid station.</summary>
    public double Shift { get; }

    public bool IsAtGrid => Shift == 0;

    /// <summary>True where the designer pinned the nail: it stands whatever it hits, and others keep away.</summary>
    public bool IsPinned { get; }

    public double? PinnedLength { get; }

    /// <summary>True for a pinned nail that stands beside those of the grid stations.</summary>
    public bool IsAdded { get; init; }

    /// <summary>Directions that it may take, cheapest first.</summary>
    public Turnings Turnings { get; }

    public Vector3D Point { get; }

    /// <summary>Kept for <see cref="RowTask.FreeOf"/>.</summary>
    internal FreeDirections? Directions => _directions;

    /// <summary>Keeps directions that were looked for, unless another thread was first.</summary>
    internal FreeDirections Remember(FreeDirections directions) => Interlocked.CompareExchange(ref _directions, directions, null) ?? directions;

    /// <summary>True where the face stands as it does at another place, and the nail may take the same directions.</summary>
    public bool LooksLike(HeadChoice other) => _normal == other._normal && _tangent == other._tangent && ReferenceEquals(Turnings, other.Turnings);

    /// <summary>A vector by its products with what the parts of a direction stand for.</summary>
    public Vector3D PartsOf(Vector3D vector) => new(_normal.Dot(vector.Plan), _tangent.Dot(vector.Plan), -vector.Z);

    public Hole HoleOf(Turning turning, double length, double radius, double drift)
    {
        Vector2D plan = _normal * turning.Inward + _tangent * turning.UpStation;
        return new Hole(Point, plan.At(-turning.Down), length, radius, drift);
    }

    /// <summary>A box around the axes of all holes of some length that may start here.</summary>
    public Bounds Reach(double length)
    {
        var box = new Bounds(Point, Point);
        foreach (Turning turning in Turnings.Rim)
        {
            Hole hole = HoleOf(turning, length, 0, 0);
            box = box.With(Bounds.Of(hole.Head, hole.Tip));
        }
        return box;
    }
}

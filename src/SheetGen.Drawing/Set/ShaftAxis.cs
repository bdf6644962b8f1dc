using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Drawing.Set;

/// <summary>The axis of a shaft or pile, which may be inclined.</summary>
public readonly record struct ShaftAxis
{
    private readonly DrawingContext _context;
    private readonly Obstruction _shaft;

    public ShaftAxis(DrawingContext context, Obstruction shaft) => (_context, _shaft) = (context, shaft);

    private Vector3D Upper => _shaft.Shape[0];

    private Vector3D Way => _shaft.Shape[^1] - Upper;

    /// <summary>How far its lower end lies below its upper one.</summary>
    private double Drop => -Way.Z;

    public bool IsInclined => Way.Plan.Length > 1e-6 * Way.Length;

    /// <summary>Share of its length at which it passes an elevation, from 0 at its upper end to 1 at its lower; 0 for one that lies level.</summary>
    public double ShareAt(double elevation) => Drop > 0 ? (Upper.Z - elevation) / Drop : 0;

    /// <summary>Where it, or its continuation, passes an elevation.</summary>
    public Vector3D At(double elevation) => Upper + Way * ShareAt(elevation);

    /// <summary>By how much a level line across the shaft is longer than its diameter, in a direction in which the axis leans so far from end to end.</summary>
    public double LevelFactor(double lean) => Drop > 0 ? Math.Sqrt(1 + lean / Drop * (lean / Drop)) : 1;

    /// <summary>Half a level line across the shaft, in the direction in which it leans.</summary>
    public double HalfAlongLean => _shaft.Diameter / 2 * LevelFactor(Way.Plan.Length);

    /// <summary>Station, distance behind the face of a wall and elevation of its upper end; of an inclined one of its lower end, too.</summary>
    public IEnumerable<(string Station, string Behind, string Elevation)> Ends(Wall wall)
    {
        DrawingContext context = _context;
        IReadOnlyList<LinePlace> places = context.PlacesOf(wall.LayoutLine, _shaft);
        int[] ends = IsInclined ? [0, places.Count - 1] : [0];
        Obstruction shaft = _shaft;
        return ends.Select(i =>
        {
            double face = new Face(wall).OffsetAt(wall.Bottom.At(Math.Clamp(places[i].Along, wall.Start, wall.End)));
            return (context.Print.Station(wall.LayoutLine, places[i].Along), context.Print.Distance(places[i].Right * wall.Side - face), context.Print.Elevation(shaft.Shape[i].Z));
        });
    }
}

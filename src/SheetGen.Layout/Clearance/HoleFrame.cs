using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>
/// Axes along the mean direction of a group of holes. Seen along it straight nails are hardly larger than their holes, where a box along
/// northing and easting would hold most of its neighbours too.
/// </summary>
internal readonly struct HoleFrame
{
    private readonly Vector3D _origin;
    private readonly Vector3D _x;
    private readonly Vector3D _y;
    private readonly Vector3D _along;

    public HoleFrame(Vector3D origin, Vector3D direction)
    {
        _origin = origin;
        double length = direction.Length;
        _along = length > ClearanceTolerance.NoDirection ? direction * (1 / length) : new Vector3D(1, 0, 0);
        Vector3D level = new Vector3D(0, 0, 1).Cross(_along);
        double size = level.Length;
        _x = size > ClearanceTolerance.NoDirection ? level * (1 / size) : new Vector3D(0, 1, 0);
        _y = _along.Cross(_x);
    }

    /// <summary>The box of a hole in this frame, in single precision and never too small.</summary>
    public FrameBox BoxOf(in Hole hole)
    {
        Vector3D head = hole.Head - _origin;
        double tipRadius = hole.RadiusAt(hole.Length);
        Span(head.Dot(_x), _x.Dot(hole.Direction) * hole.Length, hole.Radius, tipRadius, out float xLow, out float xHigh);
        Span(head.Dot(_y), _y.Dot(hole.Direction) * hole.Length, hole.Radius, tipRadius, out float yLow, out float yHigh);
        Span(head.Dot(_along), _along.Dot(hole.Direction) * hole.Length, hole.Radius, tipRadius, out float zLow, out float zHigh);
        return new FrameBox(xLow, xHigh, yLow, yHigh, zLow, zHigh);
    }

    /// <summary>A box around a box of another frame.</summary>
    public FrameBox BoxOf(in HoleFrame other, in FrameBox box)
    {
        var middle = new Vector3D((box.XLow + (double)box.XHigh) / 2, (box.YLow + (double)box.YHigh) / 2, (box.ZLow + (double)box.ZHigh) / 2);
        var half = new Vector3D(box.XHigh - middle.N, box.YHigh - middle.E, box.ZHigh - middle.Z);
        Vector3D centre = other._origin - _origin + other._x * middle.N + other._y * middle.E + other._along * middle.Z;
        double x = Reach(_x, other, half), y = Reach(_y, other, half), z = Reach(_along, other, half);
        Span(centre.Dot(_x), 0, x, x, out float xLow, out float xHigh);
        Span(centre.Dot(_y), 0, y, y, out float yLow, out float yHigh);
        Span(centre.Dot(_along), 0, z, z, out float zLow, out float zHigh);
        return new FrameBox(xLow, xHigh, yLow, yHigh, zLow, zHigh);
    }

    private static double Reach(Vector3D axis, in HoleFrame other, Vector3D half) =>
        Math.Abs(axis.Dot(other._x)) * half.N + Math.Abs(axis.Dot(other._y)) * half.E + Math.Abs(axis.Dot(other._along)) * half.Z;

    private static void Span(double head, double run, double headRadius, double tipRadius, out float low, out float high)
    {
        double tip = head + run;
        double least = Math.Min(head - headRadius, tip - tipRadius), most = Math.Max(head + headRadius, tip + tipRadius);
        double rounding = ClearanceTolerance.SinglePrecision * (Math.Abs(least) + Math.Abs(most)) + ClearanceTolerance.LeastGrowth;
        low = (float)(least - rounding);
        high = (float)(most + rounding);
    }
}

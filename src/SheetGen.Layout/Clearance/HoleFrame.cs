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
        _along = length > 1e-6 ? direction * (1 / length) : new Vector3D(1, 0, 0);
        Vector3D level = new Vector3D(0, 0, 1).Cross(_along);
        double size = level.Length;
        _x = size > 1e-6 ? level * (1 / size) : new Vector3D(0, 1, 0);
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

    private static void Span(double head, double run, double headRadius, double tipRadius, out float low, out float high)
    {
        double tip = head + run;
        double least = Math.Min(head - headRadius, tip - tipRadius), most = Math.Max(head + headRadius, tip + tipRadius);
        double rounding = 1e-6 * (Math.Abs(least) + Math.Abs(most)) + 1e-6;
        low = (float)(least - rounding);
        high = (float)(most + rounding);
    }
}

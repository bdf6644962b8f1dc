using SheetGen.Drawing.Primitives;
using SheetGen.Model;

namespace SheetGen.Drawing.Elevation;

/// <summary>Where a wall's developed elevation lies in model space: x = sign * station + origin, y = elevation + origin.</summary>
public sealed record ElevationStrip(Wall Wall, int Sign, Point2 Origin, double Low, double High)
{
    public double X(double along) => Sign * Wall.StationOf(along) + Origin.X;

    public double Y(double elevation) => elevation + Origin.Y;

    public Point2 At(double along, double elevation) => new(X(along), Y(elevation));
}

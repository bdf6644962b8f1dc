using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Drawing.Elevation;

/// <summary>Obstructions as they are seen through the wall in its developed elevation: each point at its own station.</summary>
public static class ElevationObstructions
{
    public static IEnumerable<Primitive> Draw(DrawingContext context, ElevationStrip strip) =>
        context.Project.Obstructions.SelectMany(o => Outlines(context, strip, o).Select(p => p with { Obstruction = o.Name }));

    /// <summary>True where an obstruction shows in the wall's elevation.</summary>
    public static bool Shows(DrawingContext context, ElevationStrip strip, Obstruction obstruction) => Outlines(context, strip, obstruction).Any();

    private static IEnumerable<Primitive> Outlines(DrawingContext context, ElevationStrip strip, Obstruction obstruction)
    {
        if (obstruction.Kind == ObstructionKind.Boundary)
            return [];
        IReadOnlyList<LinePlace> places = context.PlacesOf(strip.Wall.LayoutLine, obstruction);
        double radius = obstruction.Diameter / 2;
        double left = places.Min(p => p.Along) - radius, right = places.Max(p => p.Along) + radius;
        bool behind = places.Max(p => p.Right * strip.Wall.Side) > -1;
        if (!behind || right < strip.Wall.Start || left > strip.Wall.End || obstruction.Bottom > strip.High || obstruction.Top < strip.Low)
            return [];
        return obstruction.Kind switch
        {
            ObstructionKind.Shaft or ObstructionKind.Pile => Shaft(strip, obstruction, places),
            ObstructionKind.Pipe => Pipe(strip, obstruction, places),
            _ => [Polyline.Rectangle(LayerRole.Obstruction, Box.Around([
                strip.At(Math.Max(left, strip.Wall.Start - 2), Math.Max(obstruction.Bottom, strip.Low)),
                strip.At(Math.Min(right, strip.Wall.End + 2), Math.Min(obstruction.Top, strip.High))]))],
        };
    }

    private static IEnumerable<Primitive> Shaft(ElevationStrip strip, Obstruction shaft, IReadOnlyList<LinePlace> places)
    {
        Vector3D up = shaft.Shape[0], low = shaft.Shape[^1];
        double drop = up.Z - low.Z;
        double xUp = strip.X(places[0].Along), xLow = strip.X(places[^1].Along);
        double radius = shaft.Diameter / 2;
        double top = Math.Min(up.Z, strip.High), bottom = Math.Max(low.Z, strip.Low);
        double XAt(double z) => drop <= 0 ? xUp : xUp + (xLow - xUp) * (up.Z - z) / drop;
        double half = drop <= 0 ? radius : radius * Math.Sqrt(1 + Math.Pow((xLow - xUp) / drop, 2));
        foreach (int side in new[] { -1, 1 })
        {
            yield return new Line(LayerRole.Obstruction,
                new(XAt(top) + side * half, strip.Y(top)), new(XAt(bottom) + side * half, strip.Y(bottom)));
        }
        if (top == up.Z)
            yield return new Line(LayerRole.Obstruction, new(XAt(top) - half, strip.Y(top)), new(XAt(top) + half, strip.Y(top)));
        if (bottom == low.Z)
            yield return new Line(LayerRole.Obstruction, new(XAt(bottom) - half, strip.Y(bottom)), new(XAt(bottom) + half, strip.Y(bottom)));
    }

    private static IEnumerable<Primitive> Pipe(ElevationStrip strip, Obstruction pipe, IReadOnlyList<LinePlace> places)
    {
        double radius = pipe.Diameter / 2;
        for (int i = 0; i + 1 < places.Count; i++)
        {
            Point2 a = strip.At(places[i].Along, pipe.Shape[i].Z), b = strip.At(places[i + 1].Along, pipe.Shape[i + 1].Z);
            Point2 way = b - a;
            if (Math.Abs(way.X) < pipe.Diameter)
            {
                Point2 near = Math.Abs(places[i].Right) <= Math.Abs(places[i + 1].Right) ? a : b;
                yield return new Circle(LayerRole.Utility, near, radius);
                continue;
            }
            Point2 side = new Point2(-way.Y, way.X) * (radius / way.Length);
            yield return new Line(LayerRole.Utility, a + side, b + side);
            yield return new Line(LayerRole.Utility, a - side, b - side);
        }
    }
}

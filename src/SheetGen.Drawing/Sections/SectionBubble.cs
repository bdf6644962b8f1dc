using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;

namespace SheetGen.Drawing.Sections;

/// <summary>The bubble that names a section: its number over the sheet where it is drawn.</summary>
public static class SectionBubble
{
    /// <summary>Radius in which a number and a sheet's name have room, mm.</summary>
    public static double Radius(DrawingContext context) => 2.4 * context.StyleOf(TextRole.Label).Height;

    public static IEnumerable<Primitive> Draw(DrawingContext context, Point2 middle, double radius, string number, string sheet)
    {
        double height = context.StyleOf(TextRole.Label).Height;
        yield return new Circle(LayerRole.Title, middle, radius);
        yield return new Line(LayerRole.Title, middle - new Point2(radius, 0), middle + new Point2(radius, 0));
        yield return context.Write(LayerRole.Title, TextRole.Label, middle + new Point2(0, (radius - height) / 2 - 0.2), number, HorizontalAlign.Center);
        yield return context.Write(LayerRole.Title, TextRole.Label, middle - new Point2(0, (radius + height) / 2 - 0.2), sheet, HorizontalAlign.Center);
    }

    /// <summary>The end of a cut through an elevation, upward from a point, with an arrow in the direction of view: a line, a line and a head.</summary>
    public static IEnumerable<Primitive> Arrow(Point2 at, bool toRight)
    {
        int way = toRight ? 1 : -1;
        yield return new Line(LayerRole.Title, at, at + new Point2(0, 5));
        yield return new Line(LayerRole.Title, at, at + new Point2(way * 2, 0));
        yield return Fill.Of(LayerRole.Title, at + new Point2(way * 4.2, 0), at + new Point2(way * 2, 0.9), at + new Point2(way * 2, -0.9));
    }
}

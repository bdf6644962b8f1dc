using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;

namespace SheetGen.Drawing.Labels;

/// <summary>The bubble that names a section or a detail: its number over the sheet on which it stands.</summary>
public static class Bubble
{
    /// <summary>Least radius of a bubble that stands among other words, in heights of a letter.</summary>
    public const double Radius = 2.4;

    public static IEnumerable<Primitive> Draw(DrawingContext context, Point2 middle, double radius, string number, string sheet)
    {
        double height = context.StyleOf(TextRole.Label).Height;
        yield return new Circle(LayerRole.Title, middle, radius);
        yield return new Line(LayerRole.Title, middle - new Point2(radius, 0), middle + new Point2(radius, 0));
        yield return context.Write(LayerRole.Title, TextRole.Label, middle + new Point2(0, (radius - height) / 2 - 0.2), number, HorizontalAlign.Center) with { Masked = true };
        yield return context.Write(LayerRole.Title, TextRole.Label, middle - new Point2(0, (radius + height) / 2 - 0.2), sheet, HorizontalAlign.Center) with { Masked = true };
    }

    /// <summary>The end of a cut through an elevation, upward from a point, with an arrow in the direction of view: a line, a line and a head.</summary>
    public static IEnumerable<Primitive> Arrow(Point2 at, bool toRight)
    {
        int way = toRight ? 1 : -1;
        yield return new Line(LayerRole.Title, at, at + new Point2(0, 5));
        yield return new Line(LayerRole.Title, at, at + new Point2(way * 2, 0));
        yield return Fill.Of(LayerRole.Title, at + new Point2(way * 4.2, 0), at + new Point2(way * 2, 0.9), at + new Point2(way * 2, -0.9));
    }

    /// <summary>Writes the number of a detail over its sheet in a bubble with a leader to what the detail shows; false, and nothing written, where it has no room.</summary>
    /// <param name="places">What it shows, mm of paper, in one or several places.</param>
    /// <param name="toward">Direction liked best, radians.</param>
    public static bool TryPoint(DrawingContext context, ViewLabels labels, IEnumerable<Point2> places, double toward, string number, string sheet)
    {
        double radius = Radius * context.StyleOf(TextRole.Label).Height;
        (Point2 At, Point2 Middle, double Cost)? best = null;
        foreach (Point2 place in places)
        {
            if (Best(labels, place, toward, radius, best?.Cost ?? double.PositiveInfinity) is (Point2 middle, double cost))
                best = (place, middle, cost);
        }
        if (best is not (Point2 at, Point2 found, _))
            return false;
        Point2 edge = found + (at - found) * (radius / (at - found).Length);
        labels.Placer.Crowd.Add(Box.At(found, 2 * radius, 2 * radius));
        labels.Placer.Crowd.Add(at, edge, LineKind.Leader);
        labels.Add(Leader.OnPaper(at, edge));
        foreach (Primitive p in Draw(context, found, radius, number, sheet))
            labels.Add(p);
        return true;
    }

    /// <summary>The best middle of a bubble about a place, with its cost; null where none costs less than so much.</summary>
    private static (Point2 Middle, double Cost)? Best(ViewLabels labels, Point2 at, double toward, double radius, double least)
    {
        const int Directions = 24;
        const double TurnPenalty = 9, LinePenalty = 40, CrossPenalty = 8;
        Point2? best = null;
        foreach (double distance in new[] { 3.0, 6, 10, 15, 20, 26, 33, 40 })
        {
            for (int d = 0; d < Directions; d++)
            {
                double angle = toward + 2 * Math.PI * d / Directions, cost = distance + TurnPenalty * (1 - Math.Cos(angle - toward));
                Point2 way = new Point2(1, 0).Turned(angle), middle = at + way * (distance + radius);
                if (cost >= least || !labels.Placer.Frame.Contains(Box.At(middle, 2 * radius, 2 * radius)) || !Within(middle, radius + 0.4).All(labels.Placer.Crowd.IsFree) || !labels.Placer.Crowd.IsLeaderFree(at, middle - way * (radius + 0.5), at)
                    || labels.Placer.Crowd.RunsAlong(at, middle - way * radius, 0.6))
                    continue;
                cost += LinePenalty * labels.Placer.Crowd.LinesUnder([.. Within(middle, radius + 0.4)]) + CrossPenalty * labels.Placer.Crowd.LinesCrossed(at, middle - way * radius);
                if (cost < least)
                    (least, best) = (cost, middle);
            }
        }
        return best is Point2 found ? (found, least) : null;
    }

    /// <summary>Boxes that fill a circle nearly: between slanted lines there is room for it where there is none for a box about it.</summary>
    private static IEnumerable<Box> Within(Point2 middle, double radius) =>
        new[] { 22.5, 45, 67.5 }.Select(a => new Point2(radius, 0).Turned(a * Math.PI / 180)).Select(c => Box.At(middle, 2 * c.X, 2 * c.Y));
}

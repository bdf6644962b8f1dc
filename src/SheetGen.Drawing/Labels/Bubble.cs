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

    /// <summary>Writes the number of a detail over its sheet in a bubble with a leader to what the detail shows; false, and nothing written, where it has no room.</summary>
    /// <param name="at">What it shows, mm of paper.</param>
    /// <param name="toward">Direction liked best, radians.</param>
    public static bool TryPoint(DrawingContext context, ViewLabels labels, Point2 at, double toward, string number, string sheet)
    {
        const int Directions = 24;
        const double TurnPenalty = 9, LinePenalty = 40;
        double radius = Radius * context.StyleOf(TextRole.Label).Height;
        Point2? best = null;
        double least = double.PositiveInfinity;
        foreach (double distance in new[] { 3.0, 6, 10, 15, 20, 26, 33, 40 })
        {
            for (int d = 0; d < Directions; d++)
            {
                double angle = toward + 2 * Math.PI * d / Directions, cost = distance + TurnPenalty * (1 - Math.Cos(angle - toward));
                Point2 way = new Point2(1, 0).Turned(angle), middle = at + way * (distance + radius);
                Box box = Box.At(middle, 2 * radius, 2 * radius).Grown(0.4);
                if (cost >= least || !labels.Placer.Frame.Contains(box) || !labels.Placer.Crowd.IsFree(box) || !labels.Placer.Crowd.IsLeaderFree(at, middle - way * (radius + 0.5), at)
                    || labels.Placer.Crowd.RunsAlong(at, middle - way * radius, 0.6))
                    continue;
                cost += LinePenalty * labels.Placer.Crowd.LinesUnder(box);
                if (cost < least)
                    (least, best) = (cost, middle);
            }
        }
        if (best is not Point2 found)
            return false;
        Point2 edge = found + (at - found) * (radius / (at - found).Length);
        labels.Placer.Crowd.Add(Box.At(found, 2 * radius, 2 * radius));
        labels.Placer.Crowd.Add(at, edge, LineKind.Leader);
        labels.Add(Leader.OnPaper(at, edge));
        foreach (Primitive p in Draw(context, found, radius, number, sheet))
            labels.Add(p);
        return true;
    }
}

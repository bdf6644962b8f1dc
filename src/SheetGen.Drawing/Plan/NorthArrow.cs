using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Plan;

/// <summary>The north arrow of a plan.</summary>
internal static class NorthArrow
{
    /// <param name="at">Its middle, on the paper.</param>
    /// <param name="twist">Radians by which the plan is seen turned.</param>
    public static void Draw(ViewLabels labels, Point2 at, double twist, DrawingContext context)
    {
        Point2 T(double x, double y) => at + new Point2(x, y).Turned(twist);
        labels.Add(new Line(LayerRole.Title, T(0, -9), T(0, 9)));
        labels.Add(Fill.Of(LayerRole.Title, T(0, 9), T(-2.2, 3), T(0, 3)));
        labels.Add(Polyline.Of(LayerRole.Title, [T(0, 9), T(2.2, 3), T(0, 3)], true));
        double height = context.StyleOf(TextRole.Label).Height * 1.25;
        Point2 n = T(0, 10.2 + height / 2);
        labels.Add(new Text(LayerRole.Title, TextRole.ViewTitle, n - new Point2(0, height / 2), height, context.Say(Phrase.North), HorizontalAlign.Center));
        labels.Placer.Crowd.Add(Box.At(at, 30, 30));
    }
}

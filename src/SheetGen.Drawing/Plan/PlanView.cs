using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Drawing.Plan;

/// <summary>Chooses the window of the plan strip: turned so that stations run as in the elevation below it.</summary>
public static class PlanView
{
    /// <summary>The viewport of a window's plan at the largest of the scales that fits the frame (the smallest where none does).</summary>
    /// <param name="scales">Project units per millimetre, largest picture first.</param>
    public static Viewport Fit(DrawingContext context, PlanModel plan, SheetWindow window, int sign, Box frame, IReadOnlyList<double> scales)
    {
        Point2 from = plan.At(window.Wall.LayoutLine.PointAt(window.Start)), to = plan.At(window.Wall.LayoutLine.PointAt(window.End - 1e-6));
        Point2 chord = (to - from) * sign;
        double twist = -Math.Atan2(chord.Y, chord.X);
        Box box = Box.Around(Points(context, plan, window).Select(p => p.Turned(twist)));
        double middle = ((from + to) * 0.5).Turned(twist).X;
        double wide = 2 * Math.Max(box.Right - middle, middle - box.Left);
        double scale = scales.FirstOrDefault(s => wide <= (frame.Width - 8) * s && box.Height <= (frame.Height - 8) * s, scales[^1]);
        var center = new Point2(middle, (box.Bottom + box.Top) / 2);
        double shownWide = Math.Min(frame.Width, wide / scale + 70), shownHigh = Math.Min(frame.Height, box.Height / scale + 40);
        var shown = new Box(frame.Center.X - shownWide / 2, frame.Center.Y - shownHigh / 2, frame.Center.X + shownWide / 2, frame.Center.Y + shownHigh / 2);
        return new(shown, center.Turned(-twist), scale, twist);
    }

    private static IEnumerable<Point2> Points(DrawingContext context, PlanModel plan, SheetWindow window)
    {
        Wall wall = window.Wall;
        double reach = context.NailsOf(wall).Select(n => n.Length).DefaultIfEmpty(20).Max();
        var face = new Face(wall);
        for (int i = 0; i <= 24; i++)
        {
            double at = window.Start + (window.End - window.Start) * i / 24;
            Vector2D on = wall.LayoutLine.PointAt(at);
            yield return plan.At(on);
            yield return plan.At(on + face.NormalAt(at) * (reach * 1.15));
            yield return plan.At(on - face.NormalAt(at) * (reach * 0.45));
        }
        foreach (var nail in context.NailsOf(wall).Where(n => window.Has(n.Along)))
            yield return plan.At(nail.Hole.Tip.Plan);
        // Rights of way and easements are never cut off, however far behind the nails they run within reason.
        foreach (Vector2D point in context.Project.Obstructions.Where(o => o.Kind == ObstructionKind.Boundary).SelectMany(Along))
        {
            LinePlace place = LayoutProjection.Locate(wall.LayoutLine, point);
            if (window.Has(place.Along) && Math.Abs(place.Right) < Farthest * reach)
                yield return plan.At(point);
        }
        foreach (Vector3D point in context.Project.Obstructions.SelectMany(o => o.Shape))
        {
            LinePlace place = LayoutProjection.Locate(wall.LayoutLine, point.Plan);
            double behind = place.Right * wall.Side;
            if (window.Has(place.Along) && behind > -0.4 * reach && behind < 1.3 * reach)
                yield return plan.At(point.Plan);
        }
    }

    /// <summary>A boundary farther away than so many times the longest nail is not of this wall.</summary>
    private const double Farthest = 4;

    private static IEnumerable<Vector2D> Along(Obstruction o)
    {
        const int Steps = 24;
        for (int i = 0; i + 1 < o.Shape.Count; i++)
        {
            for (int k = 0; k <= Steps; k++)
                yield return o.Shape[i].Plan + (o.Shape[i + 1].Plan - o.Shape[i].Plan) * ((double)k / Steps);
        }
    }
}

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
        foreach (PlanModel.PointBeside o in plan.PointsBeside(wall))
        {
            // Rights of way and easements are never cut off, however far behind the nails they run within reason.
            double behind = o.Place.Right * wall.Side;
            bool isNear = o.IsOfBoundary ? Math.Abs(behind) < Farthest * reach : behind > -0.4 * reach && behind < 1.3 * reach;
            if (isNear && window.Has(o.Place.Along))
                yield return o.Point;
        }
    }

    /// <summary>A boundary farther away than so many times the longest nail is not of this wall.</summary>
    private const double Farthest = 4;
}

using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Elevation;

/// <summary>The scale of elevations beside both ends of an elevation.</summary>
public static class ElevationScale
{
    private const double Least = 14;

    /// <summary>Width of the scale with its words, mm.</summary>
    public static double Width(DrawingContext context)
    {
        TextStyle style = context.StyleOf(TextRole.Label);
        return 3.5 + context.Project.Walls.Select(w => StripPlanner.Heights(context.Project, w)).SelectMany(h => new[] { h.Low, h.High })
            .Max(z => TextMeasure.Measure(Printed.Number(Math.Round(z), 0), style.Height, style));
    }

    public static IEnumerable<Primitive> Draw(ElevationView view)
    {
        DrawingContext context = view.Context;
        double height = context.StyleOf(TextRole.Label).Height, units = view.Viewport.UnitsPerMillimetre;
        int step = new[] { 1, 2, 5, 10, 20, 50, 100 }.First(s => s / units >= Least || s == 100);
        double fine = step is 1 or 2 or 10 ? step / 2.0 : step / 5.0;
        foreach (int away in new[] { -1, 1 })
        {
            double x = away < 0 ? view.Viewport.Frame.Left - 0.8 : view.Viewport.Frame.Right + 0.8;
            double Y(double z) => view.At(view.Window.Start, z).Y;
            yield return new Line(LayerRole.Axis, new(x, Y(view.Strip.Low)), new(x, Y(view.Strip.High)));
            for (int i = (int)Math.Ceiling(view.Strip.Low / fine - 1e-9); i * fine <= view.Strip.High + 1e-9; i++)
            {
                double z = i * fine;
                bool isNamed = Math.Abs(Math.IEEERemainder(z, step)) < 1e-6;
                yield return new Line(LayerRole.Axis, new(x, Y(z)), new(x + away * (isNamed ? 1.8 : 0.9), Y(z)));
                if (isNamed)
                    yield return context.Write(LayerRole.Label, TextRole.Label, new(x + away * 2.2, Y(z) - height / 2), Printed.Number(z, 0), away < 0 ? HorizontalAlign.Right : HorizontalAlign.Left);
            }
        }
    }
}

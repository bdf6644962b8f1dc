using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Labels;

/// <summary>The lines and the text that show a dimension.</summary>
public static class DimensionPicture
{
    /// <summary>The picture of a dimension of a sheet set.</summary>
    public static IEnumerable<Primitive> Draw(Dimension dimension, DimensionStyle style) =>
        Draw(dimension, style.TextHeight * style.Scale, style.Scale, Measured(dimension, style), style.HasArrows);

    /// <summary>The box of a dimension's words about their middle, mm of paper.</summary>
    public static Box TextBox(Point2 middle, double degrees, string words, TextStyle style) =>
        TextMeasure.BoxOf(new Text(LayerRole.Dimension, TextRole.Dimension, middle - new Point2(0, style.Height / 2).Turned(degrees * Math.PI / 180), style.Height, words, HorizontalAlign.Center, degrees), style);

    /// <summary>Degrees by which the words of a dimension between two points are turned: they are read from below or from the right.</summary>
    public static double Reading(Point2 from, Point2 to)
    {
        double degrees = Math.Atan2(to.Y - from.Y, to.X - from.X) * 180 / Math.PI;
        return degrees is > 90.001 or <= -89.999 ? degrees - Math.CopySign(180, degrees) : degrees;
    }

    /// <summary>The words of a dimension.</summary>
    /// <param name="units">Project units per unit of its points: 1 in model space.</param>
    public static string Measured(Dimension dimension, DimensionStyle style, double units = 1)
    {
        double length = Math.Abs((dimension.To - dimension.From).Turned(-dimension.Angle * Math.PI / 180).X) * units * style.Factor;
        string measured = (style.HidesZeros ? Printed.Number(length, style.Decimals) : Printed.Fixed(length, style.Decimals)) + style.Suffix;
        return dimension.Words?.Replace("<>", measured, StringComparison.Ordinal) ?? measured;
    }

    /// <param name="unitsPerMillimetre">Drawing units per millimetre of paper.</param>
    public static IEnumerable<Primitive> Draw(Dimension d, double height, double unitsPerMillimetre, string words, bool hasArrows = false)
    {
        double turn = d.Angle * Math.PI / 180;
        Point2 along = new Point2(1, 0).Turned(turn);
        Point2 Foot(Point2 p) => d.LinePoint + along * ((p - d.LinePoint).X * along.X + (p - d.LinePoint).Y * along.Y);
        Point2 a = Foot(d.From), b = Foot(d.To);
        Line Part(Point2 from, Point2 to) => new(d.Layer, from, to) { Nail = d.Nail };
        yield return Part(a, b);
        foreach ((Point2 foot, Point2 measured) in new[] { (a, d.From), (b, d.To) })
        {
            Point2 way = foot - measured;
            if (way.Length > 1e-9)
            {
                Point2 unit = way * (1 / way.Length);
                yield return Part(
                    measured + unit * (DimensionStyle.ExtensionOffset * unitsPerMillimetre),
                    foot + unit * (DimensionStyle.ExtensionBeyond * unitsPerMillimetre));
            }
            if (hasArrows)
                continue;
            Point2 tick = new Point2(1, 1).Turned(turn) * (DimensionStyle.TickSize / 2 * unitsPerMillimetre);
            yield return Part(foot - tick, foot + tick);
        }
        foreach (Primitive p in hasArrows ? Arrows(d, a, b, unitsPerMillimetre) : [])
            yield return p;
        Point2 baseline = d.TextPoint - new Point2(0, height / 2).Turned(turn);
        yield return new Text(d.Layer, TextRole.Dimension, baseline, height, words, HorizontalAlign.Center, d.Angle) { Nail = d.Nail, Masked = true };
    }

    private static IEnumerable<Primitive> Arrows(Dimension d, Point2 a, Point2 b, double unitsPerMillimetre)
    {
        double length = (b - a).Length, size = Leader.PaperArrow * unitsPerMillimetre;
        if (length < 1e-9)
            yield break;
        bool outside = DimensionStyle.PointsInward(length / unitsPerMillimetre);
        foreach ((Point2 tip, Point2 other) in new[] { (a, b), (b, a) })
        {
            Point2 way = (other - tip) * ((outside ? -size : size) / length), half = new Point2(-way.Y, way.X) * (1.0 / 6);
            yield return Fill.Of(d.Layer, tip, tip + way + half, tip + way - half) with { Nail = d.Nail };
            if (outside)
                yield return new Line(d.Layer, tip, tip + way * 2) { Nail = d.Nail };
        }
    }
}

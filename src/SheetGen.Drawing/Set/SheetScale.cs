using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Set;

/// <summary>A customary scale.</summary>
/// <param name="Value">Feet per inch of paper, or the ratio in metres.</param>
public readonly record struct SheetScale(double Value, LengthUnit Unit)
{
    public double UnitsPerMillimetre => Lengths.IsFoot(Unit) ? Value / 25.4 : Value / 1000;

    public string Words(DrawingContext context) =>
        context.Say(Lengths.IsFoot(Unit) ? Phrase.ScaleFeet : Phrase.ScaleRatio, Printed.Number(Value, 3));

    public string DimensionStyle => Lengths.IsFoot(Unit) ? $"DIM-1-{Printed.Number(Value, 3)}" : $"DIM-1-{Printed.Number(Value, 3)}-M";

    /// <summary>The style of the dimensions of plans, which end in arrowheads.</summary>
    public string PlanDimensionStyle => DimensionStyle + "-PLAN";

    /// <summary>The customary scales, largest picture first.</summary>
    public static IReadOnlyList<SheetScale> Customary(DrawingTemplates templates, LengthUnit unit) =>
        [.. (Lengths.IsFoot(unit) ? templates.FootScales : templates.MetreScales).Select(v => new SheetScale(v, unit))];

    /// <summary>The customary scales of cross sections, largest picture first.</summary>
    public static IReadOnlyList<SheetScale> OfSections(DrawingTemplates templates, LengthUnit unit) =>
        [.. (Lengths.IsFoot(unit) ? templates.SectionFootScales : templates.SectionMetreScales).Select(v => new SheetScale(v, unit))];

    /// <summary>A bar that shows the scale, drawn from a point.</summary>
    public IEnumerable<Primitive> Bar(DrawingContext context, Point2 at)
    {
        double step = Value;
        while (step / UnitsPerMillimetre < 15)
            step *= 2;
        if (!Lengths.IsFoot(Unit))
            step = Math.Max(1, Math.Round(20 * UnitsPerMillimetre));
        double width = step / UnitsPerMillimetre;
        for (int i = 0; i < 4; i++)
        {
            double left = at.X + i * width;
            yield return Polyline.Rectangle(LayerRole.Axis, new(left, at.Y, left + width, at.Y + 1.6));
            if (i % 2 == 0)
                yield return Fill.Of(LayerRole.Axis, new(left, at.Y), new(left + width, at.Y), new(left + width, at.Y + 1.6), new(left, at.Y + 1.6));
        }
        for (int i = 0; i <= 4; i += 2)
        {
            yield return context.Write(LayerRole.Label, TextRole.Label, new(at.X + i * width, at.Y + 2.6),
                context.Print.Short(i * step), HorizontalAlign.Center);
        }
    }
}

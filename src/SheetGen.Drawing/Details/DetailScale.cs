using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>A customary scale of details.</summary>
/// <param name="Value">Inches of paper to a foot, or the ratio in metres.</param>
public readonly record struct DetailScale(double Value, LengthUnit Unit)
{
    /// <summary>A denominator of fractions of an inch.</summary>
    private const int Sixteenths = 16;

    public double UnitsPerMillimetre => Lengths.IsFoot(Unit) ? 1 / (Value * 25.4) : Value / 1000;

    /// <summary>The customary scales, largest picture first.</summary>
    public static IReadOnlyList<DetailScale> All(DrawingTemplates templates, LengthUnit unit) =>
        [.. (Lengths.IsFoot(unit) ? templates.DetailFootScales : templates.DetailMetreScales).Select(v => new DetailScale(v, unit))];

    /// <summary>As it stands below a detail: 1 1/2" = 1'-0", or 1:10.</summary>
    public string Words(DrawingContext context) =>
        Lengths.IsFoot(Unit) ? context.Say(Phrase.DetailScaleFeet, Fraction(Value)) : context.Say(Phrase.ScaleRatio, Printed.Number(Value, 3));

    /// <summary>A number of sixteenths as a fraction of its least denominator.</summary>
    private static string Fraction(double value)
    {
        int parts = (int)Math.Round(value * Sixteenths), whole = parts / Sixteenths, rest = parts % Sixteenths, of = Sixteenths;
        while (rest > 0 && rest % 2 == 0)
            (rest, of) = (rest / 2, of / 2);
        string fraction = rest == 0 ? "" : FormattableString.Invariant($"{rest}/{of}");
        return whole == 0 ? fraction : FormattableString.Invariant($"{whole} {fraction}").TrimEnd();
    }

    private string Name => $"DIM-DETAIL-{Printed.Number(Lengths.IsFoot(Unit) ? 12 / Value : Value, 3)}";

    /// <summary>The dimensions of small parts, in inches or millimetres.</summary>
    public DimensionStyle Small(DrawingContext context)
    {
        bool feet = Lengths.IsFoot(Unit);
        return new(Name + (feet ? "-IN" : "-MM"), UnitsPerMillimetre, context.StyleOf(TextRole.Dimension).Height, feet ? 3 : 1,
            context.Say(feet ? Phrase.InchMark : Phrase.MillimetreMark))
        { Factor = feet ? 12 : 1000, HidesZeros = true };
    }

    /// <summary>The dimensions of places on the wall, in the project's unit.</summary>
    public DimensionStyle Long(DrawingContext context) =>
        new(Name, UnitsPerMillimetre, context.StyleOf(TextRole.Dimension).Height, Lengths.Decimals(Unit), context.Say(Lengths.IsFoot(Unit) ? Phrase.FootMark : Phrase.MetreMark));

    /// <summary>The dimension styles of all scales.</summary>
    public static IEnumerable<DimensionStyle> Styles(DrawingContext context) =>
        All(context.Templates, context.Project.Unit).SelectMany(s => new[] { s.Small(context), s.Long(context) });
}

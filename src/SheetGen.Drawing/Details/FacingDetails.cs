using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>The facing of each kind at a nail head and at its top. The face of the shotcrete is at x = 0, the soil on the right.</summary>
internal static class FacingDetails
{
    private const double Left = Math.PI;

    /// <summary>Sizes in inches that stand in for those that the project does not give; what has them is dashed.</summary>
    private const double AssumedPlate = 8, AssumedThickness = 0.75, AssumedCoping = 8;

    public static IEnumerable<DetailView> All(DrawingContext context, DetailData data)
    {
        double In(double inches) => Lengths.FromInches(inches, data.Print.Unit);
        foreach (IGrouping<Facing?, Wall> kind in data.Project.Walls.GroupBy(w => w.Facing))
        {
            var cut = new FacingCut(context, data, kind.First());
            double high = (data.PlateOf(cut.Wall).Width ?? In(AssumedPlate)) / 2 + In(5);
            yield return new(DetailKind.Facing, [.. kind], context.Say(Phrase.DetailFacing, cut.Name), new(cut.Front - In(3), -high, cut.Back + In(8), high),
                pen => AtHead(context, data, cut, high, pen))
            { Above = 5 };
            if (cut.HasFacing && kind.Key!.Coping is string coping)
            {
                yield return new(DetailKind.Top, [.. kind], context.Say(Phrase.DetailTop, cut.Name), new(cut.Front - In(4), -In(12), cut.Back + In(8), (data.Project.Rates.CopingHeight ?? In(AssumedCoping)) + In(3)),
                    pen => Top(context, data, cut, coping, pen))
                { Above = 5 };
            }
        }
    }

    /// <summary>The head at y = 0 with its tie to the facing.</summary>
    private static void AtHead(DrawingContext context, DetailData data, FacingCut cut, double high, DetailPen pen)
    {
        cut.Draw(pen, -high, high);
        pen.Break(cut.Front, cut.Back, -high);
        pen.Break(cut.Front, cut.Back, high);
        PlateSize size = data.PlateOf(cut.Wall);
        Section section = cut.Wall.Sections[0];
        double plate = size.Width ?? pen.In(AssumedPlate), thick = size.Thickness ?? pen.In(AssumedThickness), tilt = Angles.ToRadians(section.Inclination);
        double bar = data.DiameterOf(section.Bar) / 2, reach = (cut.Back + pen.In(7)) / Math.Cos(tilt), out_ = data.Project.Rules.BarProjection;
        pen.Rectangle(size.IsGiven, -thick, -plate / 2, 0, plate / 2);
        (double X, double Y) P(double along, double across) => NailDetails.On(along, across, tilt);
        pen.Outline(LayerRole.Detail, P(-out_, bar), P(reach, bar), P(reach, -bar), P(-out_, -bar));
        cut.Thicknesses(pen, -high, high);
        cut.Steel(pen, -high * 0.8);
        if (size.Width is not null)
            pen.Small((0, -plate / 2), (0, plate / 2), -1, beyond: cut.Back);
        if (!cut.HasFacing)
        {
            pen.Note(0, high * 0.8, Left, context.Say(Phrase.NoFacing));
            return;
        }
        pen.Note(cut.Front, high * 0.8, Left, context.Say(SectionLabels.FacingWords(cut.Wall.Facing!.Kind), data.Small(cut.Wall.Facing.Thickness)),
            context.Say(Phrase.StrengthIs, data.Fact(cut.IsShot ? "shotcrete_strength" : "concrete_strength")), context.Say(Phrase.FinishIs, data.Fact("finish")));
        pen.Note(-thick, plate * 0.35, 0.5, context.Say(Phrase.ConnectionIs, cut.IsOnFace && data.Has("studs") && !data.Has("connection") ? data.Fact("studs") : data.Fact("connection")));
        if (!cut.IsOnFace)
            pen.Note((cut.Front + cut.Thick) / 2, -high * 0.6, -0.4, context.Say(Phrase.BackfillIs, data.Fact("gap_fill")));
    }

    /// <summary>The coping on the top of the wall, which is at y = 0.</summary>
    private static void Top(DrawingContext context, DetailData data, FacingCut cut, string coping, DetailPen pen)
    {
        double low = -pen.In(12);
        cut.Draw(pen, low, 0);
        pen.Line(cut.Front, 0, cut.Back, 0);
        pen.Break(cut.Front, cut.Back, low);
        (double? width, double? height) = (data.Project.Rates.CopingWidth, data.Project.Rates.CopingHeight);
        double middle = (cut.Front + cut.Back) / 2, w = (width ?? cut.Back - cut.Front + pen.In(4)) / 2, h = height ?? pen.In(AssumedCoping);
        pen.Rectangle(width is not null && height is not null, middle - w, 0, middle + w, h);
        if (width is not null)
            pen.Small((middle - w, h), (middle + w, h), 1);
        if (height is not null)
            pen.Small((middle + w, 0), (middle + w, h), -1);
        pen.Note(middle - w, h / 2, Left, context.Say(Phrase.Coping, coping.ToUpperInvariant()),
            width is null || height is null ? context.Say(Phrase.SizeIs, data.Blank) : "", context.Say(Phrase.ReinforcementIs, data.Fact("coping_bars")));
        cut.Thicknesses(pen, low, 0);
        if (cut.Wall.ExistingGround is not null)
            pen.Note(cut.Back, low / 2, 0, context.Say(Phrase.SurfaceWaterIs, data.Fact("surface_water")));
    }
}

using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
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
        var kinds = data.Project.Walls.GroupBy(w => (w.Facing, FaceFrame.Of(w))).ToList();
        foreach (var kind in kinds)
        {
            Wall wall = kind.First();
            var cut = new FacingCut(context, data, wall, LowestHead(context, wall)) { Zones = [.. kind.SelectMany(w => w.Sections.Select(s => (w, s)))] };
            double high = (data.PlateOf(cut.Wall).Width ?? In(AssumedPlate)) / 2 + In(5);
            string name = kinds.Count(k => k.Key.Facing == kind.Key.Facing) > 1 ? $"{cut.Name}, {wall.Name.ToUpperInvariant()}" : cut.Name;
            yield return new(DetailKind.Facing, [.. kind], context.Say(Phrase.DetailFacing, name), new(Math.Min(cut.FrontAt(-high), cut.FrontAt(high)) - In(3), -high, Math.Max(cut.BackAt(-high), cut.BackAt(high)) + In(8), high),
                pen => AtHead(context, data, cut, high, pen))
            { Above = 5 };
            if (cut.HasFacing && wall.Facing!.Coping is string coping)
            {
                var top = new FacingCut(context, data, wall, wall.Top.At(wall.Start) - wall.Bottom.At(wall.Start));
                yield return new(DetailKind.Top, [.. kind], context.Say(Phrase.DetailTop, name), new(Math.Min(top.FrontAt(-In(12)), top.FrontAt(0)) - In(4), -In(12), top.BackAt(0) + In(8), (data.Project.Rates.CopingHeight ?? In(AssumedCoping)) + In(3)),
                    pen => Top(context, data, top, coping, pen))
                { Above = 5 };
            }
        }
    }

    /// <summary>Height of the wall's lowest nail above its bottom, where a facing that stands before a battered face is tied first; 0 without nails.</summary>
    private static double LowestHead(DrawingContext context, Wall wall) =>
        context.NailsOf(wall).Where(n => n.Kind != NailKind.Verification).Select(n => Math.Max(0, n.Elevation - wall.Bottom.At(n.Along))).DefaultIfEmpty(0).Min();

    /// <summary>The head at y = 0 with its tie to the facing.</summary>
    private static void AtHead(DrawingContext context, DetailData data, FacingCut cut, double high, DetailPen pen)
    {
        cut.Draw(pen, -high, high);
        pen.Break(cut.FrontAt(-high), cut.BackAt(-high), -high);
        pen.Break(cut.FrontAt(high), cut.BackAt(high), high);
        PlateSize size = data.PlateOf(cut.Wall);
        Section section = cut.Wall.Sections[0];
        double plate = size.Width ?? pen.In(AssumedPlate), thick = size.Thickness ?? pen.In(AssumedThickness), tilt = Angles.ToRadians(section.Inclination);
        double bar = data.DiameterOf(section.Bar) / 2, reach = (cut.Back + pen.In(7)) / Math.Cos(tilt), out_ = data.Project.Rules.BarProjection;
        FaceFrame face = cut.Face;
        pen.Shape(size.IsGiven, face.On(-thick, -plate / 2), face.On(0, -plate / 2), face.On(0, plate / 2), face.On(-thick, plate / 2));
        (double X, double Y) P(double along, double across) => NailDetails.On(along, across, tilt);
        pen.Outline(LayerRole.Detail, P(-out_, bar), P(reach, bar), P(reach, -bar), P(-out_, -bar));
        cut.Thicknesses(pen, -high, high);
        cut.Steel(pen, -high * 0.8);
        if (size.Width is not null)
            pen.Small(face.On(0, -plate / 2), face.On(0, plate / 2), -1, beyond: cut.Back);
        if (!cut.HasFacing)
        {
            pen.Note(face.At(0, high * 0.8), Left, context.Say(Phrase.NoFacing));
            return;
        }
        pen.Note(cut.FrontAt(high * 0.8), high * 0.8, Left, context.Say(SectionLabels.FacingWords(cut.Wall.Facing!.Kind), data.Small(cut.Wall.Facing.Thickness)),
            context.Say(Phrase.StrengthIs, data.Fact("concrete_strength", cut.Zones)), context.Say(Phrase.FinishIs, data.Fact("finish")));
        pen.Note(face.On(-thick, plate * 0.35), 0.5, context.Say(Phrase.ConnectionIs, data.Fact("connection", cut.Zones)));
        if (!cut.IsOnFace)
            pen.NoteAtOneOf([Gap(-high * 0.6), Gap(-high)], -0.4, context.Say(Phrase.BackfillIs, data.Fact("gap_fill")));

        (double, double) Gap(double y) => ((cut.FrontAt(y) + cut.Thick + face.At(0, y).X) / 2, y);
    }

    /// <summary>The coping on the top of the wall, which is at y = 0.</summary>
    private static void Top(DrawingContext context, DetailData data, FacingCut cut, string coping, DetailPen pen)
    {
        double low = -pen.In(12);
        cut.Draw(pen, low, 0);
        double front = cut.FrontAt(0), back = cut.BackAt(0);
        pen.Line(front, 0, back, 0);
        pen.Break(cut.FrontAt(low), cut.BackAt(low), low);
        (double? width, double? height) = (data.Project.Rates.CopingWidth, data.Project.Rates.CopingHeight);
        double middle = (front + back) / 2, w = (width ?? back - front + pen.In(4)) / 2, h = height ?? pen.In(AssumedCoping);
        pen.Rectangle(width is not null && height is not null, middle - w, 0, middle + w, h);
        if (width is not null)
            pen.Small((middle - w, h), (middle + w, h), 1);
        if (height is not null)
            pen.Small((middle + w, 0), (middle + w, h), -1);
        pen.Note(middle - w, h / 2, Left, context.Say(Phrase.Coping, coping.ToUpperInvariant()),
            width is null || height is null ? context.Say(Phrase.SizeIs, data.Blank) : "", context.Say(Phrase.ReinforcementIs, data.Fact("coping_bars")));
        cut.Thicknesses(pen, low, 0);
        if (cut.Wall.ExistingGround is not null)
            pen.Note(cut.BackAt(low / 2), low / 2, 0, context.Say(Phrase.SurfaceWaterIs, data.Fact("surface_water")));
    }
}

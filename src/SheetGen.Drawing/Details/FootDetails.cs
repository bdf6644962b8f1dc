using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>
/// The foot of the wall with leveling pad, least embedment, weep hole and underdrain: the bottom of the wall is at y = 0, the face of the
/// shotcrete at x = 0, the soil on the right.
/// </summary>
internal static class FootDetails
{
    private const double Left = Math.PI, Up = Math.PI / 2;

    /// <summary>Sizes in inches that stand in for those that the project does not give; what has them is dashed.</summary>
    private const double AssumedDepth = 24, AssumedPadWidth = 12, AssumedPadHeight = 6, AssumedWeep = 2, AssumedDrain = 4, AboveGrade = 12, StripThickness = 0.4;

    public static IEnumerable<DetailView> All(DrawingContext context, DetailData data)
    {
        double In(double inches) => Lengths.FromInches(inches, data.Print.Unit);
        var kinds = data.Project.Walls.GroupBy(w => (w.Facing, FaceFrame.Of(w))).ToList();
        foreach (var kind in kinds)
        {
            Wall wall = kind.MinBy(w => WallDepth.Least(w) ?? double.PositiveInfinity)!;
            var cut = new FacingCut(context, data, wall, 0);
            bool isDrained = context.Quantities.Strips.Any(s => s.Wall == wall);
            string title = context.Say(isDrained ? Phrase.DetailOutlet : Phrase.DetailFoot);
            double depth = Math.Max(0, WallDepth.Least(wall) ?? In(AssumedDepth));
            yield return new(isDrained ? DetailKind.Outlet : DetailKind.Foot, [.. kind], kinds.Count == 1 ? title : $"{title}, {wall.Name.ToUpperInvariant()}",
                new(cut.FrontAt(0) - In(9), -(data.Facts.Pad.Height ?? In(AssumedPadHeight)) - In(3), Math.Max(cut.BackAt(0), cut.BackAt(depth + In(AboveGrade))) + In(10), depth + In(AboveGrade)), pen => Draw(context, data, cut, depth, isDrained, pen))
            { Above = 5 };
        }
    }

    private static void Draw(DrawingContext context, DetailData data, FacingCut cut, double depth, bool isDrained, DetailPen pen)
    {
        double high = depth + pen.In(AboveGrade), front = cut.FrontAt(0), atGrade = cut.FrontAt(depth);
        cut.Draw(pen, 0, high);
        pen.Break(cut.FrontAt(high), cut.BackAt(high), high);
        if (cut.Wall.FinishedGrade is not null)
            pen.Line(front - pen.In(9), depth, atGrade, depth, LayerRole.FinishedGrade);
        if (WallDepth.Least(cut.Wall) is > 0)
            pen.Long((front, 0), (front, depth), 1, context.Say(Phrase.DimEmbedment, "<>"));
        else if (cut.Wall.FinishedGrade is null)
            pen.Note(front, pen.In(3), Left, context.Say(Phrase.EmbedmentIs, data.Blank));
        if (cut.HasFacing && context.Quantities.Pad.Any(p => p.Wall == cut.Wall))
            Pad(context, data, cut, pen);
        if (isDrained)
            DrainShapes(data, cut, depth, high, pen);
        cut.Thicknesses(pen, high, 0);
        if (isDrained)
            DrainWords(context, data, cut, depth, high, pen);
        if (cut.Wall.FinishedGrade is not null)
            pen.Note(front - pen.In(7), depth, Up, context.Say(Phrase.FinishedGrade));
    }

    private static void Pad(DrawingContext context, DetailData data, FacingCut cut, DetailPen pen)
    {
        (double? width, double? height) = data.Facts.Pad;
        double w = (width ?? pen.In(AssumedPadWidth)) / 2, h = height ?? pen.In(AssumedPadHeight), middle = cut.FrontAt(0) + cut.Thick / 2;
        pen.Rectangle(width is not null && height is not null, middle - w, -h, middle + w, 0);
        if (width is not null)
            pen.Small((middle - w, -h), (middle + w, -h), -1);
        if (height is not null)
            pen.Small((middle - w, -h), (middle - w, 0), 1);
        pen.Note(middle - w, -h / 2, Left, context.Say(Phrase.PadIs, data.Fact("leveling_pad")));
    }

    private static double Fall(DetailPen pen) => pen.In(1);

    private static (double Size, double At, double Out) Weep(DetailData data, double depth, DetailPen pen) =>
        (data.Size("weep_holes") ?? pen.In(AssumedWeep), depth + pen.In(4), pen.In(2));

    /// <summary>Half of the underdrain, and its middle.</summary>
    private static (double Half, double X, double Y) Underdrain(DetailData data, FacingCut cut, DetailPen pen)
    {
        double half = (data.Size("underdrain") ?? pen.In(AssumedDrain)) / 2;
        return (half, cut.BackAt(0) + pen.In(5), -half - pen.In(1.5));
    }

    /// <summary>Drawn before any words: none of those may stand on it.</summary>
    private static void DrainShapes(DetailData data, FacingCut cut, double depth, double high, DetailPen pen)
    {
        (double weep, double at, double out_) = Weep(data, depth, pen);
        double front = cut.FrontAt(at);
        pen.Shape(false, (front - out_, at - Fall(pen)), (cut.BackAt(at), at), (cut.BackAt(at + weep), at + weep), (front - out_, at + weep - Fall(pen)));
        double way = cut.BackAt(high * 0.75) + pen.In(StripThickness + 2);
        pen.Arrow(way, high * 0.75, way, high * 0.4);
        (double drain, double x, double y) = Underdrain(data, cut, pen);
        double half = drain + pen.In(2);
        pen.Rectangle(false, x - half, y - half, x + half, y + half);
        pen.Ring(false, x, y, drain);
    }

    private static void DrainWords(DrawingContext context, DetailData data, FacingCut cut, double depth, double high, DetailPen pen)
    {
        (double weep, double at, double out_) = Weep(data, depth, pen);
        double front = cut.FrontAt(at), fall = Fall(pen);
        if (data.Size("weep_holes") is not null)
            pen.Small((front - out_, at - fall), (front - out_, at + weep - fall), 1);
        pen.Note(front - out_ / 2, at + weep - fall, Left, context.Say(Phrase.WeepHole, data.Fact("weep_holes")));
        (double drain, double x, double y) = Underdrain(data, cut, pen);
        if (data.Size("underdrain") is not null)
            pen.Small((x - drain, y), (x + drain, y), -1, beyond: drain + pen.In(2));
        pen.Note(x + drain, y, 0, context.Say(Phrase.Underdrain, data.Fact("underdrain")), context.Say(Phrase.OutletTo, data.Fact("drain_outlet")));
        pen.Note(cut.StripAt(high * 0.9), high * 0.9, 0.2, context.Say(Phrase.DrainageStrip));
    }
}

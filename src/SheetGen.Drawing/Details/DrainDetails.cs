using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Details;

/// <summary>The drainage strips: their lap, and how they let the water out at the bottom. The soil is on the right.</summary>
internal static class DrainDetails
{
    private const double Left = Math.PI, Down = -Math.PI / 2;

    public static void Lap(DrawingContext context, DetailData data, DetailPen pen)
    {
        pen.Line(-22, -55, -22, 55);
        pen.Line(-8, -55, -8, 55);
        pen.Hatch(5, 45, (-22, -55), (-8, -55), (-8, 55), (-22, 55));
        pen.Shape(LayerRole.Detail, (-2, -10), (3, -10), (3, 55), (-2, 55));
        pen.Shape(LayerRole.Detail, (-7.5, -55), (-2.5, -55), (-2.5, 12), (-7.5, 12));
        pen.Line(5, -55, 5, 55, LayerRole.DetailHidden);
        pen.Arrow(14, 40, 14, 20);
        pen.Arrow(14, -26, 14, -46);
        pen.Span(-34, -10, -34, 12, context.Say(Phrase.LapIs, DetailData.Blank));
        pen.Note(14, 30, 0.3, context.Say(Phrase.WaterDown));
        pen.Note(3, 48, 0, context.Say(Phrase.UpperStrip));
        pen.Note(-5, -45, 0, context.Say(Phrase.LowerStrip));
        pen.Note(5, 2, 0, context.Say(Phrase.Soil));
        pen.Note(-18, 34, Left, context.Say(Phrase.ShotcreteThickness, data.Shotcrete));
        pen.Note(0, 20, 0, context.Say(Phrase.StripIs, data.ByWall(w => data.Small(w.Drainage?.StripWidth)), NoteFields.Fill("{drain_spacing}", context), data.Fact("drainage_strip")));
    }

    public static void Outlet(DrawingContext context, DetailData data, DetailPen pen)
    {
        pen.Hatch(4, 45, (0, -30), (12, -30), (12, 50), (0, 50));
        pen.Shape(LayerRole.Detail, (0, -30), (12, -30), (12, 50), (0, 50));
        pen.Shape(LayerRole.Detail, (-14, -30), (0, -30), (0, 50), (-14, 50));
        pen.Shape(LayerRole.Detail, (12, -36), (15, -36), (15, 50), (12, 50));
        // The weep pipe falls to the front.
        pen.Shape(LayerRole.Detail, (-20, -3), (13, 2), (13, 5), (-20, 0));
        pen.Line(-60, -8, -14, -8, LayerRole.DetailHidden);
        pen.Shape(LayerRole.Detail, (6, -56), (32, -56), (32, -34), (6, -34));
        pen.Hatch(2.2, 30, (6, -56), (32, -56), (32, -34), (6, -34));
        pen.Ring(LayerRole.Detail, 19, -46, 5);
        pen.Arrow(22, 20, 22, 0);
        pen.Arrow(-22, 0, -34, -2);
        pen.Note(-18, -1, Left, context.Say(Phrase.WeepHole, DetailData.Blank, DetailData.Blank));
        pen.Note(14, 40, 0.2, context.Say(Phrase.DrainageStrip));
        pen.Note(19, -46, 0, context.Say(Phrase.Underdrain, DetailData.Blank), context.Say(Phrase.OutletTo, DetailData.Blank));
        pen.Note(-50, -8, Down, context.Say(Phrase.FinishedGrade));
        pen.Note(6, 30, Left, context.Say(Phrase.ShotcreteThickness, data.Shotcrete));
        pen.Span(15, -38, 15, -30, DetailData.Blank);
    }
}

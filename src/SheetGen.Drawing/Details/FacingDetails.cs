using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;

namespace SheetGen.Drawing.Details;

/// <summary>The facing of each kind with its connection, and the joint between two lifts. The soil is on the right.</summary>
internal static class FacingDetails
{
    private const double Left = Math.PI, Up = Math.PI / 2, Down = -Math.PI / 2;

    public static void Facing(DrawingContext context, DetailData data, Wall wall, DetailPen pen)
    {
        Facing? facing = wall.Facing;
        pen.Hatch(4, 45, (0, -44), (10, -44), (10, 45), (0, 45));
        pen.Shape(LayerRole.Detail, (0, -44), (10, -44), (10, 45), (0, 45));
        pen.Line(10, 48, 50, 48, LayerRole.DetailHidden);
        pen.Span(0, 20, 10, 20, context.Say(Phrase.ShotcreteThickness, data.Small(facing?.Shotcrete)));
        pen.Note(40, 48, Up, context.Say(Phrase.ExistingGround));
        if (facing is null || facing.Kind == FacingKind.None)
        {
            pen.Note(0, 0, Left, context.Say(Phrase.NoFacing));
            return;
        }
        bool onFace = facing.Kind is FacingKind.CastInPlace or FacingKind.PermanentShotcrete or FacingKind.SculptedShotcrete;
        // Facing that is cast or shot stands against the temporary shotcrete; panels and others stand before it on a leveling pad.
        double back = onFace ? 0 : -16, front = back - 14;
        Head(pen, onFace ? -6 : back);
        if (facing.Kind == FacingKind.PrecastPanels)
        {
            pen.Shape(LayerRole.Detail, (front, -44), (back, -44), (back, -1), (front, -1));
            pen.Shape(LayerRole.Detail, (front, 1), (back, 1), (back, 45), (front, 45));
        }
        else if (facing.Kind == FacingKind.SculptedShotcrete)
        {
            pen.Shape(LayerRole.Detail, (front, -44), (back, -44), (back, 45), (front + 3, 45), (front - 2, 30), (front + 3, 14), (front - 1, -4), (front + 2, -22));
        }
        else
        {
            pen.Shape(LayerRole.Detail, (front, -44), (back, -44), (back, 45), (front, 45));
        }
        for (double y = -38; y <= 40; y += 13)
            pen.Disc(LayerRole.Detail, (front + back) / 2 - 1.5, y, 0.9);
        pen.Line((front + back) / 2, -43, (front + back) / 2, 44, LayerRole.DetailHidden);
        if (!onFace)
        {
            pen.Span(back, 32, 0, 32, context.Say(Phrase.GapIs, data.Small(facing.Gap)));
            pen.Note(-8, -26, -0.4, context.Say(Phrase.BackfillIs, DetailData.Blank));
            pen.Shape(LayerRole.Detail, (front - 6, -54), (back + 6, -54), (back + 6, -44), (front - 6, -44));
            pen.Note(front, -50, Down, context.Say(Phrase.PadIs, data.Fact("leveling_pad")));
        }
        pen.Line(front - 34, -32, front, -32, LayerRole.DetailHidden);
        pen.Note(front - 26, -32, Up, context.Say(Phrase.FinishedGrade));
        pen.Span(front - 12, -44, front - 12, -32, data.Embedment(wall));
        pen.Note(front, 26, Left, context.Say(SectionLabels.FacingWords(facing.Kind), data.Small(facing.Thickness)),
            context.Say(Phrase.StrengthIs, data.Fact("concrete_strength")), context.Say(Phrase.FinishIs, data.Fact("finish")));
        pen.Note((front + back) / 2, 6, Left, context.Say(Phrase.ReinforcementIs, DetailData.Blank));
        pen.Note(back, -12, -0.3, context.Say(Phrase.ConnectionIs, onFace ? data.Fact("studs") : DetailData.Blank));
        if (facing.Coping is string coping)
        {
            pen.Shape(LayerRole.Detail, (front - 4, 45), (14, 45), (14, 56), (front - 4, 56));
            pen.Note(front - 4, 52, Left, context.Say(Phrase.Coping, coping.ToUpperInvariant()));
        }
    }

    /// <summary>A nail head with its plate, tied to the facing up to an offset.</summary>
    private static void Head(DetailPen pen, double to)
    {
        pen.Shape(LayerRole.Detail, (-2, -19), (0, -19), (0, -5), (-2, -5));
        pen.Line(-2, -16, to, -16);
        pen.Line(-2, -8, to, -8);
        pen.Line(-5, -11.5, 44, -19);
        pen.Line(-5, -13.5, 44, -21);
    }

    public static void Joint(DrawingContext context, DetailData data, DetailPen pen)
    {
        pen.Hatch(4, 45, (0, -6), (14, 4), (14, 50), (0, 50));
        pen.Shape(LayerRole.Detail, (0, -6), (14, 4), (14, 50), (0, 50));
        pen.Hatch(4, 45, (0, -50), (14, -50), (14, 4), (0, -6));
        pen.Shape(LayerRole.Detail, (0, -50), (14, -50), (14, 4), (0, -6));
        pen.Line(6, -22, 6, 50, LayerRole.DetailHidden);
        pen.Line(8, -50, 8, 18, LayerRole.DetailHidden);
        pen.Line(14, 4, 60, 4, LayerRole.DetailHidden);
        pen.Line(-12, 28, 60, 16);
        pen.Shape(LayerRole.Detail, (-3, 19), (0, 19), (0, 34), (-3, 34));
        Wall[] walls = [.. data.Project.Walls];
        pen.Span(-24, -6, -24, 26, context.Say(Phrase.JointBelow, data.ByWall(w => data.Short(w.Lifts?.BelowRow))));
        pen.Span(30, -22, 30, 18, context.Say(Phrase.JointMesh, DetailData.Blank));
        pen.Note(7, -1, -0.5, context.Say(Phrase.JointClean));
        pen.Note(2, 44, Left, context.Say(Phrase.FirstLift));
        pen.Note(2, -44, Left, context.Say(Phrase.NextLift));
        if (walls.Any(w => w.Lifts?.MaxExposed is not null || w.Lifts?.MaxHours is not null))
            pen.Note(14, -40, 0, context.Say(Phrase.JointOpen, NoteFields.Fill("{max_exposed}", context), NoteFields.Fill("{max_hours}", context)));
        pen.Note(50, 4, Up, context.Say(Phrase.Soil));
    }
}

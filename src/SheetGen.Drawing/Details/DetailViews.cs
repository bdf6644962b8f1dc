using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>
/// The typical details, drawn from the project's figures and not to scale. Facts of the trade in them are common practice, no source.
/// </summary>
public static class DetailViews
{
    private const double Left = Math.PI, Up = Math.PI / 2, Down = -Math.PI / 2;

    public static IReadOnlyList<(string Title, Action<DetailPen> Draw)> All(DrawingContext context)
    {
        var details = new List<(string, Action<DetailPen>)>
        {
            ("NAIL HEAD", pen => Head(context, pen)),
            ("NAIL IN ITS HOLE", pen => Hole(context, pen)),
            ("DRAINAGE STRIP LAP", pen => Drainage(context, pen)),
            ("FACING", pen => FacingDetail(context, pen)),
            ("VERIFICATION TEST NAIL", pen => Test(context, pen)),
        };
        return details;
    }

    private static string Fact(DrawingContext context, string key) =>
        context.Project.Info.Facts.TryGetValue(key, out string? v) && v.Length > 0 ? v.ToUpperInvariant() : "________";

    private static Section First(DrawingContext context) => context.Project.Walls[0].Sections[0];

    private static string Shotcrete(DrawingContext context) =>
        context.Project.Walls[0].Facing?.Shotcrete is double t ? context.Print.Small(t) : "________";

    private static (double X, double Y) On(double along, double across, double tilt) =>
        (along * Math.Cos(tilt) + across * Math.Sin(tilt), -along * Math.Sin(tilt) + across * Math.Cos(tilt));

    /// <summary>A bar of the detail between two depths, drawn along the hole.</summary>
    private static void Tube(DetailPen pen, double from, double to, double half, double tilt, LayerRole layer = LayerRole.Detail) =>
        pen.Shape(layer, On(from, half, tilt), On(to, half, tilt), On(to, -half, tilt), On(from, -half, tilt));

    private static void Head(DrawingContext context, DetailPen pen)
    {
        double tilt = Angles.ToRadians(First(context).Inclination);
        Tube(pen, 16, 62, 11, tilt);
        Tube(pen, -30, 62, 2.5, tilt);
        pen.Hatch(5, 45, (0, -45), (16, -45), (16, -16), (0, -14));
        pen.Hatch(5, 45, (0, 12), (16, 9), (16, 45), (0, 45));
        pen.Line(0, -48, 0, 48);
        pen.Line(16, -48, 16, 48);
        pen.Line(8, -48, 8, -17, LayerRole.DetailHidden);
        pen.Line(8, 14, 8, 48, LayerRole.DetailHidden);
        pen.Shape(LayerRole.Detail, (-4, -18), (0, -18), (0, 18), (-4, 18));
        double slope = 8 * Math.Tan(tilt);
        pen.Shape(LayerRole.Detail, (-4, -8), (-4, 8), (-9 + slope, 8), (-9 - slope, -8));
        Tube(pen, -19, -9.5, 6, tilt);
        pen.Note(On(-26, 0, tilt).X, On(-26, 0, tilt).Y, Up, "BAR PROJECTS " + context.Print.Small(context.Project.Rules.BarProjection) + ",", "SUBSIDIARY");
        pen.Note(On(-17, -6, tilt).X, On(-17, -6, tilt).Y, Down, "NUT AND WASHER:", Fact(context, "nut_and_washer"));
        pen.Note(-6.5, 8, Up + 0.8, "BEVELLED WASHER,", context.Print.Angle(First(context).Inclination));
        pen.Note(-2, -18, Down, "PLATE:", Fact(context, "plate"));
        pen.Note(8, 36, 0.4, "SHOTCRETE " + Shotcrete(context) + ",", Fact(context, "shotcrete_strength"));
        pen.Note(8, -38, -0.4, "MESH: " + Fact(context, "mesh"), "WALER BARS: " + Fact(context, "waler_bars"));
        pen.Note(On(55, 0, tilt).X, On(55, 0, tilt).Y, 0.6, "BAR " + First(context).Bar.ToString().ToUpperInvariant(), "HOLE " + context.Print.Small(First(context).HoleDiameter));
    }

    private static void Hole(DrawingContext context, DetailPen pen)
    {
        double tilt = Angles.ToRadians(First(context).Inclination);
        (double X, double Y) P(double along, double across) => On(along - 60, across, tilt);
        void Draw(double from, double to, double half) => pen.Shape(LayerRole.Detail, P(from, half), P(to, half), P(to, -half), P(from, -half));
        Draw(0, 125, 7);
        Draw(-9, 120, 1.2);
        foreach (double at in new[] { 14.0, 46, 78, 110 })
            Draw(at, at + 5, 5);
        (double x, double y) = P(0, 0);
        pen.Line(x, y - 24, x, y + 24);
        pen.Span(P(0, 17).X, P(0, 17).Y, P(125, 17).X, P(125, 17).Y, "LENGTH: FACE OF SHOTCRETE TO BACK OF HOLE");
        pen.Note(P(48, -5).X, P(48, -5).Y, Down, "CENTRALIZERS: " + Fact(context, "centralizers"));
        pen.Note(P(95, -6).X, P(95, -6).Y, Down, "GROUT: " + Fact(context, "grout_strength"));
        pen.Note(P(30, -1).X, P(30, -1).Y, Down, "BAR: " + First(context).Bar.ToString().ToUpperInvariant(), "PROTECTION: " + Fact(context, "corrosion_protection"));
        pen.Note(x, y + 20, Left, "FACE");
        pen.Note(P(118, 7).X, P(118, 7).Y, Up, "HOLE " + context.Print.Small(First(context).HoleDiameter));
    }

    private static void Drainage(DrawingContext context, DetailPen pen)
    {
        Drainage? drainage = context.Project.Walls[0].Drainage;
        pen.Line(-22, -55, -22, 55);
        pen.Line(-8, -55, -8, 55);
        pen.Hatch(5, 45, (-22, -55), (-8, -55), (-8, 55), (-22, 55));
        pen.Shape(LayerRole.Detail, (-2, -10), (3, -10), (3, 55), (-2, 55));
        pen.Shape(LayerRole.Detail, (-7.5, -55), (-2.5, -55), (-2.5, 12), (-7.5, 12));
        pen.Line(5, -55, 5, 55, LayerRole.DetailHidden);
        pen.Arrow(14, 40, 14, 20);
        pen.Arrow(14, -18, 14, -38);
        pen.Note(14, 30, 0.3, "WATER RUNS DOWN");
        pen.Note(3, 48, 0, "UPPER STRIP, FABRIC SIDE TO THE SOIL");
        pen.Note(-5, -45, 0, "LOWER STRIP, ITS TOP ON THE FACE SIDE", "OF THE UPPER STRIP'S BOTTOM");
        pen.Note(5, 2, 0, "SOIL");
        pen.Note(-18, 20, Left, "SHOTCRETE");
        string width = drainage?.StripWidth is double w ? context.Print.Small(w) : "________";
        pen.Note(-1, 25, 0, "STRIP " + width + " WIDE, AT NO MORE THAN " + NoteFields.Fill("{drain_spacing}", context), Fact(context, "drainage_strip"));
        pen.Note(-5, -54, -0.5, "TO UNDERDRAIN");
    }

    private static void FacingDetail(DrawingContext context, DetailPen pen)
    {
        Facing? facing = context.Project.Walls[0].Facing;
        pen.Hatch(4, 45, (0, -50), (10, -50), (10, 45), (0, 45));
        pen.Shape(LayerRole.Detail, (0, -50), (10, -50), (10, 45), (0, 45));
        pen.Line(10, 48, 50, 48, LayerRole.DetailHidden);
        pen.Note(5, 30, 0.3, "TEMPORARY SHOTCRETE " + Shotcrete(context));
        pen.Note(40, 48, Up, "GROUND");
        if (facing is null || facing.Kind == FacingKind.None)
        {
            pen.Note(0, 0, Left, "NO PERMANENT FACING GIVEN");
            return;
        }
        string thickness = facing.Thickness is double t ? context.Print.Small(t) : "________";
        bool onFace = facing.Kind is FacingKind.CastInPlace or FacingKind.PermanentShotcrete or FacingKind.SculptedShotcrete;
        // Facing that is cast or shot stands against the temporary shotcrete; panels and others stand before it on a leveling pad.
        double back = onFace ? 0 : -14, front = back - 12;
        if (facing.Kind == FacingKind.PrecastPanels)
        {
            pen.Shape(LayerRole.Detail, (front, -50), (back, -50), (back, -1), (front, -1));
            pen.Shape(LayerRole.Detail, (front, 1), (back, 1), (back, 45), (front, 45));
        }
        else
        {
            pen.Shape(LayerRole.Detail, (front, -50), (back, -50), (back, 45), (front, 45));
        }
        if (!onFace)
        {
            pen.Note(back + 2, -20, -0.4, "GAP " + (facing.Gap is double g ? context.Print.Small(g) : "________"));
            pen.Shape(LayerRole.Detail, (front - 6, -58), (back + 6, -58), (back + 6, -50), (front - 6, -50));
            pen.Note((front + back) / 2, -58, Down, "LEVELING PAD: " + Fact(context, "leveling_pad"));
        }
        pen.Line(front - 34, -38, front, -38, LayerRole.DetailHidden);
        pen.Note(front, 20, Left, KindWords(facing.Kind) + " " + thickness, "STRENGTH: " + Fact(context, "concrete_strength"), "FINISH: " + Fact(context, "finish"));
        pen.Note(front - 24, -38, Up, "FINISHED GRADE");
        if (facing.Coping is string coping)
        {
            pen.Shape(LayerRole.Detail, (front - 4, 45), (14, 45), (14, 56), (front - 4, 56));
            pen.Note(front - 4, 52, Left, "COPING, " + coping.ToUpperInvariant());
        }
    }

    private static string KindWords(FacingKind kind) => kind switch
    {
        FacingKind.PrecastPanels => "PRECAST PANEL",
        FacingKind.CastInPlace => "CAST IN PLACE FACING",
        FacingKind.PermanentShotcrete => "PERMANENT SHOTCRETE",
        FacingKind.SculptedShotcrete => "SCULPTED SHOTCRETE",
        _ => "PERMANENT FACING",
    };

    private static void Test(DrawingContext context, DetailPen pen)
    {
        double tilt = Angles.ToRadians(First(context).Inclination);
        (double X, double Y) P(double along, double across) => On(along - 55, across, tilt);
        void Draw(double from, double to, double half) => pen.Shape(LayerRole.Detail, P(from, half), P(to, half), P(to, -half), P(from, -half));
        Draw(50, 118, 7);
        Draw(-20, 113, 1.2);
        pen.Line(P(0, 7).X, P(0, 7).Y, P(50, 7).X, P(50, 7).Y, LayerRole.DetailHidden);
        pen.Line(P(0, -7).X, P(0, -7).Y, P(50, -7).X, P(50, -7).Y, LayerRole.DetailHidden);
        (double x, double y) = P(0, 0);
        pen.Hatch(4, 45, (x - 8, y + 9), (x, y + 9), (x, y + 28), (x - 8, y + 28));
        pen.Hatch(4, 45, (x - 8, y - 9), (x, y - 9), (x, y - 28), (x - 8, y - 28));
        string Length(double? value) => value is double v ? context.Print.Short(v) : "________";
        pen.Span(P(0, 15).X, P(0, 15).Y, P(50, 15).X, P(50, 15).Y, "FREE LENGTH " + Length(context.Project.Rates.TestFreeLength));
        pen.Span(P(50, 15).X, P(50, 15).Y, P(118, 15).X, P(118, 15).Y, "BONDED LENGTH " + Length(context.Project.Rates.TestBondedLength));
        pen.Note(x - 4, y - 20, Down, "SHOTCRETE KEPT " + NoteFields.Fill("{test_gap}", context), "CLEAR OF THE GROUT");
        pen.Note(P(85, -7).X, P(85, -7).Y, Down, "SACRIFICIAL NAIL, NOT PART OF THE WALL,", "TESTED BEFORE PRODUCTION");
        pen.Note(P(-15, 1).X, P(-15, 1).Y, Up, "BAR LONG ENOUGH FOR THE JACK");
    }
}

using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>The nail: its head, its hole, and a test nail. The soil is on the right.</summary>
internal static class NailDetails
{
    private const double Left = Math.PI, Up = Math.PI / 2, Down = -Math.PI / 2;

    private static (double X, double Y) On(double along, double across, double tilt) =>
        (along * Math.Cos(tilt) + across * Math.Sin(tilt), -along * Math.Sin(tilt) + across * Math.Cos(tilt));

    /// <summary>A tube between two depths, drawn along the hole.</summary>
    private static void Tube(DetailPen pen, double from, double to, double half, double tilt, LayerRole layer = LayerRole.Detail) =>
        pen.Shape(layer, On(from, half, tilt), On(to, half, tilt), On(to, -half, tilt), On(from, -half, tilt));

    public static void Head(DrawingContext context, DetailData data, HeadKind head, DetailPen pen)
    {
        const double Thick = 16;
        double tilt = Angles.ToRadians(head.Bevel), rise = Math.Tan(tilt);
        // The hole in the ground ends at the back of the shotcrete; the bar runs through.
        pen.Shape(LayerRole.Detail, (Thick, 11 - Thick * rise), On(66, 11, tilt), On(66, -11, tilt), (Thick, -11 - Thick * rise));
        pen.Hatch(2.4, -60, (Thick, 11 - Thick * rise), On(66, 11, tilt), On(66, 3, tilt), (Thick, 3 - Thick * rise));
        pen.Hatch(2.4, -60, (Thick, -3 - Thick * rise), On(66, -3, tilt), On(66, -11, tilt), (Thick, -11 - Thick * rise));
        Tube(pen, -32, 66, 2.5, tilt);
        pen.Hatch(5, 45, (0, -48), (Thick, -48), (Thick, -5 - 8 * rise), (0, -4));
        pen.Hatch(5, 45, (0, 4), (Thick, 3 - 8 * rise), (Thick, 48), (0, 48));
        pen.Line(0, -48, 0, 48);
        pen.Line(Thick, -48, Thick, 48);
        foreach ((double from, double to) in new[] { (-48.0, -6.0), (4.0, 48.0) })
            pen.Line(8, from, 8, to, LayerRole.DetailHidden);
        foreach (double y in new[] { -24.0, 20.0 })
            pen.Disc(LayerRole.Detail, 6, y, 1.2);
        pen.Line(4, -40, 4, 38, LayerRole.DetailHidden);
        pen.Shape(LayerRole.Detail, (-4, -18), (0, -18), (0, 18), (-4, 18));
        if (data.Has("studs"))
        {
            foreach (double y in new[] { -14.0, 14.0 })
            {
                pen.Shape(LayerRole.Detail, (-18, y - 1), (-4, y - 1), (-4, y + 1), (-18, y + 1));
                pen.Shape(LayerRole.Detail, (-20, y - 2.4), (-18, y - 2.4), (-18, y + 2.4), (-20, y + 2.4));
            }
            pen.Note(-19, -14, Left, context.Say(Phrase.StudsAre, data.Fact("studs")));
        }
        double slope = 8 * rise;
        pen.Shape(LayerRole.Detail, (-4, -8), (-4, 8), (-8.5 + slope, 8), (-8.5 - slope, -8));
        Tube(pen, -19, -9.5, 6, tilt);
        pen.Span(0, -54, Thick, -54, context.Say(Phrase.ShotcreteThickness, data.Shotcrete));
        pen.Note(On(-29, 1, tilt).X, On(-29, 1, tilt).Y, Up, context.Say(Phrase.BarProjects, data.Print.Small(data.Project.Rules.BarProjection)));
        pen.Note(On(-17, -6, tilt).X, On(-17, -6, tilt).Y, Down, context.Say(Phrase.NutAndWasher, data.Fact("nut_and_washer")));
        string bevel = data.Print.Angle(Math.Abs(head.Bevel));
        pen.Note(-6.5, 8, Up + 0.8,
        [
            head.Batter == 0 ? context.Say(Phrase.BevelledWasher, bevel) : context.Say(Phrase.BevelBattered, bevel, data.Print.Angle(head.Inclination), data.Print.Angle(head.Batter)),
            .. head.GreatestTurned > 0 ? [context.Say(Phrase.BevelTurned, data.Print.Angle(Math.Round(head.GreatestTurned, 1)))] : Array.Empty<string>(),
        ]);
        pen.Note(-2, 18, Up, context.Say(Phrase.PlateIs, data.Fact("plate")));
        pen.Note(8, 40, 0.4, context.Say(Phrase.MeshIs, data.Fact("mesh")));
        pen.Note(6, -24, -0.4, context.Say(Phrase.WalersAre, data.Fact("waler_bars")));
        pen.Note(4, -36, -0.4, context.Say(Phrase.BearingBarsAre, data.Fact("bearing_bars")));
        pen.Note(On(58, 2, tilt).X, On(58, 2, tilt).Y, 0.6, context.Say(Phrase.BarList, data.ByZone(s => s.Bar.ToString().ToUpperInvariant())));
        pen.Note(On(50, -9, tilt).X, On(50, -9, tilt).Y, -0.6, context.Say(Phrase.GroutIs, data.Fact("grout_strength")));
    }

    public static void Hole(DrawingContext context, DetailData data, DetailPen pen)
    {
        double tilt = Angles.ToRadians(data.Inclination);
        (double X, double Y) P(double along, double across) => On(along - 62, across, tilt);
        void Draw(double from, double to, double half) => pen.Shape(LayerRole.Detail, P(from, half), P(to, half), P(to, -half), P(from, -half));
        (double x, double y) = P(0, 0);
        pen.Hatch(3, 45, (x, y + 9), (x + 5, y + 8), (x + 5, y + 24), (x, y + 24));
        pen.Hatch(3, 45, (x, y - 8), (x + 5, y - 9), (x + 5, y - 24), (x, y - 24));
        pen.Line(x, y - 24, x, y + 24);
        pen.Line(x + 5, y - 24, x + 5, y + 24);
        Draw(5, 125, 7);
        pen.Hatch(2.4, -60, P(5, 7), P(125, 7), P(125, 1.2), P(5, 1.2));
        pen.Hatch(2.4, -60, P(5, -1.2), P(125, -1.2), P(125, -7), P(5, -7));
        Draw(-9, 120, 1.2);
        foreach (double at in new[] { 14.0, 46, 78, 110 })
            Draw(at, at + 5, 5);
        pen.Span(P(0, 20).X, P(0, 20).Y, P(125, 20).X, P(125, 20).Y, context.Say(Phrase.LengthSpan));
        string centralizers = data.Has("centralizers") ? data.Fact("centralizers") : data.Short(data.Project.Rates.CentralizerSpacing);
        pen.Note(P(48, -5).X, P(48, -5).Y, Down, context.Say(Phrase.CentralizersAre, centralizers));
        pen.Note(P(95, -6).X, P(95, -6).Y, Down, context.Say(Phrase.GroutIs, data.Fact("grout_strength")));
        pen.Note(P(30, -1).X, P(30, -1).Y, Down,
            context.Say(Phrase.BarList, data.ByZone(s => s.Bar.ToString().ToUpperInvariant())), context.Say(Phrase.ProtectionIs, data.Fact("corrosion_protection")));
        pen.Note(x, y + 20, Left, context.Say(Phrase.Face));
        pen.Note(P(118, 7).X, P(118, 7).Y, Up, context.Say(Phrase.HoleList, data.ByZone(s => data.Print.Small(s.HoleDiameter))));
        pen.Note(P(70, 7).X, P(70, 7).Y, Up, context.Say(Phrase.InclinationList, data.ByZone(s => data.Print.Angle(s.Inclination))));
    }

    public static void Test(DrawingContext context, DetailData data, DetailPen pen)
    {
        double tilt = Angles.ToRadians(data.Inclination);
        (double X, double Y) P(double along, double across) => On(along - 55, across, tilt);
        void Draw(double from, double to, double half) => pen.Shape(LayerRole.Detail, P(from, half), P(to, half), P(to, -half), P(from, -half));
        Draw(50, 118, 7);
        pen.Hatch(2.4, -60, P(50, 7), P(118, 7), P(118, 1.2), P(50, 1.2));
        pen.Hatch(2.4, -60, P(50, -1.2), P(118, -1.2), P(118, -7), P(50, -7));
        Draw(-20, 113, 1.2);
        pen.Line(P(0, 7).X, P(0, 7).Y, P(50, 7).X, P(50, 7).Y, LayerRole.DetailHidden);
        pen.Line(P(0, -7).X, P(0, -7).Y, P(50, -7).X, P(50, -7).Y, LayerRole.DetailHidden);
        (double x, double y) = P(0, 0);
        pen.Hatch(4, 45, (x - 8, y + 9), (x, y + 9), (x, y + 28), (x - 8, y + 28));
        pen.Hatch(4, 45, (x - 8, y - 9), (x, y - 9), (x, y - 28), (x - 8, y - 28));
        pen.Span(P(0, 15).X, P(0, 15).Y, P(50, 15).X, P(50, 15).Y, context.Say(Phrase.FreeLengthIs, data.Short(data.Project.Rates.TestFreeLength)));
        pen.Span(P(50, 15).X, P(50, 15).Y, P(118, 15).X, P(118, 15).Y, context.Say(Phrase.BondedLengthIs, data.Short(data.Project.Rates.TestBondedLength)));
        pen.Note(x - 4, y - 20, Down, context.Say(Phrase.TestGap, NoteFields.Fill("{test_gap}", context)));
        pen.Note(P(85, -7).X, P(85, -7).Y, Down, context.Say(Phrase.TestSacrificial));
        pen.Note(P(-15, 1).X, P(-15, 1).Y, Up, context.Say(Phrase.TestBar), context.Say(Phrase.TestLoadIs, data.Fact("verification_load")));
    }
}

using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>The nail in its hole, along and across. The soil is on the right.</summary>
internal static class NailDetails
{
    private const double Left = Math.PI, Up = Math.PI / 2, Down = -Math.PI / 2;

    /// <summary>A point at a depth along a bar that starts at the origin, and a distance above its axis.</summary>
    public static (double X, double Y) On(double along, double across, double tilt) =>
        (along * Math.Cos(tilt) + across * Math.Sin(tilt), -along * Math.Sin(tilt) + across * Math.Cos(tilt));

    /// <summary>The longest nail of the layout in its whole length; none without nails.</summary>
    public static IEnumerable<DetailView> Holes(DrawingContext context, DetailData data)
    {
        Nail[] nails = [.. context.Layout.Nails.Where(n => n.Kind != NailKind.Verification)];
        // One that lies as its design section says stands for the others.
        if ((nails.Where(n => n.Splay == 0 && n.Inclination == n.Section.Inclination).MaxBy(n => n.Length) ?? nails.MaxBy(n => n.Length)) is Nail nail)
            yield return new(DetailKind.Hole, [.. data.Sections.Select(s => (object)s.Section)], context.Say(Phrase.DetailHole), Along(nail), pen => Hole(context, data, nail, pen)) { Beside = 3, Above = 13 };
    }

    /// <summary>What a picture of a whole nail takes, its head at the origin.</summary>
    private static Box Along(Nail nail)
    {
        double tilt = Angles.ToRadians(nail.Inclination), room = 1.5 * nail.HoleDiameter;
        return new(-2 * room, -nail.Length * Math.Sin(tilt) - room, nail.Length * Math.Cos(tilt) + room / 2, 2 * room);
    }

    private static void Hole(DrawingContext context, DetailData data, Nail nail, DetailPen pen)
    {
        double tilt = Angles.ToRadians(nail.Inclination), length = nail.Length, half = nail.HoleDiameter / 2, bar = data.DiameterOf(nail.Bar) / 2, side = 1.4 * nail.HoleDiameter;
        double? shotcrete = nail.Wall.Facing?.Shotcrete;
        FaceFrame face = FaceFrame.Of(nail.Wall);
        double t = shotcrete ?? pen.In(4), back = t / Math.Cos(tilt - face.Radians);
        (double X, double Y) P(double along, double across) => On(along, across, tilt);
        void Tube(double from, double to, double r) => pen.Outline(LayerRole.Detail, P(from, r), P(to, r), P(to, -r), P(from, -r));
        pen.Shape(shotcrete is not null, face.Band(0, t, -side * 1.5, side));
        Tube(back, length, half);
        pen.Hatch(1, -60, P(back, half), P(length, half), P(length, bar), P(back, bar));
        pen.Hatch(1, -60, P(back, -bar), P(length, -bar), P(length, -half), P(back, -half));
        Tube(-data.Project.Rules.BarProjection, length, bar);
        pen.Long(P(0, bar), P(length, bar), 1, beyond: half);
        pen.Long(P(back, -half), P(length, -half), -1, context.Say(Phrase.GroutedLength, "<>"));
        Centralizers(context, data, pen, P, back, length, half);
        pen.NoteAtOneOf([P(length * 0.3, -half), P(length * 0.4, -half), P(length * 0.2, -half), P(length * 0.5, -half), P(length * 0.3, half), P(length * 0.45, half)], Down, context.Say(Phrase.GroutIs, data.Fact("grout_strength")));
        pen.Note(P(length * 0.6, bar).X, P(length * 0.6, bar).Y, Up, context.Say(Phrase.BarIs, nail.Bar.ToString().ToUpperInvariant()), context.Say(Phrase.ProtectionIs, data.Fact("corrosion_protection")));
        pen.Note(P(length, 0).X, P(length, 0).Y, null, context.Say(Phrase.HoleIs, data.Small(nail.HoleDiameter), data.Print.Angle(nail.Inclination)));
        pen.Note(P(length * 0.15, half).X, P(length * 0.15, half).Y, Up, context.Say(Phrase.DrawnNail, nail.Mark, context.Say(Phrase.LengthSpan)));
    }

    /// <summary>Centralizers at the spacing and end distance that the project gives; where it gives none they are named alone.</summary>
    private static void Centralizers(
        DrawingContext context, DetailData data, DetailPen pen, Func<double, double, (double X, double Y)> at, double back, double length, double half)
    {
        (double? spacing, double? end) = data.Facts.Centralizers;
        string words = data.Fact("centralizers");
        if (spacing is not > 0 || end is not > 0 || length - back <= 2 * end)
        {
            pen.Note(at(length * 0.45, -half).X, at(length * 0.45, -half).Y, Down, context.Say(Phrase.CentralizersAre, words));
            return;
        }
        double first = back + end.Value, last = length - end.Value;
        int spaces = Math.Max(1, (int)Math.Ceiling((last - first) / spacing.Value - 1e-9));
        double step = (last - first) / spaces;
        for (int i = 0; i <= spaces; i++)
        {
            double d = first + i * step;
            pen.Line(at(d, half).X, at(d, half).Y, at(d, -half).X, at(d, -half).Y);
        }
        pen.Long(at(last, -half), at(length, -half), -1);
        pen.Long(at(first, -half), at(first + step, -half), -1);
        pen.Note(at(first + step, -half).X, at(first + step, -half).Y, Down, context.Say(Phrase.CentralizersAre, words));
    }

    /// <summary>Cuts across the hole, one for each bar and hole.</summary>
    public static DetailView Bores(DrawingContext context, DetailData data)
    {
        var kinds = data.Sections.GroupBy(s => (s.Section.Bar, s.Section.HoleDiameter)).ToList();
        double pitch = kinds.Max(k => k.Key.HoleDiameter) * 2.2, radius = kinds.Max(k => k.Key.HoleDiameter) / 2;
        return new(DetailKind.Bore, [.. data.Sections.Select(s => (object)s.Section)], context.Say(Phrase.DetailBore),
            new(-radius, -radius, (kinds.Count - 1) * pitch + radius, radius), Draw)
        { Beside = kinds.Count > 2 ? 9 : 14, Above = 8, Highest = 16 };

        void Draw(DetailPen pen)
        {
            foreach ((var kind, int i) in kinds.Select((k, i) => (k, i)))
            {
                (double x, double hole, double bar) = (i * pitch, kind.Key.HoleDiameter / 2, data.DiameterOf(kind.Key.Bar) / 2);
                pen.Ring(true, x, 0, hole);
                pen.Ring(true, x, 0, bar);
                pen.Small((x - hole, 0), (x + hole, 0), -1, beyond: hole);
                pen.Small((x - bar, 0), (x + bar, 0), 1, beyond: hole);
                pen.Small((x + bar, 0), (x + hole, 0), 1, context.Say(Phrase.GroutCover, "<>"));
                pen.Note(x, bar, Up, kinds.Count == 1 ? context.Say(Phrase.BarIs, kind.Key.Bar.ToString().ToUpperInvariant())
                    : context.Say(Phrase.BarOfZone, data.Facts.Names(kind), kind.Key.Bar.ToString().ToUpperInvariant()));
            }
        }
    }

    /// <summary>The longest verification test nail in its whole length; none where the layout has none.</summary>
    public static IEnumerable<DetailView> Tests(DrawingContext context, DetailData data)
    {
        if (context.Layout.Nails.Where(n => n.Kind == NailKind.Verification).MaxBy(n => n.Length) is Nail nail)
            yield return new(DetailKind.Test, [.. data.Sections.Select(s => (object)s.Section)], context.Say(Phrase.DetailTest), Along(nail), pen => Test(context, data, nail, pen)) { Beside = 3, Above = 13 };
    }

    private static void Test(DrawingContext context, DetailData data, Nail nail, DetailPen pen)
    {
        double tilt = Angles.ToRadians(nail.Inclination), half = nail.HoleDiameter / 2, bar = data.DiameterOf(nail.Bar) / 2, side = 1.4 * nail.HoleDiameter;
        TestLengths lengths = TestLengths.Of(context, nail);
        double from = lengths.Bonded is double b ? nail.Length - b : lengths.Free ?? nail.Length / 2;
        bool isGiven = lengths.AddUpTo(nail.Length);
        (double X, double Y) P(double along, double across) => On(along, across, tilt);
        double t = nail.Wall.Facing?.Shotcrete ?? pen.In(4);
        FaceFrame face = FaceFrame.Of(nail.Wall);
        pen.Shape(nail.Wall.Facing?.Shotcrete is not null, face.Band(0, t, half * 1.6, side + half));
        pen.Shape(nail.Wall.Facing?.Shotcrete is not null, face.Band(0, t, -side * 1.5, -half * 1.6 - t * Math.Tan(tilt)));
        pen.Outline(LayerRole.Detail, P(0, half), P(nail.Length, half), P(nail.Length, -half), P(0, -half));
        pen.Shape(isGiven, P(from, half), P(nail.Length, half), P(nail.Length, -half), P(from, -half));
        if (isGiven)
        {
            pen.Hatch(1, -60, P(from, half), P(nail.Length, half), P(nail.Length, bar), P(from, bar));
            pen.Hatch(1, -60, P(from, -bar), P(nail.Length, -bar), P(nail.Length, -half), P(from, -half));
        }
        pen.Outline(LayerRole.Detail, P(0, bar), P(nail.Length, bar), P(nail.Length, -bar), P(0, -bar));
        pen.Long(P(0, half), P(nail.Length, half), 1);
        if (isGiven)
            pen.Long(P(0, -half), P(from, -half), -1, context.Say(Phrase.FreeLengthIs, "<>"));
        else
            pen.Note(P(from / 2, -half).X, P(from / 2, -half).Y, Down, context.Say(Phrase.FreeLengthIs, lengths.Free is double free ? data.Print.Short(free) : data.Blank));
        if (lengths.Bonded is not null)
            pen.Long(P(from, -half), P(nail.Length, -half), -1, context.Say(Phrase.BondedLengthIs, "<>"));
        else
            pen.Note(P((from + nail.Length) / 2, -half).X, P((from + nail.Length) / 2, -half).Y, Down, context.Say(Phrase.BondedLengthIs, lengths.BondedWords ?? data.Blank));
        pen.Note(t / 2, -side, Left + 0.8, context.Say(Phrase.TestGap, NoteFields.Fill("{test_gap}", context)));
        pen.Note(P(nail.Length * 0.9, half).X, P(nail.Length * 0.9, half).Y, Up, context.Say(Phrase.DrawnTest, nail.Mark), context.Say(Phrase.TestSacrificial));
        pen.Note(P(0, bar).X, P(0, bar).Y, Left, context.Say(Phrase.TestBar), context.Say(Phrase.TestLoadIs, data.Fact("verification_load", [(nail.Wall, nail.Section)])));
    }
}

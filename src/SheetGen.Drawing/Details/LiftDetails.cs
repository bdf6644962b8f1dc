using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>The joint between two lifts. The row's heads are at y = 0, the face of the shotcrete is at x = 0, the soil on the right; the picture leans by the batter.</summary>
internal static class LiftDetails
{
    private const double Left = Math.PI, Down = -Math.PI / 2;

    /// <summary>Sizes in inches that stand in for those that the project does not give; what has them is dashed.</summary>
    private const double AssumedShotcrete = 4, AssumedBelow = 18, AssumedPlate = 8, AssumedThickness = 0.75, AssumedLap = 8;

    /// <summary>One for each distance below a row and shotcrete, of the walls that are cut in more lifts than one.</summary>
    public static IEnumerable<DetailView> Joints(DrawingContext context, DetailData data)
    {
        double In(double inches) => Lengths.FromInches(inches, data.Print.Unit);
        var kinds = data.Project.Walls.Where(w => context.Quantities.Lifts.Any(l => l.Wall == w && l.Number > 1))
            .GroupBy(w => (w.Lifts?.BelowRow, w.Facing?.Shotcrete, Plate: data.PlateOf(w), w.Lifts?.MaxExposed, w.Lifts?.MaxHours, Face: FaceFrame.Of(w))).ToList();
        foreach (var kind in kinds)
        {
            double below = kind.Key.BelowRow ?? In(AssumedBelow), t = kind.Key.Shotcrete ?? In(AssumedShotcrete), lap = data.Project.Rates.MeshLap ?? In(AssumedLap);
            string title = kinds.Count == 1 ? context.Say(Phrase.DetailJoint) : context.Say(Phrase.DetailJointOf, string.Join(", ", kind.Select(w => w.Name.ToUpperInvariant())));
            yield return new(DetailKind.Joint, [.. kind], title, kind.Key.Face.Leaned(new(-In(8), -below - Math.Max(In(12), lap), t + In(12), Math.Max(In(10), lap - below + In(4)))),
                pen => Draw(context, data, kind.First(), pen))
            { Above = 10, Highest = 76, Lean = kind.Key.Face.Degrees };
        }
    }

    private static void Draw(DrawingContext context, DetailData data, Wall wall, DetailPen pen)
    {
        double? shotcrete = wall.Facing?.Shotcrete, given = wall.Lifts?.BelowRow;
        FaceFrame face = FaceFrame.Of(wall);
        // A lift goes down to a level: along the face it is longer.
        double t = shotcrete ?? pen.In(AssumedShotcrete), deep = given ?? pen.In(AssumedBelow), below = deep / Math.Cos(face.Radians), high = pen.In(10), low = -below - pen.In(12);
        foreach ((double from, double to) in new[] { (low, -below), (-below, high) })
        {
            pen.Hatch(2.5, from == low ? -45 : 45, (0, from), (t, from), (t, to), (0, to));
            pen.Shape(shotcrete is not null, (0, from), (t, from), (t, to), (0, to));
        }
        (double X, double Y) Level(double x, double y, double run, double rise) =>
            (x + run * Math.Cos(face.Radians) - rise * Math.Sin(face.Radians), y + run * Math.Sin(face.Radians) + rise * Math.Cos(face.Radians));
        (double bx, double by) = Level(t, -below, pen.In(10), 0);
        pen.Line(t, -below, bx, by, given is null ? LayerRole.DetailHidden : LayerRole.Detail);
        PlateSize size = data.PlateOf(wall);
        double plate = size.Width ?? pen.In(AssumedPlate), thick = size.Thickness ?? pen.In(AssumedThickness), tilt = Angles.ToRadians(wall.Sections[0].Inclination - face.Degrees), bar = data.DiameterOf(wall.Sections[0].Bar) / 2;
        pen.Rectangle(size.IsGiven, -thick, -plate / 2, 0, plate / 2);
        (double X, double Y) P(double along, double across) => NailDetails.On(along, across, tilt);
        double end = (t + pen.In(11)) / Math.Cos(tilt);
        pen.Outline(LayerRole.Detail, P(-pen.In(6), bar), P(end, bar), P(end, -bar), P(-pen.In(6), -bar));
        double? lap = data.Project.Rates.MeshLap;
        double half = (lap ?? pen.In(AssumedLap)) / 2;
        LayerRole mesh = lap is null ? LayerRole.DetailHidden : LayerRole.Detail;
        pen.Line(t * 0.42, -below - half, t * 0.42, high, mesh);
        pen.Line(t * 0.58, low, t * 0.58, -below + half, mesh);
        // Level with the heads, above the joint's front edge: the cut is measured between levels.
        (double hx, double hy) = Level(0, -below, 0, deep);
        if (given is not null && face.Degrees != 0)
            pen.Line(0, 0, hx, hy, LayerRole.DetailHidden);
        if (given is not null)
            pen.Long((0, -below), (hx, hy), 1, context.Say(Phrase.JointBelow, "<>"));
        else
            pen.Note(0, -below * 0.7, Left, context.Say(Phrase.JointBelow, data.Blank));
        if (lap is not null)
            pen.Small((t, -below - half), (t, -below + half), -1, context.Say(Phrase.JointMesh, "<>"));
        else
            pen.Note(t * 0.42, -below - half * 0.8, 0, context.Say(Phrase.JointMesh, data.Blank));
        if (shotcrete is not null)
            pen.Small((0, low), (t, low), -1);
        else
            pen.Note(0, low, Down, context.Say(Phrase.ShotcreteThickness, data.Blank));
        pen.Note(t * 0.8, -below, -0.4, context.Say(Phrase.JointClean), context.Say(Phrase.JointShape, data.Fact("joint")));
        pen.Note(0, high * 0.8, Left, context.Say(Phrase.FirstLift));
        pen.Note(0, low * 0.95, Left, context.Say(Phrase.NextLift));
        pen.Note(t, high * 0.7, 0.3, context.Say(Phrase.JointOpen, data.Facts.OpenHeight(wall.Lifts?.MaxExposed), data.Facts.OpenHours(wall.Lifts?.MaxHours)));
    }
}

using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>The nail heads, each at its own angle to the face. The origin is where the bar's axis meets the face; the soil is on the right.</summary>
internal static class HeadDetails
{
    private const double Left = Math.PI, Up = Math.PI / 2;

    /// <summary>Sizes in inches that stand in for those that the project does not give; what has them is dashed.</summary>
    private const double AssumedShotcrete = 4, AssumedPlate = 8, AssumedThickness = 0.75, Nut = 1.5, Beyond = 6;

    public static IEnumerable<DetailView> All(DrawingContext context, DetailData data)
    {
        IReadOnlyList<HeadKind> heads = data.Heads;
        foreach (HeadKind head in heads)
        {
            string title = heads.Count == 1 ? context.Say(Phrase.DetailHead) : context.Say(Phrase.DetailHeadOf, data.Facts.Names(head.Sections));
            double In(double inches) => Lengths.FromInches(inches, data.Print.Unit);
            double high = (head.Plate.Width ?? In(AssumedPlate)) / 2 + In(3), depth = (head.Shotcrete ?? In(AssumedShotcrete)) + In(Beyond);
            var upright = new Box(-data.Project.Rules.BarProjection - In(1), -high, depth, high);
            yield return new(DetailKind.Head, [.. head.Sections.Select(s => (object)s.Section)], title,
                new FaceFrame(head.Batter).Leaned(upright), pen => Draw(context, data, head, high, pen))
            { Lean = head.Batter, Beside = 15, Above = 6 };
        }
    }

    private static void Draw(DrawingContext context, DetailData data, HeadKind head, double high, DetailPen pen)
    {
        double tilt = Angles.ToRadians(head.Bevel), rise = Math.Tan(tilt), t = head.Shotcrete ?? pen.In(AssumedShotcrete);
        double half = head.First.HoleDiameter / 2, bar = data.DiameterOf(head.First.Bar) / 2, end = t / Math.Cos(tilt) + pen.In(Beyond - 1), out_ = data.Project.Rules.BarProjection;
        (double X, double Y) P(double along, double across) => NailDetails.On(along, across, tilt);
        // The hole in the ground ends at the back of the shotcrete; the bar runs through.
        (double X, double Y) Back(double across) => (t, across / Math.Cos(tilt) - t * rise);
        (double X, double Y) Face(double across) => (0, across / Math.Cos(tilt));
        pen.Line(Back(half).X, Back(half).Y, P(end, half).X, P(end, half).Y);
        pen.Line(Back(-half).X, Back(-half).Y, P(end, -half).X, P(end, -half).Y);
        pen.Hatch(1.2, -60, Back(half), P(end, half), P(end, bar), Back(bar));
        pen.Hatch(1.2, -60, Back(-bar), P(end, -bar), P(end, -half), Back(-half));
        pen.Outline(LayerRole.Detail, P(-out_, bar), P(end, bar), P(end, -bar), P(-out_, -bar));
        pen.Hatch(2.5, 45, Face(bar), Back(bar), (t, high), (0, high));
        pen.Hatch(2.5, 45, (0, -high), (t, -high), Back(-bar), Face(-bar));
        pen.Shape(head.Shotcrete is not null, (0, -high), (t, -high), (t, high), (0, high));
        double plate = head.Plate.Width ?? pen.In(AssumedPlate), thick = head.Plate.Thickness ?? pen.In(AssumedThickness);
        pen.Rectangle(head.Plate.IsGiven, -thick, -plate / 2, 0, plate / 2);
        Steel steel = DrawSteel(data, head, t, plate, high, pen);
        // The washer takes up the angle: its front is square to the bar.
        double w = 1.5 * bar + pen.In(0.5), least = thick + pen.In(0.2) + w * Math.Abs(rise);
        (double X, double Y) Washer(double across) => (-least + across * rise, across);
        pen.Shape(false, (-thick, -w), (-thick, w), Washer(w), Washer(-w));
        double nut = least * Math.Cos(tilt);
        pen.Shape(false, P(-nut - pen.In(Nut), 1.9 * bar), P(-nut, 1.9 * bar), P(-nut, -1.9 * bar), P(-nut - pen.In(Nut), -1.9 * bar));
        if (head.Shotcrete is not null)
            pen.Small((0, -high), (t, -high), -1);
        if (head.Plate.Width is not null)
            pen.Small((-thick, -plate / 2), (-thick, plate / 2), 1, beyond: out_ - thick + pen.In(0.5));
        if (head.Plate.Thickness is not null)
            pen.Small((-thick, plate / 2), (0, plate / 2), 1);
        if (steel.IsPlaced)
            pen.Small((0, high), (steel.Mesh, high), 1);
        if (steel.Studs is StudSize studs)
            pen.Small((-thick - studs.Length, -steel.StudEdge), (-thick, -steel.StudEdge), -1);
        pen.Small(P(-out_, bar), P(0, bar), 1, data.Project.Rules.Defaulted.Contains("bar_projection") ? context.Say(Phrase.Default, "<>") : null);
        pen.Small(P(end, -half), P(end, half), -1);
        Words(context, data, head, steel, thick, plate, w, bar, high, nut, end, half, pen);
    }

    /// <summary>Where the steel in and on the shotcrete stands.</summary>
    /// <param name="Mesh">Distance of the mesh from the face.</param>
    /// <param name="IsPlaced">True where the project gives that distance.</param>
    /// <param name="StudEdge">Distance of the studs' outer edge from the bar.</param>
    private sealed record Steel(double Mesh, bool IsPlaced, double Waler, StudSize? Studs, double StudEdge, double StudPlace);

    /// <summary>Mesh, waler bars and bearing bars in the shotcrete, and the studs on the plate.</summary>
    private static Steel DrawSteel(DetailData data, HeadKind head, double t, double plate, double high, DetailPen pen)
    {
        double? depth = data.MeshDepthOf(head.First);
        bool isPlaced = depth < t;
        double mesh = isPlaced ? depth!.Value : t / 2, waler = data.WalerOf(head.First) ?? pen.In(0.5);
        pen.Line(mesh, -high, mesh, high, isPlaced ? LayerRole.Detail : LayerRole.DetailHidden);
        foreach (int s in new[] { -1, 1 })
            pen.Ring(false, mesh - waler / 2, s * plate * 0.42, waler / 2);
        StudSize? studs = data.StudsOf(head.First);
        double r = (studs?.Diameter ?? pen.In(0.5)) / 2, length = studs?.Length ?? pen.In(4), back = -(head.Plate.Thickness ?? pen.In(AssumedThickness));
        double y = (studs?.Spacing ?? plate * 0.7) / 2, cap = studs?.Head / 2 ?? 2 * r, capThick = studs?.HeadThickness ?? r;
        if (HasStuds(data, head))
        {
            foreach (int s in new[] { -1, 1 })
            {
                pen.Rectangle(studs is { Spacing: not null }, back - length, s * y - r, back, s * y + r);
                pen.Rectangle(studs is { Spacing: not null, Head: not null, HeadThickness: not null }, back - length, s * y - cap, back - length + capThick, s * y + cap);
            }
        }
        return new(mesh, isPlaced, waler, studs, y + r, y);
    }

    private static bool HasStuds(DetailData data, HeadKind head) => data.Facts.Of("studs", head.Sections) is not null;

    private static void Words(
        DrawingContext context, DetailData data, HeadKind head, Steel steel, double thick, double plate, double washer, double bar, double high, double nut, double end, double half,
        DetailPen pen)
    {
        double tilt = Angles.ToRadians(head.Bevel);
        (double X, double Y) P(double along, double across) => NailDetails.On(along, across, tilt);
        string bevel = data.Print.Angle(Math.Abs(head.Bevel));
        pen.Note(-thick, -washer * 0.9, Left + 0.9,
        [
            head.Batter == 0 ? context.Say(Phrase.BevelledWasher, bevel) : context.Say(Phrase.BevelBattered, bevel, data.Print.Angle(head.Inclination), data.Print.Angle(head.Batter)),
            .. head.GreatestTurned > 0 ? [context.Say(Phrase.BevelTurned, data.Print.Angle(Math.Round(head.GreatestTurned, 1)))] : Array.Empty<string>(),
        ]);
        (double nx, double ny) = P(-nut - pen.In(Nut / 2), -1.9 * bar);
        pen.Note(nx, ny, Left + 0.5, context.Say(Phrase.NutAndWasher, data.Fact("nut_and_washer")));
        pen.NoteAtOneOf([(-thick, plate * 0.4), (-thick, plate * 0.48), (-thick, -plate * 0.48)], Left - 0.7, context.Say(Phrase.PlateIs, data.Fact("plate", head.Sections)));
        pen.Remark(context.Say(Phrase.BarProjects));
        if (!steel.IsPlaced)
            pen.NoteAtOneOf([(steel.Mesh, -high * 0.9), (steel.Mesh, -high)], -0.3, context.Say(Phrase.CoverIs, data.Fact("mesh_cover")));
        pen.NoteAtOneOf([(steel.Mesh, high * 0.88), (steel.Mesh, high), (steel.Mesh, -high)], 0.4, context.Say(Phrase.MeshIs, data.Fact("mesh", head.Sections)));
        pen.NoteAtOneOf([(steel.Mesh, plate * 0.42), (steel.Mesh - steel.Waler / 2, plate * 0.42 + steel.Waler / 2), (steel.Mesh - steel.Waler, plate * 0.42)], 0.3, context.Say(Phrase.WalersAre, data.Fact("waler_bars", head.Sections)));
        pen.NoteAtOneOf([(steel.Mesh, -plate * 0.42), (steel.Mesh - steel.Waler / 2, -plate * 0.42 - steel.Waler / 2), (steel.Mesh - steel.Waler, -plate * 0.42)], -0.3, context.Say(Phrase.BearingBarsAre, data.Fact("bearing_bars", head.Sections)));
        if (HasStuds(data, head))
            pen.Note(-thick - (steel.Studs?.Length ?? pen.In(4)), steel.StudPlace, Left, context.Say(Phrase.StudsAre, data.Fact("studs", head.Sections)));
        (double x, double y) = P(end * 0.95, bar);
        pen.Note(x, y, 0.4, context.Say(Phrase.BarIs, data.BarsOf(head.Sections)));
        pen.NoteAtOneOf([P(end * 0.92, -half), P(end * 0.75, -half), P(end * 0.92, half)], -0.6, context.Say(Phrase.GroutIs, data.Fact("grout_strength")));
        if (head.Shotcrete is null)
            pen.Note(0, -high, Left, context.Say(Phrase.ShotcreteThickness, data.Blank));
    }
}

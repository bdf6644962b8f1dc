using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>
/// Plans of the ends of a wall with its first columns: x the distance along the face from the end at the nails' elevation, y the depth
/// behind the face.
/// </summary>
internal static class EndDetails
{
    private const double Left = Math.PI, Up = Math.PI / 2;

    /// <summary>Inches that stand in for what the project does not give; what has them is dashed.</summary>
    private const double AssumedShotcrete = 4;

    /// <summary>One for all ends that look alike.</summary>
    public static IEnumerable<DetailView> All(DrawingContext context, DetailData data)
    {
        double quantum = Lengths.Quantum(data.Print.Unit);
        WallEnd[] ends = [.. data.Project.Walls.SelectMany(w => new[] { true, false }.Select(b => WallEnd.Of(context, w, b))).OfType<WallEnd>()];
        foreach (var kind in ends.GroupBy(e => (Math.Round(e.First / quantum), Math.Round(e.Second / quantum), e.Wall.Facing)).ToList())
        {
            WallEnd end = kind.First();
            double In(double inches) => Lengths.FromInches(inches, data.Print.Unit);
            double back = -(end.Wall.Facing?.Gap ?? 0) - (end.Wall.Facing?.Thickness ?? 0), reach = Math.Max(end.Second, end.First) + In(12);
            yield return new(DetailKind.End, [.. kind.SelectMany(e => new object[] { e.Wall, e })], context.Say(Phrase.DetailEnd, context.Say(Phrase.Station, data.Print.Station(end.Wall, end.Along))),
                end.IsRight ? new(-reach, back - In(12), In(8), In(36)) : new(-In(8), back - In(12), reach, In(36)), pen => Draw(context, data, end, [.. kind.Skip(1)], pen))
            { Beside = 10, Above = 9 };
        }
    }

    private static void Draw(DrawingContext context, DetailData data, WallEnd end, WallEnd[] alike, DetailPen pen)
    {
        int s = end.IsRight ? -1 : 1;
        Facing? facing = end.Wall.Facing;
        double t = facing?.Shotcrete ?? pen.In(AssumedShotcrete), reach = s * (Math.Max(end.Second, end.First) + pen.In(12));
        pen.Hatch(2.5, 45, (0, 0), (reach, 0), (reach, t), (0, t));
        pen.Shape(facing?.Shotcrete is not null, (0, 0), (reach, 0), (reach, t), (0, t));
        if (facing is { Kind: not FacingKind.None })
        {
            double gap = facing.Gap ?? 0, thick = facing.Thickness ?? pen.In(6);
            pen.Rectangle(facing.Thickness is not null, Math.Min(0, reach), -gap - thick, Math.Max(0, reach), -gap);
        }
        foreach (Nail n in end.Nails)
        {
            double x = s * end.DistanceTo(n), turn = Math.Tan(Angles.ToRadians(n.Splay)) * end.UpStation, long_ = pen.In(30), r = n.HoleDiameter / 2;
            foreach (int side in new[] { -1, 1 })
                pen.Line(x + side * r + turn * t, t, x + side * r + turn * long_, long_);
            pen.Line(x, 0, x + turn * long_, long_, LayerRole.Nail);
        }
        pen.Long((0, 0), (s * end.First, 0), -s);
        if (end.Nails.Count > 1)
            pen.Long((s * end.First, 0), (s * end.Second, 0), -s);
        if (facing?.Shotcrete is not null)
            pen.Small((reach, 0), (reach, t), s);
        string edge = data.Rule("edge_min", data.Print.Short(data.Project.Rules.EdgeMin));
        pen.Note(s * end.First, pen.In(24), s < 0 ? 0.4 : Left - 0.4, context.Say(Phrase.NailOfRow, end.Nails[0].Mark), context.Say(Phrase.EndEdge, edge));
        pen.Note(0, t, s < 0 ? 0.5 : Left - 0.5, [context.Say(Phrase.EndReturn, data.Fact("wall_ends")), .. alike.Length == 0 ? Array.Empty<string>()
            : [context.Say(Phrase.AlsoAt, string.Join(", ", alike.Select(a => context.Say(Phrase.Station, data.Print.Station(a.Wall, a.Along)))))]]);
        if (facing?.Shotcrete is null)
            pen.Note(reach * 0.9, t, Up, context.Say(Phrase.ShotcreteThickness, data.Blank));
        pen.Name(reach / 2, -pen.In(10) - (facing?.Gap ?? 0) - (facing?.Thickness ?? 0), context.Say(Phrase.FrontOfWall));
    }
}

/// <summary>An end of a wall with the nail nearest to it and the next one of its row.</summary>
/// <param name="IsBegin">True where the stations begin.</param>
internal sealed record WallEnd(Wall Wall, bool IsBegin, IReadOnlyList<Nail> Nails)
{
    public double Along => IsBegin ? Wall.Start : Wall.End;

    /// <summary>1 where stations grow to the right in a plan with the soil above, else -1.</summary>
    public int UpStation => -Wall.Side;

    /// <summary>True where it is the right end in a plan with the soil above.</summary>
    public bool IsRight => IsBegin != (UpStation > 0);

    public double First => DistanceTo(Nails[0]);

    public double Second => Nails.Count > 1 ? DistanceTo(Nails[1]) : First;

    /// <summary>Distance along the face from the end to a nail at its elevation.</summary>
    public double DistanceTo(Nail n) => new Face(Wall).Distance(Along, n.Along, n.Elevation);

    /// <summary>Null for an end whose leg has no nails.</summary>
    public static WallEnd? Of(DrawingContext context, Wall wall, bool isBegin)
    {
        var face = new Face(wall);
        double along = isBegin ? wall.Start : wall.End;
        Leg leg = isBegin ? face.Legs[0] : face.Legs[^1];
        Nail[] nails = [.. context.NailsOf(wall).Where(n => n.Kind != NailKind.Verification && leg.Has(n.Along))];
        if (nails.MinBy(n => (Math.Abs(n.Along - along), n.Row)) is not Nail first)
            return null;
        Nail? next = nails.Where(n => n.Section == first.Section && n.Row == first.Row && n != first).MinBy(n => Math.Abs(n.Along - along));
        return new(wall, isBegin, next is null ? [first] : [first, next]);
    }
}

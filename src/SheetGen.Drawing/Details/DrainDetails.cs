using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>The drainage strips: where they stand between the nails, and their lap.</summary>
internal static class DrainDetails
{
    private const double Left = Math.PI, Up = Math.PI / 2;

    /// <summary>Sizes in inches that stand in for those that the project does not give; what has them is dashed.</summary>
    private const double AssumedShotcrete = 4, AssumedStrip = 12, AssumedLap = 12, StripThickness = 0.4;

    public static IEnumerable<DetailView> All(DrawingContext context, DetailData data)
    {
        Wall[] drained = [.. data.Project.Walls.Where(w => context.Quantities.Strips.Any(s => s.Wall == w))];
        if (drained.Length == 0)
            yield break;
        double In(double inches) => Lengths.FromInches(inches, data.Print.Unit);
        var kinds = drained.GroupBy(w => (w.Drainage, w.Facing?.Shotcrete)).ToList();
        foreach (Wall wall in kinds.Select(k => k.First()))
        {
            (DrainStrip first, DrainStrip? next) = Pair(context, wall);
            double spacing = next is null ? In(48) : Face(wall, first, next), half = (wall.Drainage?.StripWidth ?? In(AssumedStrip)) / 2;
            string title = kinds.Count == 1 ? context.Say(Phrase.DetailStrips) : context.Say(Phrase.DetailStripsOf, wall.Name.ToUpperInvariant());
            yield return new(DetailKind.Strips, [.. kinds.Single(k => k.Contains(wall))], title, new(-half - In(3), -In(8), spacing + half + In(3), In(20)),
                pen => Strips(context, data, wall, first, next, pen))
            { Beside = 5, Above = 12 };
        }
        double lap = data.Size("strip_lap") ?? In(AssumedLap), thick = drained[0].Facing?.Shotcrete ?? In(AssumedShotcrete);
        yield return new(DetailKind.Lap, drained, context.Say(Phrase.DetailStripLap), FaceFrame.Of(drained[0]).Leaned(new(-thick - In(2), -lap - In(6), In(4), lap + In(6))), pen => Lap(context, data, drained[0], pen)) { Lean = FaceFrame.Of(drained[0]).Degrees };
    }

    /// <summary>Two neighbouring strips of a leg, as far from its ends as may be.</summary>
    private static (DrainStrip First, DrainStrip? Next) Pair(DrawingContext context, Wall wall)
    {
        var face = new Face(wall);
        DrainStrip[] strips = [.. context.Quantities.Strips.Where(s => s.Wall == wall).OrderBy(s => s.Along)];
        (DrainStrip, DrainStrip)[] pairs = [.. strips.Zip(strips.Skip(1)).Where(p => face.LegAt(p.First.Along) == face.LegAt(p.Second.Along))];
        return pairs.Length == 0 ? (strips[0], null) : pairs[pairs.Length / 2];
    }

    private static double Face(Wall wall, DrainStrip first, DrainStrip next)
    {
        double middle = (first.Along + next.Along) / 2;
        return new Face(wall).Distance(first.Along, next.Along, (wall.Top.At(middle) + wall.Bottom.At(middle)) / 2);
    }

    /// <summary>Plan, the soil above: two strips and the nails of the row nearest to mid-height between them.</summary>
    private static void Strips(DrawingContext context, DetailData data, Wall wall, DrainStrip first, DrainStrip? next, DetailPen pen)
    {
        var face = new Face(wall);
        double t = wall.Facing?.Shotcrete ?? pen.In(AssumedShotcrete), spacing = next is null ? pen.In(48) : Face(wall, first, next);
        double half = (wall.Drainage?.StripWidth ?? pen.In(AssumedStrip)) / 2, left = -half - pen.In(3), right = spacing + half + pen.In(3), middle = first.Along + (next?.Along - first.Along ?? 0) / 2;
        double z = (wall.Top.At(middle) + wall.Bottom.At(middle)) / 2;
        pen.Hatch(2.5, 45, (left, 0), (right, 0), (right, t), (left, t));
        pen.Shape(wall.Facing?.Shotcrete is not null, (left, 0), (right, 0), (right, t), (left, t));
        bool isGiven = wall.Drainage?.StripWidth is not null;
        foreach (double x in next is null ? new[] { 0.0 } : [0, spacing])
        {
            pen.Rectangle(isGiven, x - half, t, x + half, t + pen.In(StripThickness));
            pen.Line(x, -pen.In(4), x, t + pen.In(10), LayerRole.Axis);
        }
        Nail? row = context.NailsOf(wall).Where(n => n.Kind != NailKind.Verification && n.Section == first.Section).MinBy(n => Math.Abs(n.Elevation - z));
        Nail[] nails = row is null || next is null ? [] : [.. context.NailsOf(wall).Where(n => n.Kind != NailKind.Verification && n.Section == row.Section && n.Row == row.Row && n.Along > first.Along && n.Along < next.Along).OrderBy(n => n.Along)];
        foreach (Nail n in nails)
        {
            double x = face.Distance(first.Along, n.Along, z), r = n.HoleDiameter / 2;
            pen.Line(x - r, t, x - r, t + pen.In(16));
            pen.Line(x + r, t, x + r, t + pen.In(16));
            pen.Line(x, -pen.In(3), x, t + pen.In(16), LayerRole.Nail);
        }
        if (wall.Facing?.Shotcrete is not null)
            pen.Small((right, 0), (right, t), -1);
        if (isGiven)
            pen.Small((-half, t), (half, t), 1);
        if (next is not null)
            pen.Long((0, 0), (spacing, 0), -1, context.Say(Phrase.StripSpacing, "<>"));
        if (nails.Length > 0)
        {
            double x = face.Distance(first.Along, nails[0].Along, z);
            pen.Long((0, t + pen.In(9)), (x, t + pen.In(9)), 1);
            pen.Note(x, t + pen.In(14), 0.5, context.Say(Phrase.NailOfRow, nails[0].Mark));
        }
        pen.Note(half * 0.8, t + pen.In(StripThickness), Up, context.Say(Phrase.StripIs, data.Small(wall.Drainage?.StripWidth), Most(context, wall, first), data.Fact("drainage_strip")));
        if (wall.Facing?.Shotcrete is null)
            pen.Note(left, t / 2, Left, context.Say(Phrase.ShotcreteThickness, data.Blank));
        pen.Name(spacing / 2, -pen.In(8), context.Say(Phrase.FrontOfWall));
    }

    private static string Most(DrawingContext context, Wall wall, DrainStrip strip) =>
        wall.Drainage?.MaxSpacing is double given ? context.Print.Short(given) : context.Say(Phrase.Default, context.Print.Short(strip.Spacing));

    /// <summary>Cut square to the face, which leans by its batter, the soil on the right: the upper strip laps behind the lower one.</summary>
    private static void Lap(DrawingContext context, DetailData data, Wall wall, DetailPen pen)
    {
        double? shotcrete = wall.Facing?.Shotcrete, given = data.Size("strip_lap");
        double t = shotcrete ?? pen.In(AssumedShotcrete), lap = given ?? pen.In(AssumedLap), s = pen.In(StripThickness), high = lap + pen.In(6);
        pen.Hatch(2.5, 45, (-t, -high), (0, -high), (0, high), (-t, high));
        pen.Shape(shotcrete is not null, (-t, -high), (0, -high), (0, high), (-t, high));
        pen.Shape(false, (0, -high), (s, -high), (s, lap / 2), (0, lap / 2));
        pen.Shape(false, (s, -lap / 2), (2 * s, -lap / 2), (2 * s, high), (s, high));
        pen.Arrow(3 * s + pen.In(1), high * 0.9, 3 * s + pen.In(1), high * 0.5);
        if (given is not null)
            pen.Small((2 * s, -lap / 2), (2 * s, lap / 2), -1, context.Say(Phrase.LapIs, "<>"));
        pen.Note(s, 0, 0, context.Say(Phrase.LapIs, data.Fact("strip_lap")));
        pen.Note(3 * s + pen.In(1), high * 0.7, 0.3, context.Say(Phrase.WaterDown));
        pen.Note(2 * s, high * 0.95, 0.6, context.Say(Phrase.UpperStrip));
        pen.Note(s, -high * 0.9, -0.2, context.Say(Phrase.LowerStrip));
        if (shotcrete is not null)
            pen.Small((-t, -high), (0, -high), -1, context.Say(Phrase.ShotcreteThickness, "<>"));
        else
            pen.Note(-t, 0, Left, context.Say(Phrase.ShotcreteThickness, data.Blank));
    }
}

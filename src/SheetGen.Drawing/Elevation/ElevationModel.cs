using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Elevation;

/// <summary>The developed elevation of a wall in model space, without nails and labels.</summary>
public static class ElevationModel
{
    public static IEnumerable<Primitive> Draw(DrawingContext context, ElevationStrip strip)
    {
        Wall wall = strip.Wall;
        yield return Frame(context, strip);
        foreach (PanelJoint joint in PanelJoints.Of(context.Quantities.PanelPieces.Where(p => p.Wall == wall)))
            yield return new Line(LayerRole.Panel, strip.OnLeg(joint.Leg, joint.From), strip.OnLeg(joint.Leg, joint.To));
        foreach (Primitive p in DrainageStrips(context, strip).Concat(ElevationObstructions.Draw(context, strip)))
            yield return p;
        foreach (Primitive p in Ground(strip).Concat(Borings(context, strip)))
            yield return p;
        foreach (Primitive p in Outline(strip))
            yield return p;
        foreach (ClosedStretch c in wall.ClosedStretches)
        {
            double from = Math.Max(c.Start, wall.Start), to = Math.Min(c.End, wall.End);
            if (to > from)
                yield return Closed(strip, c, from, to);
        }
        foreach (Corner c in wall.LayoutLine.Corners.Where(c => c.Along > wall.Start && c.Along < wall.End))
            yield return new Line(LayerRole.Face, strip.Fold(c, wall.Bottom.At(c.Along)), strip.Fold(c, wall.Top.At(c.Along)));
    }

    /// <summary>A stretch that the project closes to nails, hatched between its heights or over the whole face.</summary>
    private static Fill Closed(ElevationStrip strip, ClosedStretch c, double from, double to)
    {
        Wall wall = strip.Wall;
        IEnumerable<Point2> Edge(Profile limit, double? height, Func<double, double, double> choose) =>
            strip.Path(limit, from, to).Select(p => height is double z ? p with { Y = choose(p.Y, strip.Y(z)) } : p);
        return Fill.Of(LayerRole.Fill, [.. Edge(wall.Bottom, c.Bottom, Math.Max), .. Edge(wall.Top, c.Top, Math.Min).Reverse()]) with
        {
            Spacing = (strip.High - strip.Low) / 40,
            Angle = 45,
        };
    }

    /// <summary>Points of a profile between two places, with both ends, steps included.</summary>
    public static IEnumerable<ProfilePoint> Pieces(Profile profile, double start, double end)
    {
        yield return new(start, profile.At(start));
        foreach (ProfilePoint p in profile.Points.Where(p => p.Along > start && p.Along < end))
            yield return p;
        yield return new(end, profile.Before(end));
    }

    /// <summary>Places of the wall's drainage strips; none where the project gives no drainage.</summary>
    public static IEnumerable<double> DrainageAlongs(DrawingContext context, Wall wall) =>
        wall.Drainage is null ? [] : context.Quantities.Strips.Where(s => s.Wall == wall).Select(s => s.Along);

    private static Polyline Frame(DrawingContext context, ElevationStrip strip)
    {
        Box box = Box.Around([strip.At(strip.Wall.Start, strip.Low), strip.At(strip.Wall.End, strip.High)]);
        return Polyline.Rectangle(LayerRole.Viewport, box) with
        {
            Data =
            [
                "format=1", "wall=" + strip.Wall.Name,
                FormattableString.Invariant($"origin={strip.Origin.X},{strip.Origin.Y}"),
                FormattableString.Invariant($"sign={strip.Sign}"),
                "unit=" + Lengths.Symbol(context.Project.Unit), "input_hash=" + context.Project.InputHash,
                .. strip.Developed.Pairs.Select(p => FormattableString.Invariant($"developed={p.Developed:0.######},line={p.Line:0.######}")),
            ],
        };
    }

    /// <summary>What no text may cross: top, bottom and ends of the wall, and its openings.</summary>
    public static IEnumerable<Primitive> Outline(ElevationStrip strip)
    {
        Wall wall = strip.Wall;
        yield return Polyline.Of(LayerRole.Wall, OutlinePoints(strip), true);
        foreach (Opening o in wall.Openings)
            yield return Polyline.Of(LayerRole.Wall, [strip.At(o.Start, o.Bottom), strip.At(o.End, o.Bottom), strip.At(o.End, o.Top), strip.At(o.Start, o.Top)], true);
    }

    private static IEnumerable<Point2> OutlinePoints(ElevationStrip strip)
    {
        Wall wall = strip.Wall;
        return strip.Path(wall.Bottom, wall.Start, wall.End).Concat(strip.Path(wall.Top, wall.Start, wall.End).Reverse());
    }

    private static IEnumerable<Primitive> DrainageStrips(DrawingContext context, ElevationStrip strip) =>
        DrainageAlongs(context, strip.Wall).Select(at => new Line(
            LayerRole.Drainage, strip.At(at, strip.Wall.Bottom.At(at)), strip.At(at, strip.Wall.Top.At(at))));

    private static IEnumerable<Primitive> Ground(ElevationStrip strip)
    {
        Wall wall = strip.Wall;
        if (wall.ExistingGround is not null)
        {
            yield return Polyline.Of(LayerRole.ExistingGround,
                strip.Path(wall.ExistingGround, wall.Start, wall.End));
        }
        if (wall.FinishedGrade is not null)
        {
            yield return Polyline.Of(LayerRole.FinishedGrade,
                strip.Path(wall.FinishedGrade, wall.Start, wall.End));
        }
    }

    private static IEnumerable<Primitive> Borings(DrawingContext context, ElevationStrip strip)
    {
        double tick = (strip.High - strip.Low) / 60;
        foreach (Boring boring in context.Project.Borings)
        {
            double along = LayoutProjection.Locate(strip.Wall.LayoutLine, boring.At).Along;
            if (along < strip.Wall.Start || along > strip.Wall.End)
                continue;
            double top = Math.Min(boring.Top, strip.High), bottom = Math.Max(boring.Bottom, strip.Low);
            if (top <= bottom)
                continue;
            double x = strip.X(along);
            yield return new Line(LayerRole.Boring, new(x, strip.Y(bottom)), new(x, strip.Y(top)));
            foreach (double z in boring.Layers.Select(l => l.To).Append(boring.Top).Where(z => z >= bottom && z <= top))
                yield return new Line(LayerRole.Boring, new(x - tick, strip.Y(z)), new(x + tick, strip.Y(z)));
            if (boring.Water is double water && water > bottom && water < top)
            {
                yield return Polyline.Of(LayerRole.Boring,
                    [new(x, strip.Y(water)), new(x - tick, strip.Y(water) + 1.6 * tick), new(x + tick, strip.Y(water) + 1.6 * tick)], true);
            }
        }
    }
}

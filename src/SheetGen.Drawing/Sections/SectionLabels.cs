using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Sections;

/// <summary>Writes the words and dimensions of a cross section.</summary>
public sealed class SectionLabels(DrawingContext context, SectionView view, ViewLabels labels, string dimensionStyle)
{
    /// <summary>Distances of the two chains of dimensions from the left edge of the view, mm.</summary>
    public const double HeightAt = 6, RowsAt = 15;

    private readonly Printed _print = context.Print;

    private Point2 Paper(double offset, double elevation) => labels.Viewport.ToPaper.Apply(view.At(offset, elevation));

    private void Put(string[] lines, Point2 at, double? toward, string? obstruction = null, string? nail = null) =>
        labels.Label(new LabelRequest([lines, [string.Join(" ", lines)]], TextRole.Label, at, 0.5) { Toward = toward, LeaderFrom = 1.6, Obstruction = obstruction, Nail = nail });

    public void Write()
    {
        foreach (Primitive primitive in view.Draw().Select(labels.Viewport.ToPaper.Apply))
        {
            Point2[] points = [.. Extents.Points(primitive)];
            for (int i = 0; i + 1 < points.Length; i++)
                labels.Placer.Crowd.Add(points[i], points[i + 1], primitive.Nail is not null ? LineKind.NoText : LineKind.Soft);
        }
        Dimensions();
        Put([context.Say(Phrase.TopOfWall, _print.Elevation(view.Top))], Paper(view.Build.Back(view.Top), view.Top), 0.9);
        Put([context.Say(Phrase.BottomOfWall, _print.Elevation(view.Bottom))], Paper(view.Build.Back(view.Bottom), view.Bottom), -0.9);
        foreach (Obstruction o in view.Obstructions.Where(o => view.Outline(o).Any()))
        {
            Box box = Box.Around(view.Outline(o).SelectMany(Extents.Points).Select(labels.Viewport.ToPaper.Apply));
            double top = Math.Min(box.Top, labels.Placer.Frame.Top - 6), bottom = Math.Max(box.Bottom, labels.Placer.Frame.Bottom + 6);
            Point2[] anchors =
            [
                .. new[] { 0.5, 0.2, 0.8 }.Select(s => new Point2(box.Left + box.Width * s, top)),
                .. new[] { 0.5, 0.25, 0.75 }.SelectMany(s => new[] { box.Right, box.Left, box.Center.X }.Select(x => new Point2(x, bottom + (top - bottom) * s))),
            ];
            labels.LabelOneOf([.. anchors.Select((a, i) => new LabelRequest([[PlanLabels.NameOf(o, context)]], TextRole.Label, a, 0.5)
            {
                Toward = i < 3 ? Math.PI / 2 : null,
                LeaderFrom = 1.6,
                Obstruction = o.Name,
            })]);
        }
        foreach (Nail nail in view.Nails)
            Nail(nail);
        Lifts();
        Clear();
        if (view.Wall.ExistingGround is not null)
            Put([context.Say(Phrase.ExistingGround)], Paper(view.Behind * 0.7, view.Wall.ExistingGround.At(view.Cut.Along)), Math.PI / 2);
        if (view.Wall.FinishedGrade is not null)
            Put([context.Say(Phrase.FinishedGrade)], Paper((view.Extent.Left + view.Build.Front) / 2, view.Wall.FinishedGrade.At(view.Cut.Along)), Math.PI / 2);
        // What is built on the face is drawn in every section and named where the wall is highest.
        if (view.Cut.IsHighest)
            Facing();
    }

    private void Lifts()
    {
        foreach ((int number, double level) in view.Lifts())
        {
            string words = context.Say(Phrase.Lift, Printed.Number(number, 0), context.Say(Phrase.Elevation, _print.Elevation(level)));
            Put([words], Paper(view.LiftEnd, level), Math.PI);
        }
    }

    private void Facing()
    {
        double middle = (view.Top + view.Bottom) / 2;
        if (view.Wall.Batter is { Angle: not 0 } batter)
            Put([context.Say(Phrase.Batter, _print.Angle(batter.Angle))], Paper(view.Face.OffsetAt(middle), middle), Math.PI);
        if (view.Wall.Facing is not Facing facing)
            return;
        double low = view.Bottom + 0.5 * view.Unit;
        if (facing.Shotcrete is double shotcrete)
        {
            double between = view.Nails.Count > 2 ? (view.Nails[0].Elevation + 2 * view.Nails[1].Elevation) / 3 : low;
            Put([context.Say(Phrase.ShotcreteThickness, _print.Small(shotcrete))], Paper(view.Build.Back(between), between), 0);
        }
        if (view.Wall.Drainage is not null)
        {
            double between = view.Nails.Count > 1 ? (view.Nails[^1].Elevation + 2 * view.Nails[^2].Elevation) / 3 : (view.Top + view.Bottom) / 2;
            Put([context.Say(Phrase.DrainageStrip)], Paper(view.Build.Back(between) + 0.12 * view.Unit, between), 0);
        }
        if (view.Build.HasFacing)
        {
            double at = view.Bottom + 0.4 * (view.Top - view.Bottom);
            Put([context.Say(FacingWords(facing.Kind), _print.Small(facing.Thickness!.Value))], Paper(view.Build.FrontAt(at), at), Math.PI);
        }
        if (view.Build.Pad is double pad && view.Build.HasFacing)
            Put([context.Say(Phrase.LevelingPad, context.Say(Phrase.Elevation, _print.Elevation(pad)))], Paper(view.Build.FrontAt(view.Bottom), pad - 0.25 * view.Unit), Math.PI + 0.6);
        if (facing.Coping is string coping && view.Build.HasFacing)
            Put([context.Say(Phrase.Coping, coping.ToUpperInvariant())], labels.Viewport.ToPaper.Apply(view.Build.CopingAt), Math.PI);
    }

    public static Phrase FacingWords(FacingKind kind) => kind switch
    {
        FacingKind.PrecastPanels => Phrase.PrecastPanel,
        FacingKind.CastInPlace => Phrase.CastInPlaceFacing,
        FacingKind.PermanentShotcrete => Phrase.PermanentShotcrete,
        FacingKind.SculptedShotcrete => Phrase.SculptedShotcrete,
        _ => Phrase.OtherFacing,
    };

    private void Nail(Nail nail)
    {
        string data = context.Say(Phrase.SectionNailData, _print.Short(nail.Length), _print.Angle(nail.Inclination));
        if (nail.Splay != 0)
            data += ", " + context.Say(Phrase.Turn, _print.Angle(Math.Abs(nail.Splay)), Sides.Words(context, nail.Wall, nail.Splay));
        if (view.ProjectedBy(nail) is var by && by > 0)
            data += ", " + context.Say(Phrase.Projected, _print.Short(by));
        string name = context.Say(Phrase.SectionNail, nail.Mark, context.Say(Phrase.Station, _print.Station(nail)));
        Put([name, data], labels.Viewport.ToPaper.Apply(view.TipOf(nail)), 0, nail: nail.Mark);
    }

    /// <summary>The clear distance of every nail that passes a shaft, pile or pipe of the cut; the first says of what.</summary>
    private void Clear()
    {
        foreach (Obstruction o in view.Obstructions.Where(o => o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile or ObstructionKind.Pipe))
        {
            Phrase words = Phrase.ClearDistance;
            foreach (Nail nail in view.Nails)
            {
                Nearest near = o.Solids.Select(s => HoleDistance.ToSolid(nail.Hole, s)).MinBy(n => n.Clear);
                if (near.Clear > 3 * view.Unit || near.DepthFirst <= 0)
                    continue;
                Point2 a = labels.Viewport.ToPaper.Apply(view.Seen(nail, near.OnFirst)), b = labels.Viewport.ToPaper.Apply(view.Seen(nail, near.OnSecond));
                if ((b - a).Length > 0.8)
                    labels.Add(new Line(LayerRole.Dimension, a, b) { Nail = nail.Mark });
                labels.Add(new Circle(LayerRole.Dimension, a, 0.5) { Nail = nail.Mark });
                Put([context.Say(words, _print.Distance(near.Clear), o.Name.ToUpperInvariant())], a, Math.PI / 4, o.Name);
                words = Phrase.ClearShort;
            }
        }
    }

    /// <summary>The height of the wall, and from the top over every row to the bottom where the words have room.</summary>
    private void Dimensions()
    {
        double left = labels.Viewport.Frame.Left;
        Measure(view.Top, view.Bottom, left + HeightAt);
        double[] levels = [view.Top, .. view.Nails.Select(n => n.Elevation), view.Bottom];
        for (int i = 0; i + 1 < levels.Length; i++)
            Measure(levels[i], levels[i + 1], left + RowsAt);
    }

    private void Measure(double high, double low, double x)
    {
        TextStyle style = context.StyleOf(TextRole.Dimension);
        Point2 from = Paper(view.Face.OffsetAt(low), low), to = Paper(view.Face.OffsetAt(high), high);
        if (to.Y - from.Y < TextMeasure.Measure(_print.Distance(high - low), style.Height, style) + 1)
            return;
        var line = new Point2(x, from.Y);
        var middle = new Point2(x - 0.5 - style.Height / 2, (from.Y + to.Y) / 2);
        labels.Add(new Dimension(LayerRole.Dimension, dimensionStyle, from, to, line, middle, 90));
        labels.Placer.Crowd.Add(Box.At(middle, style.Height * 1.5, 16));
        labels.Placer.Crowd.Add(new(x, from.Y), new(x, to.Y), LineKind.NoText);
        foreach (Point2 measured in new[] { from, to })
            labels.Placer.Crowd.Add(new(x, measured.Y), measured, LineKind.NoText);
    }
}

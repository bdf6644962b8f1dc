using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Sections;

/// <summary>Writes the words and dimensions of a cross section.</summary>
public sealed class SectionLabels(DrawingContext context, SectionView view, ViewLabels labels, string dimensionStyle)
{
    private readonly Printed _print = context.Print;

    private Point2 Paper(double offset, double elevation) => labels.Viewport.ToPaper.Apply(view.At(offset, elevation));

    private LabelRequest Request(string[] lines, Point2 at, double? toward, string? obstruction = null, string? nail = null) =>
        new([lines, [string.Join(" ", lines)]], TextRole.Label, at, 0.5) { Toward = toward, LeaderFrom = 1.6, Obstruction = obstruction, Nail = nail, Otherwise = string.Join(", ", lines) };

    private void Put(string[] lines, Point2 at, double? toward, string? nail = null) => labels.Label(Request(lines, at, toward, null, nail));

    /// <summary>Writes words at one of several points, each with the direction liked best there.</summary>
    private void PutAt(string words, params (Point2 At, double Toward)[] points) => labels.LabelOneOf([.. points.Select(p => Request([words], p.At, p.Toward))]);

    public void Write()
    {
        foreach (Primitive built in view.Build.Draw().Where(p => p is not Fill).Select(labels.Viewport.ToPaper.Apply))
            labels.Placer.Crowd.Add(built, LineKind.NoText);
        foreach (Primitive primitive in view.DrawAround().Select(labels.Viewport.ToPaper.Apply))
        {
            if (primitive is Circle circle)
                labels.Placer.Crowd.Add(Box.At(circle.Center, 2 * circle.Radius, 2 * circle.Radius), ownsLeader: true);
            else
                labels.Placer.Crowd.Add(primitive, primitive.Nail is not null || primitive.Layer is LayerRole.FinishedGrade or LayerRole.ExistingGround ? LineKind.NoText : LineKind.Soft);
        }
        var dimensions = new SectionDimensions(context, view, labels, dimensionStyle);
        dimensions.Heights();
        PutAt(context.Say(Phrase.TopOfWall, _print.Elevation(view.Top)), (Paper(view.Build.Back(view.Top), view.Top), 0.9), (Paper(view.Face.OffsetAt(view.Top), view.Top), Math.PI - 0.9));
        dimensions.Embedment();
        PutAt(context.Say(Phrase.BottomOfWall, _print.Elevation(view.Bottom)), (Paper(view.Build.Back(view.Bottom), view.Bottom), -0.6), (Paper(view.Face.OffsetAt(view.Bottom), view.Bottom), Math.PI + 0.9));
        if (view.Cut.IsHighest)
            Ends();
        Openings();
        foreach (Obstruction o in view.Obstructions.Where(o => view.Outline(o).Any()))
        {
            Box box = Box.Around(view.Outline(o).SelectMany(Extents.Points).Select(labels.Viewport.ToPaper.Apply));
            if (TryWithin(o, box))
                continue;
            double top = Math.Min(box.Top, labels.Placer.Frame.Top - 6), bottom = Math.Max(box.Bottom, labels.Placer.Frame.Bottom + 6);
            // Above the top of a shaft below a cap its name would stand in the cap.
            double[] above = IsBelowOther(o) ? [] : [0.5, 0.2, 0.8];
            Point2[] anchors =
            [
                .. above.Select(s => At(s, top)),
                .. new[] { 0.5, 0.25, 0.75 }.SelectMany(s => new[] { 1, 0, 0.5 }.Select(x => At(x, bottom + (top - bottom) * s))),
            ];
            // A share of the width that is seen of it at a height of the paper: an inclined shaft is elsewhere at every height.
            Point2 At(double share, double y)
            {
                double z = labels.Viewport.ToPaper.Inverse.Apply(new Point2(box.Left, y)).Y - view.At(0, 0).Y;
                (double near, double far) = o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile && view.SpanAt(o, z) is (double n, double f) ? (Paper(n, z).X, Paper(f, z).X) : (box.Left, box.Right);
                return new(Math.Clamp(near + (far - near) * share, box.Left, box.Right), y);
            }
            labels.LabelOneOf([.. anchors.Select((a, i) => new LabelRequest([[PlanLabels.NameOf(o, context)]], TextRole.Label, a, 0.5)
            {
                Toward = i < above.Length ? Math.PI / 2 : null,
                LeaderFrom = 1.6,
                Obstruction = o.Name,
            })]);
        }
        Lifts();
        Ground();
        foreach (Nail nail in view.Nails)
            Nail(nail);
        dimensions.Clear();
        dimensions.BesideFace();
        // What is built on the face is drawn in every section and named where the wall is highest.
        if (view.Cut.IsHighest)
            Facing();
    }

    /// <summary>Writes the name of a solid or beam in the middle of its outline; false where it has no room there.</summary>
    private bool TryWithin(Obstruction o, Box box)
    {
        string name = PlanLabels.NameOf(o, context);
        TextStyle style = context.StyleOf(TextRole.Label);
        if (o.Kind is not (ObstructionKind.Solid or ObstructionKind.Beam) || box.Width < TextMeasure.Measure(name, style.Height, style) + 2 || box.Height < 1.4 * style.Height)
            return false;
        return new[] { 0.5, 0.3, 0.7 }.Any(s => labels.TryWrite(context.Write(LayerRole.Label, TextRole.Label,
            new(box.Left + box.Width * s, box.Center.Y - style.Height / 2), name, HorizontalAlign.Center) with
        { Obstruction = o.Name, Masked = true }));
    }

    /// <summary>True where a solid or beam stands on a structure or about its top.</summary>
    private bool IsBelowOther(Obstruction o) => view.SpanAt(o, o.Top) is (double near, double far) && view.Obstructions.Any(p =>
        p != o && p.Kind is (ObstructionKind.Solid or ObstructionKind.Beam) && p.Bottom <= o.Top + 0.1 * view.Unit && p.Top > o.Top && view.SpanAt(p, o.Top) is (double from, double to) && from < far && to > near);

    private void Ground()
    {
        if (view.Wall.ExistingGround is not null)
            Put([context.Say(Phrase.ExistingGround)], Paper(view.Behind * 0.7, view.Wall.ExistingGround.At(view.Cut.Along)), Math.PI / 2);
        if (view.Wall.FinishedGrade is not null)
            Put([context.Say(Phrase.FinishedGrade)], Paper((view.Extent.Left + view.Build.Front) / 2, view.Wall.FinishedGrade.At(view.Cut.Along)), Math.PI / 2);
    }

    private void Openings()
    {
        foreach (Opening o in view.Openings)
        {
            string[] words =
            [
                context.Say(Phrase.OpeningName, o.Name.ToUpperInvariant()),
                context.Say(Phrase.OpeningSizeAndHeights, _print.Short(o.End - o.Start), _print.Short(o.Top - o.Bottom), _print.Elevation(o.Bottom), _print.Elevation(o.Top)),
            ];
            double middle = (o.Bottom + o.Top) / 2;
            Put(words, Paper(view.Build.FrontAt(middle), middle), Math.PI);
        }
    }

    /// <summary>Lifts too near each other for their words are named together, from above down.</summary>
    private void Lifts()
    {
        double room = 1.7 * context.StyleOf(TextRole.Label).Height;
        Point2 At(double level) => Paper(view.LiftEnd, level);
        var near = new List<List<(int Number, double Level)>>();
        foreach ((int Number, double Level) lift in view.Lifts().OrderByDescending(l => l.Level))
        {
            if (near.Count > 0 && At(near[^1][^1].Level).Y - At(lift.Level).Y < room)
                near[^1].Add(lift);
            else
                near.Add([lift]);
        }
        foreach (List<(int Number, double Level)> lifts in near)
        {
            string[] words = [.. lifts.Select(l => context.Say(Phrase.Lift, Printed.Number(l.Number, 0), context.Say(Phrase.Elevation, _print.Elevation(l.Level))))];
            Put(words, At(lifts.Average(l => l.Level)), Math.PI);
        }
    }

    private void Facing()
    {
        double[] between = [.. view.Build.BetweenRows()];
        void Layer(string words, Func<double, double> offset, double toward) => PutAt(words, [.. between.Select(z => (Paper(offset(z), z), toward))]);
        if (view.Wall.Batter is { Angle: not 0 } batter)
            Layer(context.Say(Phrase.Batter, _print.Angle(batter.Angle)), z => view.Build.LeansWithFace ? view.Build.FrontAt(z) : view.Face.OffsetAt(z), Math.PI);
        if (view.Wall.Facing is not Facing facing)
            return;
        if (facing.Shotcrete is double shotcrete)
            Layer(context.Say(Phrase.ShotcreteThickness, _print.Small(shotcrete)), view.Build.Back, 0);
        if (view.Wall.Drainage is not null)
            Layer(context.Say(Phrase.DrainageStrip), z => view.Build.Back(z) + 0.12 * view.Unit, 0);
        if (view.Build.HasFacing)
            Layer(context.Say(FacingWords(facing.Kind), _print.Small(facing.Thickness!.Value)), view.Build.FrontAt, Math.PI);
    }

    /// <summary>Coping and leveling pad of the permanent facing.</summary>
    private void Ends()
    {
        if (!view.Build.HasFacing)
            return;
        if (view.Build.Pad is double pad)
        {
            Box box = view.Build.PadBox(pad);
            PutAt(context.Say(Phrase.LevelingPad, context.Say(Phrase.Elevation, _print.Elevation(pad))),
                (Paper(box.Left, box.Center.Y), Math.PI), (Paper(box.Center.X, box.Bottom), -Math.PI / 2), (Paper(box.Right, box.Center.Y), 0));
        }
        if (view.Wall.Facing!.Coping is string coping)
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

    /// <summary>What stands at a nail's tip: mark and station, and its data; forbidden where it may not be drilled.</summary>
    public static (string Name, string Data) WordsOf(DrawingContext context, SectionView view, Nail nail)
    {
        Printed print = context.Print;
        string data = context.Say(Phrase.SectionNailData, print.Short(nail.Length), print.Angle(nail.Inclination));
        if (nail.Splay != 0)
            data += ", " + context.Say(Phrase.Turn, print.Angle(Math.Abs(nail.Splay)), Sides.Words(context, nail.Wall, nail.Splay));
        if (view.ProjectedBy(nail) is var by && by > 0)
            data += ", " + context.Say(Phrase.Projected, print.Short(by));
        string mark = view.IsStopped(nail) ? context.Say(Phrase.DoNotDrillMark, nail.Mark) : nail.Mark;
        return (context.Say(Phrase.SectionNail, mark, context.Say(Phrase.Station, print.Station(nail))), data);
    }

    private void Nail(Nail nail)
    {
        (string name, string data) = WordsOf(context, view, nail);
        Point2 tip = labels.Viewport.ToPaper.Apply(view.TipOf(nail));
        if (!view.IsStopped(nail))
        {
            Put([name, data], tip, 0, nail: nail.Mark);
            return;
        }
        string plain = context.Say(Phrase.SectionNail, nail.Mark, context.Say(Phrase.Station, _print.Station(nail)));
        labels.Label(new LabelRequest([[name, data], [context.Say(Phrase.DoNotDrill), plain, data], [name + ", " + data]], TextRole.Callout, tip, 0.5)
        {
            Layer = LayerRole.Callout,
            Toward = 0,
            LeaderFrom = 1.6,
            Nail = nail.Mark,
            Shortest = context.Say(Phrase.DoNotDrillMark, nail.Mark),
        });
    }
}

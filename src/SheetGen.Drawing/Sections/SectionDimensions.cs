using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Sections;

/// <summary>The dimensions of a cross section; each measures what is drawn.</summary>
public sealed class SectionDimensions(DrawingContext context, SectionView view, ViewLabels labels, string style)
{
    /// <summary>Distance of the whole height's dimension line from the left edge of the view, mm: its words stand to the left of it.</summary>
    private static double HeightAt(DrawingContext context) => Math.Max(6, 1 + 1.2 * context.StyleOf(TextRole.Dimension).Height);

    /// <summary>Distance of the chain of rows from the left edge of the view, mm.</summary>
    public static double RowsAt(DrawingContext context) => HeightAt(context) + Math.Max(9, 2 + 1.2 * context.StyleOf(TextRole.Dimension).Height);

    private readonly DimensionPlacer _placer = new(context, labels, style);

    private Point2 Paper(double offset, double elevation) => labels.Viewport.ToPaper.Apply(view.At(offset, elevation));

    /// <summary>Height of the wall, and from its top over every row to its bottom.</summary>
    public void Heights()
    {
        double left = labels.Viewport.Frame.Left;
        Height(view.Top, view.Bottom, left + HeightAt(context), 0);
        double[] levels = [view.Top, .. view.Nails.Select(n => n.Elevation), view.Bottom];
        for (int i = 0; i + 1 < levels.Length; i++)
            Height(levels[i], levels[i + 1], left + RowsAt(context), i == 0 ? 1 : i + 2 == levels.Length ? -1 : 0);
    }

    /// <summary>Embedment, and the distances of what stands beside the wall from its face.</summary>
    public void BesideFace()
    {
        foreach (Obstruction o in view.Obstructions)
            FromFace(o);
    }

    /// <param name="beyond">Where words stand that are longer than the height: 1 above it, -1 below, 0 beside it.</param>
    private void Height(double high, double low, double x, int beyond)
    {
        if (high - low < Lengths.Quantum(context.Print.Unit))
            return;
        Point2 from = Paper(view.Face.OffsetAt(low), low), to = Paper(view.Face.OffsetAt(high), high);
        UpPlace? place = _placer.FindUp(from, to, high - low, null, x, beyond);
        for (double aside = 1; place is null && aside <= 2; aside++)
            place = _placer.FindUp(from, to, high - low, null, x, 0, aside * 1.4 * _placer.Height);
        if (place is not null)
            _placer.Keep(place);
        else
            InWords(_placer.Written(high - low), new(x, (from.Y + to.Y) / 2), $"{Elevation(low)} – {Elevation(high)}: {_placer.Written(high - low)}");
    }

    /// <summary>How deep the wall goes below finished grade.</summary>
    public void Embedment()
    {
        if (view.Wall.FinishedGrade?.At(view.Cut.Along) is not double grade || grade - view.Bottom < Lengths.Quantum(context.Print.Unit))
            return;
        Point2 low = Paper(view.Build.FrontAt(view.Bottom), view.Bottom), high = Paper(view.Build.Front, grade);
        high = high with { X = Math.Min(low.X, high.X) };
        double edge = labels.Viewport.Frame.Left + RowsAt(context) + 3;
        if (!_placer.TryUp(low, high, grade - view.Bottom, null, Enumerable.Range(0, 30).Select(i => high.X - 3 - i).Where(x => x > edge), -1))
            InWords(context.Say(Phrase.EmbedmentIs, _placer.Written(grade - view.Bottom)), (low + high) * 0.5);
    }

    /// <summary>How far a shaft, pile or solid beside the wall stands behind the face, between two rows of nails, the lowest first.</summary>
    private void FromFace(Obstruction o)
    {
        if (o.Kind is not (ObstructionKind.Shaft or ObstructionKind.Pile or ObstructionKind.Solid))
            return;
        double[] levels = [view.Bottom, .. view.Nails.Select(n => n.Elevation).Reverse(), view.Top];
        for (int i = 0; i + 1 < levels.Length; i++)
        {
            double z = (levels[i] + levels[i + 1]) / 2, face = view.Face.OffsetAt(z);
            if (z < o.Bottom || z > o.Top || view.SpanAt(o, z) is not (double near, _) || near - face < Lengths.Quantum(context.Print.Unit) || view.Openings.Any(p => p.Bottom <= z && z <= p.Top))
                continue;
            if (_placer.TryAlong(Paper(face, z), Paper(near, z), near - face, null, null, 0))
                return;
        }
    }

    /// <summary>
    /// The clear distance of every nail that passes a shaft, pile or pipe of the cut, and of the nearest one from any other structure; the first says of what.
    /// </summary>
    public void Clear()
    {
        foreach (Obstruction o in view.Obstructions.Where(o => o.Kind != ObstructionKind.Boundary))
        {
            Phrase words = Phrase.ClearDistance;
            (Nail, Nearest)[] passing = [.. view.Nails.Select(n => (Nail: n, Near: o.Solids.Select(s => HoleDistance.ToSolid(n.Hole, s)).MinBy(d => d.Clear)))
                .Where(p => p.Near.Clear <= PassingPlan.Farthest * view.Unit && p.Near.DepthFirst > 0)];
            if (passing.Length > 1 && o.Kind is ObstructionKind.Solid or ObstructionKind.Beam)
                passing = [passing.MinBy(p => p.Item2.Clear)];
            foreach ((Nail nail, Nearest near) in passing)
            {
                if (!TryClear(nail, near))
                    ClearInWords(nail, near, o, words);
                words = Phrase.ClearShort;
            }
        }
    }

    /// <summary>A dimension of a clear distance that lies in the plane of the section; false where it does not, or has no room.</summary>
    private bool TryClear(Nail nail, Nearest near)
    {
        if (view.TrueClear(nail, near) is not (Point2 a, Point2 b))
            return false;
        return _placer.TryAligned(labels.Viewport.ToPaper.Apply(a), labels.Viewport.ToPaper.Apply(b), near.Clear, context.Say(Phrase.ClearShort, DimensionPlacer.Measured), nail.Mark);
    }

    /// <summary>A clear distance that lies across the plane of the section cannot be measured there: it is written at the nail.</summary>
    private void ClearInWords(Nail nail, Nearest near, Obstruction o, Phrase words)
    {
        Point2 a = labels.Viewport.ToPaper.Apply(view.Seen(nail, near.OnFirst)), b = labels.Viewport.ToPaper.Apply(view.Seen(nail, near.OnSecond));
        if ((b - a).Length > 0.8)
            labels.Add(new Line(LayerRole.Dimension, a, b) { Nail = nail.Mark });
        labels.Add(new Circle(LayerRole.Dimension, a, 0.5) { Nail = nail.Mark });
        string said = context.Say(near.Clear < 0 ? Phrase.IntoDistance : words, context.Print.Distance(Math.Abs(near.Clear)), o.Name.ToUpperInvariant());
        labels.Label(new LabelRequest([[said]], TextRole.Label, a, 0.5) { Toward = Math.PI / 4, LeaderFrom = 1.6, Nail = nail.Mark, Obstruction = o.Name });
    }

    private string Elevation(double z) => context.Say(Phrase.Elevation, context.Print.Elevation(z));

    /// <param name="otherwise">What stands below the section where the words have no room in it.</param>
    private void InWords(string words, Point2 at, string? otherwise = null) =>
        labels.Label(new LabelRequest([[words]], TextRole.Label, at, 0.4) { LeaderFrom = 1, Otherwise = otherwise ?? words });
}

using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Sections;

/// <summary>
/// A cross section: x the distance behind the layout line into the soil, y the elevation, moved by an origin in model space.
/// Nails of the rows next to the cut are drawn as they lie when seen along the wall.
/// </summary>
public sealed class SectionView
{
    private const double Front = 7;
    private readonly DrawingContext _context;
    private readonly SectionCut _cut;
    private readonly Point2 _origin;
    private readonly Printed _print;
    private readonly Face _face;
    private readonly Wall _wall;

    /// <summary>The nail nearest to the cut in each row of the section.</summary>
    private readonly Nail[] _nails;

    private readonly Obstruction[] _cutting;

    public SectionView(DrawingContext context, SectionCut cut, Point2 origin)
    {
        (_context, _cut, _origin) = (context, cut, origin);
        _print = _context.Print;
        _wall = _cut.Wall;
        _face = new Face(_cut.Wall);
        _nails = [.. _context.NailsOf(_wall)
            .Where(n => n.Kind != NailKind.Verification && n.Section == _cut.Section && Math.Abs(n.Along - _cut.Along) <= _cut.Section.HorizontalSpacing * 1.01)
            .GroupBy(n => n.Row).Select(g => g.MinBy(n => Math.Abs(n.Along - _cut.Along))!).OrderByDescending(n => n.Elevation)];
        Behind = _nails.Select(n => _face.OffsetAt(n.Elevation) + Reach(n)).DefaultIfEmpty(15 * Unit).Max() + BeyondTips(_print.Unit);
        _cutting = [.. _context.Project.Obstructions.Where(IsCut)];
        double high = Math.Max(Top, _wall.ExistingGround?.At(_cut.Along) ?? Top) + 4 * Unit;
        foreach (Obstruction o in _cutting.Where(o => double.IsFinite(o.Top) && o.Top < Top + 8 * Unit))
            high = Math.Max(high, o.Top + Unit);
        double low = _nails.Select(n => n.Hole.Tip.Z).Append(Bottom).Min() - 4 * Unit;
        Extent = new(-Front * Unit, low, Behind, high);
    }

    /// <summary>How far a view goes on behind the longest nail, project units.</summary>
    public static double BeyondTips(LengthUnit unit) => unit == LengthUnit.Metre ? 1.8 : 6;

    /// <summary>What the view shows, in its own coordinates: offset and elevation.</summary>
    public Box Extent { get; }

    private double Behind { get; }

    private double Unit => _print.Unit == LengthUnit.Metre ? 0.3 : 1;

    private double Top => _wall.Top.At(_cut.Along);

    private double Bottom => _wall.Bottom.At(_cut.Along);

    private static double Reach(Nail n) => (n.Hole.Tip - n.Hole.Head).Plan.Length;

    private Point2 At(double offset, double elevation) => _origin + new Point2(offset, elevation);

    public IEnumerable<Primitive> Draw()
    {
        double shotcrete = _wall.Facing?.Shotcrete ?? Lengths.FromInches(4, _print.Unit);
        double a = _face.OffsetAt(Bottom), b = _face.OffsetAt(Top);
        yield return Fill.Of(LayerRole.Fill, At(a, Bottom), At(a + shotcrete, Bottom), At(b + shotcrete, Top), At(b, Top)) with { Spacing = 0.3 * Unit, Angle = 45 };
        yield return Polyline.Of(LayerRole.Detail, [At(a, Bottom), At(a + shotcrete, Bottom), At(b + shotcrete, Top), At(b, Top)], true);
        if (_wall.Facing is { Thickness: double thick } facing)
        {
            double gap = facing.Gap ?? 0;
            double front = Math.Min(a, b) - gap;
            yield return Polyline.Of(LayerRole.Detail, [At(front - thick, Bottom), At(front, Bottom), At(front, Top), At(front - thick, Top)], true);
        }
        if (_wall.ExistingGround?.At(_cut.Along) is double ground)
            yield return Polyline.Of(LayerRole.ExistingGround, [At(b + shotcrete, Top), At(b + shotcrete, ground), At(Behind, ground)]);
        if (_wall.FinishedGrade is Profile grade)
            yield return new Line(LayerRole.FinishedGrade, At(-Front * Unit, grade.At(_cut.Along)), At(Math.Min(a, b), grade.At(_cut.Along)));
        foreach ((_, double level) in Lifts())
            yield return new Line(LayerRole.Detail, At(LiftEnd(level), level), At(LiftEnd(level) + 0.8 * Unit, level));
        foreach (Nail n in _nails)
            yield return new Line(n.Status == NailStatus.Noted ? LayerRole.NailNoted : LayerRole.Nail, HeadOf(n), TipOf(n)) { Nail = n.Mark };
        foreach (Obstruction o in _cutting)
        {
            foreach (Primitive p in Outline(o))
                yield return p with { Obstruction = o.Name };
        }
    }

    /// <summary>Bottoms of the excavation lifts where the section shows the greatest height: each so far below its row, the last at the bottom.</summary>
    private IEnumerable<(int Number, double Level)> Lifts()
    {
        if (_wall.Lifts?.BelowRow is not double below || !_cut.IsHighest)
            return [];
        double[] levels = [.. _nails.Where(n => !n.Row.IsPart).Select(n => n.Elevation - below).Where(z => z > Bottom).OrderDescending()];
        return levels.Append(Bottom).Select((z, i) => (i + 1, z)).SkipLast(1);
    }

    /// <summary>Outer end of a lift's mark, in front of the permanent facing.</summary>
    private double LiftEnd(double level) =>
        _face.OffsetAt(level) - (_wall.Facing?.Gap ?? 0) - (_wall.Facing?.Thickness ?? 0) - 1.2 * Unit;

    private Point2 HeadOf(Nail n) => At(_face.OffsetAt(n.Elevation), n.Elevation);

    private Point2 TipOf(Nail n)
    {
        Vector2D way = (n.Hole.Tip - n.Hole.Head).Plan;
        return At(_face.OffsetAt(n.Elevation) + way.Dot(_face.NormalAt(n.Along)), n.Hole.Tip.Z);
    }

    private bool IsCut(Obstruction o)
    {
        IReadOnlyList<LinePlace> places = Places(o);
        double from = places.Min(p => p.Along) - o.Diameter / 2, to = places.Max(p => p.Along) + o.Diameter / 2;
        bool across = _cut.Along >= from - 1e-6 && _cut.Along <= to + 1e-6;
        double near = places.Min(p => p.Right * _wall.Side), far = places.Max(p => p.Right * _wall.Side);
        return across && far > -Front * Unit && near < Behind && o.Bottom < Top + 8 * Unit;
    }

    private IReadOnlyList<LinePlace> Places(Obstruction o) => _context.PlacesOf(_wall.LayoutLine, o);

    private IEnumerable<Primitive> Outline(Obstruction o)
    {
        Box extent = Extent;
        IReadOnlyList<LinePlace> places = Places(o);
        switch (o.Kind)
        {
            case ObstructionKind.Boundary when Crossing(o, places) is (double offset, _):
                yield return new Line(LayerRole.Boundary, At(offset, extent.Bottom), At(offset, extent.Top));
                break;
            case ObstructionKind.Pipe when Crossing(o, places) is (double offset, double z):
                yield return new Circle(LayerRole.Detail, At(offset, z), o.Diameter / 2);
                break;
            case ObstructionKind.Shaft or ObstructionKind.Pile:
                double r = o.Diameter / 2;
                double x = places[0].Right * _wall.Side;
                double top = Math.Min(o.Top, extent.Top), bottom = Math.Max(o.Bottom, extent.Bottom);
                yield return new Line(LayerRole.Obstruction, At(x - r, top), At(x - r, bottom));
                yield return new Line(LayerRole.Obstruction, At(x + r, top), At(x + r, bottom));
                yield return new Line(LayerRole.Obstruction, At(x - r, top), At(x + r, top));
                break;
            case ObstructionKind.Solid or ObstructionKind.Beam:
                double near = Math.Max(places.Min(p => p.Right * _wall.Side), extent.Left), far = Math.Min(places.Max(p => p.Right * _wall.Side), extent.Right);
                yield return Polyline.Of(LayerRole.Obstruction, [
                    At(near, Math.Max(o.Bottom, extent.Bottom)), At(far, Math.Max(o.Bottom, extent.Bottom)),
                    At(far, Math.Min(o.Top, extent.Top)), At(near, Math.Min(o.Top, extent.Top))], true);
                break;
            default:
                break;
        }
    }

    /// <summary>Offset and elevation where a path passes the cut; null where it runs along it only.</summary>
    private (double, double)? Crossing(Obstruction o, IReadOnlyList<LinePlace> places)
    {
        for (int i = 0; i + 1 < places.Count; i++)
        {
            double a = places[i].Along, b = places[i + 1].Along;
            if (Math.Abs(a - b) < 1e-9 || _cut.Along < Math.Min(a, b) - 1e-9 || _cut.Along > Math.Max(a, b) + 1e-9)
                continue;
            double t = (_cut.Along - a) / (b - a);
            double offset = (places[i].Right + (places[i + 1].Right - places[i].Right) * t) * _wall.Side;
            if (offset > -Front * Unit && offset < Behind)
                return (offset, o.Shape[i].Z + (o.Shape[i + 1].Z - o.Shape[i].Z) * t);
        }
        return null;
    }

    /// <summary>Writes the labels of the view.</summary>
    public void Label(ViewLabels labels, string dimensionStyle)
    {
        PlaneTransform toPaper = labels.Viewport.ToPaper;
        Point2 Paper(double offset, double z) => toPaper.Apply(At(offset, z));
        foreach (Primitive primitive in Draw())
        {
            Point2[] points = [.. Extents.Points(toPaper.Apply(primitive))];
            bool isNail = primitive.Nail is not null;
            for (int i = 0; i + 1 < points.Length; i++)
                labels.Placer.Crowd.Add(points[i], points[i + 1], isNail ? LineKind.NoText : LineKind.Soft);
        }
        Dimension(labels, dimensionStyle, Paper(_face.OffsetAt(Bottom), Bottom), Paper(_face.OffsetAt(Top), Top), new(labels.Viewport.Frame.Left + 5, Paper(0, Bottom).Y));
        Point2[] heads = [.. _nails.Select(n => Paper(_face.OffsetAt(n.Elevation), n.Elevation))];
        void Put(string[] lines, Point2 at, double? toward, string? obstruction = null) =>
            labels.Label(new LabelRequest([lines, [string.Join(" ", lines)]], TextRole.Label, at, 0.5) { Toward = toward, LeaderFrom = 1.6, Obstruction = obstruction });
        Put(["TOP EL " + _print.Elevation(Top)], Paper(_face.OffsetAt(Top), Top), 2.2);
        Put(["BOT EL " + _print.Elevation(Bottom)], Paper(_face.OffsetAt(Bottom), Bottom), -2.2);
        foreach (Nail n in _nails)
        {
            string turn = n.Splay == 0 ? "" : $", {_print.Angle(Math.Abs(n.Splay))} {Sides.Of(_wall, n.Splay)}";
            Point2 tip = toPaper.Apply(TipOf(n));
            Put([$"ROW {n.Row.Name}, L {_print.Short(n.Length)}, {_print.Angle(n.Inclination)} DOWN{turn}"], tip, 0);
        }
        foreach (Obstruction o in _cutting)
        {
            Box box = Box.Around(Outline(o).SelectMany(Extents.Points).DefaultIfEmpty(At(0, Top)).Select(toPaper.Apply));
            if (Outline(o).Any())
                Put([PlanLabels.NameOf(o, _print)], new(box.Center.X, Math.Min(box.Top, labels.Placer.Frame.Top - 6)), Math.PI / 2, o.Name);
        }
        if (_wall.ExistingGround is not null)
            Put(["EXISTING GROUND"], Paper(Behind * 0.7, _wall.ExistingGround.At(_cut.Along)), Math.PI / 2);
        if (_wall.FinishedGrade is not null)
            Put(["FINISHED GRADE"], Paper(-Front * Unit, _wall.FinishedGrade.At(_cut.Along)), Math.PI / 2);
        if (_wall.Batter is { Angle: not 0 } batter)
            Put(["BATTER " + _print.Angle(batter.Angle)], Paper(_face.OffsetAt((Top + Bottom) / 2), (Top + Bottom) / 2), Math.PI);
        foreach ((int number, double level) in Lifts())
            Put([FormattableString.Invariant($"LIFT {number} EL ") + _print.Elevation(level)], Paper(LiftEnd(level), level), Math.PI);
        if (_wall.Facing?.Shotcrete is double shotcrete)
            Put(["SHOTCRETE " + _print.Small(shotcrete)], Paper(_face.OffsetAt(Bottom) + shotcrete, Bottom + 0.5 * Unit), -0.6);
    }

    private void Dimension(ViewLabels labels, string style, Point2 from, Point2 to, Point2 line)
    {
        double height = _context.StyleOf(TextRole.Dimension).Height;
        var middle = new Point2(line.X - 0.5 - height / 2, (from.Y + to.Y) / 2);
        labels.Add(new Dimension(LayerRole.Dimension, style, from, to, line, middle, 90));
        labels.Placer.Crowd.Add(Box.At(middle, height * 1.5, 16));
        labels.Placer.Crowd.Add(new(line.X, from.Y), new(line.X, to.Y), LineKind.NoText);
    }
}

using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>
/// Plans of the corners at their true angle, with offset, mitre and the first nails of both legs: the corner of the layout line is the
/// origin, the soil is above the leg before it.
/// </summary>
internal sealed class CornerDetails
{
    private const double Up = Math.PI / 2, Down = -Math.PI / 2;

    /// <summary>Inches that stand in for what the project does not give; what has them is dashed.</summary>
    private const double AssumedShotcrete = 4;

    private readonly DrawingContext _context;
    private readonly DetailData _data;
    private readonly Wall _wall;
    private readonly Corner _corner;
    private readonly Face _face;
    private readonly Vector2D _origin, _right, _up;
    private readonly Nail?[] _nails;
    private readonly double _elevation, _reach, _t;

    private CornerDetails(DrawingContext context, DetailData data, Wall wall, Corner corner)
    {
        (_context, _data, _wall, _corner, _face) = (context, data, wall, corner, new Face(wall));
        LayoutLine line = wall.LayoutLine;
        Vector2D before = Vector2D.FromAzimuth(line.AzimuthBefore(corner.Along));
        (_origin, _right, _up) = (line.PointAt(corner.Along), before * -wall.Side, before.Right * wall.Side);
        _nails = [.. new[] { _face.Legs.First(l => l.EndCorner == corner), _face.Legs.First(l => l.StartCorner == corner) }.Select(Nearest)];
        _elevation = (_nails[0] ?? _nails[1])?.Elevation ?? (wall.Top.At(corner.Along) + wall.Bottom.At(corner.Along)) / 2;
        _reach = _nails.OfType<Nail>().Select(n => Math.Abs(n.Along - corner.Along)).DefaultIfEmpty(0).Max() + data.Project.Rules.CornerClear + In(12);
        _t = wall.Facing?.Shotcrete ?? In(AssumedShotcrete);
    }

    private double In(double inches) => Lengths.FromInches(inches, _data.Print.Unit);

    /// <summary>Of a leg, the nail nearest to the corner; null without nails.</summary>
    private Nail? Nearest(Leg leg) => _context.NailsOf(_wall).Where(n => n.Kind != NailKind.Verification && leg.Has(n.Along)).MinBy(n => (Math.Abs(n.Along - _corner.Along), n.Row));

    private double Bend => _corner.Deflection * _wall.Side;

    /// <summary>One for each corner; corners that look alike have one together.</summary>
    public static IEnumerable<DetailView> All(DrawingContext context, DetailData data)
    {
        double quantum = Lengths.Quantum(data.Print.Unit);
        CornerDetails[] corners = [.. data.Project.Walls.SelectMany(w => new Face(w).Legs.Select(l => l.EndCorner).OfType<Corner>().Select(c => new CornerDetails(context, data, w, c)))];
        foreach (var kind in corners.GroupBy(c => (Math.Round(c.Bend * 1e5), c._wall.Facing, Offset: Math.Round(c.Offset / quantum),
            Clear: string.Join(" ", c._nails.Select(n => n is null ? "" : Printed.Fixed(c.ToMitre(n), 2))))).ToList())
        {
            CornerDetails first = kind.First();
            string at = context.Say(Phrase.Station, data.Print.Station(first._wall, first._corner.Along));
            yield return new(DetailKind.Corner, [.. kind.Select(k => (object)k._corner)], context.Say(Phrase.DetailCorner, at),
                first.Extent(), pen => first.Draw(pen, [.. kind.Skip(1)]))
            { Beside = 9, Above = 9 };
        }
    }

    private double Offset => _face.OffsetAt(_elevation);

    private double ToMitre(Nail n) => _face.ToMitre(_face.LegAt(n.Along), n.Along, n.Elevation);

    private (double X, double Y) At(Vector2D point) => ((point - _origin).Dot(_right), (point - _origin).Dot(_up));

    /// <summary>A point of the corner's bisector at an offset from the layout line.</summary>
    private (double X, double Y) Mitre(double offset)
    {
        Vector2D before = Vector2D.FromAzimuth(_wall.LayoutLine.AzimuthBefore(_corner.Along));
        return At(_origin + before.Right * (_wall.Side * offset) - before * (offset * Math.Tan(Bend / 2)));
    }

    /// <summary>A leg's line at an offset, from its mitre outward.</summary>
    private (double X, double Y)[] Leg(int leg, double offset)
    {
        const int Steps = 12;
        double sign = leg == 0 ? -1 : 1, from = Math.Min(Math.Max(0, offset * Math.Tan(Bend / 2)), _reach * 0.9);
        bool isCurved = (leg == 0 ? _wall.LayoutLine.PieceBefore(_corner.Along) : _wall.LayoutLine.PieceAt(_corner.Along)).IsCurved;
        IEnumerable<double> runs = isCurved ? Enumerable.Range(1, Steps).Select(i => from + (_reach - from) * i / Steps) : [_reach];
        return [Mitre(offset), .. runs.Select(r => PointOf(leg, _corner.Along + sign * r, offset))];
    }

    private (double X, double Y) PointOf(int leg, double along, double offset)
    {
        // Just before the corner the tangent is that of the leg before it.
        double azimuth = leg == 0 ? _wall.LayoutLine.AzimuthBefore(along) : _wall.LayoutLine.AzimuthAt(along);
        return At(_wall.LayoutLine.PointAt(along) + Vector2D.FromAzimuth(azimuth).Right * (_wall.Side * offset));
    }

    private Box Extent()
    {
        double front = Offset - (_wall.Facing?.Gap ?? 0) - (_wall.Facing?.Thickness ?? 0);
        Point2[] points = [.. new[] { 0, 1 }.SelectMany(leg => new[] { front, 0, Offset + In(30) }.SelectMany(o => Leg(leg, o))).Select(p => new Point2(p.X, p.Y))];
        return Box.Around(points).Grown(In(3));
    }

    private void Draw(DetailPen pen, IReadOnlyList<CornerDetails> alike)
    {
        Facing? facing = _wall.Facing;
        foreach (int leg in new[] { 0, 1 })
        {
            Band(pen, leg, Offset, Offset + _t, facing?.Shotcrete is not null, true);
            if (facing is { Kind: not FacingKind.None } && Offset - (facing.Gap ?? 0) is double front)
                Band(pen, leg, front - (facing.Thickness ?? In(6)), front, facing.Thickness is not null, false);
            (double X, double Y)[] line = Leg(leg, 0);
            for (int i = 0; i + 1 < line.Length && Math.Abs(Offset) > 1e-9; i++)
                pen.Line(line[i].X, line[i].Y, line[i + 1].X, line[i + 1].Y, LayerRole.LayoutLine);
            if (_nails[leg] is Nail nail)
                NailOf(pen, nail);
        }
        Angle(pen);
        foreach (int leg in new[] { 0, 1 })
        {
            // The dimension stands in front of the face.
            if (_nails[leg] is Nail nail)
                pen.Long(Mitre(_face.OffsetAt(nail.Elevation)), At(nail.Hole.Head.Plan), (leg == 0 ? -1 : 1) * _wall.Side);
        }
        if (Math.Abs(Offset) > 1e-9)
            pen.Long(PointOf(0, _corner.Along - _reach * 0.8, 0), PointOf(0, _corner.Along - _reach * 0.8, Offset), 1, _context.Say(Phrase.DimOffset, "<>"));
        if (facing?.Shotcrete is not null)
            pen.Small(PointOf(1, _corner.Along + _reach, Offset), PointOf(1, _corner.Along + _reach, Offset + _t), _wall.Side);
        foreach (Nail nail in _nails.OfType<Nail>())
        {
            (double tx, double ty) = At(nail.Hole.Head.Plan + nail.Hole.Direction.Plan * (In(30) / nail.Hole.Direction.Plan.Length));
            pen.Note(tx, ty, Up, _context.Say(Phrase.NailOfRow, nail.Mark));
        }
        (double X, double Y) back = Mitre(Offset + _t);
        pen.Note(back.X, back.Y, Up, _context.Say(Phrase.CornerBars, _data.Fact("corner_bars")));
        string clear = _data.Rule("corner_clear", _data.Print.Short(_data.Project.Rules.CornerClear));
        (double X, double Y) face = Mitre(Offset);
        pen.Note(face.X, face.Y, Down, [.. new[] { this }.Concat(alike).Select(c => _context.Say(Phrase.CornerAt,
            _context.Say(Phrase.Station, _data.Print.Station(c._wall, c._corner.Along)), _data.Print.Sexagesimal(Angles.ToDegrees(Math.Abs(c._corner.Deflection))))), _context.Say(Phrase.CornerClear, clear)]);
        if (facing?.Shotcrete is null)
            pen.Note(PointOf(1, _corner.Along + _reach * 0.9, Offset + _t).X, PointOf(1, _corner.Along + _reach * 0.9, Offset + _t).Y, Up, _context.Say(Phrase.ShotcreteThickness, _data.Blank));
        (double x, double y) = PointOf(0, _corner.Along - _reach * 0.6, Offset - In(14) - (facing?.Gap ?? 0) - (facing?.Thickness ?? 0));
        pen.Name(x, y, _context.Say(Phrase.FrontOfWall));
    }

    private void Band(DetailPen pen, int leg, double front, double back, bool isGiven, bool isHatched)
    {
        (double X, double Y)[] outline = [.. Leg(leg, front), .. Leg(leg, back).Reverse()];
        if (isHatched)
            pen.Hatch(2.5, 45, outline);
        pen.Shape(isGiven, outline);
    }

    /// <summary>A nail from its head as it lies in plan.</summary>
    private void NailOf(DetailPen pen, Nail nail)
    {
        (double X, double Y) head = At(nail.Hole.Head.Plan);
        Vector2D way = nail.Hole.Direction.Plan * (1 / nail.Hole.Direction.Plan.Length), side = way.Right * nail.HoleDiameter * 0.5;
        foreach (int s in new[] { -1, 1 })
        {
            (double X, double Y) from = At(nail.Hole.Head.Plan + way * _t + side * s), to = At(nail.Hole.Head.Plan + way * In(30) + side * s);
            pen.Line(from.X, from.Y, to.X, to.Y);
        }
        (double X, double Y) tip = At(nail.Hole.Head.Plan + way * In(30));
        pen.Line(head.X, head.Y, tip.X, tip.Y, LayerRole.Nail);
    }

    /// <summary>The line of the leg before the corner, carried on, with an arc to the next leg.</summary>
    private void Angle(DetailPen pen)
    {
        const int Steps = 8;
        double r = _reach * 0.55;
        (double x, double y) = Mitre(Offset);
        int ahead = -_wall.Side;
        pen.Line(x, y, x + ahead * r * 1.1, y, LayerRole.DetailHidden);
        Point2 Arc(int i) => new Point2(x, y) + new Point2(ahead * r, 0).Turned(-_corner.Deflection * i / Steps);
        for (int i = 0; i < Steps; i++)
            pen.Line(Arc(i).X, Arc(i).Y, Arc(i + 1).X, Arc(i + 1).Y, LayerRole.Dimension);
    }
}

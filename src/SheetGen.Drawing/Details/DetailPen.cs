using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>Draws one detail at full size in model space, seen through a view on the paper: x and y in project units about the detail's origin.</summary>
public sealed class DetailPen
{
    /// <summary>Distance of the lines that keep words off a hatched area, mm.</summary>
    private const double ScanPitch = 2.2;

    private readonly DrawingContext _context;
    private readonly DetailView _view;
    private readonly ViewLabels _labels;
    private readonly DetailDimensions _dimensions;

    /// <param name="frame">The view on the paper.</param>
    /// <param name="place">Point of model space in the middle of the view.</param>
    public DetailPen(DrawingContext context, DetailView view, Box frame, DetailScale scale, Point2 place, string sheet)
    {
        (_context, _view) = (context, view);
        _labels = new ViewLabels(context, new Viewport(frame, place, scale.UnitsPerMillimetre), frame, sheet, null);
        _dimensions = new DetailDimensions(context, _labels, scale);
    }

    public Viewport Viewport => _labels.Viewport;

    public IEnumerable<Primitive> Model => _labels.InModel();

    public IReadOnlyList<string> Notes => _labels.Notes;

    /// <summary>True once something was drawn whose size the project does not give.</summary>
    public bool HasUnsized { get; private set; }

    public LengthUnit Unit => _context.Print.Unit;

    /// <summary>Inches in project units.</summary>
    public double In(double inches) => Lengths.FromInches(inches, Unit);

    private Point2 At(double x, double y) =>
        Viewport.Frame.Center + (new Point2(x, y).Turned(-_view.Lean * Math.PI / 180) - _view.Extent.Center) * (1 / Viewport.UnitsPerMillimetre);

    private Point2 At((double X, double Y) p) => At(p.X, p.Y);

    public void Line(double x1, double y1, double x2, double y2, LayerRole layer = LayerRole.Detail)
    {
        Point2 a = At(x1, y1), b = At(x2, y2);
        _labels.Add(new Line(layer, a, b));
        _labels.Placer.Crowd.Add(a, b, LineKind.NoText);
    }

    /// <summary>A closed outline; dashed where the project does not give its size.</summary>
    public void Shape(bool isGiven, params (double X, double Y)[] points)
    {
        HasUnsized |= !isGiven;
        Outline(isGiven ? LayerRole.Detail : LayerRole.DetailHidden, points);
    }

    public void Outline(LayerRole layer, params (double X, double Y)[] points)
    {
        Point2[] places = [.. points.Select(At)];
        var outline = Polyline.Of(layer, places, true);
        _labels.Add(outline);
        _labels.Placer.Crowd.Add(outline, LineKind.NoText);
    }

    /// <summary>A rectangle along the axes.</summary>
    public void Rectangle(bool isGiven, double left, double bottom, double right, double top) =>
        Shape(isGiven, (left, bottom), (right, bottom), (right, top), (left, top));

    /// <summary>Hatch within an outline; no words stand there.</summary>
    /// <param name="spacing">Of its lines, mm.</param>
    public void Hatch(double spacing, double angle, params (double X, double Y)[] points)
    {
        Point2[] places = [.. points.Select(At)];
        _labels.Add(Fill.Of(LayerRole.Fill, places) with { Spacing = spacing, Angle = angle - _view.Lean });
        _labels.Placer.Crowd.Add(Scans(places), LineKind.NoText);
    }

    private static IEnumerable<(Point2 From, Point2 To)> Scans(Point2[] outline)
    {
        Box box = Box.Around(outline);
        for (double y = box.Bottom + ScanPitch / 2; y < box.Top; y += ScanPitch)
        {
            double[] xs = [.. Crossings(outline, y).Order()];
            for (int i = 0; i + 1 < xs.Length; i += 2)
                yield return (new(xs[i], y), new(xs[i + 1], y));
        }
    }

    private static IEnumerable<double> Crossings(Point2[] outline, double y)
    {
        for (int i = 0; i < outline.Length; i++)
        {
            Point2 a = outline[i], b = outline[(i + 1) % outline.Length];
            if (a.Y > y != b.Y > y)
                yield return a.X + (b.X - a.X) * (y - a.Y) / (b.Y - a.Y);
        }
    }

    public void Ring(bool isGiven, double x, double y, double radius)
    {
        HasUnsized |= !isGiven;
        Point2 middle = At(x, y);
        double r = radius / Viewport.UnitsPerMillimetre;
        _labels.Add(new Circle(isGiven ? LayerRole.Detail : LayerRole.DetailHidden, middle, r));
        Point2 On(int hour) => middle + new Point2(r, 0).Turned(hour * Math.PI / 6);
        _labels.Placer.Crowd.Add(Enumerable.Range(0, 12).Select(i => (On(i), On(i + 1))), LineKind.NoText);
    }

    /// <summary>A filled circle: a bar cut across.</summary>
    public void Disc(double x, double y, double radius)
    {
        Point2 middle = At(x, y);
        double r = Math.Max(radius / Viewport.UnitsPerMillimetre, 0.4);
        _labels.Add(Fill.Disc(LayerRole.Detail, middle, r));
        _labels.Placer.Crowd.Add(Box.At(middle, 2 * r, 2 * r), ownsLeader: true);
    }

    /// <summary>A break line across a part that goes on: everything beyond it keeps its true size.</summary>
    public void Break(double left, double right, double y)
    {
        double tooth = 1.2 * Viewport.UnitsPerMillimetre, middle = (left + right) / 2;
        (double X, double Y)[] points = [(left - 2 * tooth, y), (middle - tooth, y), (middle - tooth / 2, y + 1.5 * tooth), (middle + tooth / 2, y - 1.5 * tooth), (middle + tooth, y), (right + 2 * tooth, y)];
        for (int i = 0; i + 1 < points.Length; i++)
            Line(points[i].X, points[i].Y, points[i + 1].X, points[i + 1].Y);
    }

    /// <summary>An arrow that shows a way, its head at the second point.</summary>
    public void Arrow(double x1, double y1, double x2, double y2)
    {
        Point2 a = At(x1, y1), b = At(x2, y2), way = (b - a) * (1 / (b - a).Length), side = new(-way.Y, way.X), foot = b - way * 2.5;
        _labels.Add(new Line(LayerRole.Leader, a, b));
        _labels.Placer.Crowd.Add(a, b, LineKind.NoText);
        _labels.Add(Fill.Of(LayerRole.Leader, b, foot + side * 0.8, foot - side * 0.8));
    }

    /// <summary>A dimension of a small part, in inches or millimetres.</summary>
    /// <param name="side">1 where its line stands to the left of the way from the first point to the second, -1 to the right.</param>
    /// <param name="words">With &lt;&gt; for the measured length; null for it alone.</param>
    /// <param name="beyond">Least distance of its line, project units.</param>
    public void Small((double X, double Y) from, (double X, double Y) to, int side, string? words = null, double beyond = 0) =>
        _dimensions.Put(At(from), At(to), side, true, words, beyond / Viewport.UnitsPerMillimetre);

    /// <summary>A dimension of a place on the wall, in the project's unit.</summary>
    public void Long((double X, double Y) from, (double X, double Y) to, int side, string? words = null, double beyond = 0) =>
        _dimensions.Put(At(from), At(to), side, false, words, beyond / Viewport.UnitsPerMillimetre);

    /// <summary>A note that points at a place, in one of several shapes.</summary>
    public void Note(double x, double y, double? toward, params string[] lines) => NoteAtOneOf([(x, y)], toward, lines);

    /// <summary>A note that points at one of several places that are alike.</summary>
    public void NoteAtOneOf(IReadOnlyList<(double X, double Y)> places, double? toward, params string[] lines)
    {
        TextStyle style = _context.StyleOf(TextRole.Label);
        lines = [.. lines.Where(l => l.Length > 0)];
        string[] Wrapped(double letters) => [.. lines.SelectMany(l => TextMeasure.Wrap(l, letters * style.Height, style.Height, style))];
        string[][] variants = [lines, Wrapped(26), Wrapped(20), Wrapped(14)];
        _labels.LabelOneOf([.. places.Select(p => new LabelRequest(variants, TextRole.Label, At(p), 0.3) { Toward = toward, LeaderFrom = 0.1, Reach = 70 })]);
    }

    public void Note((double X, double Y) at, double? toward, params string[] lines) => Note(at.X, at.Y, toward, lines);

    /// <summary>Words that stand below the title.</summary>
    public void Remark(string words) => _remarks.Add(words);

    /// <summary>The remarks, and the notes that have no place in the picture, not even for a number: they speak for themselves.</summary>
    public IReadOnlyList<string> Remarks => [.. _remarks, .. _labels.Unplaced];

    private readonly List<string> _remarks = [];

    /// <summary>A name within the picture, without a leader.</summary>
    public void Name(double x, double y, string words) =>
        _labels.Label(new LabelRequest([[words]], TextRole.Label, At(x, y), 0.1) { LeaderFrom = 30, Reach = 30 });
}

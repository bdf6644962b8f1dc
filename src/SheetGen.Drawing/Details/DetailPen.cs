using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Details;

/// <summary>Draws one detail in a cell of the paper: x and y in millimetres about the cell's middle, for a cell of full size.</summary>
public sealed class DetailPen
{
    /// <summary>Width and height of a cell at full size, mm.</summary>
    public const double FullWidth = 175, FullHeight = 140;

    private readonly ViewLabels _labels;
    private readonly Point2 _middle;
    private readonly double _scale;

    public DetailPen(DrawingContext context, Box cell, string sheet)
    {
        _scale = Math.Min(cell.Width / FullWidth, cell.Height / FullHeight);
        _middle = cell.Center;
        _labels = new ViewLabels(context, new Viewport(cell, cell.Center, 1), cell, sheet, null);
    }

    public IReadOnlyList<Primitive> Paper => _labels.Paper;

    public IReadOnlyList<string> Notes => _labels.Notes;

    public IReadOnlyList<Finding> Findings => _labels.Findings;

    /// <summary>Degrees by which what is drawn leans to the right, about the cell's middle.</summary>
    public double Lean { get; init; }

    public Point2 At(double x, double y) => _middle + new Point2(x, y).Turned(-Lean * Math.PI / 180) * _scale;

    public void Line(double x1, double y1, double x2, double y2, LayerRole layer = LayerRole.Detail)
    {
        Point2 a = At(x1, y1), b = At(x2, y2);
        _labels.Add(new Line(layer, a, b));
        _labels.Placer.Crowd.Add(a, b, LineKind.NoText);
    }

    public void Shape(LayerRole layer, params (double X, double Y)[] points)
    {
        Point2[] places = [.. points.Select(p => At(p.X, p.Y))];
        _labels.Add(Polyline.Of(layer, places, true));
        for (int i = 0; i < places.Length; i++)
            _labels.Placer.Crowd.Add(places[i], places[(i + 1) % places.Length], LineKind.NoText);
    }

    public void Hatch(double spacing, double angle, params (double X, double Y)[] points)
    {
        Point2[] places = [.. points.Select(p => At(p.X, p.Y))];
        _labels.Add(Fill.Of(LayerRole.Fill, places) with { Spacing = spacing * _scale, Angle = angle - Lean });
        _labels.Placer.Crowd.Add(Box.Around(places), ownsLeader: true);
    }

    public void Solid(LayerRole layer, params (double X, double Y)[] points) =>
        _labels.Add(Fill.Of(layer, [.. points.Select(p => At(p.X, p.Y))]));

    public void Ring(LayerRole layer, double x, double y, double radius)
    {
        _labels.Add(new Circle(layer, At(x, y), radius * _scale));
        _labels.Placer.Crowd.Add(Box.At(At(x, y), 2 * radius * _scale, 2 * radius * _scale), ownsLeader: true);
    }

    public void Disc(LayerRole layer, double x, double y, double radius) => _labels.Add(Fill.Disc(layer, At(x, y), radius * _scale));

    public void Arrow(double x1, double y1, double x2, double y2)
    {
        Line(x1, y1, x2, y2, LayerRole.Leader);
        Point2 a = new(x1, y1), b = new(x2, y2), way = (b - a) * (1 / (b - a).Length), side = new(-way.Y, way.X);
        Point2 left = b - way * 4 + side * 1.2, right = b - way * 4 - side * 1.2;
        Solid(LayerRole.Leader, (b.X, b.Y), (left.X, left.Y), (right.X, right.Y));
    }

    /// <summary>A note that points at a place.</summary>
    public void Note(double x, double y, double? toward, params string[] lines) =>
        _labels.Label(new LabelRequest([lines, [string.Join(" ", lines)], [.. lines.SelectMany(Halves)]], TextRole.Label, At(x, y), 0.3)
        {
            Toward = toward,
            LeaderFrom = 0.1,
            Reach = 70,
        });

    /// <summary>A line of fewer letters is not broken.</summary>
    private const int ShortLine = 24;

    /// <summary>A line broken at the space nearest to its middle; one that is short stays.</summary>
    private static IEnumerable<string> Halves(string line)
    {
        int[] spaces = [.. Enumerable.Range(0, line.Length).Where(i => line[i] == ' ')];
        if (spaces.Length == 0 || line.Length < ShortLine)
            return [line];
        int at = spaces.MinBy(i => Math.Abs(2 * i - line.Length));
        return [line[..at], line[(at + 1)..]];
    }

    /// <summary>A dimension line with words, drawn not to scale.</summary>
    public void Span(double x1, double y1, double x2, double y2, string words)
    {
        Arrow((x1 + x2) / 2, (y1 + y2) / 2, x1, y1);
        Arrow((x1 + x2) / 2, (y1 + y2) / 2, x2, y2);
        _labels.Label(new LabelRequest([[words]], TextRole.Label, At((x1 + x2) / 2, (y1 + y2) / 2), 0.6) { Toward = Math.PI / 2, LeaderFrom = 4 });
    }
}

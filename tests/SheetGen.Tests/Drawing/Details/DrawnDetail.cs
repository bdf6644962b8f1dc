using SheetGen.Drawing.Details;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Tests.Drawing.Details;

/// <summary>A detail as it is drawn, for tests.</summary>
internal sealed class DrawnDetail
{
    private readonly DrawingContext _context;
    private readonly Dictionary<string, DimensionStyle> _styles;

    private DrawnDetail(DrawingContext context, DetailView view, SheetContent content)
    {
        (_context, View, Content) = (context, view, content);
        _styles = DetailScale.Styles(context).ToDictionary(s => s.Name);
    }

    public DetailView View { get; }

    public SheetContent Content { get; }

    public Viewport Viewport => Content.Viewports.Single();

    public IReadOnlyList<Dimension> Dimensions => [.. Content.Model.OfType<Dimension>()];

    /// <summary>Every text, joined.</summary>
    public string Words => string.Join(" ", Content.Model.Concat(Content.Paper).OfType<Text>().Select(t => t.Value).Concat(Dimensions.Select(Written)));

    /// <summary>Each dimension as it is written, and each text: a dimension without room stands as a text with a leader.</summary>
    public string[] Figures => [.. Dimensions.Select(Written), .. Content.Model.OfType<Text>().Select(t => t.Value)];

    public string Written(Dimension d) => DimensionPicture.Measured(d, _styles[d.Style]);

    public static DrawingContext ContextOf(WallProject project, NailLayout layout, string? language = null, double letters = 1) => new(
        project, layout, SampleLayout.Report(layout), SampleLayout.Measure(project, layout), [], new RunInfo("0.1.0"),
        TemplateReader.Default(null, null, language).WithTextsTimes(letters));

    /// <summary>All details of a project, on the drawing area of a sheet.</summary>
    public static IReadOnlyList<DrawnDetail> All(DrawingContext context, Box? area = null, bool spreads = true)
    {
        return [.. DetailSheets.Columns(context, DetailViews.All(context), area ?? new Box(20, 10, 760, 540), new Point2(-1000, -1000), spreads)
            .SelectMany(c => c.Cells).Select(c => new DrawnDetail(context, c.Detail, c.Draw(new(0, c.Height), new("SN-01", []))))];
    }

    /// <summary>Everything on the paper, dimensions and leaders as lines and texts.</summary>
    public IEnumerable<Primitive> Picture()
    {
        PlaneTransform toPaper = Viewport.ToPaper;
        foreach (Primitive p in Content.Model)
        {
            IEnumerable<Primitive> parts = p switch { Dimension d => DimensionPicture.Draw(d, _styles[d.Style]), Leader l => l.Picture(), _ => [p] };
            foreach (Primitive part in parts)
                yield return toPaper.Apply(part);
        }
        foreach (Primitive p in Content.Paper)
            yield return p;
    }

    /// <summary>Texts on texts, texts on lines, and what leaves the view or the room below it.</summary>
    public IEnumerable<string> Faults()
    {
        Primitive[] seen = [.. Picture()];
        (Text Text, Box Box)[] texts = [.. seen.OfType<Text>().Select(t => (t, Corners(t)))];
        foreach (((Text a, Box box), int i) in texts.Select((t, i) => (t, i)))
        {
            foreach ((Text b, Box other) in texts.Skip(i + 1).Where(t => t.Box.Overlaps(box) && t.Text.Rotation == 0 && a.Rotation == 0))
                yield return $"{View.Title}: \"{a.Value}\" lies on \"{b.Value}\"";
            foreach ((Point2 p, Point2 q, LayerRole layer) in Lines(seen).Where(l => a.Rotation == 0 && box.Crosses(l.From, l.To)))
                yield return $"{View.Title}: a line on {layer} crosses \"{a.Value}\"";
            if (a.Layer is LayerRole.Label or LayerRole.Dimension && !Viewport.Frame.Grown(0.1).Contains(box))
                yield return $"{View.Title}: \"{a.Value}\" leaves its view";
            if (a.Layer is LayerRole.Note && box.Bottom < 0)
                yield return $"{View.Title}: \"{a.Value}\" leaves its cell";
        }
    }

    /// <summary>A text's letters, a little inside.</summary>
    private Box Corners(Text text)
    {
        double width = TextMeasure.Advance(text.Value, text.Height, _context.StyleOf(text.Role));
        double left = text.Align switch { HorizontalAlign.Left => 0, HorizontalAlign.Center => -width / 2, _ => -width };
        return Box.Around(new[] { new Point2(left, 0), new Point2(left + width, text.Height) }.Select(c => text.Position + c.Turned(text.Rotation * Math.PI / 180))).Grown(-0.05);
    }

    private static IEnumerable<(Point2 From, Point2 To, LayerRole Layer)> Lines(IEnumerable<Primitive> seen)
    {
        foreach (Primitive p in seen)
        {
            if (p is Line line && line.Layer != LayerRole.Title)
                yield return (line.From, line.To, line.Layer);
            Point2[] points = p is Polyline polyline ? [.. polyline.Vertices.Select(v => v.Point)] : [];
            for (int i = 0; i < points.Length; i++)
                yield return (points[i], points[(i + 1) % points.Length], p.Layer);
        }
    }

    /// <summary>Distance of a point of model space from the nearest drawn line, corner, circle or middle of one.</summary>
    public double Off(Point2 point)
    {
        double least = double.PositiveInfinity;
        foreach ((Point2 a, Point2 b, LayerRole layer) in Lines(Content.Model).Where(l => l.Layer is not (LayerRole.Dimension or LayerRole.Leader)))
        {
            Point2 way = b - a;
            double t = way.Length < 1e-12 ? 0 : Math.Clamp(((point - a).X * way.X + (point - a).Y * way.Y) / (way.Length * way.Length), 0, 1);
            least = Math.Min(least, (point - a - way * t).Length);
        }
        foreach (Circle c in Content.Model.OfType<Circle>())
            least = Math.Min(least, Math.Min((point - c.Center).Length, Math.Abs((point - c.Center).Length - c.Radius)));
        return least;
    }
}

using PdfSharp.Drawing;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Pdf;

/// <summary>Draws primitives of one layer, in millimetres of paper, on a page.</summary>
internal sealed class PdfPen
{
    private const double PointsPerMillimetre = 72 / 25.4;
    private readonly XGraphics _graphics;
    private readonly double _height;
    private readonly DrawingTemplates _templates;
    private readonly Dictionary<(double, bool), XFont> _fonts;
    private readonly XPen _pen;
    private readonly XPen _hatchPen;
    private readonly XSolidBrush _brush;

    public PdfPen(XGraphics graphics, Sheet sheet, SheetSet set, LayerRole layer, Dictionary<(double, bool), XFont> fonts)
    {
        _graphics = graphics;
        _height = sheet.Height;
        _templates = set.Templates;
        _fonts = fonts;
        LayerDefinition look = set.LayerOf(layer);
        XColor color = XColor.FromGrayScale(1 - look.Screen / 100.0);
        _brush = new XSolidBrush(color);
        double width = look.Weight * PointsPerMillimetre;
        _pen = new XPen(color, width) { LineCap = XLineCap.Round, LineJoin = XLineJoin.Round };
        _hatchPen = new XPen(color, 0.13 * PointsPerMillimetre);
        LinetypeDefinition? type = _templates.Linetypes.FirstOrDefault(t => t.Name == look.Linetype);
        if (type is not null)
        {
            _pen.LineCap = XLineCap.Flat;
            _pen.DashPattern = [.. type.Pattern.Select(p => Math.Max(0.05, Math.Abs(p)) * PointsPerMillimetre / width)];
        }
    }

    public void Draw(Primitive primitive)
    {
        switch (primitive)
        {
            case Line l:
                _graphics.DrawLine(_pen, Place(l.From), Place(l.To));
                break;
            case Polyline p:
                Stroke(Flatten.Path(p.Vertices, p.Closed), p.Closed);
                break;
            case Circle c:
                XPoint corner = Place(c.Center + new Point2(-c.Radius, c.Radius));
                double size = 2 * c.Radius * PointsPerMillimetre;
                _graphics.DrawEllipse(_pen, corner.X, corner.Y, size, size);
                break;
            case Arc a:
                Stroke(Flatten.Arc(a), false);
                break;
            case Fill f when f.Spacing > 0:
                foreach ((Point2 from, Point2 to) in Flatten.Hatch(f))
                    _graphics.DrawLine(_hatchPen, Place(from), Place(to));
                break;
            case Fill f:
                _graphics.DrawPolygon(_brush, [.. Flatten.Path(f.Outline, true).Select(Place)], XFillMode.Winding);
                break;
            case TextMask m:
                _graphics.DrawPolygon(XBrushes.White, [.. m.Corners.Select(Place)], XFillMode.Winding);
                break;
            case Text t:
                Write(t);
                break;
            default:
                throw new ArgumentException("a reference or dimension must be drawn as its parts", nameof(primitive));
        }
    }

    public void Clip(Box window)
    {
        XPoint corner = Place(new(window.Left, window.Top));
        _graphics.IntersectClip(new XRect(corner.X, corner.Y, window.Width * PointsPerMillimetre, window.Height * PointsPerMillimetre));
    }

    private XPoint Place(Point2 p) => new(FiniteNumber.Of(p.X) * PointsPerMillimetre, (_height - FiniteNumber.Of(p.Y)) * PointsPerMillimetre);

    private void Stroke(IReadOnlyList<Point2> points, bool closed)
    {
        XPoint[] places = [.. points.Select(Place)];
        if (closed)
            _graphics.DrawPolygon(_pen, places[..^1]);
        else
            _graphics.DrawLines(_pen, places);
    }

    private void Write(Text text)
    {
        TextStyle style = _templates.Texts[text.Role];
        double advance = TextMeasure.Advance(text.Value, text.Height, style);
        double left = text.Align switch
        {
            HorizontalAlign.Left => 0,
            HorizontalAlign.Center => -advance / 2,
            _ => -advance,
        };
        XPoint at = Place(text.Position);
        XGraphicsState state = _graphics.Save();
        _graphics.TranslateTransform(at.X, at.Y);
        if (text.Rotation != 0)
            _graphics.RotateTransform(-text.Rotation);
        _graphics.ScaleTransform(style.WidthFactor, 1);
        _graphics.DrawString(SheetFont.Drawn(text.Value), FontOf(text.Height, style.Bold), _brush, left * PointsPerMillimetre / style.WidthFactor, 0);
        _graphics.Restore(state);
    }

    private XFont FontOf(double height, bool bold)
    {
        double size = Math.Round(height / TextMeasure.CapHeight * PointsPerMillimetre, 4);
        if (!_fonts.TryGetValue((size, bold), out XFont? font))
            _fonts[(size, bold)] = font = new XFont(SheetFonts.Family, size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular);
        return font;
    }
}

using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;

namespace SheetGen.Writers.Picture;

/// <summary>Plan and elevation as a grey PNG, four pixels a millimetre of paper; fewer where that would pass forty million pixels.</summary>
public static class PngPicture
{
    private const double Finest = 4, MostPixels = 40e6, ThinnestLine = 0.9;

    /// <summary>Writes the picture. The same set and font give the same bytes.</summary>
    public static void Write(SheetSet set, Stream stream)
    {
        var sheets = new PictureSheets(set);
        double scale = Math.Min(Finest, Math.Sqrt(MostPixels / (sheets.Width * sheets.Height)));
        var raster = new Raster((int)Math.Ceiling(sheets.Width * scale), (int)Math.Ceiling(sheets.Height * scale));
        var brush = new Brush(set, raster, sheets.Height, scale, new GlyphOutlines(SheetFont.Face(bold: false)), new GlyphOutlines(SheetFont.Face(bold: true)));
        foreach ((LayerRole layer, Box? window, Primitive primitive) in sheets.Content())
            brush.Draw(layer, window, primitive);
        PngFile.Write(raster.Pixels, raster.Width, raster.Height, (int)Math.Round(scale * 1000), stream);
    }

    private sealed class Brush(SheetSet set, Raster raster, double height, double scale, GlyphOutlines regular, GlyphOutlines bold)
    {
        public void Draw(LayerRole layer, Box? window, Primitive primitive)
        {
            LayerDefinition look = set.LayerOf(layer);
            byte grey = (byte)Math.Round(255 * (1 - look.Screen / 100.0));
            Box clip = window is Box w
                ? new Box(w.Left * scale, (height - w.Top) * scale, w.Right * scale, (height - w.Bottom) * scale)
                : new Box(0, 0, raster.Width, raster.Height);
            double width = Math.Max(ThinnestLine, look.Weight * scale);
            double[] dashes = [.. set.Templates.Linetypes.FirstOrDefault(t => t.Name == look.Linetype)?.Pattern.Select(p => Math.Max(0.05, Math.Abs(p)) * scale) ?? []];
            void Stroke(IEnumerable<Point2> path) => raster.Paint(Quads([.. path.Select(Place)], width, dashes), grey, clip);
            switch (primitive)
            {
                case Line l:
                    Stroke([l.From, l.To]);
                    break;
                case Polyline p:
                    Stroke(Flatten.Path(p.Vertices, p.Closed));
                    break;
                case Circle c:
                    Stroke(Flatten.Arc(new Arc(c.Layer, c.Center, c.Radius, 0, 360)));
                    break;
                case Arc a:
                    Stroke(Flatten.Arc(a));
                    break;
                case Fill { Spacing: > 0 } f:
                    foreach ((Point2 from, Point2 to) in Flatten.Hatch(f))
                        raster.Paint(Quads([Place(from), Place(to)], ThinnestLine * 0.7, []), grey, clip);
                    break;
                case Fill f:
                    raster.Paint([[.. Flatten.Path(f.Outline, true).Select(Place)]], grey, clip);
                    break;
                case Text t:
                    raster.Paint(Letters(t), grey, clip);
                    break;
                default:
                    throw new ArgumentException("a reference or dimension must be drawn as its parts", nameof(primitive));
            }
        }

        private Point2 Place(Point2 p) => new(p.X * scale, (height - p.Y) * scale);

        /// <summary>The letters of a text, spread to the width that the sheets are laid out by.</summary>
        private List<IReadOnlyList<Point2>> Letters(Text text)
        {
            TextStyle style = set.Templates.Texts[text.Role];
            GlyphOutlines face = style.Bold ? bold : regular;
            string shown = SheetFont.Drawn(text.Value);
            double size = text.Height / TextMeasure.CapHeight, advance = TextMeasure.Advance(text.Value, text.Height, style), natural = shown.Sum(c => face.Of(c).Advance);
            double stretch = natural > 0 ? advance / (natural * size) : 1, turn = text.Rotation * Math.PI / 180;
            double x = text.Align switch
            {
                HorizontalAlign.Left => 0,
                HorizontalAlign.Center => -advance / 2,
                _ => -advance,
            };
            var letters = new List<IReadOnlyList<Point2>>();
            foreach (char c in shown)
            {
                (double step, IReadOnlyList<IReadOnlyList<Point2>> outlines) = face.Of(c);
                double left = x;
                letters.AddRange(outlines.Select(o => (IReadOnlyList<Point2>)[.. o.Select(p => Place(text.Position + new Point2(left + p.X * size * stretch, p.Y * size).Turned(turn)))]));
                x += step * size * stretch;
            }
            return letters;
        }

        /// <summary>A line of a width as rectangles that all wind the same way round, so that they add up to one area.</summary>
        private static List<IReadOnlyList<Point2>> Quads(IReadOnlyList<Point2> path, double width, double[] dashes)
        {
            var quads = new List<IReadOnlyList<Point2>>();
            double left = dashes.Length == 0 ? double.PositiveInfinity : dashes[0];
            int dash = 0;
            for (int i = 0; i + 1 < path.Count; i++)
            {
                Point2 from = path[i], run = path[i + 1] - from;
                double length = Math.Sqrt(run.X * run.X + run.Y * run.Y), at = 0;
                while (at < length)
                {
                    double to = Math.Min(length, at + left);
                    if (dash % 2 == 0)
                        quads.Add(Quad(from + run * (at / length), from + run * (to / length), width));
                    left -= to - at;
                    at = to;
                    if (left <= 1e-9)
                        left = dashes[++dash % dashes.Length];
                }
            }
            return quads;
        }

        private static Point2[] Quad(Point2 a, Point2 b, double width)
        {
            Point2 run = b - a;
            double length = Math.Sqrt(run.X * run.X + run.Y * run.Y);
            Point2 side = length < 1e-12 ? new Point2(0, width / 2) : new Point2(-run.Y, run.X) * (width / 2 / length);
            return [a - side, b - side, b + side, a + side];
        }
    }
}

using System.Globalization;
using System.Text;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Picture;

/// <summary>Plan and elevation as SVG 1.1, in millimetres of paper.</summary>
public static class SvgPicture
{
    /// <summary>Writes the picture. The same set gives the same bytes.</summary>
    public static void Write(SheetSet set, Stream stream)
    {
        var sheets = new PictureSheets(set);
        var svg = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{N(sheets.Width)}mm\" height=\"{N(sheets.Height)}mm\" viewBox=\"0 0 {N(sheets.Width)} {N(sheets.Height)}\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title>{Escaped(set.Title)}</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
        var pen = new Pen(set, sheets.Height, svg);
        Box[] windows = [.. sheets.Content().Select(c => c.Window).OfType<Box>().Distinct()];
        for (int i = 0; i < windows.Length; i++)
            svg.Append(CultureInfo.InvariantCulture, $"<clipPath id=\"w{i}\"><rect x=\"{N(windows[i].Left)}\" y=\"{N(sheets.Height - windows[i].Top)}\" width=\"{N(windows[i].Width)}\" height=\"{N(windows[i].Height)}\"/></clipPath>\n");
        (LayerRole, Box?)? open = null;
        foreach ((LayerRole layer, Box? window, Primitive primitive) in sheets.Content())
        {
            if (open != (layer, window))
            {
                svg.Append(open is null ? "" : "</g>\n").Append(pen.Group(layer, window is Box w ? Array.IndexOf(windows, w) : -1));
                open = (layer, window);
            }
            pen.Draw(primitive);
        }
        svg.Append(open is null ? "</svg>\n" : "</g>\n</svg>\n");
        stream.Write(Encoding.UTF8.GetBytes(svg.ToString()));
    }

    private static string N(double value) => PlainNumber.Format(value, 0, 3);

    private static string Escaped(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal);

    private sealed class Pen(SheetSet set, double height, StringBuilder svg)
    {
        /// <summary>The start of a group with the looks of a layer.</summary>
        public string Group(LayerRole layer, int window)
        {
            LayerDefinition look = set.LayerOf(layer);
            int grey = (int)Math.Round(255 * (1 - look.Screen / 100.0));
            string colour = FormattableString.Invariant($"#{grey:x2}{grey:x2}{grey:x2}");
            LinetypeDefinition? type = set.Templates.Linetypes.FirstOrDefault(t => t.Name == look.Linetype);
            string dashes = type is null ? "" : $" stroke-dasharray=\"{string.Join(' ', type.Pattern.Select(p => N(Math.Max(0.05, Math.Abs(p)))))}\"";
            string clip = window < 0 ? "" : $" clip-path=\"url(#w{window})\"";
            return $"<g class=\"{Escaped(look.Name)}\" stroke=\"{colour}\" color=\"{colour}\" fill=\"none\" stroke-width=\"{N(look.Weight)}\" stroke-linecap=\"round\" stroke-linejoin=\"round\"{dashes}{clip}>\n";
        }

        public void Draw(Primitive primitive)
        {
            switch (primitive)
            {
                case Line l:
                    svg.Append(CultureInfo.InvariantCulture, $"<path d=\"{Path([l.From, l.To])}\"/>\n");
                    break;
                case Polyline p:
                    svg.Append(CultureInfo.InvariantCulture, $"<path d=\"{Path(Flatten.Path(p.Vertices, p.Closed))}{(p.Closed ? "Z" : "")}\"/>\n");
                    break;
                case Circle c:
                    svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{N(c.Center.X)}\" cy=\"{N(height - c.Center.Y)}\" r=\"{N(c.Radius)}\"/>\n");
                    break;
                case Arc a:
                    svg.Append(CultureInfo.InvariantCulture, $"<path d=\"{Path(Flatten.Arc(a))}\"/>\n");
                    break;
                case Fill { Spacing: > 0 } f:
                    svg.Append(CultureInfo.InvariantCulture, $"<path stroke-width=\"0.13\" stroke-dasharray=\"none\" d=\"{string.Concat(Flatten.Hatch(f).Select(h => Path([h.From, h.To])))}\"/>\n");
                    break;
                case Fill f:
                    svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"currentColor\" stroke=\"none\" d=\"{Path(Flatten.Path(f.Outline, true))}Z\"/>\n");
                    break;
                case Text t:
                    Write(t);
                    break;
                default:
                    throw new ArgumentException("a reference or dimension must be drawn as its parts", nameof(primitive));
            }
        }

        private string Path(IEnumerable<Point2> points)
        {
            var path = new StringBuilder();
            foreach (Point2 p in points)
                path.Append(path.Length == 0 ? 'M' : 'L').Append(N(p.X)).Append(' ').Append(N(height - p.Y));
            return path.ToString();
        }

        /// <summary>A text with the width that the sheets are laid out by, whatever face the viewer has.</summary>
        private void Write(Text text)
        {
            if (text.Value.Length == 0)
                return;
            TextStyle style = set.Templates.Texts[text.Role];
            double advance = TextMeasure.Advance(text.Value, text.Height, style);
            string anchor = text.Align switch
            {
                HorizontalAlign.Left => "start",
                HorizontalAlign.Center => "middle",
                _ => "end",
            };
            string at = $"x=\"{N(text.Position.X)}\" y=\"{N(height - text.Position.Y)}\"";
            string turn = text.Rotation == 0 ? "" : $" transform=\"rotate({N(-text.Rotation)} {N(text.Position.X)} {N(height - text.Position.Y)})\"";
            svg.Append(CultureInfo.InvariantCulture, $"<text {at}{turn} font-family=\"Liberation Sans, Arimo, Arial, Helvetica, sans-serif\" font-size=\"{N(text.Height / TextMeasure.CapHeight)}\"{(style.Bold ? " font-weight=\"bold\"" : "")} text-anchor=\"{anchor}\" textLength=\"{N(advance)}\" lengthAdjust=\"spacingAndGlyphs\" fill=\"currentColor\" stroke=\"none\" xml:space=\"preserve\">{Escaped(SheetFont.Shown(text.Value))}</text>\n");
        }
    }
}

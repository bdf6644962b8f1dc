using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Dxf;
using SheetGen.Model.Results;
using SheetGen.Tests.Drawing.Labels;
using SheetGen.Writers.Dxf;

namespace SheetGen.Tests.Drawing.Elevation;

/// <summary>
/// What the marks of a drawing are like, measured on the drawing read back and with nothing of the placer: every mark against every
/// head, text and line, on the paper of its sheet.
/// </summary>
/// <param name="Wrong">Everything that no drawing may have.</param>
/// <param name="Rows">Rows on a sheet, each sheet's part of a row for itself.</param>
/// <param name="Hopping">Rows of which marks without a leader stand on more than one side of their heads.</param>
public sealed record DrawnMarks(int Nails, int Full, int Leaders, IReadOnlyList<string> Wrong, int Rows, IReadOnlyList<string> Hopping)
{
    private const double Symbol = 1.1, Least = 25.4 * 3 / 32, FullSizeLeast = 25.4 / 8;

    /// <summary>Layers whose lines count, masks or not: what is drawn after the masks, and the outline of the wall.</summary>
    private static readonly LayerRole[] Counting = [LayerRole.Wall, LayerRole.Dimension, LayerRole.Leader, LayerRole.MatchLine];

    /// <summary>Least room between two marks on one line, in heights of a letter: nearer, they and a piece of line between them read as one mark.</summary>
    private const double Apart = 0.35;

    private sealed record Mark(string Nail, Point2 Head, Point2[] Box, string Text, double Height)
    {
        public string Row => Nail[..Nail.LastIndexOf('-')];

        /// <summary>Where it stands about its head.</summary>
        public string Side => Box.Max(c => c.Y) < Head.Y ? "below" : Box.Min(c => c.Y) > Head.Y ? "above" : Box.Max(c => c.X) < Head.X ? "left" : "right";
    }

    public static DrawnMarks Of(SheetSet set, NailLayout layout)
    {
        using var stream = new MemoryStream();
        DxfSheetWriter.Write(set, stream);
        stream.Position = 0;
        DxfDocument document = DxfReader.Read(stream).Document!;
        var wrong = new List<string>();
        var rows = new List<(string Row, bool Hops)>();
        DxfInsert[] nails = [.. document.Model.OfType<DxfInsert>().Where(i => i.Attributes.Any(a => a.Tag == "MARK"))];
        wrong.AddRange(layout.Nails.Select(n => n.Mark).Except(nails.Select(FullMark)).Select(m => m + " has no block"));
        int full = 0, leaders = 0;
        foreach (DxfInsert nail in nails)
        {
            DxfAttribute mark = nail.Attributes.Single(a => a.Tag == "MARK");
            string whole = FullMark(nail);
            if (mark.Invisible || mark.Text.Value.Length == 0)
                wrong.Add(whole + " shows no mark");
            if (mark.Text.Value != whole && !whole.EndsWith("-" + mark.Text.Value, StringComparison.Ordinal))
                wrong.Add($"{whole} shows {mark.Text.Value}");
            if (nail.Attributes.Any(a => a.Tag != "MARK" && !a.Invisible))
                wrong.Add(whole + " shows more than its mark");
            full += mark.Text.Value == whole ? 1 : 0;
        }
        foreach ((Sheet sheet, DxfLayout page) in set.Sheets.Zip(document.Layouts))
        {
            if (page.Viewports.Count != sheet.Viewports.Count)
                wrong.Add($"{sheet.Name} has {page.Viewports.Count} viewports");
            foreach (Viewport viewport in sheet.Viewports)
                leaders += View(set, layout, document, sheet, viewport, nails, wrong, rows);
        }
        return new(nails.Length, full, leaders, wrong, rows.Count, [.. rows.Where(r => r.Hops).Select(r => r.Row)]);
    }

    private static string FullMark(DxfInsert nail) => ((DxfXValue.Text)nail.XData.Single(d => d.AppId == "SHEETGEN").Values[0]).Value;

    private static int View(
        SheetSet set, NailLayout layout, DxfDocument document, Sheet sheet, Viewport viewport, DxfInsert[] nails, List<string> wrong, List<(string Row, bool Hops)> rows)
    {
        Point2 Paper(DxfPoint p) => viewport.ToPaper.Apply(new Point2(p.X, p.Y));
        double scale = 1 / viewport.UnitsPerMillimetre;
        Mark[] marks = [.. nails.Select(n => ToMark(n, set, Paper, scale))];
        // A head on a match line belongs to one of the two sheets.
        Mark[] shown = [.. marks.Where(m => viewport.Frame.Grown(-0.01).Contains(m.Head))];
        if (shown.Length == 0)
            return 0;
        var texts = document.Model.OfType<DxfText>().Select(t => (t.Value, Box: Corners(t, set, Paper, scale))).ToArray();
        var lines = document.Model.OfType<DxfLine>().Select(l => (A: Paper(l.Start), B: Paper(l.End), l.Layer))
            .Concat(document.Model.OfType<DxfLeader>().Select(l => (A: Paper(l.Points[0]), B: Paper(l.Points[^1]), l.Layer)))
            .Where(l => Counting.Any(r => set.LayerOf(r).Name == l.Layer)).ToArray();
        double least = sheet.Height > 500 ? FullSizeLeast : Least;
        var near = new List<Mark>();
        foreach (Mark mark in shown.Where(m => m.Box.All(viewport.Frame.Grown(0.01).Contains)))
        {
            string Where() => $"{sheet.Name}: {mark.Text} of {mark.Nail}";
            if (mark.Height < least - 0.01)
                wrong.Add(FormattableString.Invariant($"{Where()} is {mark.Height:0.##} mm high"));
            bool hasLeader = lines.Any(l => l.Layer == set.LayerOf(LayerRole.Leader).Name
                && Distance(l.A, l.B, mark.Head) < 2.3 && (Near(mark.Box, l.A) < 0.8 || Near(mark.Box, l.B) < 0.8));
            if (!hasLeader)
                near.Add(mark);
            Point2 middle = (mark.Box[0] + mark.Box[2]) * 0.5;
            foreach (Mark other in marks.Where(o => o != mark && (o.Head - middle).Length < 40))
            {
                if (!hasLeader && ((other.Head - middle).Length <= (mark.Head - middle).Length || Near(mark.Box, other.Head) <= Near(mark.Box, mark.Head)))
                    wrong.Add($"{Where()} is nearer to {other.Nail}");
                if (Near(mark.Box, other.Head) < Symbol - 0.02)
                    wrong.Add($"{Where()} lies on the head of {other.Nail}");
                if (Overlap(mark.Box, other.Box))
                    wrong.Add($"{Where()} lies on {other.Text} of {other.Nail}");
                else if (Overlap([.. mark.Box.Select((c, i) => c + new Point2(i is 0 or 3 ? -Apart * mark.Height : Apart * mark.Height, 0))], other.Box))
                    wrong.Add($"{Where()} reads as one with {other.Text} of {other.Nail}");
            }
            wrong.AddRange(texts.Where(t => Overlap(mark.Box, t.Box)).Select(t => $"{Where()} lies on \"{t.Value}\""));
            Box inside = Box.Around(mark.Box).Grown(-0.05);
            wrong.AddRange(lines.Where(l => inside.Crosses(l.A, l.B)).Select(l => $"{Where()} is crossed by a line on {l.Layer}"));
        }
        wrong.AddRange(shown.Where(m => !m.Box.All(viewport.Frame.Grown(0.01).Contains)).Select(m => $"{sheet.Name}: {m.Nail} shows a mark that leaves the frame"));
        HashSet<string> tests = [.. layout.Nails.Where(n => n.Kind == NailKind.Verification).Select(n => n.Mark)];
        foreach (var row in near.Where(m => !tests.Contains(m.Nail)).GroupBy(m => m.Row))
        {
            string[] sides = [.. row.GroupBy(m => m.Side).Select(g => $"{g.Count()} {g.Key}")];
            rows.Add(($"{sheet.Name}: {row.Key}, {string.Join(", ", sides)}", sides.Length > 1));
        }
        return shown.Length - near.Count;
    }

    private static Mark ToMark(DxfInsert nail, SheetSet set, Func<DxfPoint, Point2> paper, double scale)
    {
        DxfText text = nail.Attributes.Single(a => a.Tag == "MARK").Text;
        return new(FullMark(nail), paper(nail.Position), Corners(text, set, paper, scale), text.Value, text.Height * scale);
    }

    /// <summary>Corners of the letters' box by the advance widths in the font's own file, on paper.</summary>
    private static Point2[] Corners(DxfText text, SheetSet set, Func<DxfPoint, Point2> paper, double scale)
    {
        var style = set.Templates.Texts.Values.First(s => s.Name == text.Style);
        double height = text.Height * scale, width = (style.Bold ? FontWidths.Bold : FontWidths.Plain).Of(text.Value, height) * style.WidthFactor;
        double left = text.Align switch { DxfTextAlign.Left => 0, DxfTextAlign.Center => -width / 2, _ => -width };
        double low = text.VerticalAlign == DxfTextVerticalAlign.Middle ? -height / 2 : 0;
        Point2 at = paper(text.Position);
        double turn = text.Rotation * Math.PI / 180;
        return [.. new Point2[] { new(left, low), new(left + width, low), new(left + width, low + height), new(left, low + height) }.Select(c => at + c.Turned(turn))];
    }

    private static double Near(Point2[] box, Point2 p) =>
        Enumerable.Range(0, 4).Select(i => Distance(box[i], box[(i + 1) % 4], p)).Min();

    private static double Distance(Point2 a, Point2 b, Point2 p)
    {
        Point2 way = b - a;
        double square = way.X * way.X + way.Y * way.Y;
        double t = square == 0 ? 0 : Math.Clamp(((p.X - a.X) * way.X + (p.Y - a.Y) * way.Y) / square, 0, 1);
        return (a + way * t - p).Length;
    }

    /// <summary>Two convex outlines overlap unless some edge of one parts them.</summary>
    private static bool Overlap(Point2[] a, Point2[] b) => !Parted(a, b) && !Parted(b, a);

    private static bool Parted(Point2[] edges, Point2[] other)
    {
        for (int i = 0; i < edges.Length; i++)
        {
            Point2 way = edges[(i + 1) % edges.Length] - edges[i];
            double Along(Point2 p) => p.X * -way.Y + p.Y * way.X;
            double tiny = 0.02 * way.Length;
            if (other.Max(Along) <= edges.Min(Along) + tiny || other.Min(Along) >= edges.Max(Along) - tiny)
                return true;
        }
        return false;
    }
}

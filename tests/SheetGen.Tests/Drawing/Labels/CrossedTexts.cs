using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;

namespace SheetGen.Tests.Drawing.Labels;

/// <summary>
/// A slow check that knows nothing of the placer: turned rectangles against each other by separating axes, every pair.
/// </summary>
public static class CrossedTexts
{
    /// <summary>Everything wrong with a sheet: texts on texts, on nails, across leaders, or outside their frame.</summary>
    public static IEnumerable<string> On(SheetSet set, Sheet sheet)
    {
        var seen = SheetPicture.Of(set, sheet).ToList();
        var texts = seen.Where(p => p.Primitive is Text).Select(p => (Text: (Text)p.Primitive, Corners: Corners((Text)p.Primitive, set), p.Window))
            .Where(t => t.Window is not Box w || Inside(t.Corners, w.Grown(10))).ToList();
        var page = new Box(0, 0, sheet.Width, sheet.Height);
        Box drawing = DrawingArea(set, sheet) ?? page;
        foreach (var t in texts)
        {
            Box frame = t.Window ?? page;
            if (t.Window is null && !t.Text.Layer.Equals(LayerRole.TitleBlock) && !Inside(t.Corners, drawing))
                yield return $"{sheet.Name}: \"{t.Text.Value}\" leaves the drawing area";
            // A text that belongs to the neighbour sheet lies wholly outside the window.
            if (!Inside(t.Corners, frame) && !Outside(t.Corners, frame))
                yield return $"{sheet.Name}: \"{t.Text.Value}\" leaves its frame";
        }
        var shown = texts.Where(t => Inside(t.Corners, t.Window ?? page)).ToList();
        for (int i = 0; i < shown.Count; i++)
        {
            for (int j = i + 1; j < shown.Count; j++)
            {
                if (Overlap(shown[i].Corners, shown[j].Corners))
                    yield return $"{sheet.Name}: \"{shown[i].Text.Value}\" lies on \"{shown[j].Text.Value}\"";
            }
        }
        foreach (Point2[] nail in Nails(set, sheet))
        {
            foreach (var t in shown.Where(t => t.Window is not null && Overlap(t.Corners, nail)))
                yield return $"{sheet.Name}: \"{t.Text.Value}\" lies on a nail";
        }
        foreach ((Primitive primitive, Box? window) in seen)
        {
            if (primitive is not Line { Layer: LayerRole.Leader } leader || (window is Box w && !(w.Contains(leader.From) && w.Contains(leader.To))))
                continue;
            foreach (var t in shown.Where(t => Overlap(t.Corners, [leader.From, leader.To])))
                yield return $"{sheet.Name}: the leader of {leader.Nail} {leader.Obstruction} {leader.From} {leader.To} crosses \"{t.Text.Value}\" at {t.Text.Position}";
        }
    }

    /// <summary>What the program's own border leaves beside its title block; null with a title block of the user's.</summary>
    private static Box? DrawingArea(SheetSet set, Sheet sheet)
    {
        BlockReference frame = sheet.Paper.OfType<BlockReference>().First();
        Primitive[] border = [.. set.Blocks.First(b => b.Name == frame.Block).Primitives.Where(p => p.Layer == LayerRole.Border)];
        if (border.OfType<Polyline>().FirstOrDefault() is not { } outline || border.OfType<Line>().FirstOrDefault() is not { } edge)
            return null;
        Box whole = Box.Around(outline.Vertices.Select(v => v.Point));
        return whole with { Right = edge.From.X };
    }

    /// <summary>Corners of the capital letters of a text, a little inside, as the pen fills them.</summary>
    private static Point2[] Corners(Text text, SheetSet set)
    {
        double width = TextMeasure.Advance(text.Value, text.Height, set.Templates.Texts[text.Role]);
        double left = text.Align switch { HorizontalAlign.Left => 0, HorizontalAlign.Center => -width / 2, _ => -width };
        double turn = text.Rotation * Math.PI / 180;
        Point2[] corners = [new(left, 0), new(left + width, 0), new(left + width, text.Height), new(left, text.Height)];
        return [.. corners.Select(c => text.Position + c.Turned(turn))];
    }

    private static IEnumerable<Point2[]> Nails(SheetSet set, Sheet sheet)
    {
        foreach (Viewport viewport in sheet.Viewports)
        {
            foreach (BlockReference nail in set.Model.OfType<BlockReference>())
            {
                Point2 at = viewport.ToPaper.Apply(nail.Position);
                if (viewport.Frame.Contains(at))
                    yield return [.. Enumerable.Range(0, 8).Select(i => at + new Point2(NailSymbols.Radius, 0).Turned(i * Math.PI / 4))];
            }
        }
    }

    private static bool Inside(Point2[] corners, Box box) => corners.All(box.Grown(0.01).Contains);

    private static bool Outside(Point2[] corners, Box box) => !Overlap(corners,
        [new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top)]);

    /// <summary>Two convex outlines overlap unless some edge of one parts them.</summary>
    private static bool Overlap(Point2[] a, Point2[] b) => !Parted(a, b) && !Parted(b, a);

    private static bool Parted(Point2[] edges, Point2[] other)
    {
        for (int i = 0; i < edges.Length; i++)
        {
            Point2 way = edges[(i + 1) % edges.Length] - edges[i];
            double Along(Point2 p) => p.X * -way.Y + p.Y * way.X;
            double low = edges.Min(Along), high = edges.Max(Along), from = other.Min(Along), to = other.Max(Along);
            double tiny = 0.02 * way.Length;
            if (to <= low + tiny || from >= high - tiny)
                return true;
        }
        return false;
    }
}

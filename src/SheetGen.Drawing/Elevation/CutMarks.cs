using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;

namespace SheetGen.Drawing.Elevation;

/// <summary>The marks of cross sections below an elevation.</summary>
public static class CutMarks
{
    /// <summary>
    /// Marks where cross sections are cut, with the sheets that show them: the end of the cut, an arrow in the direction of view and a bubble. The
    /// soil lies to the right in a section: it is seen toward the left of a person in front of the wall.
    /// </summary>
    /// <returns>What lies on paper, since it may reach over a match line.</returns>
    public static IReadOnlyList<Primitive> Draw(ElevationView view, IReadOnlyList<(SectionCut Cut, string Sheet)> cuts)
    {
        double y = view.Viewport.Frame.Bottom + 11;
        (SectionCut Cut, string Sheet, double X)[] shown = [.. cuts.Where(c => c.Cut.Wall == view.Wall && view.Window.Has(c.Cut.Along)).Select(c => (c.Cut, c.Sheet, view.At(c.Cut.Along, 0).X))];
        Primitive[][] arrows = [.. shown.Select(s => Bubble.Arrow(new(s.X, y), view.Context.Project.Sheets.FromBehind).ToArray())];
        foreach (Primitive[] arrow in arrows)
            view.Labels.Placer.Crowd.Add(Box.Around(arrow.SelectMany(Extents.Points)));
        return [.. arrows.SelectMany(a => a), .. shown.SelectMany(s => CutBubble(view, new(s.X, y + 2.5), s.Cut.Number.ToString(CultureInfo.InvariantCulture), s.Sheet))];
    }

    /// <summary>The section's number over its sheet in a bubble beside the mark of the cut; as words where no bubble has room.</summary>
    private static IEnumerable<Primitive> CutBubble(ElevationView view, Point2 mark, string number, string sheet)
    {
        double radius = Bubble.Radius * view.Context.StyleOf(TextRole.Label).Height;
        // The tail of the arrow is the free side.
        int tail = view.Context.Project.Sheets.FromBehind ? -1 : 1;
        Point2[] beside = [mark + new Point2(tail * (radius + 1), radius - 2), mark + new Point2(-tail * (radius + 5), radius - 2), mark + new Point2(0, radius + 3.5)];
        // Farther off where cuts stand close together: then a line leads to the bubble.
        IEnumerable<Point2> off = Enumerable.Range(1, 14).SelectMany(i => new[] { 1, -1 }.SelectMany(side => new[] { 0.0, 4, 8 }.Select(up => mark + new Point2(side * (radius + 2 + 3 * i), radius - 2 + up))));
        foreach ((Point2 middle, bool isOff) in beside.Select(p => (p, false)).Concat(off.Select(p => (p, true))))
        {
            Box box = Box.At(middle, 2 * radius, 2 * radius);
            if (!view.Labels.Placer.Frame.Contains(box) || !view.Labels.Placer.Crowd.IsFree(box))
                continue;
            Point2 way = mark - middle, edge = middle + way * (radius / way.Length);
            if (isOff && !view.Labels.Placer.Crowd.IsLeaderFree(edge, mark - way * (1.4 / way.Length), edge))
                continue;
            view.Labels.Placer.Crowd.Add(box);
            return [.. isOff ? [new Line(LayerRole.Title, edge, mark)] : Array.Empty<Primitive>(), .. Bubble.Draw(view.Context, middle, radius, number, sheet)];
        }
        view.Labels.Label(new LabelRequest([[number, sheet]], TextRole.Label, mark, 1.4) { Toward = 0, Reach = 20 });
        return [];
    }
}

using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Drawing.Set;

/// <summary>A small plan of all walls, north up, with the stretch that each elevation sheet shows. Not to scale.</summary>
public static class KeyPlan
{
    /// <summary>Room for the title, mm.</summary>
    private const double Band = 16;

    public static SheetContent Draw(DrawingContext context, Box room, string sheet, IReadOnlyList<(SheetWindow Window, string Sheet)> windows)
    {
        var cell = new Box(room.Left, room.Bottom + Band, room.Right, room.Top);
        var labels = new ViewLabels(context, new Viewport(cell, cell.Center, 1), cell, sheet, null);
        Func<Vector2D, Point2> at = Fit(windows.Select(w => w.Window.Wall).Distinct(), cell.Grown(-0.08 * Math.Min(cell.Width, cell.Height) - 14));
        foreach (IGrouping<LayoutLine, Wall> line in windows.Select(w => w.Window.Wall).Distinct().GroupBy(w => w.LayoutLine))
            Path(labels, LayerRole.LayoutLine, Points(line.Key, 0, line.Key.Length).Select(at));
        foreach ((SheetWindow window, string name) in windows)
        {
            Path(labels, LayerRole.Wall, Points(window.Wall.LayoutLine, window.Start, window.End).Select(at));
            foreach (double end in new[] { window.Start, window.End })
            {
                Point2 on = at(window.Wall.LayoutLine.PointAt(end)), side = Across(window, end, at);
                labels.Add(new Line(LayerRole.Title, on - side * 3, on + side * 3));
                labels.Placer.Crowd.Add(on - side * 3, on + side * 3, LineKind.NoText);
            }
        }
        Plan.NorthArrow.Draw(labels, new(cell.Right - 14, cell.Top - 18), 0, context);
        foreach ((SheetWindow window, string name) in windows)
        {
            double middle = (window.Start + window.End) / 2;
            Point2 on = at(window.Wall.LayoutLine.PointAt(middle)), side = Across(window, middle, at);
            // The wall's name once, with the sheet at its middle; else every stretch would carry it.
            bool isMiddle = window.Start <= (window.Wall.Start + window.Wall.End) / 2 && (window.Wall.Start + window.Wall.End) / 2 < window.End;
            labels.Label(new LabelRequest(isMiddle ? [[window.Wall.Name.ToUpperInvariant(), name]] : [[name]], TextRole.Label, on, 2) { Toward = Math.Atan2(-side.Y, -side.X), LeaderFrom = 1 });
        }
        double label = context.StyleOf(TextRole.Label).Height;
        var title = new Point2(room.Left + 2, room.Bottom + Band - 6);
        return new SheetContent
        {
            Paper =
            [
                .. labels.Paper,
                context.Write(LayerRole.Title, TextRole.Heading, title, context.Say(Phrase.KeyPlan)),
                new Line(LayerRole.Title, title - new Point2(0, 1.2), title + new Point2(60, -1.2)),
                context.Write(LayerRole.Title, TextRole.Label, title - new Point2(0, 2.4 + label), context.Say(Phrase.NotToScale)),
            ],
            Findings = labels.Findings,
        };
    }

    /// <summary>Unit vector into the soil on the paper.</summary>
    private static Point2 Across(SheetWindow window, double along, Func<Vector2D, Point2> at)
    {
        Wall wall = window.Wall;
        double inside = Math.Min(along, wall.End - 1e-6);
        Vector2D on = wall.LayoutLine.PointAt(inside);
        Point2 way = at(on + new Face(wall).NormalAt(inside)) - at(on);
        return way * (1 / Math.Max(way.Length, 1e-12));
    }

    private static void Path(ViewLabels labels, LayerRole layer, IEnumerable<Point2> points)
    {
        Point2[] path = [.. points];
        labels.Add(Polyline.Of(layer, path));
        for (int i = 0; i + 1 < path.Length; i++)
            labels.Placer.Crowd.Add(path[i], path[i + 1], LineKind.NoText);
    }

    private static IEnumerable<Vector2D> Points(LayoutLine line, double from, double to)
    {
        foreach (LayoutPiece piece in line.Pieces)
        {
            double a = Math.Max(from, piece.Start), b = Math.Min(to, piece.End);
            if (b <= a)
                continue;
            int steps = piece.IsCurved ? 24 : 1;
            for (int i = 0; i <= steps; i++)
                yield return piece.PointAt(a + (b - a) * i / steps);
        }
    }

    private static Func<Vector2D, Point2> Fit(IEnumerable<Wall> walls, Box inner)
    {
        Box plan = Box.Around(walls.SelectMany(w => Points(w.LayoutLine, Math.Max(0, w.Start), Math.Min(w.LayoutLine.Length, w.End)).Concat(Points(w.LayoutLine, 0, w.LayoutLine.Length)))
            .Select(p => new Point2(p.E, p.N)));
        double scale = Math.Min(inner.Width / Math.Max(plan.Width, 1e-6), inner.Height / Math.Max(plan.Height, 1e-6));
        return p => inner.Center + (new Point2(p.E, p.N) - plan.Center) * scale;
    }
}

using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Set;

/// <summary>A small plan of all walls, north up, with the stretch that each elevation sheet shows. Not to scale.</summary>
public static class KeyPlan
{
    /// <summary>Room for the title, mm.</summary>
    private const double Band = 16;

    /// <summary>Of how many sheets one is named, where not all have room: what lies between follows in order.</summary>
    private static readonly int[] Steps = [1, 2, 5, 10, 20, 50];

    public static SheetContent Draw(DrawingContext context, Box room, string sheet, IReadOnlyList<(SheetWindow Window, string Sheet)> windows)
    {
        var cell = new Box(room.Left, room.Bottom + Band, room.Right, room.Top);
        Func<Vector2D, Point2> at = Fit(windows.Select(w => w.Window.Wall).Distinct(), cell.Grown(-0.08 * Math.Min(cell.Width, cell.Height) - 14));
        (int step, IReadOnlyList<Primitive> drawn, IReadOnlyList<string> lost) = Fewest();
        double label = context.StyleOf(TextRole.Label).Height;
        var title = new Point2(room.Left + 2, room.Bottom + Band - 6);
        string scale = context.Say(Phrase.NotToScale);
        return new SheetContent
        {
            Paper =
            [
                .. drawn,
                context.Write(LayerRole.Title, TextRole.Heading, title, context.Say(Phrase.KeyPlan)),
                new Line(LayerRole.Title, title - new Point2(0, 1.2), title + new Point2(60, -1.2)),
                context.Write(LayerRole.Title, TextRole.Label, title - new Point2(0, 2.4 + label), step == 1 ? scale : scale + ". " + context.Say(Phrase.EverySheetNamed, Printed.Number(step, 0))),
            ],
            Findings = lost.Count == 0 ? [] :
            [
                new Finding { Code = FindingCode.Sheet, Severity = Severity.Warning, Message = $"the key plan on sheet {sheet} has no room for {string.Join(", ", lost)}: choose a larger sheet" },
            ],
        };

        // The first step at which all have room, else that with the fewest lost.
        (int, IReadOnlyList<Primitive>, IReadOnlyList<string>) Fewest()
        {
            (int Step, IReadOnlyList<Primitive> Drawn, IReadOnlyList<string> Lost) best = Try(Steps[0]);
            for (int i = 1; i < Steps.Length && best.Lost.Count > 0; i++)
            {
                if (Try(Steps[i]) is var next && next.Lost.Count < best.Lost.Count)
                    best = next;
            }
            return best;
        }

        (int Step, IReadOnlyList<Primitive> Drawn, IReadOnlyList<string> Lost) Try(int step)
        {
            var labels = new ViewLabels(context, new Viewport(cell, cell.Center, 1), cell, sheet, null);
            Lines(labels, windows, at);
            Plan.NorthArrow.Draw(labels, new(cell.Right - 14, cell.Top - 18), 0, context);
            return (step, labels.Paper, Names(labels, windows, at, step));
        }
    }

    private static void Lines(ViewLabels labels, IReadOnlyList<(SheetWindow Window, string Sheet)> windows, Func<Vector2D, Point2> at)
    {
        foreach (IGrouping<LayoutLine, Wall> line in windows.Select(w => w.Window.Wall).Distinct().GroupBy(w => w.LayoutLine))
            Path(labels, LayerRole.LayoutLine, Points(line.Key, 0, line.Key.Length).Select(at));
        foreach ((SheetWindow window, _) in windows)
        {
            Path(labels, LayerRole.Wall, Points(window.Wall.LayoutLine, window.Start, window.End).Select(at));
            foreach (double end in new[] { window.Start, window.End })
            {
                Point2 on = at(window.Wall.LayoutLine.PointAt(end)), side = Across(window, end, at);
                labels.Add(new Line(LayerRole.Title, on - side * 3, on + side * 3));
                labels.Placer.Crowd.Add(on - side * 3, on + side * 3, LineKind.NoText);
            }
        }
    }

    /// <returns>The names that have no room.</returns>
    private static List<string> Names(ViewLabels labels, IReadOnlyList<(SheetWindow Window, string Sheet)> windows, Func<Vector2D, Point2> at, int step)
    {
        var lost = new List<string>();
        foreach (var wall in windows.GroupBy(w => w.Window.Wall))
        {
            foreach ((int i, (SheetWindow window, string name)) in wall.Index())
            {
                double middle = (window.Start + window.End) / 2, half = (wall.Key.Start + wall.Key.End) / 2;
                // The wall's name once, with the sheet at its middle; else every stretch would carry it.
                bool isMiddle = window.Start <= half && half < window.End;
                if (i % step != 0 && !isMiddle)
                    continue;
                Point2 on = at(wall.Key.LayoutLine.PointAt(middle)), side = Across(window, middle, at);
                string[] words = isMiddle ? [wall.Key.Name.ToUpperInvariant(), name] : [name];
                if (!labels.LabelIfRoom(new LabelRequest([words], TextRole.Label, on, 2) { Toward = Math.Atan2(-side.Y, -side.X), LeaderFrom = 1, Reach = 30 }))
                    lost.Add(string.Join(", ", words));
            }
        }
        return lost;
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

using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;

namespace SheetGen.Tests.Drawing.Labels;

/// <summary>
/// A slow check that knows nothing of the placer: every leader of the views that are no elevations, against every line of its view.
/// </summary>
/// <param name="Leaders">How many there are.</param>
/// <param name="Nails">Those that run through a nail or hole which is not their own.</param>
/// <param name="Shotcrete">Those that run through the shotcrete, in at one side and out at another; not of words about structures, which may stand in it.</param>
/// <param name="Others">Those that cross another leader.</param>
/// <param name="Dimensions">Those whose point lies on a line of a dimension and on no other.</param>
/// <param name="Nothing">Those whose point lies on nothing that is drawn.</param>
public sealed record CrossedLeaders(int Leaders, IReadOnlyList<string> Nails, IReadOnlyList<string> Shotcrete, IReadOnlyList<string> Others, IReadOnlyList<string> Dimensions, IReadOnlyList<string> Nothing)
{
    /// <summary>Distance within which a line counts as what a leader points at, mm.</summary>
    private const double Own = 0.8;

    public static CrossedLeaders In(SheetSet set)
    {
        int count = 0;
        List<string> nails = [], shotcrete = [], others = [], dimensions = [], nothing = [];
        Dictionary<string, DimensionStyle> styles = set.DimensionStyles.ToDictionary(s => s.Name);
        foreach ((Sheet sheet, Viewport viewport) in set.Sheets.Where(s => !s.IsView).SelectMany(s => s.Viewports.Select(v => (s, v))))
        {
            PlaneTransform toPaper = viewport.ToPaper;
            Primitive[] seen = [.. set.Model.Where(p => Extents.Points(p).Any(q => viewport.Frame.Contains(toPaper.Apply(q)))).Select(p => p is Dimension ? p : toPaper.Apply(p))];
            Leader[] leaders = [.. seen.OfType<Leader>()];
            (Point2 From, Point2 To)[] measured = [.. seen.OfType<Dimension>().SelectMany(d => DimensionPicture.Draw(d, styles[d.Style])).Select(toPaper.Apply).OfType<Line>().Select(l => (l.From, l.To))];
            Primitive[] drawn = [.. seen.Where(p => p is Line or Polyline or Circle or Arc or Fill && p.Layer is not (LayerRole.Dimension or LayerRole.Title))];
            (Point2 From, Point2 To)[] lines = [.. drawn.SelectMany(Extents.Segments)];
            foreach (Leader leader in leaders)
            {
                count++;
                string name = $"{sheet.Name}, {Words(seen, leader)}";
                if (drawn.OfType<Line>().Any(l => l.Nail is not null && l.Nail != leader.Nail && Off(leader.From, (l.From, l.To)) > Own + 1.5 && Cross(leader, (l.From, l.To))))
                    nails.Add(name);
                if (leader.Obstruction is null && drawn.OfType<Fill>().Any(f => f.Spacing > 0 && !IsWithin(leader.From, f) && Extents.Segments(f).Count(s => Off(leader.From, s) > Own && Cross(leader, s)) > 1))
                    shotcrete.Add(name);
                if (leaders.Any(l => l != leader && Cross(leader, (l.From, l.To))))
                    others.Add(name);
                // The words of a dimension that stand aside lead to its line.
                if (seen.OfType<Dimension>().Select(d => (toPaper.Apply(d.TextPoint) - leader.To).Length).DefaultIfEmpty(double.MaxValue).Min() < seen.OfType<Text>().Min(t => (Middle(set, t) - leader.To).Length))
                    continue;
                bool onLine = lines.Any(l => Off(leader.From, l) <= Own) || drawn.Any(p => p is Fill or Polyline && IsWithin(leader.From, p)) || drawn.OfType<Circle>().Any(c => (leader.From - c.Center).Length <= c.Radius + Own);
                if (!onLine)
                    (measured.Any(l => Off(leader.From, l) <= Own) ? dimensions : nothing).Add(name);
            }
        }
        return new(count, nails, shotcrete, others, dimensions, nothing);
    }

    /// <summary>The text, or the bubble's, at which a leader ends.</summary>
    private static string Words(Primitive[] seen, Leader leader) =>
        string.Join(" / ", seen.OfType<Text>().OrderBy(t => (t.Position - leader.To).Length).Take(2).Select(t => t.Value)) + FormattableString.Invariant($" ({leader.From.X:0},{leader.From.Y:0} {leader.To.X:0},{leader.To.Y:0})");

    private static Point2 Middle(SheetSet set, Text text) => TextMeasure.BoxOf(text, set.Templates.Texts[text.Role]).Center;

    private static bool Cross(Leader leader, (Point2 From, Point2 To) line) =>
        Side(leader.From, leader.To, line.From) * Side(leader.From, leader.To, line.To) < 0 && Side(line.From, line.To, leader.From) * Side(line.From, line.To, leader.To) < 0;

    private static double Side(Point2 a, Point2 b, Point2 p) => (b.X - a.X) * (p.Y - a.Y) - (b.Y - a.Y) * (p.X - a.X);

    private static double Off(Point2 point, (Point2 From, Point2 To) line)
    {
        Point2 way = line.To - line.From, off = point - line.From;
        double square = way.X * way.X + way.Y * way.Y, share = square < 1e-12 ? 0 : Math.Clamp((off.X * way.X + off.Y * way.Y) / square, 0, 1);
        return (off - way * share).Length;
    }

    private static bool IsWithin(Point2 point, Primitive outline)
    {
        bool isIn = false;
        foreach ((Point2 a, Point2 b) in Extents.Segments(outline))
            isIn ^= a.Y > point.Y != b.Y > point.Y && point.X < a.X + (b.X - a.X) * (point.Y - a.Y) / (b.Y - a.Y);
        return isIn;
    }
}

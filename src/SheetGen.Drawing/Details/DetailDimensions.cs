using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Details;

/// <summary>Finds places for the dimensions of a detail, mm of paper; each measures what is drawn.</summary>
public sealed class DetailDimensions(DrawingContext context, ViewLabels labels, DetailScale scale)
{
    /// <summary>Room between a dimension line and its words, and between two lines that run alike, mm.</summary>
    private const double Lift = 0.5, Apart = 1.2;

    /// <summary>Room beyond the ends of a dimension's lines, mm.</summary>
    private const double Slack = 0.3;

    private static readonly double[] Distances = [4, 6.5, 9, 12, 15, 18, 22, 27, 33];

    private readonly DimensionStyle _small = scale.Small(context), _long = scale.Long(context);

    private Crowd Crowd => labels.Placer.Crowd;

    private TextStyle Text => context.StyleOf(TextRole.Dimension);

    /// <summary>A dimension along the straight line between two points; in words with a leader where it has no room.</summary>
    /// <param name="side">1 for the left of the way from the first point to the second, -1 for the right.</param>
    /// <param name="isSmall">True for inches or millimetres.</param>
    /// <param name="beyond">Least distance of its line from the points, mm.</param>
    public void Put(Point2 from, Point2 to, int side, bool isSmall, string? words, double beyond)
    {
        Point2 way = to - from;
        if (way.Length < 1e-6)
            return;
        way *= 1 / way.Length;
        DimensionStyle style = isSmall ? _small : _long;
        string written = DimensionPicture.Measured(Of(style, from, to, from, from, words), style, labels.Viewport.UnitsPerMillimetre);
        foreach (int at in new[] { side, -side })
        {
            Point2 normal = new Point2(-way.Y, way.X) * at;
            foreach (double distance in Distances)
            {
                if (Try(from, to, way, normal * (distance + beyond), style, words, written))
                    return;
            }
        }
        labels.Label(new LabelRequest([[written]], TextRole.Label, (from + to) * 0.5, 0.3) { LeaderFrom = 0.1 });
    }

    private bool Try(Point2 from, Point2 to, Point2 way, Point2 off, DimensionStyle style, string? words, string written)
    {
        Point2 a = from + off, b = to + off, middle = (a + b) * 0.5;
        Point2 beyond = off * ((DimensionStyle.ExtensionBeyond + Slack) / off.Length), tick = way * (DimensionStyle.TickSize / 2 + Slack);
        (Point2 From, Point2 To)[] lines = [(a - tick, b + tick), (from, a + beyond), (to, b + beyond)];
        if (!Crowd.IsLeaderFree(lines[0].From, lines[0].To, a) || Crowd.RunsAlong(a, b, Apart) || !IsEndFree(from, lines[1].To) || !IsEndFree(to, lines[2].To))
            return false;
        double degrees = DimensionPicture.Reading(from, to), height = Text.Height, width = TextMeasure.Measure(written, height, Text), drawn = (to - from).Length;
        Point2 up = new Point2(0, 1).Turned(degrees * Math.PI / 180), lifted = up * (Lift + height * 0.7);
        IEnumerable<Point2> places = width + 1 < drawn
            ? new[] { 0, 0.5, -0.5 }.SelectMany(k => new[] { middle + lifted + way * (k * (drawn - width)), middle - lifted + way * (k * (drawn - width)) })
            : new[] { 1.2, 3, 5 }.SelectMany(d => new[] { b + way * (d + width / 2), a - way * (d + width / 2) });
        foreach (Point2 at in places)
        {
            Box box = DimensionPicture.TextBox(at, degrees, written, Text).Grown(0.2);
            if (!labels.Placer.Frame.Contains(box) || !Crowd.IsFree(box) || lines.Skip(1).Any(l => box.Crosses(l.From, l.To)))
                continue;
            Crowd.Add(box);
            foreach ((Point2 p, Point2 q) in lines)
                Crowd.Add(p, q, LineKind.Dimension);
            labels.Add(Of(style, from, to, b, at, words) with { Angle = degrees });
            return true;
        }
        return false;
    }

    private static Dimension Of(DimensionStyle style, Point2 from, Point2 to, Point2 line, Point2 text, string? words)
    {
        Point2 way = to - from;
        return new(LayerRole.Dimension, style.Name, from, to, line, text, Math.Atan2(way.Y, way.X) * 180 / Math.PI) { Words = words };
    }

    private bool IsEndFree(Point2 measured, Point2 line) => Crowd.IsLeaderFree(measured + (line - measured) * (0.4 / (line - measured).Length), line, measured);
}

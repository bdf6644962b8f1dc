using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Labels;

/// <summary>
/// Finds free places for dimensions in an elevation or a section, mm of paper: no word on a text, a nail or a line, and no line of a dimension through a
/// text or a nail.
/// </summary>
public sealed class DimensionPlacer(DrawingContext context, ViewLabels labels, string style)
{
    /// <summary>Stands in a dimension's words for the measured length.</summary>
    public const string Measured = "<>";

    /// <summary>True where its style ends dimensions in arrowheads.</summary>
    public bool HasArrows { get; init; }

    /// <summary>Room between a dimension line and its words, mm.</summary>
    private const double Lift = 0.5;

    /// <summary>A dimension between two points that is longer must not run through words, mm.</summary>
    private const double LongLine = 8;

    /// <summary>Distance that a dimension line keeps from lines that run along it, mm.</summary>
    private const double Apart = 1.2;

    private Crowd Crowd => labels.Placer.Crowd;

    private TextStyle Text => context.StyleOf(TextRole.Dimension);

    /// <summary>Height of the words of a dimension, mm.</summary>
    public double Height => Text.Height;

    /// <summary>A length as the dimension style writes it.</summary>
    public string Written(double length) => Printed.Fixed(length, Lengths.Decimals(context.Print.Unit)) + NailLabels.DimensionSuffix(context.Print.Unit);

    /// <summary>Width of words once the measured length stands in them, mm.</summary>
    public double WidthOf(string words, double length) =>
        TextMeasure.Measure(words.Replace(Measured, Written(length), StringComparison.Ordinal), Text.Height, Text);

    /// <summary>A dimension along the row of two points; false, and nothing drawn, where it has no room.</summary>
    /// <param name="length">What is measured, project units.</param>
    /// <param name="words">Words about the measured length, null for the length alone.</param>
    /// <param name="nail">Mark of the nail that it belongs to; null for none.</param>
    /// <param name="clear">Distance from the row that its line keeps at least, mm.</param>
    public bool TryAlong(Point2 p, Point2 q, double length, string? words, string? nail, double clear = 2.4)
    {
        if (p.X > q.X)
            (p, q) = (q, p);
        double width = WidthOf(words ?? Measured, length);
        foreach ((double y, Point2 at) in Places(p, q, width, clear))
        {
            Box box = Box.At(at + new Point2(0, Height / 2), width, Height * 1.35);
            if (!labels.Placer.Frame.Contains(box) || !Crowd.IsFree(box) || !AreLinesFree(p, q, y) || (y != p.Y && Crowd.RunsAlong(new(p.X, y), new(q.X, y), Apart)))
                continue;
            Crowd.Add(box);
            Crowd.Add(new(p.X, y), new(q.X, y), LineKind.Dimension);
            foreach (Point2 end in new[] { p, q })
                Crowd.Add(end, new(end.X, y), LineKind.Dimension);
            Add(p, q, new(q.X, y), at + new Point2(0, Height / 2), 0, length, words, nail);
            return true;
        }
        return false;
    }

    /// <summary>A dimension up from one point to another; false, and nothing drawn, where it has no room.</summary>
    /// <param name="xs">Places of the dimension line, the best-liked first.</param>
    /// <param name="beyond">Where words stand that have no room along what they measure: 1 above it, -1 below, 0 nowhere.</param>
    public bool TryUp(Point2 low, Point2 high, double length, string? words, IEnumerable<double> xs, int beyond)
    {
        foreach (double x in xs)
        {
            if (FindUp(low, high, length, words, x, beyond) is UpPlace place)
            {
                Keep(place);
                return true;
            }
        }
        return false;
    }

    /// <summary>A place for a dimension up from one point to another with its line at x; null where it has no room there.</summary>
    /// <param name="aside">Distance by which words that are longer than what they measure stand off to the left where they have no place beyond it.</param>
    public UpPlace? FindUp(Point2 low, Point2 high, double length, string? words, double x, int beyond, double aside = 0)
    {
        double width = WidthOf(words ?? Measured, length), middle = (low.Y + high.Y) / 2, play = (high.Y - low.Y - width) / 2 - 0.4;
        Point2 foot = new(x, low.Y), head = new(x, high.Y);
        if (!Crowd.IsLeaderFree(foot, head, foot) || !IsEndFree(low, foot) || !IsEndFree(high, head) || Crowd.RunsAlong(foot, head, Apart))
            return null;
        IEnumerable<double> past = beyond == 0 ? [] : [beyond < 0 ? low.Y - 1 - width / 2 : high.Y + 1 + width / 2];
        IEnumerable<double> ys = play >= 0 ? new[] { 0, 0.3, -0.3, 0.6, -0.6, 0.9, -0.9 }.Select(s => middle + s * play).Concat(past) : aside > 0 ? [middle] : past;
        foreach (double y in ys)
        {
            var at = new Point2(x - Lift - Height / 2 - aside, y);
            Box box = Box.At(at, Height * 1.35, width);
            if (labels.Placer.Frame.Contains(box) && Crowd.IsFree(box))
                return new(low, high, foot, at, box, length, words);
        }
        return null;
    }

    /// <summary>Draws a dimension in the place found for it.</summary>
    public void Keep(UpPlace place)
    {
        Crowd.Add(place.Box);
        Point2 head = new(place.Foot.X, place.High.Y);
        foreach ((Point2 a, Point2 b) in new[] { (place.Foot, head), (place.Low, place.Foot), (place.High, head) })
            Crowd.Add(a, b, LineKind.Dimension);
        Add(place.Low, place.High, place.Foot, place.Text, 90, place.Length, place.Words, null);
    }

    /// <summary>
    /// A dimension along the straight line between two points, its words beside the line or beyond its ends; false, and nothing drawn, where they have
    /// no room within a few millimetres.
    /// </summary>
    /// <param name="mayStand">False for a box where neither words nor line may stand for other reasons; null for none.</param>
    public bool TryAligned(Point2 from, Point2 to, double length, string words, string? nail, Func<Box, bool>? mayStand = null)
    {
        double drawn = (to - from).Length;
        if (drawn < 1e-6 || (drawn > LongLine && (!Crowd.IsLeaderFree(from, to, from) || Crowd.RunsAlong(from, to, Apart))) || mayStand?.Invoke(Box.Around([from, to])) == false)
            return false;
        Point2 way = (to - from) * (1 / drawn), side = new(-way.Y, way.X), middle = (from + to) * 0.5;
        double degrees = DimensionPicture.Reading(from, to), width = WidthOf(words, length), beyond = drawn / 2 + (HasArrows && DimensionStyle.PointsInward(drawn) ? DimensionStyle.Tail + 0.4 : 1.2) + width / 2, beside = Lift + Height * 0.7;
        IEnumerable<Point2> inside = width + 1 < drawn ? new[] { 0, 0.3, -0.3, 0.6, -0.6, 0.9, -0.9 }.SelectMany(k => new[] { middle + side * beside + way * (k * (drawn - width) / 2), middle - side * beside + way * (k * (drawn - width) / 2) }) : [];
        IEnumerable<Point2> outside = new[] { 0, 1.5, 3 }.SelectMany(d => new[] { middle + way * (beyond + d), middle - way * (beyond + d) });
        string written = words.Replace(Measured, Written(length), StringComparison.Ordinal);
        foreach (Point2 at in inside.Concat(outside))
        {
            Box box = DimensionPicture.TextBox(at, degrees, written, Text);
            if (!labels.Placer.Frame.Contains(box) || !Crowd.IsFree(box) || mayStand?.Invoke(box) == false)
                continue;
            Crowd.Add(box);
            Crowd.Add(from, to, LineKind.Dimension);
            labels.Add(new Dimension(LayerRole.Dimension, style, from, to, to, at, degrees) { Nail = nail, Words = words });
            return true;
        }
        return false;
    }

    /// <summary>A dimension between two points with its words apart from its line and a leader to it; false, and nothing drawn, where they have no room.</summary>
    public bool TryAside(Point2 from, Point2 to, double length, string words, string? nail)
    {
        const int Directions = 24;
        Point2 middle = (from + to) * 0.5;
        double degrees = DimensionPicture.Reading(from, to);
        string written = words.Replace(Measured, Written(length), StringComparison.Ordinal);
        Box size = DimensionPicture.TextBox(default, degrees, written, Text);
        foreach (double distance in new[] { 2.0, 3, 4, 5.5, 7, 9, 11, 14, 18, 22 })
        {
            foreach (Point2 way in Enumerable.Range(0, Directions).Select(d => new Point2(1, 0).Turned(2 * Math.PI * d / Directions)))
            {
                Point2 at = middle + way * distance + new Point2(way.X * size.Width / 2, way.Y * size.Height / 2);
                Box box = DimensionPicture.TextBox(at, degrees, written, Text);
                Point2 end = box.Nearest(middle);
                if (!labels.Placer.Frame.Contains(box) || !Crowd.IsFree(box.Grown(Lift)) || !Crowd.IsLeaderFree(middle, end, middle) || Crowd.RunsAlong(middle, end, Apart / 2))
                    continue;
                Crowd.Add(box);
                Crowd.Add(from, to, LineKind.Dimension);
                Crowd.Add(middle, end, LineKind.Leader);
                labels.Add(new Dimension(LayerRole.Dimension, style, from, to, to, at, degrees) { Nail = nail, Words = words });
                labels.Add(Leader.OnPaper(middle, end) with { Nail = nail });
                return true;
            }
        }
        return false;
    }

    private bool IsEndFree(Point2 measured, Point2 line)
    {
        Point2 way = line - measured;
        return way.Length < 1 || Crowd.IsLeaderFree(measured + way * (0.4 / way.Length), line, measured);
    }

    private void Add(Point2 from, Point2 to, Point2 line, Point2 text, double angle, double length, string? words, string? nail)
    {
        double drawn = (angle == 0 ? Math.Abs(to.X - from.X) : Math.Abs(to.Y - from.Y)) * labels.Viewport.UnitsPerMillimetre;
        bool measuresTrue = Math.Abs(length - drawn) < Lengths.Quantum(context.Print.Unit) / 2;
        string? shown = measuresTrue ? words : (words ?? Measured).Replace(Measured, Written(length), StringComparison.Ordinal);
        labels.Add(new Dimension(LayerRole.Dimension, style, from, to, line, text, angle) { Nail = nail, Words = shown });
    }

    /// <summary>True where neither the dimension line nor its extension lines run through a text or a nail.</summary>
    private bool AreLinesFree(Point2 p, Point2 q, double y) => y == p.Y
        ? Crowd.IsLeaderFree(p + new Point2(2.1, 0), q - new Point2(2.1, 0), p)
        : Crowd.IsLeaderFree(new(p.X, y), new(q.X, y), p) && Crowd.IsLeaderFree(p, new(p.X, y), p) && Crowd.IsLeaderFree(q, new(q.X, y), q);

    /// <summary>Heights of a dimension line and places of its words, the best-liked first: above the nails and in the middle.</summary>
    private IEnumerable<(double Y, Point2 Text)> Places(Point2 p, Point2 q, double width, double clear)
    {
        double play = Math.Max(width * 0.4, (q.X - p.X - width) / 2 - 0.5);
        foreach (double drop in new[] { 0, 1, 2.2, 3.4, 4.8, 6.4 }.SelectMany(d => new[] { clear + d, -clear - d }))
        {
            double y = (drop < 0 ? Math.Min(p.Y, q.Y) : Math.Max(p.Y, q.Y)) + drop;
            double baseline = drop < 0 ? y - Lift - Height : y + 0.7;
            foreach (double shift in new[] { 0, 0.3, -0.3, 0.6, -0.6, 1, -1 })
                yield return (y, new Point2((p.X + q.X) / 2 + shift * play, baseline));
        }
        // From head to head where there is room nowhere else.
        if (Math.Abs(p.Y - q.Y) < 0.1)
            yield return (p.Y, new Point2((p.X + q.X) / 2, p.Y + 0.7));
    }
}

/// <summary>A free place for a dimension of a height.</summary>
/// <param name="Foot">Lower end of the dimension line.</param>
/// <param name="Text">Middle of the words.</param>
/// <param name="Box">Room of the words.</param>
public sealed record UpPlace(Point2 Low, Point2 High, Point2 Foot, Point2 Text, Box Box, double Length, string? Words);

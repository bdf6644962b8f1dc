using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Labels;

/// <summary>
/// Finds places for labels one after the other inside a frame, mm of paper: no text on a text, a nail or a leader, no leader through a
/// text or a nail. Of the free places it takes the one nearest to the anchor, with a penalty for lines under the text and for what its leader crosses.
/// </summary>
public sealed class LabelPlacer(Box frame, IReadOnlyDictionary<TextRole, TextStyle> styles)
{
    /// <summary>Ways around an anchor, evenly.</summary>
    private static readonly Point2[] Directions = [.. Enumerable.Range(0, 24).Select(d => new Point2(1, 0).Turned(2 * Math.PI * d / 24))];

    /// <summary>Room kept about a label, mm.</summary>
    public const double Margin = 0.35;

    private const double LinePenalty = 5;

    /// <summary>For each thing that a leader crosses.</summary>
    private const double CrossPenalty = 8;

    private const double BiasPenalty = 8;

    /// <summary>Shares of half its width by which a text slides along its own direction, above (1) and below (-1) the anchor.</summary>
    private static readonly (double Slide, int Side)[] Slides =
        [.. new[] { -1, -0.8, -0.6, -0.4, -0.2, 0.2, 0.4, 0.6, 0.8, 1 }.SelectMany(s => new[] { (s, 1), (s, -1) })];

    private static readonly double[] Distances = [0.6, 2.5, 5, 8, 11, 14, 18, 22, 27, 32, 38, 45, 52, 60, 70, 80, 90, 105, 120, 140];

    public Crowd Crowd { get; } = new(frame);

    public Box Frame { get; } = frame;

    /// <summary>Puts down a text that has a place of its own; false, and nothing put down, where it is not free.</summary>
    public bool TryFix(Text text)
    {
        Box box = TextMeasure.BoxOf(text, styles[text.Role]).Grown(Margin);
        if (!Frame.Contains(box) || !Crowd.IsFree(box))
            return false;
        Crowd.Add(box);
        return true;
    }

    /// <summary>The label in the best free place; null where there is none.</summary>
    public PlacedLabel? Place(LabelRequest request) => PlaceOneOf([request]);

    /// <summary>One of several labels, the one with the best free place; of equal ones the first. Null where none has a place.</summary>
    public PlacedLabel? PlaceOneOf(IReadOnlyList<LabelRequest> requests)
    {
        (LabelRequest request, Candidate? best) = (requests[0], null);
        foreach (LabelRequest one in requests)
        {
            Candidate? before = best;
            for (int v = 0; v < one.Variants.Count; v++)
                best = Search(one, styles[one.Role], one.Variants[v], v * 1.5, best);
            request = best == before ? request : one;
        }
        if (best is null)
            return null;
        TextStyle style = styles[request.Role];
        Crowd.Add(best.Box);
        Leader? leader = null;
        if (best.Leader is (Point2 from, Point2 to))
        {
            Crowd.Add(from, to, LineKind.Leader);
            leader = Leader.OnPaper(from, to) with { Nail = request.Nail, Obstruction = request.Obstruction };
        }
        return new(Write(request, style, best), best.Box, leader);
    }

    private Candidate? Search(LabelRequest request, TextStyle style, IReadOnlyList<string> lines, double penalty, Candidate? best)
    {
        double width = lines.Max(l => TextMeasure.Measure(l, style.Height, style)) + 2 * request.EndMargin;
        double height = BlockHeight(lines.Count, style.Height) + 2 * Margin;
        if (request.Upright)
            (width, height) = (height, width);
        foreach (double distance in Distances)
        {
            if (distance > request.Reach || (best is not null && distance + penalty >= best.Cost))
                break;
            foreach (Point2 direction in Directions)
            {
                double half = Math.Min(
                    Math.Abs(direction.X) < 1e-9 ? double.PositiveInfinity : width / 2 / Math.Abs(direction.X),
                    Math.Abs(direction.Y) < 1e-9 ? double.PositiveInfinity : height / 2 / Math.Abs(direction.Y));
                best = Try(request, lines, width, height, distance, request.Anchor + direction * (request.AnchorRadius + distance + half), penalty, best);
            }
            foreach ((double slide, int side) in Slides)
            {
                double away = request.AnchorRadius + distance;
                Point2 middle = request.Upright
                    ? new(side * (away + width / 2), slide * height / 2)
                    : new(slide * width / 2, side * (away + height / 2));
                best = Try(request, lines, width, height, distance, request.Anchor + middle, penalty, best);
            }
        }
        return best;
    }

    /// <summary>The label about a middle where that is free and better than the best so far; else that.</summary>
    private Candidate? Try(
        LabelRequest request, IReadOnlyList<string> lines, double width, double height, double distance, Point2 middle, double penalty, Candidate? best)
    {
        double cost = distance + penalty, most = best is null ? double.PositiveInfinity : best.Cost - 1e-9;
        Box box = Box.At(middle, width, height);
        if (cost >= most || !Frame.Contains(box))
            return best;
        Point2 off = middle - request.Anchor;
        if (request.Toward is double toward)
            cost += BiasPenalty * (1 - Math.Cos(Math.Atan2(off.Y, off.X) - toward));
        if (cost >= most || !Crowd.IsFree(box))
            return best;
        cost += LinePenalty * Crowd.LinesUnder(box);
        if (cost >= most)
            return best;
        (Point2, Point2)? leader = null;
        Point2 end = box.Nearest(request.Anchor);
        Point2 way = end - request.Anchor;
        // A wide label may come nearer to the anchor than its distance along the ray: then it needs no leader.
        if (distance > request.LeaderFrom && way.Length > request.AnchorRadius + 0.1)
        {
            Point2 start = request.Anchor + way * (request.AnchorRadius / way.Length);
            if (!Crowd.IsLeaderFree(start, end, request.Anchor) || Crowd.RunsAlong(start, end, 0.6))
                return best;
            cost += CrossPenalty * Crowd.LinesCrossed(start, end);
            if (cost >= most)
                return best;
            leader = (start, end);
        }
        return new(box, lines, leader, cost);
    }

    private static List<Text> Write(LabelRequest request, TextStyle style, Candidate best)
    {
        var texts = new List<Text>();
        for (int i = 0; i < best.Lines.Count; i++)
        {
            double down = style.Height + i * style.Height * TextMeasure.LinePitch + Margin;
            Point2 at = request.Upright
                ? new(best.Box.Left + down, best.Box.Bottom + request.EndMargin)
                : new(best.Box.Left + request.EndMargin, best.Box.Top - down);
            texts.Add(new Text(request.Layer, request.Role, at, style.Height, best.Lines[i], HorizontalAlign.Left, request.Upright ? 90 : 0)
            {
                Nail = request.Nail,
                Obstruction = request.Obstruction,
                Masked = true,
            });
        }
        return texts;
    }

    private static double BlockHeight(int lines, double height) =>
        height + (lines - 1) * height * TextMeasure.LinePitch + TextMeasure.Descent * height;

    private sealed record Candidate(Box Box, IReadOnlyList<string> Lines, (Point2, Point2)? Leader, double Cost);
}

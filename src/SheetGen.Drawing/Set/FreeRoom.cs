using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Set;

/// <summary>How a place for a part is chosen among the free ones.</summary>
internal enum PlaceRule
{
    /// <summary>The highest, of those the one farthest left.</summary>
    Highest,
    /// <summary>The one farthest left, of those the highest.</summary>
    Leftmost,
    /// <summary>The one in the smallest free rectangle.</summary>
    Tightest,
}

/// <summary>The free part of a sheet, as the largest rectangles on which nothing stands; they overlap.</summary>
internal sealed class FreeRoom
{
    private const double Slack = 1e-6;

    private readonly Box _area;
    private readonly List<Box> _free;
    private double _taken;

    public FreeRoom(Box area)
    {
        _area = area;
        _free = [area];
        Parts = [];
    }

    /// <summary>What a sheet's views, words and lines leave of an area.</summary>
    /// <param name="margin">Room about each of them, mm.</param>
    public static FreeRoom Beside(DrawingContext context, Box area, SheetContent content, double margin)
    {
        var free = new FreeRoom(area);
        IEnumerable<Box> words = content.Paper.OfType<Text>().Select(t => TextMeasure.BoxOf(t, context.StyleOf(t.Role)));
        IEnumerable<Box> lines = content.Paper.Where(p => p is not (Text or BlockReference)).Select(Extents.Points).Where(p => p.Any()).Select(Box.Around);
        foreach (Box box in content.Viewports.Select(v => v.Frame).Concat(words).Concat(lines))
            free.Take(box.Grown(margin));
        return free;
    }

    private FreeRoom(FreeRoom other)
    {
        _area = other._area;
        _taken = other._taken;
        _free = [.. other._free];
        Parts = [.. other.Parts];
    }

    public List<(SheetPart Part, Point2 At)> Parts { get; }

    /// <summary>The same sheet once more, to go on with in another way.</summary>
    public FreeRoom Copy() => new(this);

    /// <summary>Share of the area that parts take.</summary>
    public double Filled => _taken / (_area.Width * _area.Height);

    /// <summary>The upper left corner of a free place of a size; null where there is none.</summary>
    public Point2? Find(double width, double height, PlaceRule rule) => Find(_free, width, height, rule);

    /// <summary>The place for what is read after a part with a corner: to the right of it in its row, else in a row below all of that row.</summary>
    public Point2? FindAfter(double width, double height, Point2 before)
    {
        if (Find(_free.Where(f => Math.Abs(f.Top - before.Y) < Slack && f.Left > before.X), width, height, PlaceRule.Highest) is Point2 beside)
            return beside;
        double below = Parts.Where(p => Math.Abs(p.At.Y - before.Y) < Slack).Min(p => p.At.Y - p.Part.Height);
        return Find(_free.Select(f => f with { Top = Math.Min(f.Top, below) }), width, height, PlaceRule.Highest);
    }

    private static Point2? Find(IEnumerable<Box> places, double width, double height, PlaceRule rule)
    {
        Box best = default;
        (double First, double Second, double Third) least = default;
        bool isFound = false;
        foreach (Box free in places)
        {
            if (free.Width < width - Slack || free.Height < height - Slack)
                continue;
            double down = -Math.Round(free.Top, 6);
            (double First, double Second, double Third) keys = rule switch
            {
                PlaceRule.Highest => (down, free.Left, 0),
                PlaceRule.Leftmost => (Math.Round(free.Left, 6), down, 0),
                _ => (Math.Min(free.Width - width, free.Height - height), down, free.Left),
            };
            if (isFound && !IsLess(keys, least))
                continue;
            (best, least, isFound) = (free, keys, true);
        }
        return isFound ? new(best.Left, best.Top) : null;
    }

    private static bool IsLess((double First, double Second, double Third) a, (double First, double Second, double Third) b) =>
        a.First != b.First ? a.First < b.First : a.Second != b.Second ? a.Second < b.Second : a.Third < b.Third;

    /// <summary>Free height below a place for something of a width.</summary>
    public double RoomBelow(Point2 place, double width) =>
        _free.Where(f => Math.Abs(f.Left - place.X) < Slack && Math.Abs(f.Top - place.Y) < Slack && f.Width >= width - Slack).Select(f => f.Height).DefaultIfEmpty(0).Max();

    /// <summary>The place with the most free height for something of a width; null where nothing so wide has room.</summary>
    public Point2? Deepest(double width) =>
        _free.Where(f => f.Width >= width - Slack).OrderByDescending(f => Math.Round(f.Height, 6)).ThenBy(f => f.Left).Select(f => (Point2?)new Point2(f.Left, f.Top)).FirstOrDefault();

    public void Take(SheetPart part, Point2 at)
    {
        Parts.Add((part, at));
        _taken += part.Width * part.Height;
        Take(part.BoxAt(at));
    }

    /// <summary>The rectangles on which nothing stands, the largest first.</summary>
    public IReadOnlyList<Box> Largest => [.. _free.OrderByDescending(f => Math.Round(f.Width * f.Height, 3)).ThenBy(f => f.Left).ThenByDescending(f => f.Top)];

    public void Take(Box taken)
    {
        var pieces = new List<Box>();
        int whole = 0;
        for (int i = 0; i < _free.Count; i++)
        {
            if (Meet(_free[i], taken))
                AddAround(_free[i], taken, pieces);
            else
                _free[whole++] = _free[i];
        }
        _free.RemoveRange(whole, _free.Count - whole);
        // What stays whole lies in no other, so in no piece of one either: only pieces are looked at.
        for (int i = 0; i < pieces.Count; i++)
        {
            if (!IsWithinAnother(pieces, i) && !IsWithin(_free, whole, pieces[i]))
                _free.Add(pieces[i]);
        }
    }

    /// <summary>True for a rectangle of several that lies within another of them; of two that are the same the first is kept.</summary>
    private static bool IsWithinAnother(List<Box> all, int at)
    {
        for (int i = 0; i < all.Count; i++)
        {
            if (i != at && Holds(all[i], all[at]) && !(Holds(all[at], all[i]) && at < i))
                return true;
        }
        return false;
    }

    private static bool IsWithin(List<Box> all, int count, Box one)
    {
        for (int i = 0; i < count; i++)
        {
            if (Holds(all[i], one))
                return true;
        }
        return false;
    }

    private static bool Holds(Box outer, Box inner) => outer.Grown(Slack).Contains(inner);

    private static bool Meet(Box a, Box b) => a.Left < b.Right - Slack && b.Left < a.Right - Slack && a.Bottom < b.Top - Slack && b.Bottom < a.Top - Slack;

    /// <summary>Adds the largest rectangles of a free one beside what is taken of it.</summary>
    private static void AddAround(Box free, Box taken, List<Box> all)
    {
        Add(free with { Right = Math.Min(free.Right, taken.Left) });
        Add(free with { Left = Math.Max(free.Left, taken.Right) });
        Add(free with { Top = Math.Min(free.Top, taken.Bottom) });
        Add(free with { Bottom = Math.Max(free.Bottom, taken.Top) });

        void Add(Box piece)
        {
            if (piece.Width > Slack && piece.Height > Slack && !all.Contains(piece))
                all.Add(piece);
        }
    }
}

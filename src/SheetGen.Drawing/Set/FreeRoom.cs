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
internal sealed class FreeRoom(Box area)
{
    private const double Slack = 1e-6;

    private readonly List<Box> _free = [area];

    public List<(SheetPart Part, Point2 At)> Parts { get; } = [];

    /// <summary>Share of the area that parts take.</summary>
    public double Filled => Parts.Sum(p => p.Part.Width * p.Part.Height) / (area.Width * area.Height);

    /// <summary>The upper left corner of a free place of a size; null where there is none.</summary>
    /// <param name="after">Corner of what is read before it, to the left of it or above; null for nothing.</param>
    public Point2? Find(double width, double height, PlaceRule rule, Point2? after = null)
    {
        bool Follows(Box b) => after is not Point2 before || b.Top < before.Y - Slack || (b.Top < before.Y + Slack && b.Left > before.X);
        Box[] fitting = [.. _free.Where(f => f.Width >= width - Slack && f.Height >= height - Slack && Follows(f))];
        if (fitting.Length == 0)
            return null;
        double Up(Box b) => -Math.Round(b.Top, 6);
        Box best = (rule switch
        {
            PlaceRule.Highest => fitting.OrderBy(Up).ThenBy(b => b.Left),
            PlaceRule.Leftmost => fitting.OrderBy(b => Math.Round(b.Left, 6)).ThenBy(Up),
            _ => fitting.OrderBy(b => Math.Min(b.Width - width, b.Height - height)).ThenBy(Up).ThenBy(b => b.Left),
        }).First();
        return new(best.Left, best.Top);
    }

    /// <summary>Free height below a place for something of a width.</summary>
    public double RoomBelow(Point2 place, double width) =>
        _free.Where(f => Math.Abs(f.Left - place.X) < Slack && Math.Abs(f.Top - place.Y) < Slack && f.Width >= width - Slack).Select(f => f.Height).DefaultIfEmpty(0).Max();

    /// <summary>The place with the most free height for something of a width; null where nothing so wide has room.</summary>
    public Point2? Deepest(double width) =>
        _free.Where(f => f.Width >= width - Slack).OrderByDescending(f => Math.Round(f.Height, 6)).ThenBy(f => f.Left).Select(f => (Point2?)new Point2(f.Left, f.Top)).FirstOrDefault();

    public void Take(SheetPart part, Point2 at)
    {
        Parts.Add((part, at));
        var taken = new Box(at.X, at.Y - part.Height, at.X + part.Width, at.Y);
        Box[] whole = [.. _free.Where(f => !Meet(f, taken))];
        IEnumerable<Box> cut = _free.Where(f => Meet(f, taken)).SelectMany(f => Around(f, taken)).Where(f => f.Width > Slack && f.Height > Slack);
        Box[] all = [.. whole.Concat(cut).Distinct()];
        _free.Clear();
        _free.AddRange(all.Where(f => !all.Any(o => o != f && o.Grown(Slack).Contains(f) && !(f.Grown(Slack).Contains(o) && Array.IndexOf(all, f) < Array.IndexOf(all, o)))));
    }

    private static bool Meet(Box a, Box b) => a.Left < b.Right - Slack && b.Left < a.Right - Slack && a.Bottom < b.Top - Slack && b.Bottom < a.Top - Slack;

    /// <summary>The largest rectangles of a free one beside what is taken of it.</summary>
    private static IEnumerable<Box> Around(Box free, Box taken) =>
    [
        free with { Right = Math.Min(free.Right, taken.Left) },
        free with { Left = Math.Max(free.Left, taken.Right) },
        free with { Top = Math.Min(free.Top, taken.Bottom) },
        free with { Bottom = Math.Max(free.Bottom, taken.Top) },
    ];
}

using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Set;

/// <summary>The free part of a sheet, filled from the top: for every stretch of its width, the height down to which it is taken.</summary>
internal sealed class Skyline(Box area)
{
    private const double Slack = 1e-6;

    private readonly List<(double Left, double Right, double Y)> _steps = [(area.Left, area.Right, area.Top)];

    public List<(SheetPart Part, Point2 At)> Parts { get; } = [];

    /// <summary>Share of the area above the skyline.</summary>
    public double Filled => _steps.Sum(s => (s.Right - s.Left) * (area.Top - s.Y)) / (area.Width * area.Height);

    /// <summary>The upper left corner of the highest free place of a size, or of the one farthest left; null where there is none.</summary>
    public Point2? Find(double width, double height, bool leftFirst)
    {
        IEnumerable<Point2> free = Places(width).Where(p => p.Y - height >= area.Bottom - Slack);
        return (leftFirst ? free.OrderBy(p => p.X) : free.OrderByDescending(p => Math.Round(p.Y, 6)).ThenBy(p => p.X)).Cast<Point2?>().FirstOrDefault();
    }

    public double RoomBelow(Point2 place) => place.Y - area.Bottom;

    public void Take(SheetPart part, Point2 at)
    {
        Parts.Add((part, at));
        double left = at.X, right = Math.Min(at.X + part.Width, area.Right), y = at.Y - part.Height;
        var steps = new List<(double Left, double Right, double Y)>();
        foreach ((double l, double r, double old) in _steps)
        {
            if (r <= left + Slack || l >= right - Slack)
            {
                steps.Add((l, r, old));
                continue;
            }
            if (l < left - Slack)
                steps.Add((l, left, old));
            if (r > right + Slack)
                steps.Add((right, r, old));
        }
        steps.Add((left, right, y));
        _steps.Clear();
        _steps.AddRange(steps.OrderBy(s => s.Left));
    }

    private IEnumerable<Point2> Places(double width) => _steps
        .Where(s => s.Left + width <= area.Right + Slack)
        .Select(s => new Point2(s.Left, _steps.Where(o => o.Right > s.Left + Slack && o.Left < s.Left + width - Slack).Min(o => o.Y)));
}

using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Set;

/// <summary>The rooms that the last front sheet leaves for the key plan and the typical section.</summary>
internal static class FrontViews
{
    /// <summary>Least side of a key plan that can be read, mm.</summary>
    private const double LeastKey = 75;

    private static Box[] Large(IReadOnlyList<Box> rooms, DrawingContext context)
    {
        double least = Least(context);
        return [.. rooms.Where(r => r.Width >= least && r.Height >= least)];
    }

    private static double Least(DrawingContext context) => LeastKey * context.StyleOf(TextRole.Label).Height / 2.4;

    /// <summary>The room of a key plan alone; null where none is large enough.</summary>
    public static Box? KeyAlone(IReadOnlyList<Box> rooms, DrawingContext context) => Large(rooms, context).FirstOrDefault();

    /// <summary>Ways of giving a room to each: one of its own, or parts of the largest.</summary>
    public static IEnumerable<(Box Key, Box Section)> Ways(IReadOnlyList<Box> rooms, DrawingContext context)
    {
        Box[] large = Large(rooms, context);
        if (large.Length == 0)
            yield break;
        if (large.Length > 1)
            yield return (large[1], large[0]);
        double least = Least(context);
        Box free = large[0];
        foreach (double share in new[] { 0.5, 0.4, 0.3 })
        {
            double high = Math.Clamp(share * free.Height, least, Math.Max(least, free.Width)), wide = Math.Max(least, share * free.Width);
            yield return free.Height >= free.Width
                ? (free with { Bottom = free.Top - high }, free with { Top = free.Top - high - 8 })
                : (free with { Right = free.Left + wide }, free with { Left = free.Left + wide + 8 });
        }
    }
}

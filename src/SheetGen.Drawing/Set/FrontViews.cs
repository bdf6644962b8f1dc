using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Set;

/// <summary>Shares the free room of the last front sheet between the key plan and the typical section.</summary>
internal static class FrontViews
{
    /// <summary>Least side of a key plan that can be read, mm.</summary>
    private const double LeastKey = 75;

    public static (Box? Key, Box? Section) Share(Box free, DrawingContext context)
    {
        double letters = context.StyleOf(TextRole.Label).Height / 2.4, least = LeastKey * letters;
        if (free.Width < least || free.Height < least)
            return (null, null);
        if (free.Height >= free.Width)
        {
            double high = Math.Clamp(0.3 * free.Height, least, Math.Max(least, 0.7 * free.Width));
            return (free with { Bottom = free.Top - high }, free with { Top = free.Top - high - 8 });
        }
        double wide = Math.Max(least, 0.4 * free.Width);
        return (free with { Right = free.Left + wide }, free with { Left = free.Left + wide + 8 });
    }
}

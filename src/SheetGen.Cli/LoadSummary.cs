using System.Globalization;
using SheetGen.Model.Results;

namespace SheetGen.Cli;

/// <summary>What the layout does to the design, in one line.</summary>
public static class LoadSummary
{
    /// <summary>The greatest area of a changed nail, and where the engineer's values are given the lowest ratio.</summary>
    public static string Text(LayoutEffect effect)
    {
        NailEffect[] changed = [.. effect.Nails.Where(n => n.IsChanged)];
        if (changed.Length == 0)
            return "every nail as designed";
        NailEffect largest = changed.MaxBy(n => n.AreaShare)!;
        string areas = Invariant($"changed nails carry up to {largest.AreaShare:0.00} of the design's area ({largest.Nail.Mark})");
        NailEffect? lowest = effect.Nails.Where(n => n.Drawn.Lowest is not null).MinBy(n => n.Drawn.Lowest!.Ratio);
        if (lowest is null)
            return areas + (effect.HasValues ? "; the design's values are not enough for a ratio, see the workbook" : "; no design values given, no ratios");
        LimitCheck check = lowest.Drawn.Lowest!;
        string asked = lowest.Nail.Section.Design?.LeastRatio is { } least ? Invariant($", asked for {least:0.00}") : "";
        string grid = lowest.IsChanged && lowest.Grid?.Lowest is { } before ? Invariant($", {before.Ratio:0.00} on the grid") : "";
        return areas + Invariant($"; lowest ratio {check.Ratio:0.00} in {ResultWords.Of(check.State)} ({lowest.Nail.Mark}{grid}{asked})") + "; for the engineer of record";
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>The two limits that an engineer may set, and where a nail breaks them. Without a limit nothing is broken.</summary>
internal static class LoadLimits
{
    /// <summary>Ratios that differ by less print alike: where the grid place is under the ratio too, so small a change is none.</summary>
    private const double SameRatio = 0.01;

    /// <summary>True where a changed nail's lowest ratio is under the one asked for, and lower than at its grid place.</summary>
    public static bool IsUnderRatio(NailEffect nail) =>
        nail.IsChanged && IsUnder(nail.Nail.Section, nail.Drawn) && (nail.Grid?.Lowest is not { } grid || nail.Drawn.Lowest!.Ratio < grid.Ratio - SameRatio);

    /// <summary>True where a place's lowest ratio is under the one asked for.</summary>
    public static bool IsUnder(Section section, PlaceEffect place) =>
        section.Design?.LeastRatio is { } least && place.Lowest is { } lowest && lowest.Ratio < least - Tolerance.Rounding;

    /// <summary>True where a changed nail's area exceeds the design's by more than the share.</summary>
    public static bool IsOverArea(NailEffect nail) => nail.IsChanged && IsOver(nail, nail.Drawn.Area);

    /// <summary>True where an area exceeds the design's by more than the share; the design's is that of its grid place where that is greater.</summary>
    public static bool IsOver(NailEffect nail, double area) =>
        nail.Nail.Section.Design?.AreaShare is { } share && area > Reference(nail) * (1 + share) * (1 + Tolerance.Rounding);

    /// <summary>The design's area of a nail: the spacing product, or more where its grid place has more (at the bottom, beside steps and ends).</summary>
    public static double Reference(NailEffect nail) => Math.Max(nail.DesignArea, nail.Grid?.Area ?? 0);
}

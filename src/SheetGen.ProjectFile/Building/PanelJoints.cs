using SheetGen.Model;

namespace SheetGen.ProjectFile.Building;

/// <summary>Panel breaks inside a wall: the edges of its panel columns that lie within a leg, and the corners.</summary>
internal static class PanelJoints
{
    /// <summary>The breaks strictly inside a wall, in order of station.</summary>
    /// <param name="wall">The wall; its own panel breaks are not looked at.</param>
    public static IReadOnlyList<double> Of(Wall wall, Panels panels)
    {
        Face plumb = PanelColumns.PlumbFace(wall);
        var breaks = new List<double>();
        foreach (Leg leg in plumb.Legs)
        {
            breaks.AddRange(PanelColumns.Edges(plumb, leg, panels).Skip(1).SkipLast(1)
                .Where(along => along > leg.Start + Tolerance.Length && along < leg.End - Tolerance.Length));
            if (leg.EndCorner is { } corner)
                breaks.Add(corner.Along);
        }
        return breaks;
    }
}

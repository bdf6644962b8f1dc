using SheetGen.Layout.Rows;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Area of face per nail: the Voronoi cells of the heads on each leg's face. Verification test nails have none.
/// </summary>
internal static class HeadCells
{
    /// <summary>Cell areas by mark.</summary>
    public static Dictionary<string, double> Areas(FaceRegions regions, IEnumerable<Nail> nails) =>
        Areas(regions, [.. nails.Where(n => n.Kind != NailKind.Verification).Select(n => (n.Mark, Head.Of(n)))]);

    /// <summary>Cell areas by key; those of a leg sum up to its face.</summary>
    public static Dictionary<string, double> Areas(FaceRegions regions, IReadOnlyList<(string Key, Head At)> heads)
    {
        var areas = new Dictionary<string, double>();
        foreach (IGrouping<int, (string Key, Head At)> onLeg in heads.GroupBy(h => regions.Face.LegAt(h.At.Along).Index))
        {
            foreach ((string key, double area) in new LegCells(regions, regions.Face.Legs[onLeg.Key], [.. onLeg]).Areas())
                areas[key] = area;
        }
        return areas;
    }
}

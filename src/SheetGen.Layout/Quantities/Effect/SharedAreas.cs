using SheetGen.Layout.Rows;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>Who carries the area of grid places that have no nail.</summary>
internal static class SharedAreas
{
    private const int MostCarriers = 6;

    /// <summary>Spacings from the empty place within which a nail may carry a part of it: its neighbours' cells, and what they may have moved.</summary>
    private const double Reach = 1.5;

    public static IEnumerable<SharedArea> Of(WallEffect wall, NailLayout layout, IReadOnlyDictionary<string, NailEffect> nails)
    {
        foreach (LeftOut left in layout.LeftOut.Where(l => l.Wall == wall.Wall))
        {
            GridPlace? place = wall.Grid.Empty
                .Where(p => p.Row.Section == left.Section && p.Row.Number == left.Row).MinBy(p => Math.Abs(p.At.Along - new Along(left.Along)));
            if (place is null)
                continue;
            double reach = Reach * Math.Max(left.Section.HorizontalSpacing, left.Section.VerticalSpacing);
            yield return new SharedArea(left, wall.GridArea(place),
            [
                .. wall.Production.Where(n => Math.Abs(Head.Of(n).Along - place.At.Along) <= reach && Math.Abs(Head.Of(n).Elevation - place.At.Elevation) <= reach)
                    .Select(n => (n.Mark, Growth: nails[n.Mark].Drawn.Area - (nails[n.Mark].Grid?.Area ?? 0)))
                    .Where(c => c.Growth > QuantityTolerance.SameArea * left.Section.HorizontalSpacing * left.Section.VerticalSpacing)
                    .OrderByDescending(c => c.Growth).ThenBy(c => c.Mark, StringComparer.Ordinal).Take(MostCarriers),
            ]);
        }
    }
}

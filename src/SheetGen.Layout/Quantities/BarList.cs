using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Bars by size, grade and cut length. A bar longer than stock is coupled; what it needs beyond whole stock bars is cut from stock bars
/// of its own line only.
/// </summary>
internal static class BarList
{
    public static List<BarCut> Make(WallProject project, IReadOnlyList<NailQuantity> nails)
    {
        double? stock = project.Rates.StockLength;
        return
        [
            .. nails.GroupBy(n => (n.Nail.Bar, Cut: Math.Round(n.BarLength, 6), n.IsSacrificial))
                .OrderBy(g => g.Key.IsSacrificial).ThenBy(g => g.Key.Bar.DiameterInches).ThenBy(g => g.Key.Bar.Grade).ThenByDescending(g => g.Key.Cut)
                .Select(g => new BarCut(
                    g.Key.Bar, g.Key.Cut, g.Key.IsSacrificial, g.First().UnitWeight, [.. g.Select(n => n.Nail.Mark)],
                    stock is { } s ? NailTakeOff.CeilingOf(g.Key.Cut / s) - 1 : null, stock is { } t ? StockBars(g.Key.Cut, t, g.Count()) : null)),
        ];
    }

    /// <summary>Stock bars for a number of bars of one cut length.</summary>
    public static int StockBars(double cut, double stock, int count)
    {
        int whole = (int)Math.Floor(cut / stock + 1e-9);
        double rest = cut - whole * stock;
        if (rest < 1e-9 * stock)
            return whole * count;
        int perStock = (int)Math.Floor(stock / rest + 1e-9);
        return whole * count + NailTakeOff.CeilingOf((double)count / perStock);
    }
}

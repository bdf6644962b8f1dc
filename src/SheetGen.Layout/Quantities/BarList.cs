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
            .. nails.GroupBy(n => (n.Nail.Bar, n.Nail.Length, n.IsSacrificial))
                .OrderBy(g => g.Key.IsSacrificial).ThenBy(g => g.Key.Bar.DiameterInches).ThenBy(g => g.Key.Bar.Grade)
                .ThenByDescending(g => g.Key.Length)
                .Select(g => Line(g.Key.Bar, g.Key.IsSacrificial, [.. g], stock)),
        ];
    }

    private static BarCut Line(Bar bar, bool sacrificial, List<NailQuantity> nails, double? stock)
    {
        double cut = nails[0].BarLength;
        return new BarCut(
            bar, nails[0].Nail.Length, cut, sacrificial, nails[0].UnitWeight, [.. nails.Select(n => n.Nail.Mark)],
            stock is { } s ? NailTakeOff.CeilingOf(cut / s) - 1 : null, stock is { } t ? StockBars(cut, t, nails.Count) : null);
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

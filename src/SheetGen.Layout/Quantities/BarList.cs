using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>Bars by size, grade and cut length.</summary>
internal static class BarList
{
    public static List<BarCut> Make(WallProject project, IReadOnlyList<NailQuantity> nails) =>
    [
        .. nails.GroupBy(n => (n.Nail.Bar, n.Nail.Length, n.IsSacrificial))
            .OrderBy(g => g.Key.IsSacrificial).ThenBy(g => g.Key.Bar.DiameterInches).ThenBy(g => g.Key.Bar.Grade)
            .ThenByDescending(g => g.Key.Length)
            .Select(g => new BarCut(
                g.Key.Bar, g.Key.Length, g.First().BarLength, g.Key.IsSacrificial, g.First().UnitWeight, [.. g.Select(n => n.Nail.Mark)],
                project.Rates.StockLength is { } longest ? StockPlan.Couplers(g.First().BarLength, longest) : null,
                project.Rates.StockLength is { } stock ? StockBars(g.First().BarLength, stock, g.Count()) : null)),
    ];

    /// <summary>Stock bars for a number of bars of one cut length, cut from stock bars of their own only.</summary>
    public static int StockBars(double cut, double stock, int count)
    {
        int whole = (int)Math.Floor(cut / stock + Tolerance.Rounding);
        double rest = cut - whole * stock;
        if (rest < Tolerance.Rounding * stock)
            return whole * count;
        int perStock = (int)Math.Floor(stock / rest + Tolerance.Rounding);
        return whole * count + NailTakeOff.CeilingOf((double)count / perStock);
    }
}

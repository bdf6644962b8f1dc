using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>The quantities that an agency pays.</summary>
public static class BidQuantities
{
    /// <summary>Every item of the set with its raw and its rounded quantity and the user's price.</summary>
    public static BidTable Make(QuantityTable quantities, PayItemSet set, Rates rates)
    {
        var lines = new List<BidLine>();
        foreach (PayItem item in set.Items)
        {
            double? raw = item.Quantity.Evaluate(name => quantities.Totals[name].Amount);
            string missing = string.Join("; ", item.Quantity.Names.Select(n => quantities.Totals[n]).Where(q => q.Amount is null)
                .Select(q => q.Note.Length > 0 ? q.Note : "no section").Distinct());
            lines.Add(new BidLine(
                item, raw, raw is { } value ? item.Rounding.Round(value) : null,
                rates.Prices.TryGetValue(item.Number, out double price) ? price : null, missing));
        }
        return new BidTable(set, lines);
    }
}

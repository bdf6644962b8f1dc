using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>The quantities that an agency pays.</summary>
internal static class BidQuantities
{
    /// <summary>
    /// Every item of the set with its raw and its rounded quantity and the user's price. What nobody asks for counts as 0 beside other
    /// things, and leaves an item empty that has nothing else.
    /// </summary>
    public static BidTable Make(QuantityTable quantities, PayItemSet set, Rates rates)
    {
        var faults = new List<BidFault>();
        List<BidLine> lines = [.. set.Items.Select(item => Line(quantities, item, rates, faults))];
        return new BidTable(set, lines)
        {
            UnmatchedPrices = [.. rates.Prices.Keys.Where(n => set.Items.All(i => i.Number != n)).Order(StringComparer.Ordinal)],
            Faults = faults,
        };
    }

    private static BidLine Line(QuantityTable quantities, PayItem item, Rates rates, List<BidFault> faults)
    {
        if (item.Quantity.References.FirstOrDefault(r => !Exists(quantities, r)) is { } unknown)
        {
            string kind = unknown.Wall is null ? "stage" : "wall";
            faults.Add(new BidFault(item, new PayExpressionFault($"no {kind} is named \"{unknown.Wall ?? unknown.Stage}\"", $"correct the name in \"{unknown}\"")));
        }
        List<Quantity> used = [.. item.Quantity.References.Select(quantities.Of)];
        List<MissingPart> missing = [.. used.SelectMany(q => q.Missing).Distinct()];
        bool isAsked = used.Count == 0 || used.Exists(q => q.State != QuantityState.NotAsked);
        double? Value(Func<QuantityReference, double?> of)
        {
            double? value = item.Quantity.Evaluate(of, out PayExpressionFault? fault) * item.Factor;
            if (fault is not null)
                faults.Add(new BidFault(item, fault));
            return value;
        }
        double? raw = isAsked ? Value(r => AmountOf(quantities.Of(r))) : null;
        List<BidPart> parts = raw is null ? [] : Parts(quantities, item, Value);
        double? rounded = parts.Count > 0 ? parts.Sum(p => p.Rounded) : raw is { } total ? item.Rounding.Round(total) : null;
        if (raw is { } amount && Math.Min(Math.Round(amount, Tolerance.Decimals), rounded ?? 0) < 0)
            faults.Add(new BidFault(item, new PayExpressionFault(FormattableString.Invariant($"the quantity is {amount:0.######} {item.Unit}, less than nothing"), "turn the difference round, or leave the item out")));
        QuantityState state = missing.Count > 0 ? raw is null ? QuantityState.Missing : QuantityState.Incomplete
            : isAsked ? QuantityState.Complete : QuantityState.NotAsked;
        string note = string.Join("; ", new[]
        {
            state == QuantityState.Incomplete ? "INCOMPLETE, " + MissingPart.InWords(missing) : MissingPart.InWords(missing),
            MissingPart.InWords(used.SelectMany(q => q.NotAsked).Distinct()),
        }.Where(n => n.Length > 0));
        return new BidLine(item, raw, rounded, rates.Prices.TryGetValue(item.Number, out double price) ? price : null, note)
        {
            State = state,
            Missing = missing,
            Parts = parts,
        };
    }

    private static bool Exists(QuantityTable quantities, QuantityReference reference) => quantities.Sections.Any(s =>
        (reference.Wall is null || s.Wall.Name == reference.Wall) && (reference.Stage is null || s.Section.Stage == reference.Stage));

    private static double? AmountOf(Quantity quantity) => quantity.State == QuantityState.NotAsked ? 0 : quantity.Amount;

    /// <summary>What is rounded by itself; empty where the total is.</summary>
    private static List<BidPart> Parts(QuantityTable quantities, PayItem item, Func<Func<QuantityReference, double?>, double?> value)
    {
        IEnumerable<(string Name, double? Raw)> parts = item.Rounding.Scope switch
        {
            RoundingScope.Wall => quantities.Sections.Select(s => s.Wall.Name).Distinct()
                .Select(w => (w, value(r => r.Wall is null || r.Wall == w ? AmountOf(quantities.Of(r with { Wall = w })) : 0))),
            RoundingScope.Nail => quantities.Nails.Where(n => !n.IsSacrificial)
                .Select(n => (n.Nail.Mark, value(r => r.Wall is not null && r.Wall != n.Nail.Wall.Name || r.Stage is not null && r.Stage != n.Nail.Section.Stage
                    ? 0
                    : NailAmounts.Of(n, r.Name)))),
            _ => [],
        };
        return [.. parts.Where(p => p.Raw is not null).Select(p => new BidPart(p.Name, p.Raw!.Value, item.Rounding.Round(p.Raw.Value)))];
    }
}

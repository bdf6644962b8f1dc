using SheetGen.Model.PayItems;

namespace SheetGen.Model.Results;

/// <summary>Bid quantities by the pay items of an agency.</summary>
public sealed record BidTable(PayItemSet Set, IReadOnlyList<BidLine> Lines)
{
    /// <summary>Numbers that the user prices but that no item of the set has, in order.</summary>
    public IReadOnlyList<string> UnmatchedPrices { get; init; } = [];

    /// <summary>Items whose expression has no value; nothing may be written while there is any.</summary>
    public IReadOnlyList<BidFault> Faults { get; init; } = [];

    /// <summary>True where the user gives any price: then every item needs one.</summary>
    public bool IsPriced => UnmatchedPrices.Count > 0 || Lines.Any(l => l.Price is not null);

    /// <summary>Items that have a quantity but no price, in a table that is priced.</summary>
    public IReadOnlyList<BidLine> WithoutPrice => IsPriced ? [.. Lines.Where(l => l.Price is null && l.State != QuantityState.NotAsked)] : [];

    /// <summary>Items whose quantity is missing or incomplete.</summary>
    public IReadOnlyList<BidLine> Incomplete => [.. Lines.Where(l => l.Missing.Count > 0)];

    /// <summary>Sum of the amounts known; null where there is none.</summary>
    public double? Sum => Lines.Any(l => l.Amount is not null) ? Lines.Sum(l => l.Amount ?? 0) : null;

    /// <summary>True where the sum stands for every item: all quantities whole, all items priced, all prices used.</summary>
    public bool IsComplete => Incomplete.Count == 0 && WithoutPrice.Count == 0 && UnmatchedPrices.Count == 0;
}

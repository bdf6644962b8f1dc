using SheetGen.Model.PayItems;

namespace SheetGen.Model.Results;

/// <summary>A pay item with its quantity.</summary>
/// <param name="Raw">Unrounded quantity; null where something it needs is not given.</param>
/// <param name="Rounded">Rounded by the item's rule.</param>
/// <param name="Price">The user's unit price; null where not given.</param>
/// <param name="Note">What is missing; empty where nothing is.</param>
public sealed record BidLine(PayItem Item, double? Raw, double? Rounded, double? Price, string Note)
{
    public double? Amount => Rounded * Price;
}

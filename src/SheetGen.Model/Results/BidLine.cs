using SheetGen.Model.PayItems;

namespace SheetGen.Model.Results;

/// <summary>A pay item with its quantity.</summary>
/// <param name="Raw">Unrounded quantity; null where something it needs is given nowhere, or no wall asks for it.</param>
/// <param name="Rounded">Rounded by the item's rule.</param>
/// <param name="Price">The user's unit price; null where not given.</param>
/// <param name="Note">What is missing where, in words; empty where nothing is.</param>
public sealed record BidLine(PayItem Item, double? Raw, double? Rounded, double? Price, string Note)
{
    /// <summary>Whether the quantity is whole.</summary>
    public QuantityState State { get; init; } = QuantityState.Complete;

    /// <summary>What is missing where.</summary>
    public IReadOnlyList<MissingPart> Missing { get; init; } = [];

    /// <summary>The parts that are rounded by themselves, nail by nail or wall by wall; empty where the total is rounded.</summary>
    public IReadOnlyList<BidPart> Parts { get; init; } = [];

    public double? Amount => Rounded * Price;
}

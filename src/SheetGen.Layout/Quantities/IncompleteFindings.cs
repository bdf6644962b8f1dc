using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>Warnings about quantities and prices that stand for less than they should.</summary>
internal static class IncompleteFindings
{
    /// <summary>
    /// One for each quantity from whose sum parts are missing, one for each pay item whose quantity is missing, and one for each item
    /// without a price and price without an item where the bid is priced.
    /// </summary>
    public static IReadOnlyList<Finding> Make(QuantityTable quantities, BidTable bid) =>
    [
        .. quantities.Incomplete.Select(q => Warning(
            $"the sum of {q.Name} ({q.Definition.Text}) is incomplete: {MissingPart.InWords(q.Missing)}", WallOf(q.Missing))),
        .. bid.Incomplete.Select(l => Warning(
            $"pay item {l.Item.Number} ({l.Item.Description}) {(l.State == QuantityState.Missing ? "has no quantity" : "is incomplete")}: {MissingPart.InWords(l.Missing)}",
            WallOf(l.Missing))),
        .. bid.WithoutPrice.Select(l => Warning(
            $"pay item {l.Item.Number} ({l.Item.Description}) has no price, so that the sum is incomplete: add it under prices, or leave all prices out")),
        .. bid.UnmatchedPrices.Select(n => Warning(
            $"the price of item {n} is not used: no pay item of the set \"{bid.Set.Name}\" has that number")),
    ];

    private static Finding Warning(string message, Wall? wall = null) =>
        new() { Code = FindingCode.Incomplete, Severity = Severity.Warning, Wall = wall, Message = message };

    private static Wall? WallOf(IReadOnlyList<MissingPart> missing) =>
        missing.Select(p => p.Wall).Distinct().ToList() is [{ } only] ? only : null;
}

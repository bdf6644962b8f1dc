namespace SheetGen.Model.Results;

/// <summary>A measured amount, unrounded, with what it came from.</summary>
/// <param name="Amount">Unrounded amount; null where it cannot be computed from what is given.</param>
/// <param name="Trace">Marks of the nails, or station ranges, that it came from.</param>
/// <param name="Note">Why there is no amount, or what it rests on; empty where there is nothing to say.</param>
public sealed record Quantity(QuantityDefinition Definition, double? Amount, IReadOnlyList<string> Trace, string Note = "")
{
    public string Name => Definition.Name;
}

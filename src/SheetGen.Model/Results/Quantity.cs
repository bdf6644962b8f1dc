namespace SheetGen.Model.Results;

/// <summary>A measured amount, unrounded, with what it came from and what it lacks.</summary>
/// <param name="Amount">Unrounded amount; null where it cannot be computed from what is given, or where nobody asks for it.</param>
/// <param name="Trace">Marks of the nails, or station ranges, that it came from.</param>
/// <param name="Note">What it rests on or lacks, in words; empty where there is nothing to say.</param>
public sealed record Quantity(QuantityDefinition Definition, double? Amount, IReadOnlyList<string> Trace, string Note = "")
{
    public string Name => Definition.Name;

    /// <summary>What is missing where; empty for a complete amount.</summary>
    public IReadOnlyList<MissingPart> Missing { get; init; } = [];

    /// <summary>Walls that do not ask for it, and by which key they would.</summary>
    public IReadOnlyList<MissingPart> NotAsked { get; init; } = [];

    public QuantityState State => Missing.Count > 0 ? (Amount is null ? QuantityState.Missing : QuantityState.Incomplete)
        : Amount is null ? QuantityState.NotAsked : QuantityState.Complete;
}

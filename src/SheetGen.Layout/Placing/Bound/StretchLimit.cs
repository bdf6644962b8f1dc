namespace SheetGen.Layout.Placing;

/// <summary>What a stretch of a row costs at least, whatever stands beside it and in other rows.</summary>
/// <param name="Nails">Nails that cost so much, conflicts of neighbours alone kept.</param>
internal sealed record StretchLimit(StretchOfRow Where, Cost Cost, IReadOnlyList<Placed> Nails);

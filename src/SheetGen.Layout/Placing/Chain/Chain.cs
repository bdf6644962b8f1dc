namespace SheetGen.Layout.Placing;

/// <summary>A chain of nails over a stretch of a row.</summary>
/// <param name="Cost">What it costs, tolls included.</param>
/// <param name="IsExact">True where every direction was looked at, so that no chain is cheaper.</param>
internal sealed record Chain(IReadOnlyList<Placed> Nails, Cost Cost, bool IsExact);

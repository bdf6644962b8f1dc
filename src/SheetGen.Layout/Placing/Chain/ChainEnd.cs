namespace SheetGen.Layout.Placing;

/// <summary>The last nail of a chain over the places of a stretch.</summary>
/// <param name="Cost">What the chain costs up to and with it, tolls included.</param>
/// <param name="Place">The place of the nail before; -1 where the chain starts here.</param>
/// <param name="State">Number of the chain before among those that end at that place.</param>
internal readonly record struct ChainEnd(Option Option, Cost Cost, int Place, int State);

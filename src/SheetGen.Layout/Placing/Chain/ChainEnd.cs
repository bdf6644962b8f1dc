namespace SheetGen.Layout.Placing;

/// <summary>The last nail of a chain over the nodes of a stretch.</summary>
/// <param name="Cost">What the chain costs up to and with it, tolls included.</param>
/// <param name="Node">The node of the nail before; -1 where the chain starts here.</param>
/// <param name="Rank">Rank of the chain before among those that end at that node, cheapest first.</param>
internal readonly record struct ChainEnd(Option Option, Cost Cost, int Node, int Rank);

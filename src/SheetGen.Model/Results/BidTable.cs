using SheetGen.Model.PayItems;

namespace SheetGen.Model.Results;

/// <summary>Bid quantities by the pay items of an agency.</summary>
public sealed record BidTable(PayItemSet Set, IReadOnlyList<BidLine> Lines);

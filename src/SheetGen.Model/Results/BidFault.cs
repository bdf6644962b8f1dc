using SheetGen.Model.PayItems;

namespace SheetGen.Model.Results;

/// <summary>A pay item whose expression has no value: a division by zero, or a number beyond all numbers.</summary>
public sealed record BidFault(PayItem Item, PayExpressionFault Fault);

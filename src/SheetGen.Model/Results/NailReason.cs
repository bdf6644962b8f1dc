namespace SheetGen.Model.Results;

/// <summary>Why a nail is not at its grid place in the grid's direction.</summary>
/// <param name="Blocker">Obstruction or nail that the grid place hits; null where it gives way to a neighbour's move.</param>
/// <param name="ClearBefore">Clear distance at the grid place.</param>
/// <param name="ClearAfter">Clear distance to the same thing where the nail stands now.</param>
/// <param name="Required">Clear distance that the rule asks for.</param>
/// <param name="Failed">Cheaper choices that fail, cheapest first, each with its first obstacle.</param>
/// <param name="Text">One sentence for people.</param>
public sealed record NailReason(
    string? Blocker, double? ClearBefore, double? ClearAfter, double? Required, IReadOnlyList<FailedChoice> Failed, string Text);

namespace SheetGen.Model.Results;

/// <summary>How many nails of a kind have a length in a section.</summary>
public sealed record LengthCount(NailKind Kind, double Length, int Count);

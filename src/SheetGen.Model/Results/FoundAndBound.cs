namespace SheetGen.Model.Results;

/// <summary>A figure of the layout found, and the proven least that any layout searched can have; null where none is proven.</summary>
public readonly record struct FoundAndBound(double Found, double? Bound);

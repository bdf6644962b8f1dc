namespace SheetGen.Model;

/// <summary>A plan point told by its layout line: distance along it and offset to the right.</summary>
public readonly record struct LinePlace(double Along, double Right);

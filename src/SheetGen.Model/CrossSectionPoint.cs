namespace SheetGen.Model;

/// <summary>A point of a cross section: horizontal distance in front of the face, and elevation.</summary>
public readonly record struct CrossSectionPoint(double InFront, double Elevation);

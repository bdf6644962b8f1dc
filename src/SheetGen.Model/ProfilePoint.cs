namespace SheetGen.Model;

/// <summary>A point of a profile: distance along the layout line and elevation.</summary>
public readonly record struct ProfilePoint(double Along, double Elevation);

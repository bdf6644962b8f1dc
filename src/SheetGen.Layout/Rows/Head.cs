namespace SheetGen.Layout.Rows;

/// <summary>Where a hole starts on a wall's face: distance along the layout line and elevation.</summary>
internal readonly record struct Head(double Along, double Elevation);

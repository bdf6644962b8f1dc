namespace SheetGen.Model;

/// <summary>An angle point of a layout line.</summary>
/// <param name="Along">Distance along the layout line.</param>
/// <param name="Deflection">Deflection in radians, positive to the right, between -pi and pi.</param>
public sealed record Corner(double Along, double Deflection);

namespace SheetGen.Dxf;

/// <summary>One family of parallel lines of a hatch pattern, in drawing units, already scaled and turned.</summary>
/// <param name="Angle">Direction of the lines, degrees.</param>
/// <param name="BasePoint">A point on the first line.</param>
/// <param name="Offset">Vector from a line to the next.</param>
/// <param name="Dashes">Dash lengths as in <see cref="DxfLinetype.Pattern"/>; empty: unbroken.</param>
public sealed record DxfPatternLine(double Angle, DxfPoint BasePoint, DxfPoint Offset, DxfSequence<double> Dashes);

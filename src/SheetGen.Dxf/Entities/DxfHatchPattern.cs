namespace SheetGen.Dxf;

/// <summary>The lines that fill a hatch.</summary>
/// <param name="Name">Its name, not SOLID.</param>
/// <param name="Lines">Its families of lines, at least one.</param>
public sealed record DxfHatchPattern(string Name, DxfSequence<DxfPatternLine> Lines)
{
    /// <summary>Where it comes from.</summary>
    public DxfPatternKind Kind { get; init; } = DxfPatternKind.Custom;

    /// <summary>The scale already worked into <see cref="Lines"/>, above 0; for programs that regenerate a predefined pattern.</summary>
    public double Scale { get; init; } = 1;

    /// <summary>The turn in degrees already worked into <see cref="Lines"/>.</summary>
    public double Angle { get; init; }

    /// <summary>Unbroken parallel lines.</summary>
    /// <param name="angle">Direction, degrees.</param>
    /// <param name="spacing">Distance between lines, drawing units, above 0.</param>
    public static DxfHatchPattern Parallel(double angle, double spacing) =>
        new("_USER", [Family(angle, spacing)]) { Kind = DxfPatternKind.UserDefined, Scale = spacing, Angle = angle };

    /// <summary>The well-known pattern ANSI31: unbroken lines at 45 degrees, 0.125 apart before scaling.</summary>
    /// <param name="scale">Factor on the spacing, above 0.</param>
    public static DxfHatchPattern Ansi31(double scale) =>
        new("ANSI31", [Family(45, 0.125 * scale)]) { Kind = DxfPatternKind.Predefined, Scale = scale };

    private static DxfPatternLine Family(double angle, double spacing) =>
        new(angle, DxfPoint.Origin, new DxfPoint(0, spacing).Rotated(angle), []);
}

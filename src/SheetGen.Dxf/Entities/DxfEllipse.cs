namespace SheetGen.Dxf;

/// <summary>An ellipse or elliptical arc (ELLIPSE).</summary>
/// <param name="Layer">Name of its layer.</param>
/// <param name="Center">Its centre.</param>
/// <param name="MajorAxis">Vector from the centre to an end of the longer axis; not zero.</param>
/// <param name="Ratio">Shorter axis over longer axis, above 0 and at most 1.</param>
public sealed record DxfEllipse(string Layer, DxfPoint Center, DxfPoint MajorAxis, double Ratio) : DxfEntity(Layer)
{
    /// <summary>Parameter of the start in degrees (0: at the end of the longer axis), counter-clockwise.</summary>
    public double StartParameter { get; init; }

    /// <summary>Parameter of the end in degrees; a full ellipse ends at 360.</summary>
    public double EndParameter { get; init; } = 360;
}

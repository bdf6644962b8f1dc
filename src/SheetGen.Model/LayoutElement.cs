namespace SheetGen.Model;

/// <summary>A piece of a layout line as the designer states it.</summary>
public abstract record LayoutElement
{
    /// <summary>A tangent of the given length.</summary>
    public sealed record Tangent(double Length) : LayoutElement;

    /// <summary>A circular arc: radius and length along it, both over 0; tangent to what comes before.</summary>
    public sealed record Arc(double Radius, double Length, Turn Turn) : LayoutElement;

    /// <summary>An angle point: deflection in degrees, over 0 and under 180.</summary>
    public sealed record Bend(Turn Turn, double Deflection) : LayoutElement;
}

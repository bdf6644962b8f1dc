namespace SheetGen.Model;

/// <summary>A piece of a layout line as the designer states it.</summary>
public abstract record LayoutElement
{
    /// <summary>A tangent of the given length.</summary>
    public sealed record Tangent(double Length) : LayoutElement;

    /// <summary>A circular arc: radius and length along it, both over 0; tangent to what comes before.</summary>
    public sealed record Arc(double Radius, double Length, Turn Turn) : LayoutElement;

    /// <summary>
    /// A spiral (clothoid), tangent to what comes before: its curvature changes evenly from one radius to the other over its length.
    /// An infinite radius is a straight end; both radii lie on the same side.
    /// </summary>
    public sealed record Spiral(double StartRadius, double EndRadius, double Length, Turn Turn) : LayoutElement;

    /// <summary>
    /// A change of direction in degrees, positive to the right, that is too small to be a corner: surveyed alignments have such between
    /// their pieces. The line goes on as one leg.
    /// </summary>
    public sealed record Kink(double Degrees) : LayoutElement;

    /// <summary>An angle point: deflection in degrees, over 0 and under 180.</summary>
    public sealed record Bend(Turn Turn, double Deflection) : LayoutElement;
}

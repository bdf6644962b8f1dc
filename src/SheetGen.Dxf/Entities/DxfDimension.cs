namespace SheetGen.Dxf;

/// <summary>A linear dimension (DIMENSION). Its text is the measured length unless it says otherwise; its picture is made by the writer.</summary>
/// <param name="Layer">Name of its layer.</param>
/// <param name="Kind">What is measured.</param>
/// <param name="From">First measured point.</param>
/// <param name="To">Second measured point.</param>
/// <param name="LinePoint">A point on the dimension line; by custom its end nearest <paramref name="To"/>.</param>
/// <param name="Angle">Direction measured along, degrees; 0 for an aligned dimension.</param>
public sealed record DxfDimension(
    string Layer, DxfDimensionKind Kind, DxfPoint From, DxfPoint To, DxfPoint LinePoint, double Angle = 0) : DxfEntity(Layer)
{
    /// <summary>Name of a dimension style of the document.</summary>
    public string Style { get; init; } = "Standard";

    /// <summary>The text in place of the measured length, which stands in it where it says &lt;&gt;; null for the measured length.</summary>
    public string? Words { get; init; }

    /// <summary>The middle of the text where it is not to stand in its usual place.</summary>
    public DxfPoint? TextPoint { get; init; }

    /// <summary>The measured length in drawing units, 0 or more.</summary>
    public double Measurement
    {
        get
        {
            var span = To - From;
            return Kind == DxfDimensionKind.Aligned ? span.Length : Math.Abs(span.Rotated(-Angle).X);
        }
    }

    /// <summary>A dimension of the distance between two different points.</summary>
    /// <param name="layer">Name of its layer.</param>
    /// <param name="from">First point.</param>
    /// <param name="to">Second point.</param>
    /// <param name="offset">Distance of the dimension line from the points, above 0 to the left of the way from first to second.</param>
    public static DxfDimension Aligned(string layer, DxfPoint from, DxfPoint to, double offset)
    {
        var span = to - from;
        var left = new DxfPoint(-span.Y, span.X) * (offset / span.Length);
        return new(layer, DxfDimensionKind.Aligned, from, to, to + left);
    }

    /// <summary>A dimension of the distance between two points along a direction.</summary>
    /// <param name="layer">Name of its layer.</param>
    /// <param name="from">First point.</param>
    /// <param name="to">Second point.</param>
    /// <param name="through">Any point on the dimension line.</param>
    /// <param name="angle">Direction in degrees; 0 measures along X, 90 along Y.</param>
    public static DxfDimension Rotated(string layer, DxfPoint from, DxfPoint to, DxfPoint through, double angle)
    {
        var along = (to - through).Rotated(-angle).X;
        return new(layer, DxfDimensionKind.Rotated, from, to, through + new DxfPoint(along, 0).Rotated(angle), angle);
    }
}

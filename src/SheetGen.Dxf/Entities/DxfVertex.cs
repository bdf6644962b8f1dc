namespace SheetGen.Dxf;

/// <summary>A corner of a polyline or hatch boundary.</summary>
/// <param name="Point">Where it is.</param>
/// <param name="Bulge">Tangent of a quarter of the angle of the arc to the next corner, above 0 counter-clockwise; 0: a straight line.</param>
public readonly record struct DxfVertex(DxfPoint Point, double Bulge = 0)
{
    /// <summary>A corner followed by a straight line.</summary>
    public static implicit operator DxfVertex(DxfPoint point) => new(point);
}

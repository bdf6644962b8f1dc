namespace SheetGen.Dxf;

/// <summary>Which family of linetypes and hatch patterns a drawing uses (<c>$MEASUREMENT</c>).</summary>
public enum DxfMeasurement
{
    Imperial = 0,
    Metric = 1,
}

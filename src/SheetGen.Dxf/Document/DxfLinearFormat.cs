namespace SheetGen.Dxf;

/// <summary>How a measured length is written (<c>DIMLUNIT</c>).</summary>
public enum DxfLinearFormat
{
    /// <summary>A decimal number: <c>12.50</c>.</summary>
    Decimal = 2,

    /// <summary>Feet and decimal inches, the measured value being inches: <c>12'-6.00"</c>.</summary>
    Engineering = 3,

    /// <summary>Feet, inches and fractions, the measured value being inches: <c>12'-6 1/2"</c>.</summary>
    Architectural = 4,
}

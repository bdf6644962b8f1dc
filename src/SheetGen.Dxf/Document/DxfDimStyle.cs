namespace SheetGen.Dxf;

/// <summary>A dimension style. Lengths are paper sizes, multiplied by <see cref="Scale"/> when drawn.</summary>
/// <param name="Name">Its name.</param>
public sealed record DxfDimStyle(string Name) : IDxfNamed
{
    /// <summary>Factor on all sizes below (<c>DIMSCALE</c>), above 0: drawing units for each paper unit.</summary>
    public double Scale { get; init; } = 1;

    /// <summary>Text height (<c>DIMTXT</c>), above 0.</summary>
    public double TextHeight { get; init; } = 2.5;

    /// <summary>Length of an arrowhead (<c>DIMASZ</c>).</summary>
    public double ArrowSize { get; init; } = 2.5;

    /// <summary>Size of oblique strokes instead of arrowheads (<c>DIMTSZ</c>); 0: arrowheads.</summary>
    public double TickSize { get; init; }

    /// <summary>Gap from the measured point to its extension line (<c>DIMEXO</c>).</summary>
    public double ExtensionOffset { get; init; } = 0.625;

    /// <summary>Length of an extension line beyond the dimension line (<c>DIMEXE</c>).</summary>
    public double ExtensionBeyond { get; init; } = 1.25;

    /// <summary>Gap between text and dimension line (<c>DIMGAP</c>).</summary>
    public double TextGap { get; init; } = 0.625;

    /// <summary>Text above the dimension line (<c>DIMTAD</c> 1) rather than in a break of it.</summary>
    public bool TextAbove { get; init; } = true;

    /// <summary>Name of the text style (<c>DIMTXSTY</c>).</summary>
    public string TextStyle { get; init; } = "Standard";

    /// <summary>How the length is written (<c>DIMLUNIT</c>).</summary>
    public DxfLinearFormat Format { get; init; } = DxfLinearFormat.Decimal;

    /// <summary>Decimal places, or for <see cref="DxfLinearFormat.Architectural"/> the power of two of the smallest fraction (4: sixteenths); 0 to 8 (<c>DIMDEC</c>).</summary>
    public int Precision { get; init; } = 2;

    /// <summary>Factor on the measured length before it is written (<c>DIMLFAC</c>), above 0; 12 writes drawing feet as feet and inches.</summary>
    public double MeasureFactor { get; init; } = 1;

    /// <summary>Text around the number, the number being <c>&lt;&gt;</c> (<c>DIMPOST</c>), for example <c>&lt;&gt;'</c>; empty: the number alone.</summary>
    public string Affix { get; init; } = "";

    /// <summary>Whether zeros at the end of a decimal number are left out (<c>DIMZIN</c> 8).</summary>
    public bool TrimZeros { get; init; }
}

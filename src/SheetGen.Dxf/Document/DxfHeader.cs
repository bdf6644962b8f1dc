namespace SheetGen.Dxf;

/// <summary>The settings of a drawing. Dimension variables of the header are written from <see cref="DimStyle"/>.</summary>
public sealed record DxfHeader
{
    /// <summary>Unit of model space (<c>$INSUNITS</c>).</summary>
    public DxfUnits Units { get; init; } = DxfUnits.Unitless;

    /// <summary>Imperial or metric (<c>$MEASUREMENT</c>); should agree with <see cref="Units"/>.</summary>
    public DxfMeasurement Measurement { get; init; } = DxfMeasurement.Metric;

    /// <summary>Extents of model space (<c>$EXTMIN</c>, <c>$EXTMAX</c>) and the view on opening; null: the writer measures the entities.</summary>
    public DxfExtents? Extents { get; init; }

    /// <summary>Factor on all linetype patterns (<c>$LTSCALE</c>); above 0.</summary>
    public double LinetypeScale { get; init; } = 1;

    /// <summary>Whether linetype patterns seen through a viewport are measured on paper (<c>$PSLTSCALE</c>).</summary>
    public bool PaperSpaceLinetypeScale { get; init; } = true;

    /// <summary>Decimal places of displayed lengths (<c>$LUPREC</c>), 0 to 8.</summary>
    public int LinearPrecision { get; init; } = 2;

    /// <summary>Current layer (<c>$CLAYER</c>).</summary>
    public string Layer { get; init; } = "0";

    /// <summary>Current text style (<c>$TEXTSTYLE</c>).</summary>
    public string TextStyle { get; init; } = "Standard";

    /// <summary>Current dimension style (<c>$DIMSTYLE</c>).</summary>
    public string DimStyle { get; init; } = "Standard";
}

namespace SheetGen.Dxf;

/// <summary>What a linear dimension measures.</summary>
public enum DxfDimensionKind
{
    /// <summary>The distance along a given direction.</summary>
    Rotated = 0,

    /// <summary>The distance from point to point.</summary>
    Aligned = 1,
}

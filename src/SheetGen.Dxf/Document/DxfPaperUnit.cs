namespace SheetGen.Dxf;

/// <summary>The unit of a layout's coordinates.</summary>
public enum DxfPaperUnit
{
    Inch = 0,
    Millimetre = 1,
}

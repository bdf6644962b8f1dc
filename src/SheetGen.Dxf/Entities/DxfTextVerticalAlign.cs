namespace SheetGen.Dxf;

/// <summary>Where the position of a text lies along its height.</summary>
public enum DxfTextVerticalAlign
{
    Baseline = 0,
    Bottom = 1,
    Middle = 2,
    Top = 3,
}

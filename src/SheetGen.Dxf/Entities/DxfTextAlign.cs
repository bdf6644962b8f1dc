namespace SheetGen.Dxf;

/// <summary>Where the position of a text lies along its width.</summary>
public enum DxfTextAlign
{
    Left = 0,
    Center = 1,
    Right = 2,
}

namespace SheetGen.Dxf;

/// <summary>Which point of a text box lies at its position.</summary>
public enum DxfAttachment
{
    TopLeft = 1,
    TopCenter = 2,
    TopRight = 3,
    MiddleLeft = 4,
    MiddleCenter = 5,
    MiddleRight = 6,
    BottomLeft = 7,
    BottomCenter = 8,
    BottomRight = 9,
}

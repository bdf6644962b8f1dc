namespace SheetGen.Drawing.Primitives;

/// <summary>Where a text's position lies along its width.</summary>
public enum HorizontalAlign
{
    Left,
    Center,
    Right,
}

namespace SheetGen.Model;

/// <summary>A side, looking up-station.</summary>
public enum Turn
{
    Left,
    Right,
}

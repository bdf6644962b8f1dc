namespace SheetGen.Model;

/// <summary>Kind of an obstruction, as named in the project file.</summary>
public enum ObstructionKind
{
    Shaft,
    Pile,
    Solid,
    Beam,
    Pipe,
    Boundary,
}

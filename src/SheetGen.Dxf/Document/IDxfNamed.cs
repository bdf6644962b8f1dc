namespace SheetGen.Dxf;

/// <summary>Something that other parts of a document refer to by name.</summary>
public interface IDxfNamed
{
    /// <summary>The name. Names differ only when they differ in more than case.</summary>
    string Name { get; }
}

using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Sheets;

/// <summary>One sheet of paper; the origin is its lower left corner, in millimetres.</summary>
/// <param name="Name">Short name, unique in the set: layout tab, page label and sheet number.</param>
/// <param name="Size">Standard name of the paper.</param>
public sealed record Sheet(
    string Name, string Title, string Size, double Width, double Height,
    IReadOnlyList<Viewport> Viewports, IReadOnlyList<Primitive> Paper)
{
    /// <summary>True where it shows a wall's plan or elevation, whatever the language of its title.</summary>
    public bool IsView { get; init; }
}

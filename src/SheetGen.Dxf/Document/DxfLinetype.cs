namespace SheetGen.Dxf;

/// <summary>A line pattern.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Description">What a list of linetypes shows, for example <c>Dashed __ __ __</c>.</param>
/// <param name="Pattern">Lengths in turn: above 0 a dash, below 0 a gap, 0 a dot; two or more, or none for an unbroken line; in drawing or paper units before the linetype scale.</param>
/// <remarks>ByBlock, ByLayer and Continuous are in every file and in no document's list.</remarks>
public sealed record DxfLinetype(string Name, string Description, DxfSequence<double> Pattern) : IDxfNamed
{
    /// <summary>The name of the unbroken line.</summary>
    public const string Continuous = "Continuous";

    /// <summary>Whether a name is one of the three that every file has.</summary>
    public static bool IsBuiltIn(string name) =>
        name.Equals(Continuous, StringComparison.OrdinalIgnoreCase)
        || name.Equals("ByLayer", StringComparison.OrdinalIgnoreCase)
        || name.Equals("ByBlock", StringComparison.OrdinalIgnoreCase);
}

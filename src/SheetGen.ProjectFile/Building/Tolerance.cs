namespace SheetGen.ProjectFile.Building;

/// <summary>Tolerances of the checks of the input.</summary>
internal static class Tolerance
{
    /// <summary>Lengths and stations nearer than this are the same.</summary>
    public const double Length = 1e-6;
}

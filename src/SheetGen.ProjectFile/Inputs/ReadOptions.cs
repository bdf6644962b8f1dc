namespace SheetGen.ProjectFile.Inputs;

/// <summary>What a reading may do.</summary>
/// <param name="AllowOutside">True where files that the project file names may lie outside of its folder.</param>
public sealed record ReadOptions(bool AllowOutside = false);

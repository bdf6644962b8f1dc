namespace SheetGen.Cli;

/// <summary>A finished output file, not yet on disk.</summary>
/// <param name="Name">File name within the output folder.</param>
public sealed record OutputFile(string Name, byte[] Content);

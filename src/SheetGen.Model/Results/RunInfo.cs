namespace SheetGen.Model.Results;

/// <summary>What a run of the program states of itself; made by the command line and handed on.</summary>
/// <param name="Version">The program's version.</param>
public sealed record RunInfo(string Version);

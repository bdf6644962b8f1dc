namespace SheetGen.Tests.Outside;

/// <summary>What a program answered.</summary>
public sealed record OutsideResult(int ExitCode, string Output, string Errors);

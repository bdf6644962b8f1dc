using SheetGen.Exchange;

namespace SheetGen.Cli;

/// <summary>What the user asks of a run beside its input and its folder.</summary>
/// <param name="Prove">Tighten the proof of how good the layout is.</param>
/// <param name="Json">Problems and findings as JSON.</param>
/// <param name="Picture">File for a picture of plan and elevation; null for none.</param>
/// <param name="Open">Open the results with the system's programs.</param>
public sealed record RunOptions(bool Prove, bool Json, string? Picture, bool Open)
{
    /// <summary>Open formats to be written beside the results.</summary>
    public IReadOnlyList<ExchangeFormat> Also { get; init; } = [];

    /// <summary>The files that are wanted; null for all. Everything is checked whatever is wanted.</summary>
    public IReadOnlyList<string>? Only { get; init; }

    /// <summary>True where files that the project file names may lie outside of its folder.</summary>
    public bool AllowOutside { get; init; }
}

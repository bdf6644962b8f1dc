namespace SheetGen.Model.Problems;

/// <summary>Something to say about the input: severity, stable code, text, place and what to do.</summary>
/// <param name="Code">Stable code such as R07, explained in docs/problems.md.</param>
/// <param name="Message">One line that says what is wrong, with the value met.</param>
/// <param name="Hint">What to do; may be empty.</param>
/// <param name="Other">A second place that belongs to the problem.</param>
public sealed record Problem(Severity Severity, string Code, string Message, SourceSpot Spot, string Hint = "", SourceSpot? Other = null);

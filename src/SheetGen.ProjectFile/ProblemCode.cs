using SheetGen.Model.Problems;

namespace SheetGen.ProjectFile;

/// <summary>A kind of problem with an input file: its stable code, weight, what it means and what to do.</summary>
public sealed record ProblemCode(string Code, Severity Severity, string Title, string Meaning, string Remedy);

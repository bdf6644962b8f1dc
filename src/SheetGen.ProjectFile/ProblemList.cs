using SheetGen.Model.Problems;

namespace SheetGen.ProjectFile;

/// <summary>Collects the problems of one reading.</summary>
internal sealed class ProblemList
{
    private readonly List<Problem> _problems = [];

    public bool HasErrors => _problems.Exists(p => p.Severity == Severity.Error);

    public void Add(ProblemCode code, SourceSpot spot, string message, string hint = "", SourceSpot? other = null) =>
        _problems.Add(new Problem(code.Severity, code.Code, message, spot, hint, other));

    /// <summary>All problems by file, line, column, code and message.</summary>
    public IReadOnlyList<Problem> Sorted() =>
    [
        .. _problems
            .OrderBy(p => p.Spot.File, StringComparer.Ordinal)
            .ThenBy(p => p.Spot.Line)
            .ThenBy(p => p.Spot.Column)
            .ThenBy(p => p.Code, StringComparer.Ordinal)
            .ThenBy(p => p.Message, StringComparer.Ordinal),
    ];
}

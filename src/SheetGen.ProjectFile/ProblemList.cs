using SheetGen.Model.Problems;

namespace SheetGen.ProjectFile;

/// <summary>Collects the problems of one reading.</summary>
internal sealed class ProblemList
{
    private const int Most = 1000;

    private readonly List<Problem> _problems = [];
    private readonly Dictionary<Severity, int> _counts = [];
    private readonly HashSet<(string Code, SourceSpot Spot, string Message)> _met = [];

    public bool HasErrors => _problems.Exists(p => p.Severity == Severity.Error);

    /// <summary>Adds a problem; beyond a thousand errors, or a thousand warnings, only the fact that there are more of them.</summary>
    public void Add(ProblemCode code, SourceSpot spot, string message, string hint = "", SourceSpot? other = null)
    {
        // One value may be read for several blocks, such as a default of all sections: its fault is one fault.
        if (!_met.Add((code.Code, spot, message)))
            return;
        int before = _counts.GetValueOrDefault(code.Severity);
        _counts[code.Severity] = before + 1;
        if (before < Most)
            _problems.Add(new Problem(code.Severity, code.Code, message, spot, hint, other));
        else if (before == Most)
            _problems.Add(new Problem(code.Severity, ProblemCodes.TooLarge.Code, code.Severity == Severity.Error ? "there are more problems than are shown" : "there are more warnings than are shown", spot));
    }

    /// <summary>All problems by file, line, column, code and message.</summary>
    public IReadOnlyList<Problem> Sorted() =>
    [
        .. _problems
            .OrderBy(p => p.Spot.File, StringComparer.Ordinal)
            .ThenBy(p => p.Spot.Sheet, StringComparer.Ordinal)
            .ThenBy(p => p.Spot.Line)
            .ThenBy(p => p.Spot.Column)
            .ThenBy(p => p.Code, StringComparer.Ordinal)
            .ThenBy(p => p.Message, StringComparer.Ordinal),
    ];
}

namespace SheetGen.Model.Results;

/// <summary>The figures that a layout is judged by, first to last: unresolved, noted, effort.</summary>
public sealed record LayoutScore(FoundAndBound Unresolved, FoundAndBound Noted, FoundAndBound Effort)
{
    /// <summary>Length of wall where the cover rule is broken, compared before all others; the least is known only where it is 0.</summary>
    public FoundAndBound Cover { get; init; } = new(0, 0);

    /// <summary>True where no better layout exists within the rules.</summary>
    public bool IsProvenBest =>
        Cover.Bound == Cover.Found && Unresolved.Bound == Unresolved.Found && Noted.Bound == Noted.Found && Effort.Bound == Effort.Found;
}

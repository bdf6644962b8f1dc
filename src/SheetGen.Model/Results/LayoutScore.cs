namespace SheetGen.Model.Results;

/// <summary>The figures that a layout is judged by, first to last: unresolved, noted, effort.</summary>
public sealed record LayoutScore(FoundAndBound Unresolved, FoundAndBound Noted, FoundAndBound Effort)
{
    /// <summary>True where no better layout exists within the rules.</summary>
    public bool IsProvenBest =>
        Unresolved.Bound == Unresolved.Found && Noted.Bound == Noted.Found && Effort.Bound == Effort.Found;
}

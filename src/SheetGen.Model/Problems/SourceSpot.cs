namespace SheetGen.Model.Problems;

/// <summary>A place in an input file; line and column count from 1.</summary>
public readonly record struct SourceSpot(string File, int Line, int Column, int Length = 1)
{
    public override string ToString() => FormattableString.Invariant($"{File}:{Line}:{Column}");
}

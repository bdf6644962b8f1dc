namespace SheetGen.Model.Problems;

/// <summary>A place in an input file; line and column count from 1. In a workbook they are the cell's row and column.</summary>
public readonly record struct SourceSpot(string File, int Line, int Column, int Length = 1)
{
    /// <summary>Sheet of a workbook; null in a text.</summary>
    public string? Sheet { get; init; }

    /// <summary>The cell in A1 form; null in a text.</summary>
    public string? Cell => Sheet is null ? null : FormattableString.Invariant($"{Letters(Column)}{Line}");

    /// <summary>file:line:column, or file:sheet!cell.</summary>
    public override string ToString() => Sheet is null ? FormattableString.Invariant($"{File}:{Line}:{Column}") : $"{File}:{Sheet}!{Cell}";

    private static string Letters(int column)
    {
        string letters = "";
        for (int c = column; c > 0; c = (c - 1) / 26)
            letters = (char)('A' + (c - 1) % 26) + letters;
        return letters;
    }
}

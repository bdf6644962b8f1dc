namespace SheetGen.Model.Results;

/// <summary>A column of the summary by section.</summary>
/// <param name="Key">What it holds; the name of a quantity where it is one.</param>
/// <param name="Head">What stands over it, with its unit.</param>
/// <param name="Decimals">Decimals of its figures; null for a column of words.</param>
/// <param name="Text">Text of a section's cell.</param>
/// <param name="Total">Text in the row of totals.</param>
public sealed record SummaryColumn(string Key, string Head, int? Decimals, Func<SectionQuantities, string> Text, string Total)
{
    public bool IsNumeric => Decimals is not null;
}

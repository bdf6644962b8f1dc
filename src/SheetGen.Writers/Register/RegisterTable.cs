using SheetGen.Model.Results;

namespace SheetGen.Writers.Register;

/// <summary>A table of the register as plain data, which every form of it prints.</summary>
/// <param name="Name">Name of the worksheet and of the table in formulas.</param>
/// <param name="Note">What a reader must know of it; may be empty.</param>
public sealed record RegisterTable(string Name, string Title, string Note, IReadOnlyList<RegisterColumn> Columns, IReadOnlyList<IReadOnlyList<RegisterCell>> Rows);

/// <param name="IsPrinted">False for a column that the PDF has no room for.</param>
public sealed record RegisterColumn(string Head, bool IsNumeric = false, bool IsPrinted = true);

/// <summary>A text, a number, or nothing.</summary>
/// <param name="Decimals">Decimals that are shown of a number.</param>
/// <param name="Link">File of the results that it leads to; null for none.</param>
public readonly record struct RegisterCell(string? Text, double? Number, int Decimals, string? Link)
{
    /// <summary>True for something that a person must look at.</summary>
    public bool IsWarning { get; init; }

    public static RegisterCell Of(string text, string? link = null) => new(text, null, 0, link);

    public static RegisterCell Of(double? number, int decimals = 0) => new(null, number, decimals, null);

    /// <summary>As it is printed.</summary>
    public string Shown => Text ?? PlainNumber.Fixed(Number, Math.Max(0, Decimals));

    /// <summary>As other programs read it: up to six decimals.</summary>
    public string Plain => Text ?? PlainNumber.Format(Number, Math.Max(0, Decimals), 6);

    public RegisterCell Warn(bool isWarning = true) => this with { IsWarning = isWarning };
}

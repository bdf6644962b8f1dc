namespace SheetGen.Model.Forms;

/// <summary>A sheet of the form that stands in place of a project file, as plain data.</summary>
/// <param name="About">What the sheet takes, one line.</param>
/// <param name="Rows">What is filled in, below the headings.</param>
/// <param name="Room">How many rows below the headings are laid out for filling in.</param>
public sealed record FormSheet(string Name, string About, IReadOnlyList<FormHead> Columns, IReadOnlyList<IReadOnlyList<FormCell>> Rows, int Room);

/// <summary>A column of a form.</summary>
/// <param name="Heading">The key that it stands for; this is what the form is read by.</param>
/// <param name="Takes">Kind of value, unit and range.</param>
/// <param name="Meaning">What it is, with default and example.</param>
/// <param name="Rule">What its cells take; null where each cell says it, or for what is only told.</param>
public sealed record FormHead(string Heading, string Takes, string Meaning, FormRule? Rule)
{
    /// <summary>False for a column that only tells something.</summary>
    public bool IsInput { get; init; } = true;
}

/// <summary>A cell of a form.</summary>
/// <param name="Content">What is filled in; null for nothing.</param>
/// <param name="IsNumber">True where the text is to be stored as a number.</param>
/// <param name="Rule">What it takes, where that is not told by its column.</param>
public readonly record struct FormCell(string? Content, bool IsNumber = false, FormRule? Rule = null)
{
    /// <summary>What is filled in; empty for nothing.</summary>
    public string Text => Content ?? "";
}

/// <summary>What a cell takes, and the hint that shows when it is chosen.</summary>
/// <param name="IsText">True where a spreadsheet would make a date or a time of what is typed, so that the cell is to hold text.</param>
/// <param name="OnlyNumber">True where the value has no other spelling than a number.</param>
/// <param name="IsWhole">True for whole numbers.</param>
public sealed record FormRule(string Title, string Hint, IReadOnlyList<string> Choices, FormRange? Feet, FormRange? Metres, bool IsText, bool OnlyNumber, bool IsWhole);

/// <summary>The least and the greatest number that a cell takes.</summary>
public sealed record FormRange(double Least, bool LeastIncluded, double Most, bool MostIncluded, string Words);

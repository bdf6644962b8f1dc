namespace SheetGen.Writers.Workbook;

/// <summary>What a user may enter in cells: a number between two limits or one of some words; or nothing.</summary>
/// <param name="Message">What is said where something else is entered.</param>
/// <param name="Words">The words, with commas between; empty for a number.</param>
/// <param name="IsPrompted">True where the message is shown as soon as the cell is chosen.</param>
internal readonly record struct InputRule(
    string Cells, double Least, double Greatest, string Message, string Words = "", bool IsPrompted = true)
{
    /// <summary>A formula that is true for what may be entered, in place of the limits; null for none.</summary>
    public string? Formula { get; init; }

    /// <summary>Head of the prompt.</summary>
    public string Title { get; init; } = "Your value";

    /// <summary>What is shown as soon as the cell is chosen; the message where none is given.</summary>
    public string? Prompt { get; init; }
}

namespace SheetGen.Model.PayItems;

/// <summary>A pay item of an agency.</summary>
/// <param name="Unit">Unit of measure for the project's length unit.</param>
/// <param name="Quantity">Expression over the names of measured quantities.</param>
/// <param name="Measured">How it is measured, in words.</param>
/// <param name="Subsidiary">What is included in the item and not paid by itself.</param>
public sealed record PayItem(
    string Number, string Description, string Unit, PayExpression Quantity, PayRounding Rounding, string Measured,
    IReadOnlyList<string> Subsidiary);

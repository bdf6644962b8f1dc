using SheetGen.Model.Problems;

namespace SheetGen.Model.PayItems;

/// <summary>A pay item of an agency.</summary>
/// <param name="Unit">Unit of measure for the project's length unit.</param>
/// <param name="Quantity">Expression over the names of measured quantities.</param>
/// <param name="Measured">How it is measured, in words.</param>
/// <param name="Subsidiary">What is included in the item and not paid by itself.</param>
public sealed record PayItem(
    string Number, string Description, string Unit, PayExpression Quantity, PayRounding Rounding, string Measured,
    IReadOnlyList<string> Subsidiary)
{
    /// <summary>Factor on the expression where the item asks for a conversion from project units to its own; 1 elsewhere.</summary>
    public double Factor { get; init; } = 1;

    /// <summary>Where its quantity stands in the pay item file.</summary>
    public SourceSpot Spot { get; init; }
}

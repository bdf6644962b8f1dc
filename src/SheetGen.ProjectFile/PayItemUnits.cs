using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.ProjectFile;

/// <summary>
/// Whether a pay item's unit fits what its expression measures. Nothing is converted unless the item says so: by <c>convert: true</c>,
/// or by a number in its expression (/ 27 for CY).
/// </summary>
internal static class PayItemUnits
{
    /// <summary>The item with its conversion; what does not fit is reported.</summary>
    /// <param name="spot">Place of the item's unit.</param>
    public static PayItem Checked(
        PayItem item, bool convert, SourceSpot spot, IReadOnlyDictionary<string, QuantityDefinition> known, LengthUnit unit, ProblemList problems)
    {
        Dimension? measured = item.Quantity.DimensionOf(r => Dimension.OfUnit(known[r.Name].Unit), out PayExpressionFault? fault);
        if (fault is null)
            item.Quantity.Evaluate(_ => null, out fault);
        if (measured is not { } dimension || fault is not null)
        {
            problems.Add(ProblemCodes.PayItem, item.Spot, $"quantity \"{item.Quantity.Text}\": {fault!.Message}", fault.Hint);
            return item;
        }
        if (PayUnit.Find(item.Unit) is not { } own)
        {
            problems.Add(ProblemCodes.PayUnit, spot, $"the unit \"{item.Unit}\" is not known, so that it is not checked against the quantity", "known are " + PayUnit.Known);
            return item;
        }
        // A plain number stands for whatever the item's unit says.
        bool isPlain = item.Quantity.References.Count == 0 && dimension == Dimension.None;
        if (!isPlain && own.Dimension != dimension)
            problems.Add(ProblemCodes.PayItem, spot, $"item {item.Number}: the unit {item.Unit} is {own.Dimension}, the quantity \"{item.Quantity.Text}\" is {dimension}", "give the unit that the quantity has, or another quantity");
        else if (convert)
            return item with { Factor = own.From(unit) };
        else if (!own.Fits(unit))
            problems.Add(ProblemCodes.PayItem, spot, $"item {item.Number}: the unit {item.Unit} does not belong to a project in {Lengths.Symbol(unit)}", "give unit_metric and quantity_metric (or unit), or convert: true");
        else if (own.Size != 1 && !isPlain && !Converts(item.Quantity, own.Size))
            problems.Add(ProblemCodes.PayItem, spot, FormattableString.Invariant($"item {item.Number}: {item.Unit} is {own.Size} of the units of \"{item.Quantity.Text}\""), FormattableString.Invariant($"write / {own.Size} in the expression, or convert: true"));
        return item;
    }

    /// <summary>True where the number of the conversion, or factors that make it up, stand in the expression.</summary>
    private static bool Converts(PayExpression quantity, double size) =>
        quantity.Numbers.Any(n => Math.Abs(n - size) < 1e-9 * size || Math.Abs(n * size - 1) < 1e-3)
        || Math.Abs(quantity.Numbers.Aggregate(1.0, (a, b) => a * b) / size - 1) < 1e-3;
}

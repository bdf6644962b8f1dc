namespace SheetGen.Model.Results;

/// <summary>What a quantity is.</summary>
/// <param name="Name">Stable name that pay item expressions use, such as pay_length.</param>
/// <param name="Text">What it is, in words.</param>
/// <param name="Unit">Unit as printed: ft, ft2, ft3, lb, m, m2, m3, kg or each.</param>
/// <param name="Basis">How it is measured.</param>
public sealed record QuantityDefinition(string Name, string Text, string Unit, string Basis);

namespace SheetGen.Model.Results;

/// <summary>A main quantity reached in a second way.</summary>
/// <param name="Name">Name of the quantity.</param>
/// <param name="First">As measured.</param>
/// <param name="Second">As reached the second way; null where what it needs is missing.</param>
/// <param name="Way">What the second way is.</param>
/// <param name="Limit">Share of the first by which the two may differ.</param>
public sealed record CheckLine(string Name, string Text, string Unit, double First, double? Second, string Way, double Limit);

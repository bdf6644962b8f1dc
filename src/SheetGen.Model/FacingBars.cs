namespace SheetGen.Model;

/// <summary>Bars of a facing that run together.</summary>
/// <param name="Count">Number of bars, 1 or more.</param>
/// <param name="Area">Cross section of all of them, in2 or mm2 by the project's unit.</param>
public sealed record FacingBars(int Count, Bar Bar, double Area);

namespace SheetGen.Model.Results;

/// <summary>A grid station that the layout leaves without a nail.</summary>
public sealed record LeftOut(string Mark, Wall Wall, Section Section, RowNumber Row, int Column, double Along, double Elevation, string Reason);

namespace SheetGen.Model.Results;

/// <summary>A grid place without a nail: the area that it would carry, and the nails that carry more than on the grid around it.</summary>
/// <param name="Area">Area of its cell on the grid.</param>
/// <param name="Carriers">Nails beside it with what their area has grown by, greatest first.</param>
public sealed record SharedArea(LeftOut Place, double Area, IReadOnlyList<(string Mark, double Growth)> Carriers);

namespace SheetGen.Model.Results;

/// <summary>One lift of the excavation on one leg of a section: what a crew cuts at once, for a row or to the bottom.</summary>
/// <param name="Number">From 1, downward.</param>
/// <param name="Row">The lowest row that it is cut for; null for the last cut to the bottom.</param>
/// <param name="BelowRow">How far the cut goes below its row; the program's own default where the project file gives none.</param>
/// <param name="CutArea">Face area laid open, along the face.</param>
/// <param name="Exposed">Greatest height of face left open.</param>
/// <param name="Limit">Greatest height allowed; null where not given.</param>
/// <param name="Volume">Soil cut in front, on its true path in plan; null where no cross sections are given.</param>
public sealed record ExcavationLift(
    Wall Wall, Section Section, int Number, RowNumber? Row, double Start, double End, double BelowRow, double CutArea, double Exposed, double? Limit,
    double? Volume)
{
    /// <summary>Index of the leg of the wall's face.</summary>
    public int Leg { get; init; }

    /// <summary>All rows that are drilled from it, part rows included.</summary>
    public IReadOnlyList<RowNumber> Rows { get; init; } = [];

    /// <summary>The face that it lays open, as closed rings of (along the layout line, elevation), openings as rings of their own.</summary>
    public IReadOnlyList<IReadOnlyList<ProfilePoint>> Outline { get; init; } = [];

    /// <summary>Its lower edge, left to right, as (along the layout line, elevation).</summary>
    public IReadOnlyList<ProfilePoint> LowerEdge { get; init; } = [];

    /// <summary>True where the face left open is higher than allowed, by more than a millionth.</summary>
    public bool IsTooHigh => Exposed > Limit + 1e-6;
}

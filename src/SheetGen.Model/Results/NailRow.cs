namespace SheetGen.Model.Results;

/// <summary>A row of a section on one leg, made from the profile and the grid before anything is searched.</summary>
/// <param name="Leg">Index of the leg of the wall's face.</param>
/// <param name="IsLevel">True where <paramref name="Level"/> is an elevation; false where it is a depth below the top.</param>
/// <param name="Level">Elevation, or depth below the top.</param>
/// <param name="Length">Nail length in this row.</param>
/// <param name="GridStations">Distances along the layout line of its grid stations, in order.</param>
public sealed record NailRow(
    Wall Wall, Section Section, int Leg, RowNumber Number, bool IsLevel, double Level, double Length, IReadOnlyList<double> GridStations)
{
    /// <summary>Elevation of the row at a place, rounded to the quantum of the project by the caller.</summary>
    public double ElevationAt(double along) => IsLevel ? Level : Wall.Top.At(along) - Level;
}

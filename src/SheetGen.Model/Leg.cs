namespace SheetGen.Model;

/// <summary>A stretch of a wall's face between two corners, or a corner and an end.</summary>
/// <param name="Index">Number of the leg, from 0, up-station.</param>
/// <param name="StartCorner">The corner where it starts; null at the wall's start.</param>
/// <param name="EndCorner">The corner where it ends; null at the wall's end.</param>
public sealed record Leg(int Index, double Start, double End, Corner? StartCorner, Corner? EndCorner)
{
    /// <summary>True where a place belongs to the leg; a corner's own place belongs to the leg that starts there.</summary>
    public bool Has(double along) =>
        along >= Start && (along < End || (EndCorner is null && along <= End));
}

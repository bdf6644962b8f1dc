namespace SheetGen.Model.Results;

/// <summary>What one nail takes. Project units; weight in lb (feet) or kg (metres).</summary>
/// <param name="ShotcreteAlong">Thickness of the temporary shotcrete along the bar; 0 where no thickness is given.</param>
/// <param name="PayLength">Length that is paid, by the project's rule.</param>
/// <param name="BarLength">Cut length: from the back of the hole to the end of the projection.</param>
/// <param name="UnitWeight">Published nominal weight per length, or the project file's own; null where neither is given.</param>
/// <param name="BarArea">Published nominal cross section.</param>
/// <param name="Area">Voronoi cell of the head on the face; null for a verification test nail.</param>
/// <param name="Centralizers">Number of centralizers; null where no spacing is given.</param>
public sealed record NailQuantity(
    Nail Nail, double ShotcreteAlong, double PayLength, double Projection, double BarLength, double? UnitWeight, double BarArea,
    double? Area, int? Centralizers)
{
    /// <summary>Length less the shotcrete, along the bar.</summary>
    public double LengthFromBack => Nail.Length - ShotcreteAlong;

    public double? Weight => BarLength * UnitWeight;

    /// <summary>Volume of the hole from the face to its back.</summary>
    public double HoleVolume => Math.PI * Nail.HoleDiameter * Nail.HoleDiameter / 4 * Nail.Length;

    /// <summary>Volume of the bar inside the hole.</summary>
    public double BarVolume => BarArea * Nail.Length;

    /// <summary>Theoretical grout: hole less bar.</summary>
    public double Grout => HoleVolume - BarVolume;

    public bool IsSacrificial => Nail.Kind == NailKind.Verification;
}

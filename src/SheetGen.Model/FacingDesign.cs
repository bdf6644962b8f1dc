namespace SheetGen.Model;

/// <summary>
/// A facing as the engineer reckons with it. Lengths in project units; strengths in psi (concrete) and ksi (steel), in metres MPa;
/// steel per width in in2/ft or mm2/m, each way; null where not given.
/// </summary>
public sealed record FacingDesign
{
    public double? Thickness { get; init; }

    public double? ConcreteStrength { get; init; }

    /// <summary>Depth from the compressed side to the steel.</summary>
    public double? SteelDepth { get; init; }

    public double? Mesh { get; init; }

    public double? MeshYield { get; init; }

    /// <summary>Horizontal waler bars at a row.</summary>
    public FacingBars? Walers { get; init; }

    /// <summary>Vertical bearing bars at a head.</summary>
    public FacingBars? BearingBars { get; init; }

    /// <summary>Yield strength of waler and bearing bars.</summary>
    public double? BarYield { get; init; }

    /// <summary>C_F: how much more the facing bears because earth pressure gathers at the heads.</summary>
    public double? PressureFactor { get; init; }

    /// <summary>C_S: the soil's reaction under the head in punching; null where it is left out of account.</summary>
    public double? SoilReaction { get; init; }
}

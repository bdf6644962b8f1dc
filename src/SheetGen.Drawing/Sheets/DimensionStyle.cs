namespace SheetGen.Drawing.Sheets;

/// <summary>Sizes of dimensions in one scale.</summary>
/// <param name="Scale">Drawing units per millimetre of paper.</param>
/// <param name="TextHeight">On paper, mm.</param>
/// <param name="Decimals">Of the measured length.</param>
/// <param name="Suffix">After the number.</param>
public sealed record DimensionStyle(string Name, double Scale, double TextHeight, int Decimals, string Suffix)
{
    /// <summary>True for the style of what stands on the paper itself; its scale is 1.</summary>
    public bool IsPaper { get; init; }

    /// <summary>Factor on the measured length before it is written: 12 writes drawing feet as inches.</summary>
    public double Factor { get; init; } = 1;

    /// <summary>True where its lines end in arrowheads, as long as those of leaders, instead of ticks: in plan ticks would leave them alike to nails.</summary>
    public bool HasArrows { get; init; }

    /// <summary>Of a line between two points on the paper: true where it is too short for two arrowheads, which then stand outside on tails.</summary>
    public static bool PointsInward(double millimetres) => millimetres < 2.5 * Primitives.Leader.PaperArrow;

    /// <summary>Length of the tail of an arrowhead that stands outside, mm.</summary>
    public const double Tail = 2 * Primitives.Leader.PaperArrow;

    /// <summary>True where zeros at the end of the decimals are left out.</summary>
    public bool HidesZeros { get; init; }

    public const double TickSize = 1.0;
    public const double ExtensionOffset = 0.4;
    public const double ExtensionBeyond = 0.6;
    public const double TextGap = 0.5;
}

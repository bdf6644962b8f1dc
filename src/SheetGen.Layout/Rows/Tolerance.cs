using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>
/// The tolerances that rows, grid, checks and all rooms after them share, each with its reason; a room has its own beside it where the reason is
/// another. Clear distances have none but rounding: they are computed, not set out.
/// </summary>
internal static class Tolerance
{
    /// <summary>What sums and quotients of doubles of a wall's size may differ by, with room to spare: nothing that could be set out. Also as a share.</summary>
    public const double Rounding = 1e-9;

    /// <summary>Decimals of figures that are equal but for rounding.</summary>
    public const int RoundingDecimals = 9;

    /// <summary>Levels, places and lengths of wall nearer than this are one: far under the quantum that they are rounded to, far over rounding.</summary>
    public const double SameLength = 1e-6;

    /// <summary>Decimals of lengths, turns and amounts that are ordered, compared or printed: what is one but for rounding is equal, in any coordinates.</summary>
    public const int Decimals = 6;

    /// <summary>Metres that coordinates of thousands of kilometres keep through a change of axes and unit, with room to spare.</summary>
    public const double LargeCoordinates = 1e-6;

    /// <summary>Two reaches or spacings and a little over: on a slope or a bend what stands two away is a little further off.</summary>
    public const double TwoAway = 2.1;

    /// <summary>Spacings between two neighbours of a row over which a grid station between them has no nail: half way from one to two.</summary>
    public const double BrokenRun = 1.5;

    /// <summary>The rules of rows are tested with two quanta: two heads, each rounded by half a quantum in station and elevation, on a slope.</summary>
    public static double Checked(LengthUnit unit) => 2 * Lengths.Quantum(unit) + Rounding;

    /// <summary>Placing allows a little over one quantum, what its own rounding needs: so nothing that it places fails the check.</summary>
    public static double Placed(LengthUnit unit) => 1.2 * Lengths.Quantum(unit) + Rounding;
}

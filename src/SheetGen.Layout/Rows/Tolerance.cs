using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>The tolerances of rows, grid and checks, each with its reason. Clear distances have none but rounding: they are computed, not set out.</summary>
internal static class Tolerance
{
    /// <summary>What sums of doubles of a wall's size may differ by, with room to spare: nothing that could be set out.</summary>
    public const double Rounding = 1e-9;

    /// <summary>Levels and places nearer than this are one: far under the quantum that they are rounded to, far over rounding.</summary>
    public const double SameLength = 1e-6;

    /// <summary>The rules of rows are tested with two quanta: two heads, each rounded by half a quantum in station and elevation, on a slope.</summary>
    public static double Checked(LengthUnit unit) => 2 * Lengths.Quantum(unit) + Rounding;

    /// <summary>Placing allows a little over one quantum, what its own rounding needs: so nothing that it places fails the check.</summary>
    public static double Placed(LengthUnit unit) => 1.2 * Lengths.Quantum(unit) + Rounding;
}

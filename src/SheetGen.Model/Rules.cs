using SheetGen.Model.Units;

namespace SheetGen.Model;

/// <summary>
/// The rules of a layout. 2.5 ft (top), 3 ft (bottom), 10 degrees (field tolerance) and 6 in (bar projection) are common practice,
/// no source; the other defaults are this program's own.
/// </summary>
public sealed record Rules
{
    public required double ObstructionClearance { get; init; }

    public required double NailClearance { get; init; }

    public required double BoundaryClearance { get; init; }

    /// <summary>Greatest depth of the highest nail below the top.</summary>
    public required double TopMax { get; init; }

    /// <summary>Greatest height of the lowest nail above the bottom.</summary>
    public required double BottomMax { get; init; }

    public required double MinGap { get; init; }

    /// <summary>Greatest gap beside a moved nail; null means the section's horizontal spacing.</summary>
    public double? MovedGapMax { get; init; }

    public required double CornerClear { get; init; }

    public required double EdgeMin { get; init; }

    public required double ShiftStep { get; init; }

    public required double BarProjection { get; init; }

    public required double LengthIncrement { get; init; }

    /// <summary>Growth of a hole's radius per length.</summary>
    public required double Drift { get; init; }

    public required RedirectRules Redirect { get; init; }

    /// <summary>What is done about nail heads below the finished grade.</summary>
    public HeadsBelowGrade HeadsBelowGrade { get; init; } = HeadsBelowGrade.Warn;

    /// <summary>Keys (dotted, as in the project file below rules) that stand at their default.</summary>
    public IReadOnlySet<string> Defaulted { get; init; } = new HashSet<string>();

    /// <summary>All rules at their defaults for a unit.</summary>
    public static Rules Default(LengthUnit unit)
    {
        bool metric = unit == LengthUnit.Metre;
        return new Rules
        {
            ObstructionClearance = metric ? 0.15 : 0.5,
            NailClearance = metric ? 0.15 : 0.5,
            BoundaryClearance = metric ? 0.3 : 1,
            TopMax = metric ? 0.75 : 2.5,
            BottomMax = metric ? 0.9 : 3,
            MinGap = metric ? 0.6 : 2,
            CornerClear = metric ? 0.3 : 1,
            EdgeMin = metric ? 0.3 : 1,
            ShiftStep = metric ? 0.05 : 0.25,
            BarProjection = metric ? 0.15 : 0.5,
            LengthIncrement = metric ? 0.5 : 1,
            Drift = 0,
            Redirect = new RedirectRules(10, 1, 30, 5, 25, true),
        };
    }

    /// <summary>The clearance that a hole keeps to an obstruction of a kind.</summary>
    public double ClearanceTo(ObstructionKind kind) =>
        kind == ObstructionKind.Boundary ? BoundaryClearance : ObstructionClearance;
}

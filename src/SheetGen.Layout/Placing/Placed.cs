using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>A nail as the search has placed it.</summary>
/// <param name="Turning">Its direction, one of the choice's.</param>
/// <param name="IsUnresolved">True where it stands at its grid place in the grid's direction although something is too close.</param>
public sealed record Placed(RowTask Row, HeadChoice Choice, Turning Turning, bool IsUnresolved, Hole Hole)
{
    public static Cost Unresolving { get; } = new(1, 0, 0, 0, 0);

    public static Placed At(RowTask row, HeadChoice choice, Turning turning, bool isUnresolved) =>
        new(row, choice, turning, isUnresolved, row.HoleOf(choice, turning));

    /// <summary>True for a nail at its grid place in the grid's direction.</summary>
    public bool IsPlain => Choice.IsAtGrid && Turning.IsStraight && !IsUnresolved;

    /// <summary>What the nail itself costs, without what lies between it and its neighbours.</summary>
    public Cost Cost => CostOf(Row, Choice, Turning, IsUnresolved);

    public static Cost CostOf(RowTask row, HeadChoice choice, Turning turning, bool isUnresolved) =>
        OfPlace(row, choice) + turning.Cost + (isUnresolved ? Unresolving : default);

    /// <summary>What a nail at a place costs in the grid's direction.</summary>
    public static Cost OfPlace(RowTask row, HeadChoice choice) => new(
        0, 0, choice.IsAtGrid ? 0 : 2 * Placing.Cost.Point, 1, (long)Math.Round(Math.Abs(choice.Shift) / row.Quantum));

    /// <summary>What leaving out so many grid stations costs.</summary>
    public static Cost LeavingOut(int stations) => new(0, 0, 3L * stations * Placing.Cost.Point, 0, 0);
}

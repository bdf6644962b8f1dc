using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>A nail as the search has placed it; two are the same only where they are one object.</summary>
internal sealed class Placed
{
    private readonly Hole _hole;

    /// <param name="turning">Its direction, one of the choice's.</param>
    /// <param name="isUnresolved">True where it stands at its grid place in the grid's direction although something is too close.</param>
    public Placed(RowTask row, HeadChoice choice, Turning turning, bool isUnresolved, in Hole hole)
    {
        Row = row;
        Choice = choice;
        Turning = turning;
        IsUnresolved = isUnresolved;
        SlotNumber = row.FirstSlot + choice.Ordinal;
        Cost = CostOf(row, choice, turning, isUnresolved);
        _hole = hole;
        Box = Bounds.Of(hole);
    }

    public RowTask Row { get; }

    public HeadChoice Choice { get; }

    /// <summary>Number of the slot that it stands for.</summary>
    public int SlotNumber { get; }

    public Turning Turning { get; }

    public bool IsUnresolved { get; }

    public ref readonly Hole Hole => ref _hole;

    /// <summary>Box around its hole.</summary>
    public Bounds Box { get; }

    /// <summary>What the nail itself costs, without what lies between it and its neighbours.</summary>
    public Cost Cost { get; }

    /// <summary>True for a nail at its grid place in the grid's direction.</summary>
    public bool IsPlain => Choice.IsAtGrid && Turning.IsStraight && !IsUnresolved;

    /// <summary>What an unresolved nail costs.</summary>
    public static Cost Unresolving { get; } = new(1, 0, 0, 0, 0);

    public static Placed At(RowTask row, HeadChoice choice, Turning turning, bool isUnresolved) =>
        new(row, choice, turning, isUnresolved, row.HoleOf(choice, turning));

    /// <summary>The grid's nail at a grid station, left as it is.</summary>
    public static Placed Unresolved(RowTask row, int ordinal)
    {
        HeadChoice grid = row.GridChoice(ordinal);
        return At(row, grid, grid.Turnings[0], true);
    }

    public static Cost CostOf(RowTask row, HeadChoice choice, Turning turning, bool isUnresolved) =>
        OfPlace(row, choice) + turning.Cost + (isUnresolved ? Unresolving : default);

    /// <summary>What a nail at a place costs in the grid's direction.</summary>
    public static Cost OfPlace(RowTask row, HeadChoice choice) => new(
        0, 0, choice.IsAtGrid ? 0 : 2 * Placing.Cost.Point, 1, (long)Math.Round(Math.Abs(choice.Shift) / row.Quantum));

    /// <summary>What leaving out so many grid stations costs.</summary>
    public static Cost LeavingOut(int stations) => new(0, 0, 3L * stations * Placing.Cost.Point, 0, 0);
}

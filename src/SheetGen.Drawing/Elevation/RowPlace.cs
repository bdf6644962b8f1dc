namespace SheetGen.Drawing.Elevation;

/// <summary>Where the marks of a row stand about their heads.</summary>
/// <param name="Side">-1 below, 1 above, 0 beside.</param>
/// <param name="Shift">Along the row, in half widths of the mark; beside the head 1 for right and -1 for left.</param>
/// <param name="Cost">What this place costs a nail more than the one liked best.</param>
public sealed record RowPlace(int Side, double Shift, double Cost)
{
    private static readonly double[] Shifts = [0, 0.25, -0.25, 0.5, -0.5, 0.75, -0.75, 1, -1];

    /// <summary>Shifts at which a mark still stands on the row's side, the row's own first.</summary>
    public IReadOnlyList<double> ShiftsAlong { get; } = Side == 0 ? [Shift] : [Shift, .. Shifts.Where(s => s != Shift)];

    public bool IsSameSide(RowPlace other) => Side == other.Side && (Side != 0 || Shift == other.Shift);
}

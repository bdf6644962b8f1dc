namespace SheetGen.Layout.Rows;

/// <summary>Tolerances of the face's geometry along a row, each with its reason.</summary>
internal static class RowTolerance
{
    /// <summary>Share of a piece of the line that its last place keeps from the next piece, which starts there with another bend: under any rounding of places.</summary>
    public const double BeforeNextPiece = 1e-9;

    /// <summary>Least scale of a curved face: at the centre of a bend it is nothing, and a reach divided by it would have no end.</summary>
    public const double LeastScale = 1e-3;
}

namespace SheetGen.Model;

/// <summary>Names of the points where curves of a layout line begin and end, as the trade abbreviates them.</summary>
public static class CurvePoints
{
    /// <summary>
    /// PC and PT of an arc; TS, SC, CS, ST and SS where a spiral meets a tangent (T), an arc (C) or a spiral (S). The first is empty where
    /// the piece before is a spiral's neighbour too, so that the point has been named at that piece's end.
    /// </summary>
    public static (string Start, string End) Names(LayoutLine line, LayoutPiece piece)
    {
        int at = Enumerable.Range(0, line.Pieces.Count).First(i => ReferenceEquals(line.Pieces[i], piece));
        LayoutPiece? before = at == 0 ? null : line.Pieces[at - 1], after = at + 1 == line.Pieces.Count ? null : line.Pieces[at + 1];
        bool named = before is { IsCurved: true } && (before.IsSpiral || piece.IsSpiral);
        return (named ? "" : Name(before, piece, "PC"), Name(piece, after, "PT"));
    }

    private static string Name(LayoutPiece? before, LayoutPiece? after, string ofArc) =>
        before is { IsSpiral: true } || after is { IsSpiral: true } ? Letter(before) + Letter(after) : ofArc;

    private static string Letter(LayoutPiece? piece) => piece is null || !piece.IsCurved ? "T" : piece.IsSpiral ? "S" : "C";
}

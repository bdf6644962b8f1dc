namespace SheetGen.Layout.Placing;

/// <summary>Grid stations First to Last of a row.</summary>
internal readonly record struct StretchOfRow(RowTask Row, int First, int Last)
{
    public bool Holds(Placed nail) => nail.Row == Row && nail.Choice.Ordinal >= First && nail.Choice.Ordinal <= Last;
}

namespace SheetGen.Layout.Rows;

/// <summary>A row of one bay while it is made: its level and the places of its grid stations.</summary>
/// <param name="Columns">Places of all grid stations of its run, those included that the face cuts off; a part row has those of the bay at half height.</param>
/// <param name="GridRow">Number of the grid row, from 1; 0 for a part row.</param>
/// <param name="IsLevel">True where the level is an elevation; false where it is minus the depth below the top.</param>
internal sealed record RowHeads(Bay Bay, int GridRow, bool IsLevel, double Level, IReadOnlyList<Along> Columns, List<Along> Places)
{
    /// <summary>A grid row without nails, with the grid stations of its own run.</summary>
    public static RowHeads OfGrid(Bay bay, int gridRow, bool isLevel, double level)
    {
        var bare = new RowHeads(bay, gridRow, isLevel, level, [], []);
        return bare with { Columns = new GridStations(new RowRun(bay, bare.ElevationAt)).OfRow(gridRow) };
    }

    public bool IsPart => GridRow == 0;

    /// <summary>Elevation of a head of the row, rounded to the quantum.</summary>
    public Elevation ElevationAt(Along along) => (IsLevel ? new Elevation(Level) : Bay.Wall.Top.At(along) + Level).Rounded(Bay.Unit);

    public Head HeadAt(Along along) => new(along, ElevationAt(along));
}

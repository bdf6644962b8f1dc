using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Placing;

/// <summary>The grid stations of a row after the designer's hand: some are left out, some nails stand beside them.</summary>
/// <param name="Columns">Columns of the row's places, as printed in marks.</param>
/// <param name="LeftOut">Stations that are left without a nail.</param>
/// <param name="Added">Places that stand for no grid station.</param>
internal sealed record HandMadeStations(
    IReadOnlyList<ColumnName> Columns, IReadOnlyList<(Along Along, ColumnName Column)> LeftOut, IReadOnlySet<Along> Added)
{
    /// <summary>Takes stations out of the row and puts added places into it; other stations keep their columns.</summary>
    public static HandMadeStations Apply(WallProject project, RowHeads row, RowNumber number, IReadOnlyList<ColumnName> columns)
    {
        FixedNail[] pins = [.. project.FixedNails.Where(p => p.Kind != FixedKind.Nail && p.Along is { } along && Pins.Concerns(p, row, number)
            && Pins.IsIn(row.Bay, new Along(along)))];
        if (pins.Length == 0)
            return new HandMadeStations(columns, [], new HashSet<Along>());
        Along[] grid = [.. row.Places];
        List<ColumnName> names = [.. columns];
        var leftOut = new List<(Along, ColumnName)>();
        foreach (FixedNail pin in pins.Where(p => p.Kind == FixedKind.LeftOut && row.Places.Count > 0))
        {
            int at = NearestOf(row.Places, new Along(pin.Along!.Value));
            leftOut.Add((row.Places[at], names[at]));
            row.Places.RemoveAt(at);
            names.RemoveAt(at);
        }
        var added = new HashSet<Along>();
        foreach (FixedNail pin in pins.Where(p => p.Kind == FixedKind.Added).OrderBy(p => p.Along))
        {
            Along place = row.Bay.Rounded(new Along(pin.Along!.Value));
            if (row.Places.Contains(place))
                continue;
            ColumnName beside = columns[NearestOf(grid, place)];
            int at = ~row.Places.BinarySearch(place);
            int further = columns.Concat(names).Where(n => n.Number == beside.Number).Max(n => n.Further) + 1;
            row.Places.Insert(at, place);
            names.Insert(at, beside with { Further = further });
            added.Add(place);
        }
        return new HandMadeStations(names, leftOut, added);
    }

    private static int NearestOf(IReadOnlyList<Along> places, Along along) =>
        Enumerable.Range(0, places.Count).MinBy(i => Math.Abs(places[i] - along));
}

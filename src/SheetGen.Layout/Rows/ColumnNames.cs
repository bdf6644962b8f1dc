using SheetGen.Model;

namespace SheetGen.Layout.Rows;

/// <summary>
/// Column numbers of grid stations as printed in marks. Columns count over the legs of a section, up-station; a grid row's station
/// has its own column, a part row's the nearest column of the square grid (with a letter where two share it).
/// </summary>
public sealed class ColumnNames
{
    private readonly GridStations _grid;
    private readonly int _squareBefore;
    private readonly int _staggeredBefore;

    private ColumnNames(GridStations grid, int squareBefore, int staggeredBefore)
    {
        _grid = grid;
        _squareBefore = squareBefore;
        _staggeredBefore = staggeredBefore;
    }

    public static Dictionary<Bay, ColumnNames> OfSection(IReadOnlyList<Bay> bays)
    {
        var names = new Dictionary<Bay, ColumnNames>();
        int square = 0, staggered = 0;
        foreach (Bay bay in bays)
        {
            var grid = new GridStations(bay);
            names[bay] = new ColumnNames(grid, square, staggered);
            square += grid.Square.Count;
            staggered += grid.Staggered.Count;
        }
        return names;
    }

    public IReadOnlyList<ColumnName> Of(RowHeads row)
    {
        bool moved = !row.IsPart && row.Bay.Section.Pattern == Pattern.Staggered && row.GridRow % 2 == 0;
        IReadOnlyList<double> columns = moved ? _grid.Staggered : _grid.Square;
        int before = moved ? _staggeredBefore : _squareBefore;
        var used = new Dictionary<int, int>();
        var names = new List<ColumnName>();
        foreach (double place in row.Places)
        {
            int nearest = 0;
            for (int i = 1; i < columns.Count; i++)
            {
                if (Math.Abs(columns[i] - place) < Math.Abs(columns[nearest] - place) - 1e-9)
                    nearest = i;
            }
            int number = before + nearest + 1;
            int again = used.GetValueOrDefault(number);
            used[number] = again + 1;
            names.Add(new ColumnName(number, again));
        }
        return names;
    }
}

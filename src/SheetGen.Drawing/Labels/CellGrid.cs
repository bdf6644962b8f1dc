using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Labels;

/// <summary>Things of a sheet by number, filed by the square cells of paper that they reach, so that those near a place are found without going over all.</summary>
internal sealed class CellGrid
{
    private const double Cell = 8;
    private readonly Box _bounds;
    private readonly int _columns;
    private readonly int _rows;
    private readonly List<int>?[] _things;

    /// <param name="bounds">What lies beyond these, mm, is filed in the cells at their edge.</param>
    public CellGrid(Box bounds)
    {
        _bounds = bounds;
        _columns = Math.Max(1, (int)Math.Ceiling(bounds.Width / Cell));
        _rows = Math.Max(1, (int)Math.Ceiling(bounds.Height / Cell));
        _things = new List<int>?[_columns * _rows];
    }

    /// <summary>Files a thing in all cells that a box touches.</summary>
    public void Add(int thing, Box box)
    {
        foreach (int cell in CellsOf(box, null))
            (_things[cell] ??= []).Add(thing);
    }

    /// <summary>Files a thing in all cells that a segment passes.</summary>
    public void Add(int thing, Point2 from, Point2 to)
    {
        foreach (int cell in CellsOf(Box.Around([from, to]), (from, to)))
            (_things[cell] ??= []).Add(thing);
    }

    /// <summary>All things that may touch a box; one may come several times.</summary>
    public Things In(Box box) => new(_things, CellsOf(box, null));

    /// <summary>All things that may touch a segment; one may come several times.</summary>
    public Things Along(Point2 from, Point2 to) => new(_things, CellsOf(Box.Around([from, to]), (from, to)));

    private Cells CellsOf(Box box, (Point2 From, Point2 To)? segment) => new(this, (Column(box.Left), Row(box.Bottom), Column(box.Right), Row(box.Top)), segment);

    private int Column(double x) => (int)Math.Clamp(Math.Floor((x - _bounds.Left) / Cell), 0, _columns - 1);

    private int Row(double y) => (int)Math.Clamp(Math.Floor((y - _bounds.Bottom) / Cell), 0, _rows - 1);

    /// <summary>True where a segment passes a cell; a cell at the edge of the bounds takes all that lies beyond it.</summary>
    private bool Passes(int column, int row, Point2 from, Point2 to)
    {
        const double Far = 1e6;
        double left = _bounds.Left + column * Cell, bottom = _bounds.Bottom + row * Cell;
        return new Box(
            column == 0 ? -Far : left - 0.01, row == 0 ? -Far : bottom - 0.01,
            column == _columns - 1 ? Far : left + Cell + 0.01, row == _rows - 1 ? Far : bottom + Cell + 0.01).Crosses(from, to);
    }

    /// <summary>The cells of a block row by row; with a segment, those of them that it passes.</summary>
    internal struct Cells(CellGrid grid, (int Left, int Bottom, int Right, int Top) block, (Point2 From, Point2 To)? segment)
    {
        private int _x = block.Left - 1, _y = block.Bottom;

        public readonly int Current => _y * grid._columns + _x;

        public readonly Cells GetEnumerator() => this;

        public bool MoveNext()
        {
            do
            {
                if (++_x > block.Right)
                    (_x, _y) = (block.Left, _y + 1);
                if (_y > block.Top)
                    return false;
            }
            while (segment is (Point2 from, Point2 to) && !grid.Passes(_x, _y, from, to));
            return true;
        }
    }

    /// <summary>The things of some cells, one after the other: this is asked for every place of every label, so no list is made of them.</summary>
    internal struct Things(List<int>?[] all, Cells cells)
    {
        private Cells _cells = cells;
        private List<int>? _here;
        private int _at = -1;

        public readonly int Current => _here![_at];

        public readonly Things GetEnumerator() => this;

        public bool MoveNext()
        {
            while (_here is null || ++_at >= _here.Count)
            {
                if (!_cells.MoveNext())
                    return false;
                (_here, _at) = (all[_cells.Current], -1);
            }
            return true;
        }
    }
}

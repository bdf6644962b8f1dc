namespace SheetGen.Layout.Placing;

/// <summary>One grid station of one row, and the nails that stand for it now: mostly one, none where it is left out, two where one is added.</summary>
internal sealed class Slot
{
    private readonly Standing _standing;
    private Placed[] _nails = [];
    private int _freedom = -1;

    internal Slot(int index, RowTask row, int ordinal, Standing standing)
    {
        _standing = standing;
        Index = index;
        Row = row;
        Ordinal = ordinal;
        Grid = row.GridChoice(ordinal);
        Nails = [Placed.At(row, Grid, Grid.Turnings[0], false)];
    }

    internal Slot(Slot other, Standing standing)
    {
        _standing = standing;
        Index = other.Index;
        Row = other.Row;
        Ordinal = other.Ordinal;
        Grid = other.Grid;
        Nails = other.Nails;
        Near = other.Near;
        NearNumbers = other.NearNumbers;
        District = other.District;
        _freedom = other._freedom;
    }

    public int Index { get; }

    public RowTask Row { get; }

    /// <summary>Number of the grid station in its row, from 0.</summary>
    public int Ordinal { get; }

    /// <summary>The place at the grid station itself, or where its nail is pinned.</summary>
    public HeadChoice Grid { get; }

    public bool IsPinned => Grid.IsPinned;

    /// <summary>The slots whose nails could come too close to one of this slot, nearest heads first; this one is not among them.</summary>
    public Slot[] Near { get; internal set; } = [];

    /// <summary>Their numbers.</summary>
    internal int[] NearNumbers { get; set; } = [];

    /// <summary>In order along the wall.</summary>
    public Placed[] Nails
    {
        get => _nails;
        internal set
        {
            _nails = value;
            _standing.Put(Index, value);
        }
    }

    /// <summary>The nails as they stood when the open trial first touched them; null where it has not.</summary>
    internal Placed[]? Before { get; set; }

    /// <summary>Number of the district that may change the slot at present.</summary>
    internal int District { get; set; }

    public Cost Cost => CostOf(Nails);

    /// <summary>True where one plain nail stands for it.</summary>
    public bool IsPlain => Nails.Length == 1 && Nails[0].IsPlain;

    public bool IsUnresolved => Nails.Length == 1 && Nails[0].IsUnresolved;

    /// <summary>How many of the directions in coarse steps are clear of everything that stands still at the grid place.</summary>
    internal int Freedom
    {
        get
        {
            if (_freedom < 0)
                _freedom = IsPinned ? 0 : Grid.Turnings.Coarse.Count(t => Row.IsFree(Grid, t));
            return _freedom;
        }
    }

    public static Cost CostOf(Placed[] nails)
    {
        if (nails.Length == 1)
            return nails[0].Cost;
        Cost sum = nails.Length == 0 ? Placed.LeavingOut(1) : default;
        foreach (Placed nail in nails)
            sum += nail.Cost;
        return sum;
    }
}

namespace SheetGen.Layout.Placing;

/// <summary>The directions of a place that are clear of everything that stands still, cheapest first; looked for as far as they are asked for.</summary>
public sealed class FreeDirections(RowTask row, HeadChoice choice)
{
    private readonly List<short> _found = [];
    private int _next;

    /// <summary>All of them, counted.</summary>
    public int Count
    {
        get
        {
            while (Find())
            {
            }
            return _found.Count;
        }
    }

    public bool Any => Has(0);

    /// <summary>The place in order of the direction of a rank, from 0.</summary>
    public int this[int rank] => _found[rank];

    /// <summary>True where there is a direction of that rank; to be asked before it is read.</summary>
    public bool Has(int rank)
    {
        while (_found.Count <= rank)
        {
            if (!Find())
                return false;
        }
        return true;
    }

    private bool Find()
    {
        for (; _next < choice.Turnings.Count; _next++)
        {
            if (!row.IsFree(choice, _next))
                continue;
            _found.Add((short)_next++);
            return true;
        }
        return false;
    }
}

namespace SheetGen.Layout.Placing;

/// <summary>
/// The nails of a layout that others keep clear of, by the number of their slot: those left unresolved are not among them. It says the same as
/// the slots do, in one piece of memory, because the search reads it more often than anything else.
/// </summary>
internal sealed class Standing
{
    private readonly Placed?[] _first;
    private readonly Placed[]?[] _others;

    public Standing(int slots)
    {
        _first = new Placed?[slots];
        _others = new Placed[]?[slots];
    }

    public Standing(Standing other)
    {
        _first = [.. other._first];
        _others = [.. other._others];
    }

    /// <summary>The first nail of each slot; null where none stands.</summary>
    public ReadOnlySpan<Placed?> First => _first;

    /// <summary>The nails of each slot after the first; null where it has no more than one, as nearly all.</summary>
    public ReadOnlySpan<Placed[]?> Others => _others;

    public bool Has(Placed nail) =>
        ReferenceEquals(_first[nail.SlotNumber], nail) || (_others[nail.SlotNumber] is { } more && Array.IndexOf(more, nail) >= 0);

    public void Put(int slot, Placed[] nails)
    {
        if (nails.Length == 1)
        {
            _first[slot] = nails[0].IsUnresolved ? null : nails[0];
            _others[slot] = null;
            return;
        }
        Placed[] resolved = nails.Length == 0 ? nails : Array.FindAll(nails, n => !n.IsUnresolved);
        _first[slot] = resolved.Length > 0 ? resolved[0] : null;
        _others[slot] = resolved.Length > 1 ? resolved[1..] : null;
    }
}

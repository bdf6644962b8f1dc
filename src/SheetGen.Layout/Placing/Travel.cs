namespace SheetGen.Layout.Placing;

/// <summary>
/// Lets a loop go on from layouts that cost a little more than the best one so far, and goes back to that at the end: what no single step
/// improves, two may (record-to-record travel: Dueck 1993, from memory). Cover is never given up for it.
/// </summary>
/// <param name="slack">By how much a layout may cost more than the best one so far.</param>
internal sealed class Travel(Trial trial, Cost slack)
{
    private readonly Dictionary<Slot, Placed[]> _best = new(ReferenceEqualityComparer.Instance);
    private Cost _behind;

    /// <summary>Goes on from the best layout with another slack.</summary>
    public void GoOn(Cost within)
    {
        GoBack();
        slack = within;
    }

    /// <summary>Ends the trial: keeps what is within the slack, undoes the rest.</summary>
    /// <returns>Under 0 where it is the best layout so far.</returns>
    public int End()
    {
        Cost change = trial.Change, most = slack - _behind;
        if (trial.Compare(most) > 0)
        {
            trial.Undo();
            return 1;
        }
        foreach (Slot slot in trial.Touched)
            _best.TryAdd(slot, slot.Before!);
        trial.Accept();
        _behind += change;
        // What costs more than it may was kept for its cover.
        if (!(_behind < default(Cost)) && !(change > most))
            return 1;
        Arrive();
        return -1;
    }

    /// <summary>Brings the best layout back, unless what stands now covers more.</summary>
    public void GoBack()
    {
        foreach ((Slot slot, Placed[] nails) in _best)
            trial.Put(slot, nails);
        trial.End(orEqual: false);
        Arrive();
    }

    private void Arrive()
    {
        _best.Clear();
        _behind = default;
    }
}

namespace SheetGen.Layout.Placing;

/// <summary>A nail by itself takes the cheapest direction at its own place that is clear of all others.</summary>
internal sealed class SingleNail(District district) : INeighbourhood
{
    private readonly Insertion _insertion = new(district);

    public bool MovesSideways => false;

    public bool Propose(Slot seed)
    {
        _insertion.Clear();
        _insertion.Take(seed);
        return _insertion.PutBack(Insertion.Order.Given, 0, 0, seed.Nails.Length);
    }
}

namespace SheetGen.Layout.Placing;

/// <summary>
/// Terms on which rows give way to each other: a hole may run into another row's nail for a toll that grows from round to round, and
/// with every round that the nail stays in conflict. First it is worth some degrees, then a noted nail, at last an unresolved one.
/// </summary>
public sealed class Negotiation
{
    private const int DegreeRounds = 4;
    private const int NotedRounds = 3;
    private const int UnresolvedRounds = 3;

    private readonly Dictionary<(int Row, int Label), int> _history = [];

    public static int Rounds => DegreeRounds + NotedRounds + UnresolvedRounds;

    public int Round { get; set; }

    /// <summary>Remembers a nail that is still in conflict.</summary>
    public void Remember(Placed nail)
    {
        (int, int) key = (nail.Row.Index, nail.Choice.Label);
        _history[key] = _history.GetValueOrDefault(key) + 1;
    }

    public Cost TollOf(Placed nail)
    {
        int weight = 2 + _history.GetValueOrDefault((nail.Row.Index, nail.Choice.Label));
        if (Round < DegreeRounds)
            return new Cost(0, 0, (1L << Round) * weight * Cost.Point, 0, 0);
        return Round < DegreeRounds + NotedRounds
            ? new Cost(0, 1, weight * Cost.Point, 0, 0)
            : new Cost(1, 0, weight * Cost.Point, 0, 0);
    }
}

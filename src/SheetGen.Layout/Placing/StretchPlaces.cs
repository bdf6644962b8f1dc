namespace SheetGen.Layout.Placing;

/// <summary>The places of a stretch of a row, and which of them may follow which, start the stretch or end it.</summary>
public sealed class StretchPlaces
{
    private const int GreatestStep = 3;

    private readonly RowTask _row;
    private readonly RowStretch _stretch;
    private readonly List<HeadChoice> _choices = [];
    private readonly Dictionary<HeadChoice, int> _indexOf = [];
    private readonly List<int>[] _next;
    private readonly List<int>[] _before;
    private readonly Cost?[] _start;
    private readonly Cost?[] _end;

    public StretchPlaces(RowStretch stretch)
    {
        _row = stretch.Row;
        _stretch = stretch;
        for (int label = stretch.First; label <= stretch.Last; label++)
        {
            foreach (HeadChoice choice in _row.Choices[label])
            {
                _indexOf[choice] = _choices.Count;
                _choices.Add(choice);
            }
        }
        InOrder = [.. Enumerable.Range(0, _choices.Count).OrderBy(i => _choices[i].Head.Along).ThenBy(i => i)];
        _next = [.. _choices.Select(c => Successors(c).ToList())];
        _before = [.. _choices.Select(_ => new List<int>())];
        foreach (int from in InOrder)
        {
            foreach (int to in _next[from])
                _before[to].Add(from);
        }
        _start = [.. _choices.Select(StartCost)];
        _end = [.. _choices.Select(EndCost)];
    }

    public int Count => _choices.Count;

    public IReadOnlyList<HeadChoice> Choices => _choices;

    /// <summary>Places in order along the wall.</summary>
    public IReadOnlyList<int> InOrder { get; }

    public IReadOnlyList<int> Next(int place) => _next[place];

    public IReadOnlyList<int> Before(int place) => _before[place];

    /// <summary>What a chain that starts at a place leaves out; null where none may.</summary>
    public Cost? Start(int place) => _start[place];

    /// <summary>What a chain that ends at a place leaves out; null where none may.</summary>
    public Cost? End(int place) => _end[place];

    /// <summary>What a step from one place to another leaves out.</summary>
    public Cost Between(int from, int to) =>
        Placed.LeavingOut(Math.Max(0, _choices[to].Label - _choices[from].Label - 1));

    private IEnumerable<int> Successors(HeadChoice from)
    {
        double reach = from.Head.Along + Math.Max(_row.GreatestGap, _row.GreatestMovedGap);
        for (int label = from.Label; label <= Math.Min(from.Label + GreatestStep, _stretch.Last); label++)
        {
            if (!_row.Ends.SkipsNoRun(from.Label, label) || SkipsPin(from.Label, label))
                break;
            if (_row.Ends.IsBound(from.Label, label) && _row.Choices[label][0].Head.Along > reach && label > from.Label + 1)
                break;
            foreach (HeadChoice to in _row.Choices[label])
            {
                bool isSecondBesidePin = label == from.Label && (from.IsPinned || to.IsPinned);
                if (to.Head.Along > from.Head.Along && !isSecondBesidePin && _row.Fits(from, to))
                    yield return _indexOf[to];
            }
        }
    }

    /// <summary>True where a pinned nail stands between two grid stations: it may not be left out.</summary>
    private bool SkipsPin(int from, int to)
    {
        for (int label = from + 1; label < to; label++)
        {
            if (_row.Choices[label][0].IsPinned)
                return true;
        }
        return false;
    }

    private Cost? StartCost(HeadChoice choice)
    {
        int skipped = choice.Label - _stretch.First;
        if (skipped >= GreatestStep || SkipsPin(_stretch.First - 1, choice.Label))
            return null;
        bool fits = _stretch.Before is { } before
            ? _row.Ends.SkipsNoRun(before.Label, choice.Label) && _row.Fits(before, choice)
            : _stretch.IsOpenStart || (_row.Ends.RunOf(choice.Label) == 0 && _row.Ends.CoversStart(choice));
        return fits ? Placed.LeavingOut(skipped) : null;
    }

    private Cost? EndCost(HeadChoice choice)
    {
        int skipped = _stretch.Last - choice.Label;
        if (skipped >= GreatestStep || SkipsPin(choice.Label, _stretch.Last + 1))
            return null;
        bool fits = _stretch.After is { } after
            ? _row.Ends.SkipsNoRun(choice.Label, after.Label) && _row.Fits(choice, after)
            : _stretch.IsOpenEnd || (_row.Ends.RunOf(choice.Label) == _row.Ends.LastRun && _row.Ends.CoversEnd(choice));
        return fits ? Placed.LeavingOut(skipped) : null;
    }
}

using SheetGen.Layout.Rows;

namespace SheetGen.Layout.Placing;

/// <summary>The nodes of a stretch of a row, and which of them may follow which, start the stretch or end it.</summary>
internal sealed class StretchNodes : ChainNodes
{
    private const int GreatestStep = 3;

    private readonly RowTask _row;
    private readonly RowStretch _stretch;
    private readonly Cost?[] _start;
    private readonly Cost?[] _end;

    public StretchNodes(RowStretch stretch)
    {
        _row = stretch.Where.Row;
        _stretch = stretch;
        var indexOf = new Dictionary<HeadChoice, int>();
        for (int ordinal = stretch.Where.First; ordinal <= stretch.Where.Last; ordinal++)
        {
            foreach (HeadChoice choice in _row.Choices[ordinal])
                indexOf[choice] = Add(_row, choice);
        }
        InOrder = [.. Enumerable.Range(0, Count).OrderBy(i => ChoiceOf(i).Head.Along).ThenBy(i => i)];
        foreach (int from in InOrder)
        {
            foreach (HeadChoice to in Successors(ChoiceOf(from)))
                Join(from, indexOf[to]);
        }
        _start = [.. Enumerable.Range(0, Count).Select(i => StartCost(ChoiceOf(i)))];
        _end = [.. Enumerable.Range(0, Count).Select(i => EndCost(ChoiceOf(i)))];
    }

    public override Cost? Start(int node) => _start[node];

    public override Cost? End(int node) => _end[node];

    public override Cost Between(int from, int to) =>
        Placed.LeavingOut(Math.Max(0, ChoiceOf(to).Ordinal - ChoiceOf(from).Ordinal - 1));

    private IEnumerable<HeadChoice> Successors(HeadChoice from)
    {
        Along reach = from.Head.Along + Math.Max(_row.GreatestGap, _row.GreatestMovedGap);
        for (int ordinal = from.Ordinal; ordinal <= Math.Min(from.Ordinal + GreatestStep, _stretch.Where.Last); ordinal++)
        {
            if (!_row.Ends.SkipsNoRun(from.Ordinal, ordinal) || SkipsPin(from.Ordinal, ordinal))
                break;
            if (_row.Ends.IsBound(from.Ordinal, ordinal) && _row.Choices[ordinal][0].Head.Along > reach && ordinal > from.Ordinal + 1)
                break;
            foreach (HeadChoice to in _row.Choices[ordinal])
            {
                bool isSecondBesidePin = ordinal == from.Ordinal && (from.IsPinned || to.IsPinned);
                if (to.Head.Along > from.Head.Along && !isSecondBesidePin && _row.Fits(from, to))
                    yield return to;
            }
        }
    }

    /// <summary>True where a pinned nail stands between two grid stations: it may not be left out.</summary>
    private bool SkipsPin(int from, int to)
    {
        for (int ordinal = from + 1; ordinal < to; ordinal++)
        {
            if (_row.Choices[ordinal][0].IsPinned)
                return true;
        }
        return false;
    }

    private Cost? StartCost(HeadChoice choice)
    {
        int skipped = choice.Ordinal - _stretch.Where.First;
        if (skipped >= GreatestStep || SkipsPin(_stretch.Where.First - 1, choice.Ordinal))
            return null;
        bool fits = _stretch.Before is { } before
            ? _row.Ends.SkipsNoRun(before.Ordinal, choice.Ordinal) && _row.Fits(before, choice)
            : _stretch.IsOpenStart || (_row.Ends.RunOf(choice.Ordinal) == 0 && _row.Ends.CoversStart(choice.Ordinal, choice.Head.Along));
        return fits ? Placed.LeavingOut(skipped) : null;
    }

    private Cost? EndCost(HeadChoice choice)
    {
        int skipped = _stretch.Where.Last - choice.Ordinal;
        if (skipped >= GreatestStep || SkipsPin(choice.Ordinal, _stretch.Where.Last + 1))
            return null;
        bool fits = _stretch.After is { } after
            ? _row.Ends.SkipsNoRun(choice.Ordinal, after.Ordinal) && _row.Fits(choice, after)
            : _stretch.IsOpenEnd || (_row.Ends.RunOf(choice.Ordinal) == _row.Ends.LastRun && _row.Ends.CoversEnd(choice.Ordinal, choice.Head.Along));
        return fits ? Placed.LeavingOut(skipped) : null;
    }
}

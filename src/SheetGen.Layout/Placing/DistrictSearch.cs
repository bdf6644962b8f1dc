namespace SheetGen.Layout.Placing;

/// <summary>
/// The loop over one district. Neighbourhoods take turns by fixed shares around nails whose stretch costs more than it must; it goes on as
/// long as unresolved and noted nails are gained, for a number of trials that grows with how many there are. Where none is left to gain nothing
/// is tried. At the end chains and single nails take what effort can still be saved.
/// </summary>
internal sealed class DistrictSearch
{
    /// <summary>Trials between two looks at which nails are worth trying.</summary>
    private const int TrialsBetweenLooks = 16;

    /// <summary>Trials without a gain after which a district is left, for each nail that may be gained.</summary>
    private const int Patience = 300;

    /// <summary>Trials for each slot after which a district is left whatever is gained.</summary>
    private const int GreatestTrials = 100;

    private const int PolishRounds = 4;

    private readonly District _district;
    private readonly StretchLimits _limits;
    private readonly List<Slot> _seeds = [];
    private readonly (INeighbourhood Way, int Share)[] _ways;
    private readonly int _shares;

    public DistrictSearch(District district, StretchLimits limits)
    {
        _district = district;
        _limits = limits;
        _ways = [(new Blockers(district), 60), (new NewHeads(district), 25), (new Window(district), 3), (new Ejection(district), 1)];
        _shares = _ways.Sum(w => w.Share);
    }

    public District District => _district;

    /// <summary>Trials done.</summary>
    public int Trials { get; private set; }

    /// <summary>True where it ended at the greatest number of trials, still gaining.</summary>
    public bool IsCutShort { get; private set; }

    public void Run()
    {
        (int Unresolved, int Noted) best = FindSeeds();
        int idle = 0, most = GreatestTrials * _district.Slots.Count;
        while (_seeds.Count > 0 && idle < Patience * (best.Unresolved + best.Noted))
        {
            if (Trials >= most)
            {
                IsCutShort = true;
                break;
            }
            for (int i = 0; i < TrialsBetweenLooks; i++)
                Try(Pick(), _seeds[_district.Random.Below(_seeds.Count)]);
            Trials += TrialsBetweenLooks;
            idle += TrialsBetweenLooks;
            (int Unresolved, int Noted) now = FindSeeds();
            if (now.CompareTo(best) < 0)
                (best, idle) = (now, 0);
        }
    }

    /// <summary>Every nail that is not plain by chain with its neighbours, then by itself, until none is better.</summary>
    public void Polish()
    {
        var stretch = new Stretch(_district);
        var single = new SingleNail(_district);
        var solved = new HashSet<Placed>(ReferenceEqualityComparer.Instance);
        for (int round = 0; round < PolishRounds; round++)
        {
            bool better = false;
            foreach (Slot slot in _district.Slots)
            {
                if (!_district.May(slot) || _limits.IsMet(slot) || IsPlain(slot) || slot.Nails.All(solved.Contains))
                    continue;
                better |= Try(stretch, slot) < 0;
                (int first, int last) = Around(slot);
                for (int label = first; label <= last; label++)
                    solved.UnionWith(_district.Layout.Rows[slot.Row.Index].Slots[label].Nails);
            }
            if (!better)
                break;
            solved.Clear();
        }
        for (bool better = true; better;)
        {
            better = false;
            foreach (Slot slot in _district.Slots)
                better |= _district.May(slot) && !IsPlain(slot) && Try(single, slot) < 0;
        }
    }

    private static (int First, int Last) Around(Slot slot) =>
        (Math.Max(0, slot.Label - ChainRebuild.Margin + 1), Math.Min(slot.Row.Count - 1, slot.Label + ChainRebuild.Margin - 1));

    private static bool IsPlain(Slot slot) => slot.Nails.Length == 1 && slot.Nails[0].IsPlain;

    private int Try(INeighbourhood way, Slot seed)
    {
        if (way.Propose(seed))
            return _district.Trial.End(way.MovesSideways);
        _district.Trial.Undo();
        return 1;
    }

    private INeighbourhood Pick()
    {
        int share = _district.Random.Below(_shares), at = 0;
        while (share >= _ways[at].Share)
            share -= _ways[at++].Share;
        return _ways[at].Way;
    }

    /// <summary>
    /// The slots worth trying around: unresolved nails four times, noted ones once, where their stretch has more of them than it must.
    /// </summary>
    /// <returns>How many of each there are.</returns>
    private (int Unresolved, int Noted) FindSeeds()
    {
        _seeds.Clear();
        int unresolved = 0, noted = 0;
        foreach (Slot slot in _district.Slots)
        {
            if (slot.IsPinned)
                continue;
            foreach (Placed nail in slot.Nails)
            {
                if (!nail.IsUnresolved && !nail.Turning.IsNoted || _limits.IsMet(slot, nail.IsUnresolved))
                    continue;
                _seeds.Add(slot);
                if (nail.IsUnresolved)
                    _seeds.AddRange([slot, slot, slot]);
                unresolved += nail.IsUnresolved ? 1 : 0;
                noted += nail.IsUnresolved ? 0 : 1;
            }
        }
        return (unresolved, noted);
    }
}

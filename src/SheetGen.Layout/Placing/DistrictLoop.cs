namespace SheetGen.Layout.Placing;

/// <summary>
/// The loop over one district. Neighbourhoods take turns by fixed shares around nails that are unresolved or noted and whose stretch need not
/// have so many; it goes on as long as such nails are gained, up to counts of trials and of directions looked at. Where none is left to gain
/// nothing is tried.
/// </summary>
internal sealed class DistrictLoop
{
    /// <summary>Trials between two looks at which nails are worth trying.</summary>
    private const int TrialsBetweenLooks = 16;

    /// <summary>Trials for each slot after which a start is left whatever is gained; a small district has as many as one of a hundred.</summary>
    public const int GreatestTrials = 20;

    private const int SmallDistrict = 100;

    /// <summary>Ejections without a gain in a loop before that is left to the other ways.</summary>
    private const int EjectionPatience = 3;

    /// <summary>By how much a loop may be behind the best layout that it found while it looks for noted nails to gain.</summary>
    private static readonly Cost Slack = new(0, 0, 20 * Cost.Point, 0, 0);

    /// <summary>The same where no unresolved nail is left to gain: one noted nail more lets two others go.</summary>
    private static readonly Cost NotedSlack = new(0, 1, 20 * Cost.Point, 0, 0);

    /// <summary>The same while it looks for unresolved ones: what frees one often needs neighbours that are noted first.</summary>
    private static readonly Cost WideSlack = new(0, 5, 20 * Cost.Point, 0, 0);

    /// <summary>Of 10 trials that a long loop may do, or do without a gain, so many are for unresolved nails; the others for noted ones.</summary>
    private const int UnresolvedTenths = 6;

    /// <summary>Looks at the seeds for each ejection.</summary>
    private const int EjectionShare = 5;

    private readonly StretchLimits _limits;
    private readonly PlacingOptions _options;
    private readonly List<Slot> _seeds = [];
    private readonly (INeighbourhood Way, int Share)[] _ways;
    private readonly (INeighbourhood Way, int Share)[] _turningWays;
    private readonly Ejection _ejection;
    private readonly NewHeads _newHeads;
    private Travel? _travel;
    private bool _isAfterNoted;

    public DistrictLoop(District district, StretchLimits limits, PlacingOptions options)
    {
        District = district;
        _limits = limits;
        _options = options;
        _newHeads = new NewHeads(district);
        _ejection = new Ejection(district);
        (INeighbourhood Way, int Share)[] ways = [(new Blockers(district), 60), (_newHeads, 25)];
        _ways = Used(ways);
        // What a row beside has found takes turns away; it frees a nail once in some thousand trials.
        _turningWays = Used([.. ways, (new RowBeside(district), 15)]);
    }

    public District District { get; }

    /// <summary>Trials done.</summary>
    public int Trials { get; set; }

    /// <summary>True where it ended at the greatest number of trials or directions with a gain in the last quarter of its trials, or before the first one.</summary>
    public bool IsCutShort { get; private set; }

    /// <summary>True where something is left to gain, by the last look.</summary>
    public bool HasSeeds => _seeds.Count > 0;

    /// <summary>A copy of the district with a loop of its own.</summary>
    /// <param name="number">Number of the copy.</param>
    public DistrictLoop Copy(int number)
    {
        District copy = District.Copy(number);
        return new DistrictLoop(copy, _limits.Of(copy.Layout), _options);
    }

    /// <summary>A loop over some slots of the district.</summary>
    public DistrictLoop Over(District part) => new(part, _limits, _options);

    /// <summary>Counts what another loop did for this one.</summary>
    public void Count(DistrictLoop other)
    {
        Trials += other.Trials;
        District.Work += other.District.Work;
    }

    /// <summary>Goes on from layouts that are a little worse than the best one: after unresolved nails first, then after noted ones.</summary>
    public void Long(int patience)
    {
        _travel = _options.Without.Contains(nameof(Travel)) ? null : new Travel(District.Trial, WideSlack);
        Run(patience);
        _travel?.GoBack();
        (_travel, _isAfterNoted) = (null, false);
    }

    /// <param name="patience">Trials without a gain after which it ends, for each nail that may be gained.</param>
    /// <param name="ejectionPatience">Ejections without a gain; 0 for none.</param>
    /// <param name="greatestTrials">For each slot.</param>
    public void Run(int patience, int ejectionPatience = EjectionPatience, int greatestTrials = GreatestTrials)
    {
        long start = District.Work, end = start + _options.MostDirections * District.Slots.Count;
        (int Unresolved, int Noted) best = FindSeeds();
        int idle = 0, trials = 0, ejections = 0, most = greatestTrials * Math.Max(SmallDistrict, District.Slots.Count);
        for ((int Unresolved, int Noted) now = best; _seeds.Count > 0 && idle < patience * (best.Unresolved + best.Noted) && trials < most && District.Work < end;)
        {
            (INeighbourhood Way, int Share)[] ways = now.Unresolved > 0 && !_isAfterNoted ? _ways : _turningWays;
            if (best.Unresolved > 0 && !_isAfterNoted && ejections < ejectionPatience && District.Random.Below(EjectionShare) == 0)
                ejections = Try(_ejection, Unresolved()) < 0 ? 0 : ejections + 1;
            for (int i = 0; i < TrialsBetweenLooks; i++)
            {
                Slot seed = _seeds[District.Random.Below(_seeds.Count)];
                Try(CanStand(seed) ? Pick(ways) : _newHeads, seed);
            }
            trials += TrialsBetweenLooks;
            idle += TrialsBetweenLooks;
            now = FindSeeds();
            if (now.CompareTo(best) < 0)
                (best, idle) = (now, 0);
            if (_travel is not null && !_isAfterNoted
                && (best.Unresolved == 0 || IsSpent(idle, patience * (best.Unresolved + best.Noted)) || IsSpent(trials, most) || IsSpent(District.Work - start, end - start)))
            {
                _travel.GoOn(best.Unresolved == 0 ? NotedSlack : Slack);
                _isAfterNoted = true;
                now = FindSeeds();
            }
        }
        Trials += trials;
        IsCutShort = _seeds.Count > 0 && (trials >= most || District.Work >= end) && idle <= trials / 4;
    }

    /// <summary>True where the part of some work that is for unresolved nails is done.</summary>
    private static bool IsSpent(long done, long most) => 10 * done > UnresolvedTenths * most;

    /// <summary>False for a nail that no direction at its grid place could free: only other heads can.</summary>
    private static bool CanStand(Slot slot) => !slot.IsUnresolved || slot.Row.FreeOf(slot.Grid).Any;

    /// <summary>Tries one of the ways, chosen by their shares, around one of some slots.</summary>
    /// <returns>Under 0 where it was kept and is better.</returns>
    public int TryAround(Slot[] slots) => Try(Pick(_turningWays), slots[District.Random.Below(slots.Length)]);

    /// <returns>Under 0 where it was kept and is better.</returns>
    public int Try(INeighbourhood way, Slot seed)
    {
        if (IsUsed(way) && way.Propose(seed))
            return _travel is { } travel && way.MovesSideways ? travel.End() : District.Trial.End(way.MovesSideways);
        District.Trial.Undo();
        return 1;
    }

    private bool IsUsed(INeighbourhood way) => !_options.Without.Contains(way.GetType().Name);

    /// <summary>Those of some ways that are used; else each nail by itself.</summary>
    private (INeighbourhood Way, int Share)[] Used((INeighbourhood Way, int Share)[] ways) => [.. ways.Where(w => IsUsed(w.Way)).DefaultIfEmpty((new SingleNail(District), 1))];

    private INeighbourhood Pick((INeighbourhood Way, int Share)[] ways)
    {
        int share = District.Random.Below(ways.Sum(w => w.Share)), at = 0;
        while (share >= ways[at].Share)
            share -= ways[at++].Share;
        return ways[at].Way;
    }

    /// <summary>A seed that is unresolved, where there is one and it can be freed at its grid place.</summary>
    public Slot Unresolved()
    {
        int from = District.Random.Below(_seeds.Count);
        for (int i = 0; i < _seeds.Count; i++)
        {
            Slot seed = _seeds[(from + i) % _seeds.Count];
            if (seed.IsUnresolved && CanStand(seed))
                return seed;
        }
        return _seeds[from];
    }

    /// <summary>
    /// The slots worth trying around: unresolved nails four times (not where only noted ones are looked for), noted ones once, where their stretch has
    /// more of them than it must.
    /// </summary>
    /// <returns>How many of each there are.</returns>
    public (int Unresolved, int Noted) FindSeeds()
    {
        _seeds.Clear();
        int unresolved = 0, noted = 0;
        foreach (Slot slot in District.Slots)
        {
            if (slot.IsPinned)
                continue;
            foreach (Placed nail in slot.Nails)
            {
                if ((!nail.IsUnresolved && !nail.Turning.IsNoted) || _limits.IsMet(slot, nail.IsUnresolved))
                    continue;
                if (!nail.IsUnresolved)
                    _seeds.Add(slot);
                else if (!_isAfterNoted)
                    _seeds.AddRange([slot, slot, slot, slot]);
                unresolved += nail.IsUnresolved ? 1 : 0;
                noted += nail.IsUnresolved ? 0 : 1;
            }
        }
        return (unresolved, noted);
    }
}

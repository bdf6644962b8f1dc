namespace SheetGen.Layout.Placing;

/// <summary>
/// The loop over one district. Neighbourhoods take turns by fixed shares around nails that are unresolved or noted and whose stretch need not
/// have so many; it goes on as long as such nails are gained, up to counts of trials and of directions looked at. Where none is left to gain
/// nothing is tried. At last it takes what effort can still be saved.
/// </summary>
internal sealed class DistrictSearch
{
    /// <summary>Trials between two looks at which nails are worth trying.</summary>
    private const int TrialsBetweenLooks = 16;

    /// <summary>Trials without a gain after which a start is left, for each nail that may be gained.</summary>
    private const int Patience = 300;

    /// <summary>The same in a second round: only what lies at the first one's cuts is new to it.</summary>
    private const int LaterPatience = 100;

    /// <summary>The first loop has so many times less patience.</summary>
    private const int ShortLoop = 6;

    /// <summary>Trials for each slot after which a start is left whatever is gained; a small district has as many as one of a hundred.</summary>
    private const int GreatestTrials = 20;

    private const int SmallDistrict = 100;

    /// <summary>The same where grids are only compared.</summary>
    private const int ComparingTrials = 8;

    /// <summary>Trials without a gain after which effort is left as it is, for each nail that is not plain.</summary>
    private const int EffortTrials = 5;

    /// <summary>Stretches that are solved by chain at the end without a gain before that is left.</summary>
    private const int ChainPatience = 8;

    /// <summary>Stretches that are solved by chain at most in a district: a chain takes as long as some hundred trials.</summary>
    private const int GreatestChains = 40;

    /// <summary>Ejections without a gain in a loop before that is left to the other ways.</summary>
    private const int EjectionPatience = 3;

    /// <summary>Times that longer loops go on from lines of rows searched apart, while unresolved nails are left to gain.</summary>
    private const int ApartRounds = 2;

    /// <summary>Trials without a gain after which lines of rows searched apart are left, for each nail that may be gained.</summary>
    private const int ApartPatience = 150;

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
    private readonly Stretch _stretch;
    private readonly SingleNail _single;
    private Travel? _travel;
    private bool _isAfterNoted;

    public DistrictSearch(District district, StretchLimits limits, PlacingOptions options)
    {
        District = district;
        _limits = limits;
        _newHeads = new NewHeads(district);
        _stretch = new Stretch(district);
        _single = new SingleNail(district);
        _options = options;
        _ejection = new Ejection(district);
        (INeighbourhood Way, int Share)[] ways = [(new Blockers(district), 60), (_newHeads, 25)];
        _ways = Used(ways);
        // What a row beside has found takes turns away; it frees a nail once in some thousand trials.
        _turningWays = Used([.. ways, (new RowBeside(district), 15)]);
    }

    public District District { get; }

    /// <summary>Trials done.</summary>
    public int Trials { get; private set; }

    /// <summary>True where it ended at the greatest number of trials or directions with a gain in the last quarter of its trials, or before the first one, or at the greatest number of chains.</summary>
    public bool IsCutShort { get; private set; }

    /// <summary>
    /// A short loop first; where that leaves something to gain, longer ones side by side on copies, of which the better end is kept; where that leaves
    /// unresolved nails to gain, again from copies in which lines of rows were searched apart.
    /// </summary>
    /// <param name="starts">How many of the longer loops.</param>
    public void Run(int starts)
    {
        if (starts == 0)
        {
            Loop(Patience / ShortLoop, 0, ComparingTrials);
            return;
        }
        Loop(Patience / ShortLoop, EjectionPatience, GreatestTrials);
        if (_seeds.Count > 0)
            KeepBest(starts, 0);
        int rounds = starts > 1 && !_options.Without.Contains(nameof(RowsApart)) ? ApartRounds : 0;
        for (int round = 1; round <= rounds && FindSeeds().Unresolved > 0; round++)
            KeepBest(starts, round);
        SaveEffort();
    }

    private void KeepBest(int starts, int round)
    {
        District[] copies = [.. Enumerable.Range(round * starts, starts).Select(District.Copy)];
        DistrictSearch[] searches = [.. copies.Select(d => new DistrictSearch(d, _limits.Of(d.Layout), _options))];
        int patience = starts > 1 ? Patience : LaterPatience;
        Parallel.ForEach(searches, search =>
        {
            if (round > 0)
                search.Apart();
            search.Long(patience);
        });
        IsCutShort = searches.Any(s => s.IsCutShort);
        foreach (DistrictSearch search in searches)
        {
            for (int i = 0; i < District.Slots.Count; i++)
                District.Trial.Put(District.Slots[i], search.District.Slots[i].Nails);
            District.Trial.End(orEqual: false);
            Trials += search.Trials;
            District.Work += search.District.Work;
        }
    }

    /// <summary>Starts anew from lines of rows that were searched as if no others stood.</summary>
    private void Apart()
    {
        if (FindSeeds().Unresolved > 0)
        {
            new RowsApart(District).Run(Unresolved(), part =>
            {
                var search = new DistrictSearch(part, _limits, _options);
                search.Loop(ApartPatience, EjectionPatience, GreatestTrials);
                Trials += search.Trials;
            });
        }
    }

    /// <summary>Goes on from layouts that are a little worse than the best one: after unresolved nails first, then after noted ones.</summary>
    private void Long(int patience)
    {
        _travel = _options.Without.Contains(nameof(Travel)) ? null : new Travel(District.Trial, WideSlack);
        Loop(patience, EjectionPatience, GreatestTrials);
        _travel?.GoBack();
        (_travel, _isAfterNoted) = (null, false);
    }

    /// <param name="ejectionPatience">Ejections without a gain; 0 for none.</param>
    private void Loop(int patience, int ejectionPatience, int greatestTrials)
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

    /// <summary>Solves stretches that cost more than they must by chain, then tries around all their nails that are not plain, then each by itself.</summary>
    private void SaveEffort()
    {
        long end = District.Work + _options.MostDirections * District.Slots.Count;
        bool isComplete = Chains();
        Slot[] turned = [.. District.Slots.Where(s => District.May(s) && !IsPlain(s) && !_limits.IsMet(s))];
        int most = GreatestTrials * turned.Length, trials = 0;
        for (int idle = 0; idle < EffortTrials * turned.Length && trials < most && District.Work < end; idle++, trials++)
        {
            if (Try(Pick(_turningWays), turned[District.Random.Below(turned.Length)]) < 0)
                idle = -1;
        }
        for (bool better = true; better && District.Work < end;)
        {
            better = false;
            foreach (Slot slot in District.Slots)
                better |= District.May(slot) && !IsPlain(slot) && Try(_single, slot) < 0;
        }
        IsCutShort |= !isComplete || (most > 0 && trials >= most) || District.Work >= end;
    }

    /// <summary>False for a nail that no direction at its grid place could free: only other heads can.</summary>
    private static bool CanStand(Slot slot) => !slot.IsUnresolved || slot.Row.FreeOf(slot.Grid).Any;

    /// <summary>Solves stretches by chain, those with the most to save first; one that holds what the last ones left is passed over.</summary>
    /// <returns>False where it ended at its greatest number of stretches.</returns>
    private bool Chains()
    {
        var solved = new HashSet<Placed>(ReferenceEqualityComparer.Instance);
        int idle = 0, chains = 0;
        foreach (Slot slot in District.Slots.Where(s => District.May(s) && !IsPlain(s) && !_limits.IsMet(s)).OrderByDescending(_limits.Over).ToList())
        {
            if (IsPlain(slot) || _limits.IsMet(slot) || Array.TrueForAll(slot.Nails, solved.Contains))
                continue;
            if (idle >= ChainPatience || chains >= GreatestChains)
                return idle >= ChainPatience;
            chains++;
            idle = Try(_stretch, slot) < 0 ? 0 : idle + 1;
            IReadOnlyList<Slot> row = District.Layout.Rows[slot.Row.Index].Slots;
            for (int ordinal = Math.Max(0, slot.Ordinal - 1); ordinal <= Math.Min(row.Count - 1, slot.Ordinal + 1); ordinal++)
                solved.UnionWith(row[ordinal].Nails);
        }
        return true;
    }

    private static bool IsPlain(Slot slot) => slot.Nails.Length == 1 && slot.Nails[0].IsPlain;

    private int Try(INeighbourhood way, Slot seed)
    {
        if (IsUsed(way) && way.Propose(seed))
            return _travel is { } travel && way.MovesSideways ? travel.End() : District.Trial.End(way.MovesSideways);
        District.Trial.Undo();
        return 1;
    }

    private bool IsUsed(INeighbourhood way) => !_options.Without.Contains(way.GetType().Name);

    /// <summary>Those of some ways that are used; else each nail by itself.</summary>
    private (INeighbourhood Way, int Share)[] Used((INeighbourhood Way, int Share)[] ways) => [.. ways.Where(w => IsUsed(w.Way)).DefaultIfEmpty((_single, 1))];

    private INeighbourhood Pick((INeighbourhood Way, int Share)[] ways)
    {
        int share = District.Random.Below(ways.Sum(w => w.Share)), at = 0;
        while (share >= ways[at].Share)
            share -= ways[at++].Share;
        return ways[at].Way;
    }

    /// <summary>A seed that is unresolved, where there is one and it can be freed at its grid place.</summary>
    private Slot Unresolved()
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
    private (int Unresolved, int Noted) FindSeeds()
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

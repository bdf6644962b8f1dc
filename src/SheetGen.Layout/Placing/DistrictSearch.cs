namespace SheetGen.Layout.Placing;

/// <summary>The search of one district: loops from several starts, of which the best end is kept, then what effort can still be saved.</summary>
internal sealed class DistrictSearch(District district, StretchLimits limits, PlacingOptions options)
{
    /// <summary>Trials without a gain after which a start is left, for each nail that may be gained.</summary>
    private const int Patience = 300;

    /// <summary>The same in a second round: only what lies at the first one's cuts is new to it.</summary>
    private const int LaterPatience = 100;

    /// <summary>The first loop has so many times less of it.</summary>
    private const int ShortLoop = 6;

    /// <summary>Trials for each slot after which a loop is left where grids are only compared.</summary>
    private const int ComparingTrials = 8;

    /// <summary>Times that longer loops go on from lines of rows searched apart, while unresolved nails are left to gain.</summary>
    private const int ApartRounds = 2;

    /// <summary>Trials without a gain after which lines of rows searched apart are left, for each nail that may be gained.</summary>
    private const int ApartPatience = 150;

    private readonly DistrictLoop _loop = new(district, limits, options);

    public District District => district;

    /// <summary>Trials done.</summary>
    public int Trials => _loop.Trials;

    /// <summary>True where it ended at the greatest number of trials, directions or chains while it was still gaining.</summary>
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
            _loop.Run(Patience / ShortLoop, ejectionPatience: 0, ComparingTrials);
            IsCutShort = _loop.IsCutShort;
            return;
        }
        _loop.Run(Patience / ShortLoop);
        IsCutShort = _loop.IsCutShort;
        if (_loop.HasSeeds)
            KeepBest(starts, 0);
        int rounds = starts > 1 && !options.Without.Contains(nameof(RowsApart)) ? ApartRounds : 0;
        for (int round = 1; round <= rounds && _loop.FindSeeds().Unresolved > 0; round++)
            KeepBest(starts, round);
        IsCutShort |= !new EffortSearch(_loop, limits).Run(options.MostDirections * district.Slots.Count);
    }

    private void KeepBest(int starts, int round)
    {
        var loops = new DistrictLoop[starts];
        int patience = starts > 1 ? Patience : LaterPatience;
        Parallel.For(0, starts, i =>
        {
            loops[i] = round == 0 ? _loop.Copy(i) : Apart(round * starts + i);
            loops[i].Long(patience);
        });
        IsCutShort = loops.Any(l => l.IsCutShort);
        foreach (DistrictLoop loop in loops)
        {
            for (int i = 0; i < district.Slots.Count; i++)
                district.Trial.Put(district.Slots[i], loop.District.Slots[i].Nails);
            district.Trial.End(orEqual: false);
            _loop.Count(loop);
        }
    }

    /// <summary>A copy that starts anew from lines of rows that were searched as if no others stood; a plain copy where a row did not come back whole.</summary>
    private DistrictLoop Apart(int number)
    {
        DistrictLoop apart = _loop.Copy(number);
        apart.FindSeeds();
        bool isWhole = new RowsApart(apart.District).Run(apart.Unresolved(), part =>
        {
            DistrictLoop lines = apart.Over(part);
            lines.Run(ApartPatience);
            apart.Trials += lines.Trials;
        });
        if (isWhole)
            return apart;
        DistrictLoop plain = _loop.Copy(number);
        plain.Count(apart);
        return plain;
    }
}

using SheetGen.Layout.Placing.Neighbourhoods;

namespace SheetGen.Layout.Placing;

/// <summary>The loop over one district: seeds are the nails whose stretch costs more than it must, neighbourhoods take turns by fixed shares.</summary>
internal sealed class DistrictSearch
{
    private const int SeedsFor = 16;

    private readonly District _district;
    private readonly List<StretchLimit> _limits;
    private readonly List<Slot> _seeds = [];
    private readonly (INeighbourhood Way, int Share, string Name)[] _ways;
    private readonly int _shares;
    public static int Steps = 20000;
    private static int Sh(int i) => int.Parse((Environment.GetEnvironmentVariable("SH") ?? "60,25,1,6,0,0").Split(',')[i], System.Globalization.CultureInfo.InvariantCulture);
    public static Dictionary<string, (long N, long Better, long Equal, long Ticks)> Stats = [];

    public DistrictSearch(District district, IEnumerable<StretchLimit> limits)
    {
        _district = district;
        _limits = [.. limits.Where(l => district.Layout.Rows[l.Where.Row.Index].Slots[l.Where.First].District == district.Number)];
        _ways = [(new Blockers(district), Sh(0), "blockers"), (new NewHeads(district), Sh(1), "heads"), (new Ejection(district), Sh(2), "eject"), (new Window(district), Sh(3), "window"), (new Stretch(district), Sh(4), "stretch"), (new Column(district), Sh(5), "column")];
        _shares = _ways.Sum(w => w.Share);
    }

    public void Run()
    {
        for (int step = 0; step < Steps; step++)
        {
            if (step % SeedsFor == 0)
                FindSeeds();
            if (_seeds.Count == 0)
                return;
            Slot seed = _seeds[_district.Random.Below(_seeds.Count)];
            int share = _district.Random.Below(_shares), at = 0;
            while (share >= _ways[at].Share)
                share -= _ways[at++].Share;
            var way = _ways[at].Way;
            long t0 = System.Diagnostics.Stopwatch.GetTimestamp();
            int order = LayoutSearch.Try(_district, way.Propose(seed), way.MovesSideways);
            var st = Stats.GetValueOrDefault(_ways[at].Name);
            Stats[_ways[at].Name] = (st.N + 1, st.Better + (order < 0 ? 1 : 0), st.Equal + (order == 0 ? 1 : 0), st.Ticks + System.Diagnostics.Stopwatch.GetTimestamp() - t0);
            if (step % 2000 == 1999)
                LayoutSearch.Trace($"step {step + 1}: {_district.Cost}");
        }
    }

    /// <summary>Unresolved nails four times, noted ones once; where there are none, nails that are turned, moved, or left out.</summary>
    private void FindSeeds()
    {
        _seeds.Clear();
        foreach (Slot slot in _district.Slots)
        {
            if (slot.IsPinned)
                continue;
            foreach (Placed nail in slot.Nails)
            {
                if (nail.IsUnresolved)
                    _seeds.AddRange([slot, slot, slot, slot]);
                else if (nail.Turning.IsNoted)
                    _seeds.Add(slot);
            }
        }
        if (_seeds.Count == 0)
            _seeds.AddRange(_district.Slots.Where(s => !s.IsPinned && (s.Nails.Length != 1 || !s.Nails[0].IsPlain)));
    }
}

namespace SheetGen.Layout.Rows;

/// <summary>
/// The runs of a row: stretches in which neighbours bind each other. The first nail of a run must still cover where the run starts,
/// the last where it ends.
/// </summary>
internal sealed class RunEnds
{
    private readonly int[] _run;
    private readonly Along[] _latestStart;
    private readonly Along[] _earliestEnd;

    /// <param name="run">Number of the run of each grid station, rising from 0.</param>
    /// <param name="latestStart">By run: the furthest place where its first nail may stand.</param>
    /// <param name="earliestEnd">By run: the nearest place where its last nail may stand.</param>
    public RunEnds(int[] run, Along[] latestStart, Along[] earliestEnd)
    {
        _run = run;
        _latestStart = latestStart;
        _earliestEnd = earliestEnd;
    }

    /// <summary>True where both grid stations are of one run, so that the gap between their nails has a greatest value.</summary>
    public bool IsBound(int from, int to) => _run[from] == _run[to];

    /// <summary>True where a nail of a grid station may be the first of its run at a place.</summary>
    public bool CoversStart(int station, Along along) => along <= _latestStart[_run[station]] + Tolerance.Rounding;

    /// <summary>True where a nail of a grid station may be the last of its run at a place.</summary>
    public bool CoversEnd(int station, Along along) => along >= _earliestEnd[_run[station]] - Tolerance.Rounding;

    /// <summary>True where no run lies wholly between two grid stations (a run may not vanish).</summary>
    public bool SkipsNoRun(int from, int to) => _run[to] - _run[from] <= 1;

    public int RunOf(int station) => _run[station];

    public int LastRun => _run[^1];

    /// <summary>The runs of a row among the rows of its bay.</summary>
    public static RunEnds Of(RowHeads row, RowHeads[] inBay)
    {
        Bay bay = row.Bay;
        double greatest = Math.Max(bay.Section.HorizontalSpacing, bay.Rules.MovedGapMax ?? 0) + Tolerance.Checked(bay.Unit);
        int[] run = new int[row.Places.Count];
        for (int i = 1; i < run.Length; i++)
            run[i] = run[i - 1] + (row.Places[i] - row.Places[i - 1] > greatest ? 1 : 0);
        int runs = run.Length == 0 ? 0 : run[^1] + 1;
        var latestStart = new Along[runs];
        var earliestEnd = new Along[runs];
        Head[] heads = [.. inBay.SelectMany(r => r.Places.Select(r.HeadAt))];
        for (int r = 0; r < runs; r++)
        {
            Along first = row.Places[Array.IndexOf(run, r)], last = row.Places[Array.LastIndexOf(run, r)];
            latestStart[r] = Along.Min(first + bay.HalfWindow, Lacks(bay, heads, row.HeadAt(first)).First + bay.HalfWindow);
            earliestEnd[r] = Along.Max(last - bay.HalfWindow, Lacks(bay, heads, row.HeadAt(last)).Last - bay.HalfWindow);
            latestStart[r] = Along.Max(latestStart[r], first);
            earliestEnd[r] = Along.Min(earliestEnd[r], last);
        }
        return new RunEnds(run, latestStart, earliestEnd);
    }

    /// <summary>The first and last place around a nail where cover would break without it.</summary>
    private static (Along First, Along Last) Lacks(Bay bay, Head[] heads, Head without)
    {
        double reach = bay.Reach;
        Head[] near = [.. heads.Where(h => h != without && Math.Abs(h.Along - without.Along) <= Tolerance.TwoAway * reach)];
        List<CoverBreak> breaks = CoverRule.Breaks(bay, near, strict: true, without.Along - reach, without.Along + reach);
        return breaks.Count == 0
            ? (new Along(double.PositiveInfinity), new Along(double.NegativeInfinity))
            : (breaks.Min(b => b.Start), breaks.Max(b => b.End));
    }
}

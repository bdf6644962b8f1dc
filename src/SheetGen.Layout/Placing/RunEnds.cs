namespace SheetGen.Layout.Placing;

/// <summary>
/// The runs of a row: stretches in which neighbours bind each other. The first nail of a run must still cover where the run starts,
/// the last where it ends.
/// </summary>
public sealed class RunEnds
{
    private readonly int[] _run;
    private readonly double[] _latestStart;
    private readonly double[] _earliestEnd;

    /// <param name="run">Number of the run of each grid station, rising from 0.</param>
    /// <param name="latestStart">By run: the furthest place where its first nail may stand.</param>
    /// <param name="earliestEnd">By run: the nearest place where its last nail may stand.</param>
    public RunEnds(int[] run, double[] latestStart, double[] earliestEnd)
    {
        _run = run;
        _latestStart = latestStart;
        _earliestEnd = earliestEnd;
    }

    /// <summary>True where both grid stations are of one run, so that the gap between their nails has a greatest value.</summary>
    public bool IsBound(int from, int to) => _run[from] == _run[to];

    /// <summary>True where a nail may be the first of its run.</summary>
    public bool CoversStart(HeadChoice choice) => choice.Head.Along <= _latestStart[_run[choice.Label]] + 1e-9;

    /// <summary>True where a nail may be the last of its run.</summary>
    public bool CoversEnd(HeadChoice choice) => choice.Head.Along >= _earliestEnd[_run[choice.Label]] - 1e-9;

    /// <summary>True where no run lies wholly between two grid stations (a run may not vanish).</summary>
    public bool SkipsNoRun(int from, int to) => _run[to] - _run[from] <= 1;

    public int RunOf(int label) => _run[label];

    public int LastRun => _run[^1];
}

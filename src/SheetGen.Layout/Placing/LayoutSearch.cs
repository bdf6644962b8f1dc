namespace SheetGen.Layout.Placing;

/// <summary>
/// The search for the best layout: each row by itself, then rows against each other until nothing gets better, then pairs of rows
/// that stand in each other's way. Work is limited by counts, and every order is fixed, so the same input gives the same layout.
/// </summary>
public sealed class LayoutSearch
{
    private const int GroupRounds = 3;

    private readonly LayoutState _layout;
    private readonly PlacingOptions _options;
    private readonly double _maximum;
    private readonly IProgress<string>? _progress;

    public LayoutSearch(Site site, IReadOnlyList<RowTask> rows, PlacingOptions options, IProgress<string>? progress)
    {
        _options = options;
        _progress = progress;
        _maximum = site.Project.Rules.Redirect.Maximum;
        _layout = new LayoutState(rows, site.Project.Rules.NailClearance);
    }

    public IReadOnlyList<RowState> States => _layout.Rows;

    public PlacedIndex Index => _layout.Index;

    /// <summary>Proven lower limit of the whole: every row for itself, and where it is to be proven also what rows do to each other.</summary>
    public Cost LowerLimit { get; private set; }

    public void Run()
    {
        _progress?.Report("placing rows");
        IReadOnlyList<StretchLimit> limits = RowsAlone.Solve(_layout.Rows, _options.Prove);
        foreach (RowState state in _layout.Rows)
        {
            foreach (Placed nail in state.Nails)
                _layout.Index.Add(nail);
        }
        var improver = new Improver(_layout);
        _progress?.Report("clearing rows of each other");
        Negotiating.Run(_layout);
        GivingWay.Run(_layout);
        improver.Run();
        if (new Exchanges(_layout).Run())
            improver.Run();
        KeepCover(improver);
        var groups = new Groups(_layout);
        for (int round = 0; round < GroupRounds && groups.Run(); round++)
            improver.Run();
        Rebuild(improver, groups);
        GivingWay.Run(_layout);
        SingleNails.Improve(_layout);
        LowerLimit = limits.Aggregate(default(Cost), (sum, l) => sum + l.Cost);
        if (_options.Prove)
        {
            _progress?.Report("proving the limit");
            LowerLimit = Whole(LowerLimit + ConflictPrices.Gain(_layout, limits));
        }
    }

    /// <summary>The limit in whole figures.</summary>
    private Cost Whole(Cost limit)
    {
        // Twice the grid stations is more nails than any layout has; a nail costs its turn both ways, its shift and two stations left out.
        int nails = 2 * _layout.Rows.Sum(r => r.Row.Count);
        double turn = 2 * _maximum;
        return limit.RoundedUp(nails, Cost.Degrees(turn + 8));
    }

    /// <summary>Builds rows again around unresolved nails; where keeping cover then costs more than that gained, all is put back.</summary>
    private void Rebuild(Improver improver, Groups groups)
    {
        IReadOnlyList<Placed>[][] before = [.. _layout.Rows.Select(r => r.Snapshot())];
        Cost old = _layout.Cost;
        if (!new Rebuilding(_layout).Run())
            return;
        improver.Run();
        if (groups.Run())
            improver.Run();
        KeepCover(improver);
        if (_layout.Cost < old)
            return;
        for (int i = 0; i < before.Length; i++)
            _layout.Rows[i].Restore(before[i], _layout.Index);
    }

    private void KeepCover(Improver improver)
    {
        if (!KeepingCover.Run(_layout))
            return;
        improver.Forget();
        improver.Run();
    }
}

using SheetGen.Layout.Placing.Neighbourhoods;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The search for the best layout, one loop: a neighbourhood frees some slots around a nail that is left unresolved, noted or turned, a rebuild
/// proposes nails for them, and the trial keeps the whole or undoes it. Work is limited by counts, random numbers are our own, and districts
/// that are searched at the same time cannot meet, so the same input gives the same layout.
/// </summary>
public sealed class LayoutSearch
{
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

    public LayoutState Layout => _layout;

    /// <summary>Proven lower limit of the whole: every row for itself, and where it is to be proven also what rows do to each other.</summary>
    public Cost LowerLimit { get; private set; }

    public static Action<string> Trace { get; set; } = _ => { };

    public void Run()
    {
        var cover = new CoverWatch(_layout);
        _progress?.Report("each row by itself");
        IReadOnlyList<StretchLimit> limits = RowsAlone.Solve(_layout, cover, _options.Prove);
        LowerLimit = limits.Aggregate(default(Cost), (sum, l) => sum + l.Cost);
        Trace($"alone, limit {LowerLimit}");
        _progress?.Report("all rows together");
        var whole = new District(_layout, cover, 0, _layout.Slots, ulong.Parse(Environment.GetEnvironmentVariable("SEED") ?? "1", System.Globalization.CultureInfo.InvariantCulture));
        foreach (Slot slot in _layout.Slots)
            slot.District = 0;
        Start(whole);
        Trace($"greedy {_layout.Cost}");
        var alone = new RowAlone(whole);
        foreach (StretchLimit limit in limits)
            Try(whole, alone.Propose(limit), orEqual: false);
        Trace($"alone tried {_layout.Cost}");
        var search = new DistrictSearch(whole, limits);
        search.Run();
        Trace($"searched {_layout.Cost} cover {cover.Total}");
        if (_options.Prove)
        {
            _progress?.Report("proving the limit");
            LowerLimit = Whole(LowerLimit + ConflictPrices.Gain(_layout, limits));
        }
    }

    /// <summary>All nails at their grid places, those with the fewest free directions first, each in its cheapest clear direction.</summary>
    private static void Start(District whole)
    {
        var insertion = new Insertion(whole);
        foreach (Slot slot in whole.Slots)
            insertion.Take(slot);
        insertion.PutBack(Insertion.Order.FewestFirst, 0, 0, int.MaxValue);
        whole.Trial.Accept();
    }

    internal static int Try(District district, bool isProposed, bool orEqual)
    {
        if (isProposed)
            return district.Trial.End(orEqual);
        district.Trial.Undo();
        return 1;
    }

    /// <summary>The limit in whole figures.</summary>
    private Cost Whole(Cost limit)
    {
        // Twice the grid stations is more nails than any layout has; a nail costs its turn both ways, its shift and two stations left out.
        int nails = 2 * _layout.Rows.Sum(r => r.Row.Count);
        double turn = 2 * _maximum;
        return limit.RoundedUp(nails, Cost.Degrees(turn + 8));
    }
}

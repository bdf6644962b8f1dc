using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The search for the best layout, one loop: a neighbourhood frees some slots around a nail that is left unresolved or noted, a rebuild
/// proposes nails for them, and the trial keeps the whole or undoes it. Work is limited by counts, random numbers are our own, and districts
/// that are searched at the same time cannot meet, so the same input gives the same layout.
/// </summary>
internal sealed class LayoutSearch
{
    /// <summary>Rounds over districts that are cut differently; one where there is a single district.</summary>
    private const int Rounds = 2;

    /// <summary>Long loops side by side in each district of the first round.</summary>
    private const int Starts = 2;

    private readonly double _maximum;
    private readonly IProgress<string>? _progress;
    private readonly List<CutShort> _cutShort = [];
    private IReadOnlyList<Uncovered> _coverNotAllTried = [];

    public LayoutSearch(Site site, IReadOnlyList<RowTask> rows, PlacingOptions options, IProgress<string>? progress)
    {
        Options = options;
        _progress = progress;
        _maximum = site.Project.Rules.Redirect.Maximum;
        Layout = new LayoutState(rows, site.Project.Rules.NailClearance);
        Cover = new CoverWatch(Layout, site.Faces.SelectMany(f => Bay.Of(f, site.Project.Rules, site.Project.Unit)));
    }

    public PlacingOptions Options { get; }

    public LayoutState Layout { get; }

    public CoverWatch Cover { get; }

    /// <summary>Spans that the grid alone leaves uncovered and this layout covers.</summary>
    public IReadOnlyList<Uncovered> NewlyCovered { get; private set; } = [];

    /// <summary>Proven lower limit of the whole: every row for itself, and where it is to be proven also what rows do to each other.</summary>
    public Cost LowerLimit { get; private set; }

    /// <summary>Where the search ended at its greatest number of trials or directions while it was still gaining.</summary>
    public IReadOnlyList<CutShort> CutShort => _cutShort;

    /// <summary>Trials in the districts, and directions looked at in all: what the search cost, the same on every machine.</summary>
    public (long Trials, long Directions) Work { get; private set; }

    public void Run()
    {
        CoverWatch cover = Cover;
        Uncovered[] ofGrid = [.. cover.Spans()];
        _progress?.Report("each row by itself");
        var limits = new StretchLimits(Layout, Options.Depth < SearchDepth.Whole ? [] : RowsAlone.Solve(Layout, Options.Prove));
        _progress?.Report("all rows together");
        var whole = new District(Layout, cover, 0, Layout.Slots, 0);
        Start(whole, limits);
        int rounds = Options.Depth == SearchDepth.Insertion ? 0 : Options.Depth == SearchDepth.Short || Districts.IsOne(Layout) ? 1 : Rounds;
        for (int round = 0; round < rounds; round++)
            Search(cover, limits, round, rounds);
        if (Options.Depth == SearchDepth.Whole && !Options.Without.Contains(nameof(SingleNail)))
            EachByItself(whole);
        Work = (Work.Trials, Work.Directions + whole.Work);
        Uncovered[] left = [.. cover.Spans()];
        _cutShort.AddRange(left.Where(l => _coverNotAllTried.Any(l.Meets)).Select(Told));
        NewlyCovered = [.. ofGrid.Where(g => !left.Any(g.Meets))];
        if (Options.Depth == SearchDepth.Whole)
            LowerLimit = Options.Prove ? ProvenLimit(limits.All) : limits.Sum + new ClusterLimits(Layout, limits.All, prove: false).Gain;
    }

    /// <summary>The limit with clusters that are looked at for long, and what rows do to each other outside them.</summary>
    private Cost ProvenLimit(IReadOnlyList<StretchLimit> alone)
    {
        _progress?.Report("proving the limit");
        var clusters = new ClusterLimits(Layout, alone, prove: true);
        Cost sum = alone.Aggregate(default(Cost), (sum, l) => sum + l.Cost);
        return Whole(sum + clusters.Gain + ConflictPrices.Gain(Layout, alone, clusters));
    }

    /// <summary>
    /// All nails at their grid places, those with the fewest free directions first, each in its cheapest clear direction; then each stretch as
    /// it would be best alone, where that is better for all.
    /// </summary>
    private void Start(District whole, StretchLimits limits)
    {
        var insertion = new Insertion(whole);
        foreach (Slot slot in whole.Slots)
        {
            slot.District = whole.Number;
            insertion.Take(slot);
        }
        insertion.PutBack(Insertion.Order.FewestFirst, 0, 0, int.MaxValue);
        whole.Trial.Accept();
        if (!Options.Without.Contains(nameof(CoverShift)))
        {
            var shift = new CoverShift(whole, Cover, Options.MostCoverMoves);
            shift.Run();
            _coverNotAllTried = shift.NotAllTried;
        }
        var alone = new RowAlone(whole);
        foreach (StretchLimit limit in limits.All.Where(_ => !Options.Without.Contains(nameof(RowAlone))))
        {
            if (alone.Propose(limit))
                whole.Trial.End(orEqual: false);
            else
                whole.Trial.Undo();
        }
    }

    /// <summary>What the last districts changed may have made room for a nail of an earlier one.</summary>
    internal static void EachByItself(District whole)
    {
        foreach (Slot slot in whole.Slots)
            slot.District = whole.Number;
        var single = new SingleNail(whole);
        for (bool isBetter = true; isBetter;)
        {
            isBetter = false;
            foreach (Slot slot in whole.Slots.Where(s => whole.May(s) && !s.IsPlain))
            {
                if (single.Propose(slot))
                    isBetter |= whole.Trial.End(single.MovesSideways) < 0;
                else
                    whole.Trial.Undo();
            }
        }
    }

    private void Search(CoverWatch cover, StretchLimits limits, int round, int rounds)
    {
        bool isLast = round + 1 == rounds;
        foreach (List<District> group in Districts.Cut(Layout, cover, round))
        {
            _progress?.Report(FormattableString.Invariant($"round {round + 1} of {rounds}, {group.Sum(d => d.Slots.Count)} of {Layout.Slots.Count} grid stations"));
            DistrictSearch[] searches = [.. group.Select(d => new DistrictSearch(d, limits, Options))];
            Parallel.ForEach(searches, search => search.Run(Options.Depth == SearchDepth.Short ? 0 : round == 0 ? Starts : 1));
            Work = (Work.Trials + searches.Sum(s => (long)s.Trials), Work.Directions + searches.Sum(s => s.District.Work));
            if (isLast)
                _cutShort.AddRange(searches.Where(s => s.IsCutShort).Select(s => Told(s.District, s.Trials)));
        }
    }

    private static CutShort Told(Uncovered left) =>
        Told(left.Bay, left.Start, left.End, "the search for heads that cover this stopped at its greatest count, before every move was tried");

    private static CutShort Told(District district, int trials) => Told(
        district.Slots[0].Row.Bay, district.Slots[0].Grid.Head.Along, district.Slots[^1].Grid.Head.Along,
        FormattableString.Invariant($"the search stopped at its greatest count, after {trials} trials, while it may still have found better layouts"));

    private static CutShort Told(Bay bay, Along from, Along to, string what)
    {
        Wall wall = bay.Wall;
        return new CutShort(
            wall, wall.StationOf(from).Number, wall.StationOf(to).Number, $"{wall.Name}, {wall.StationText(from, bay.Unit)} to {wall.StationText(to, bay.Unit)}: {what}");
    }

    /// <summary>The limit in whole figures.</summary>
    private Cost Whole(Cost limit)
    {
        // Twice the grid stations is more nails than any layout has; a nail costs its turn both ways, its shift and two stations left out.
        int nails = 2 * Layout.Slots.Count;
        double turn = 2 * _maximum;
        return limit.RoundedUp(nails, Cost.Degrees(turn + 8));
    }
}

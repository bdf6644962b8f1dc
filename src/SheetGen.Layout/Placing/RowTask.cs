using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>
/// A row of one bay as the search sees it: the places where each of its grid stations' nails may stand, how neighbours bind each
/// other, and what each end of a run must cover.
/// </summary>
internal sealed class RowTask
{
    private readonly Obstacle[]?[] _near;
    private readonly double[] _lengths;
    private Tabled? _table;

    /// <param name="thinner">By how much the radius of its holes is less than the section's, where clearance is relaxed.</param>
    public RowTask(
        int index, RowHeads row, RowNumber number, IReadOnlyList<ColumnName> columns, double length, IReadOnlyList<IReadOnlyList<HeadChoice>> choices, RunEnds ends, Site site,
        double thinner = 0)
    {
        Index = index;
        Number = number;
        Columns = columns;
        Row = row;
        Length = length;
        Choices = choices;
        Ends = ends;
        Site = site;
        _near = new Obstacle[]?[row.Places.Count];
        _lengths = new double[choices.SelectMany(c => c).Select(c => c.Turnings.Count).DefaultIfEmpty(0).Max()];
        Rules rules = row.Bay.Rules;
        Radius = row.Bay.Section.HoleDiameter / 2 - thinner;
        Quantum = Lengths.Quantum(row.Bay.Unit);
        LeastGap = rules.MinGap - Quantum;
        GreatestGap = row.Bay.Section.HorizontalSpacing + Tolerance.Placed(row.Bay.Unit);
        GreatestMovedGap = Math.Max(row.Bay.Section.HorizontalSpacing, rules.MovedGapMax ?? 0) + Tolerance.Placed(row.Bay.Unit);
        double lengthening = choices.SelectMany(c => c).Select(c => c.Turnings.GreatestLengthening).DefaultIfEmpty(1).Max();
        LongestNail = Math.Max(lengthening * length + rules.LengthIncrement, choices.SelectMany(c => c).Max(c => c.PinnedLength ?? 0));
    }

    private sealed record Tabled(Turnings Of, DirectionTable Table);

    public int Index { get; }

    /// <summary>Number of the slot of its first grid station.</summary>
    public int FirstSlot { get; init; }

    public RowNumber Number { get; }

    /// <summary>Grid columns of its grid stations, as printed in marks: 07, or 07a where two share a column.</summary>
    public IReadOnlyList<ColumnName> Columns { get; }

    public RowHeads Row { get; }

    public Bay Bay => Row.Bay;

    public double Length { get; }

    public double Radius { get; }

    public double Quantum { get; }

    public double LeastGap { get; }

    public double GreatestGap { get; }

    public double GreatestMovedGap { get; }

    /// <summary>Longest that a nail of this row can get by turning.</summary>
    public double LongestNail { get; }

    public int Count => Row.Places.Count;

    /// <summary>Places by grid station, in order along the wall.</summary>
    public IReadOnlyList<IReadOnlyList<HeadChoice>> Choices { get; }

    public RunEnds Ends { get; }

    /// <summary>Grid stations that the designer leaves without a nail, with their columns.</summary>
    public IReadOnlyList<(Along Along, ColumnName Column)> LeftOutByHand { get; init; } = [];

    public Site Site { get; }

    /// <summary>The place at a grid station itself; where it is pinned elsewhere, the pinned place.</summary>
    public HeadChoice GridChoice(int ordinal)
    {
        IReadOnlyList<HeadChoice> choices = Choices[ordinal];
        int at = 0;
        while (!choices[at].IsAtGrid && !choices[at].IsPinned)
            at++;
        return choices[at];
    }

    /// <summary>The hole of a direction, given by its number in order.</summary>
    public Hole HoleAt(HeadChoice choice, int turning) =>
        choice.HoleOf(choice.Turnings[turning], choice.IsPinned ? LengthOf(choice, choice.Turnings[turning]) : LengthAt(choice, turning), Radius, Bay.Rules.Drift);

    /// <summary>The directions of a place, and how long a nail gets in each; one table for all places that may take the same ones.</summary>
    public DirectionTable TableOf(HeadChoice choice)
    {
        if (choice.IsPinned)
            return new DirectionTable(choice.Turnings, t => LengthOf(choice, t));
        if (_table is { } known && ReferenceEquals(known.Of, choice.Turnings))
            return known.Table;
        var table = new DirectionTable(choice.Turnings, t => LengthOf(choice, t));
        _table = new Tabled(choice.Turnings, table);
        return table;
    }

    private double LengthAt(HeadChoice choice, int turning)
    {
        double length = _lengths[turning];
        return length > 0 ? length : _lengths[turning] = LengthOf(choice, choice.Turnings[turning]);
    }

    public double LengthOf(HeadChoice choice, Turning turning) =>
        choice.PinnedLength ?? Turnings.LengthOf(turning, Length, Bay.Rules.LengthIncrement);

    public Hole HoleOf(HeadChoice choice, Turning turning) =>
        choice.HoleOf(turning, LengthOf(choice, turning), Radius, Bay.Rules.Drift);

    /// <summary>The directions of a place that are clear of everything that stands still.</summary>
    public FreeDirections FreeOf(HeadChoice choice) => choice.Directions ?? choice.Remember(new FreeDirections(this, choice));

    /// <summary>True where a direction is clear of everything that stands still; remembered.</summary>
    public bool IsFree(HeadChoice choice, int turning) => choice.IsPinned || FreeOf(choice).IsFree(turning);

    public static Obstacle? FirstHit(in Hole hole, Obstacle[] near)
    {
        Bounds box = Bounds.Of(hole);
        foreach (Obstacle still in near)
        {
            if (still.Reach.Meets(box) && AreTooClose(hole, still))
                return still;
        }
        return null;
    }

    public static bool AreTooClose(in Hole hole, Obstacle still) => HoleDistance.CloserThan(hole, still.Solid, still.Required - Tolerance.Rounding);

    /// <summary>What stands still near the nails of one grid station, wherever they stand within their reach.</summary>
    public Obstacle[] Near(HeadChoice choice)
    {
        if (_near[choice.Ordinal] is { } known)
            return known;
        HeadChoice grid = GridChoice(choice.Ordinal);
        double spread = Choices[choice.Ordinal].Max(c => (c.Point - grid.Point).Length);
        double reach = LongestNail + spread + Radius + Bay.Rules.Drift * LongestNail;
        return _near[choice.Ordinal] = Site.Near(Bay.Face, Bay.Leg.Index, grid.Point, reach);
    }

    /// <summary>True where two nails may be neighbours in the row: the gap between them fits.</summary>
    public bool Fits(HeadChoice from, HeadChoice to)
    {
        double gap = to.Head.Along - from.Head.Along;
        bool isBound = Ends.IsBound(from.Ordinal, to.Ordinal), areOnGrid = from.IsAtGrid && to.IsAtGrid, areNextOnGrid = areOnGrid && to.Ordinal == from.Ordinal + 1;
        double greatest = areOnGrid ? GreatestGap : GreatestMovedGap;
        // The gap along the line is known at once, that along the face is not.
        if (isBound && !areNextOnGrid && gap > greatest)
            return false;
        double face = gap * FaceFactor(from, to);
        if (face < LeastGap - Tolerance.Rounding)
            return false;
        return isBound ? areNextOnGrid || face <= greatest : Ends.CoversEnd(from.Ordinal, from.Head.Along) && Ends.CoversStart(to.Ordinal, to.Head.Along);
    }

    /// <summary>True where two nails, or a nail and the row's start or end (null), may be next to each other.</summary>
    public bool FitsAsNeighbours(HeadChoice? before, HeadChoice? after)
    {
        if (before is null)
            return after is not null && Ends.RunOf(after.Ordinal) == 0 && Ends.CoversStart(after.Ordinal, after.Head.Along);
        return after is null
            ? Ends.RunOf(before.Ordinal) == Ends.LastRun && Ends.CoversEnd(before.Ordinal, before.Head.Along)
            : before.Head.Along < after.Head.Along && Ends.SkipsNoRun(before.Ordinal, after.Ordinal) && Fits(before, after);
    }

    private double FaceFactor(HeadChoice from, HeadChoice to)
    {
        var middle = Along.Middle(from.Head.Along, to.Head.Along);
        return Bay.Face.IsStraightAt(middle) ? 1 : Bay.Face.Scale(middle, Row.ElevationAt(middle));
    }
}

using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>Why a nail is not at its grid place in the grid's direction: what the grid place hits, and which cheaper choices fail.</summary>
internal sealed class Reasons
{
    private const int FailedShown = 6;

    private readonly LayoutState _layout;
    private readonly IReadOnlyList<Uncovered> _newlyCovered;
    private readonly IReadOnlyDictionary<Placed, string> _marks;
    private readonly LengthUnit _unit;

    /// <param name="newlyCovered">What the grid alone leaves uncovered and this layout covers.</param>
    public Reasons(LayoutState layout, IReadOnlyList<Uncovered> newlyCovered, IReadOnlyDictionary<Placed, string> marks, LengthUnit unit)
    {
        _layout = layout;
        _newlyCovered = newlyCovered;
        _marks = marks;
        _unit = unit;
    }

    /// <summary>What a hole comes too close to, worst first.</summary>
    private readonly record struct Hit(string Name, Nearest Near, double Required, Solid? Solid, Placed? Nail)
    {
        public double Clear => Near.Clear;
    }

    public NailReason? Of(Placed nail)
    {
        if (nail.IsPlain)
            return null;
        if (nail.Choice.IsPinned)
            return new NailReason(null, null, null, null, [], "pinned in the project file");
        RowTask row = nail.Row;
        HeadChoice grid = row.GridChoice(nail.Choice.Ordinal);
        Hit? worst = WorstHit(nail, row, grid, row.HoleOf(grid, grid.Turnings[0]));
        IReadOnlyList<FailedChoice> failed = nail.IsUnresolved ? FailedOf(nail, grid, null) : FailedOf(nail, grid, nail.Cost);
        if (worst is not { } hit)
            return new NailReason(null, null, null, null, failed, OfCover(nail) ?? "makes room for its neighbours in the row");
        double after = hit.Nail is { } other ? HoleDistance.Between(nail.Hole, other.Hole).Clear : ClearOf(nail, hit);
        string text = nail.IsUnresolved
            ? $"{Told(hit)} and no free choice was found"
            : $"grid place {Told(hit)}; now {Figures.Length(after, _unit)} clear of it";
        return new NailReason(hit.Name, hit.Clear, after, hit.Required, failed, text);
    }

    /// <summary>How far a nail is clear of all parts of what its grid place hits.</summary>
    private static double ClearOf(Placed nail, in Hit hit)
    {
        double least = HoleDistance.ToSolid(nail.Hole, hit.Solid!).Clear;
        foreach (Obstacle part in nail.Row.Near(nail.Choice))
        {
            if (part.Name == hit.Name)
                least = Math.Min(least, HoleDistance.ToSolid(nail.Hole, part.Solid).Clear);
        }
        return least;
    }

    /// <summary>The span that a moved nail covers, or that one covers for which it makes room; null where it moved for something else.</summary>
    private string? OfCover(Placed nail)
    {
        Bay bay = nail.Row.Bay;
        foreach (Uncovered span in nail.Choice.IsAtGrid ? [] : _newlyCovered.Where(s => s.Bay == bay))
        {
            Along from = Along.Min(nail.Choice.Head.Along, span.Start - bay.HalfWindow), to = Along.Max(nail.Choice.Head.Along, span.End + bay.HalfWindow);
            Placed[] between = [.. _layout.Rows[nail.Row.Index].Nails.Where(n => n.Choice.Head.Along >= from && n.Choice.Head.Along <= to)];
            if (!between.Any(n => !n.Choice.IsAtGrid && Covers(n.Choice.Head.Along, span)) || between.Any(n => n.Choice.IsAtGrid && !Covers(n.Choice.Head.Along, span)))
                continue;
            string Show(Along along) => bay.Wall.StationText(along, _unit);
            return $"moved so that the face is covered from {Show(span.Start)} to {Show(span.End)}, which its grid place leaves uncovered";
        }
        return null;
    }

    private static bool Covers(Along along, Uncovered span) =>
        along - span.Bay.HalfWindow < span.End && along + span.Bay.HalfWindow > span.Start;

    /// <summary>Why a grid station has no nail.</summary>
    public string OfLeftOut(RowTask row, int ordinal)
    {
        HeadChoice grid = row.GridChoice(ordinal);
        Hit? worst = WorstHit(null, row, grid, row.HoleOf(grid, grid.Turnings[0]));
        return worst is { } hit
            ? $"grid place {Told(hit)}; the gap between its neighbours is allowed"
            : "the gap between its neighbours is allowed";
    }

    private string Told(in Hit hit)
    {
        string meets = (hit.Solid is { IsSurface: true } && hit.Near.IsCrossing, hit.Near.RunsInto) switch
        {
            (true, _) => $"crosses {hit.Name}",
            (false, true) => $"runs {Figures.Depth(-hit.Clear, _unit)} into {hit.Name}",
            _ => $"comes within {Figures.Beside(hit.Clear, hit.Required, _unit)} of {hit.Name}",
        };
        return $"{meets} ({Figures.Length(hit.Required, _unit)} required)";
    }

    private Hit? WorstHit(Placed? own, RowTask row, HeadChoice choice, Hole hole)
    {
        Hit? worst = null;
        foreach (Hit hit in Hits(own, row, choice, hole))
        {
            if (worst is not { } w || hit.Clear - hit.Required < w.Clear - w.Required)
                worst = hit;
        }
        return worst;
    }

    private IEnumerable<Hit> Hits(Placed? own, RowTask row, HeadChoice choice, Hole hole)
    {
        foreach (Obstacle still in row.Near(choice))
        {
            if (HoleDistance.CloserThan(hole, still.Solid, still.Required - Tolerance.Rounding))
                yield return new Hit(still.Name, HoleDistance.ToSolid(hole, still.Solid), still.Required, still.Solid, null);
        }
        double clearance = row.Bay.Rules.NailClearance;
        var others = new List<Placed>();
        _layout.AddHits(_layout.Rows[row.Index].Slots[choice.Ordinal], hole, others);
        foreach (Placed other in others.OrderBy(o => o.Row.Index).ThenBy(o => o.Choice.Head.Along))
        {
            // What is not to be drilled stands in nobody's way, unless neither is.
            if (!ReferenceEquals(other, own) && (!other.IsUnresolved || own is { IsUnresolved: true }))
                yield return new Hit(_marks[other], HoleDistance.Between(hole, other.Hole), clearance, null, other);
        }
    }

    /// <summary>Cheaper directions at the grid place, then at the nail's own place, cheapest first; null cost for all.</summary>
    private List<FailedChoice> FailedOf(Placed nail, HeadChoice grid, Cost? below)
    {
        var failed = new List<FailedChoice>();
        HeadChoice[] places = nail.Choice == grid ? [grid] : [grid, nail.Choice];
        foreach (HeadChoice place in places)
        {
            int here = 0;
            foreach (Turning turning in place.Turnings.All)
            {
                if (here >= FailedShown / places.Length)
                    break;
                if (below is { } limit && !(Placed.CostOf(nail.Row, place, turning, false) < limit))
                    break;
                Hole hole = nail.Row.HoleOf(place, turning);
                if (Hits(nail, nail.Row, place, hole).Cast<Hit?>().FirstOrDefault() is not { } hit)
                    continue;
                Station station = nail.Row.Bay.Wall.StationOf(place.Head.Along);
                failed.Add(new FailedChoice(station.Number, turning.Splay, turning.Inclination, hit.Name, hit.Clear));
                here++;
            }
        }
        return failed;
    }
}

using SheetGen.Layout.Rows;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Heads of one nail that may stand for an unresolved one that is left out: on the face around its grid station, on its row or between rows, clear of
/// edges and of other heads, so that no more of the face is uncovered than now.
/// </summary>
internal static class AddedNail
{
    /// <summary>Parts into which half a spacing is cut, along the wall and in height.</summary>
    private const int Parts = 8;

    /// <summary>The heads, nearest to the grid station first.</summary>
    public static IEnumerable<Head> Heads(LayoutState layout, Slot slot)
    {
        Bay bay = slot.Row.Bay;
        Head grid = slot.Grid.Head;
        double quantum = Lengths.Quantum(bay.Unit), across = bay.Section.HorizontalSpacing / 2 / Parts, down = bay.Section.VerticalSpacing / 2 / Parts;
        Along start = grid.Along - 2 * bay.Reach, end = grid.Along + 2 * bay.Reach;
        (RowTask Row, Head Head)[] others = [.. layout.Rows.Where(r => r.Row.Bay == bay).SelectMany(r => r.Nails).Where(n => n.SlotNumber != slot.Index)
            .Select(n => (n.Row, n.Choice.Head)).Where(o => o.Head.Along >= start - bay.Reach && o.Head.Along <= end + bay.Reach)];
        Head[] heads = [.. others.Select(o => o.Head)];
        double now = Uncovered(bay, [.. heads, grid], start, end);
        var outline = new FaceOutline(bay.Face, bay.Rules.EdgeMin);
        return
            from i in Enumerable.Range(-Parts, 2 * Parts + 1)
            from k in Enumerable.Range(-Parts, 2 * Parts + 1)
            where i != 0 || k != 0
            orderby Math.Pow(i * across, 2) + Math.Pow(k * down, 2), k, i
            let head = new Head(bay.Rounded(grid.Along + i * across), (slot.Row.Row.ElevationAt(grid.Along + i * across) + k * down).Rounded(bay.Unit))
            where bay.Holds(head, Tolerance.Rounding) && outline.Holds(head, quantum) && !others.Any(o => AreTooNear(bay, head, o.Head, o.Row.Index == slot.Row.Index))
                && Uncovered(bay, [.. heads, head], start, end) <= now + Tolerance.SameLength
            select head;
    }

    /// <summary>True under min_gap along the face in one row, and in two rows that are less than half a vertical spacing apart.</summary>
    private static bool AreTooNear(Bay bay, Head head, Head other, bool inRow) =>
        (inRow || Math.Abs(head.Elevation - other.Elevation) < bay.Section.VerticalSpacing / 2 - Tolerance.Rounding)
        && bay.Face.Distance(Along.Min(head.Along, other.Along), Along.Max(head.Along, other.Along), head.Elevation) < bay.Rules.MinGap - Tolerance.Rounding;

    private static double Uncovered(Bay bay, Head[] heads, Along from, Along to) =>
        CoverRule.Breaks(bay, heads, strict: false, from, to).Select(b => (b.Start, b.End)).Distinct().Sum(b => b.End - b.Start);
}

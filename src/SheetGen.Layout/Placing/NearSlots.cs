using SheetGen.Layout.Rows;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Which slots' nails could come too close to each other, whatever their places and directions: boxes around all their holes, along and across the
/// first wall's layout line, so that turned or moved coordinates give the same ones in the same order.
/// </summary>
internal static class NearSlots
{
    public static void Find(IReadOnlyList<Slot> slots, double clearance)
    {
        if (slots.Count == 0)
            return;
        Vector2D axis = slots[0].Row.Bay.Wall.LayoutLine.TangentAt(slots[0].Grid.Head.Along);
        Bounds[] boxes = [.. slots.Select(s => Reach(s, axis).Grow(clearance / 2))];
        Bounds all = boxes.Aggregate((a, b) => a.With(b));
        bool byNorthing = all.High.N - all.Low.N > all.High.E - all.Low.E;
        double Low(int i) => byNorthing ? boxes[i].Low.N : boxes[i].Low.E;
        double High(int i) => byNorthing ? boxes[i].High.N : boxes[i].High.E;
        int[] order = [.. Enumerable.Range(0, slots.Count).OrderBy(Low)];
        var near = slots.Select(_ => new List<Slot>()).ToArray();
        for (int a = 0; a < order.Length; a++)
        {
            int i = order[a];
            for (int b = a + 1; b < order.Length && Low(order[b]) <= High(i); b++)
            {
                int j = order[b];
                if (!boxes[i].Meets(boxes[j]))
                    continue;
                near[i].Add(slots[j]);
                near[j].Add(slots[i]);
            }
        }
        for (int i = 0; i < slots.Count; i++)
        {
            Vector3D head = slots[i].Grid.Point;
            slots[i].Near = [.. near[i].OrderBy(s => Math.Round((s.Grid.Point - head).Length, Tolerance.Decimals)).ThenBy(s => s.Index)];
            slots[i].NearNumbers = Array.ConvertAll(slots[i].Near, s => s.Index);
        }
    }

    private static Bounds Reach(Slot slot, Vector2D axis)
    {
        RowTask row = slot.Row;
        Vector3D Turned(Vector3D p) => new(p.N * axis.N + p.E * axis.E, p.E * axis.N - p.N * axis.E, p.Z);
        Vector3D grid = Turned(slot.Grid.Point);
        var box = new Bounds(grid, grid);
        HeadChoice? last = null;
        Bounds fan = default;
        foreach (HeadChoice choice in row.Choices[slot.Ordinal])
        {
            // On a straight face all places see the same box of axes.
            if (last is null || choice.IsPinned || last.IsPinned || !choice.LooksLike(last))
                fan = Fan(row, choice, Turned);
            last = choice;
            Vector3D head = Turned(choice.Point);
            box = box.With(new Bounds(head + fan.Low, head + fan.High));
        }
        return box.Grow(row.Radius + row.Bay.Rules.Drift * row.LongestNail);
    }

    /// <summary>A box around the axes of all directions of a place, seen from the place.</summary>
    private static Bounds Fan(RowTask row, HeadChoice choice, Func<Vector3D, Vector3D> turned)
    {
        double length = choice.IsPinned ? row.LengthOf(choice, choice.Turnings[0]) : row.LongestNail;
        var box = new Bounds(default, default);
        foreach (Turning turning in choice.Turnings.Rim)
        {
            Vector3D tip = turned(choice.HoleOf(turning, length, 0, 0).Direction * length);
            box = box.With(new Bounds(tip, tip));
        }
        return box;
    }
}

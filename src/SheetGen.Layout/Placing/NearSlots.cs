using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>Which slots' nails could come too close to each other, whatever their places and directions: boxes around all their holes.</summary>
internal static class NearSlots
{
    public static void Find(IReadOnlyList<Slot> slots, double clearance)
    {
        if (slots.Count == 0)
            return;
        Bounds[] boxes = [.. slots.Select(s => Reach(s).Grow(clearance / 2))];
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
            slots[i].Near = [.. near[i].OrderBy(s => (s.Grid.Point - head).Length).ThenBy(s => s.Index)];
        }
    }

    private static Bounds Reach(Slot slot)
    {
        RowTask row = slot.Row;
        var box = new Bounds(slot.Grid.Point, slot.Grid.Point);
        foreach (HeadChoice choice in row.Choices[slot.Label])
            box = box.With(choice.Reach(choice.IsPinned ? row.LengthOf(choice, choice.Turnings[0]) : row.LongestNail));
        return box.Grow(row.Radius + row.Bay.Rules.Drift * row.LongestNail);
    }
}

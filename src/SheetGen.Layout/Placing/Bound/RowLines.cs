using SheetGen.Layout.Rows;

namespace SheetGen.Layout.Placing;

/// <summary>Rows that go on from bay to bay, through corners and section limits: each with the one of the next bay that is nearest in elevation.</summary>
internal static class RowLines
{
    public static List<RowTask[]> Of(IEnumerable<RowTask> rows)
    {
        RowTask[] all = [.. rows];
        var next = new Dictionary<RowTask, RowTask>();
        foreach (RowTask row in all)
        {
            if (Nearest(row, all, after: true) is { } other && Nearest(other, all, after: false) == row)
                next[row] = other;
        }
        var lines = new List<RowTask[]>();
        foreach (RowTask first in all.Except(next.Values))
        {
            var line = new List<RowTask> { first };
            while (next.TryGetValue(line[^1], out RowTask? other))
                line.Add(other);
            lines.Add([.. line]);
        }
        return lines;
    }

    private static RowTask? Nearest(RowTask row, RowTask[] all, bool after)
    {
        Head own = after ? row.GridChoice(row.Count - 1).Head : row.GridChoice(0).Head;
        RowTask? nearest = null;
        double least = row.Bay.Section.VerticalSpacing / 2;
        foreach (RowTask other in all)
        {
            if (other.Bay.Wall != row.Bay.Wall || Math.Abs(after ? other.Bay.Start - row.Bay.End : other.Bay.End - row.Bay.Start) > Tolerance.SameLength)
                continue;
            Head head = after ? other.GridChoice(0).Head : other.GridChoice(other.Count - 1).Head;
            double apart = Math.Abs(head.Elevation - own.Elevation);
            if (apart <= least)
                (nearest, least) = (other, apart);
        }
        return nearest;
    }
}

using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Benchmarks;

/// <summary>
/// Placement as by hand: row after row, each nail from left to right at its grid place takes the cheapest direction that is clear of
/// what stands still and of the nails placed before it; where there is none it stays as it is, unresolved.
/// </summary>
internal sealed record NailByNail(int Unresolved, int Noted, double Effort)
{
    public static NailByNail Place(WallProject project)
    {
        var site = new Site(project);
        List<RowTask> rows = RowTasks.Make(site);
        var placed = new PlacedIndex(rows.Max(r => r.LongestNail) / 4);
        double clearance = project.Rules.NailClearance - 1e-9;
        int unresolved = 0, noted = 0;
        long effort = 0;
        foreach (RowTask row in rows)
        {
            for (int ordinal = 0; ordinal < row.Count; ordinal++)
            {
                if (Free(row, row.GridChoice(ordinal), placed, clearance) is not { } nail)
                {
                    unresolved++;
                    continue;
                }
                placed.Add(nail);
                noted += nail.Turning.IsNoted ? 1 : 0;
                effort += nail.Turning.Effort;
            }
        }
        return new NailByNail(unresolved, noted, effort / (double)Cost.Point);
    }

    private static Placed? Free(RowTask row, HeadChoice choice, PlacedIndex placed, double clearance)
    {
        for (int t = 0; t < choice.Turnings.Count; t++)
        {
            if (!row.IsFree(choice, t))
                continue;
            Placed nail = Placed.At(row, choice, choice.Turnings[t], false);
            if (!placed.Near(nail.Hole, clearance).Any(o => HoleDistance.CloserThan(nail.Hole, o.Hole, clearance)))
                return nail;
        }
        return null;
    }
}

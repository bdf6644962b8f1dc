using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>Turns the rows of a project into tasks for the search.</summary>
internal static class RowTasks
{
    public static List<RowTask> Make(Site site)
    {
        WallProject project = site.Project;
        var tasks = new List<RowTask>();
        foreach (Face face in site.Faces)
        {
            var outline = new FaceOutline(face, project.Rules.EdgeMin);
            Bay[] bays = [.. Bay.Of(face, project.Rules, project.Unit)];
            foreach (IGrouping<Section, Bay> section in bays.GroupBy(b => b.Section))
                AddSection(site, outline, [.. section], tasks);
        }
        return tasks;
    }

    private static void AddSection(Site site, FaceOutline outline, Bay[] bays, List<RowTask> tasks)
    {
        List<RowHeads> rows = SectionRows.Make(bays, outline);
        Dictionary<RowHeads, RowNumber> numbers = RowNumbering.Of(rows);
        rows.RemoveAll(r => !numbers.ContainsKey(r));
        Section section = bays[0].Section;
        var turnings = new Turnings(section, site.Project.Rules);
        var columns = new ColumnNames(bays, rows);
        var ordered = rows.OrderBy(r => numbers[r]).ThenBy(r => r.Bay.Start).ToList();
        foreach (RowHeads row in ordered)
        {
            RowNumber number = numbers[row];
            HandMadeStations stations = HandMadeStations.Apply(site.Project, row, number, columns.Of(row));
            if (row.Places.Count == 0)
                continue;
            RowHeads[] inBay = [.. rows.Where(r => r.Bay == row.Bay)];
            var choices = new IReadOnlyList<HeadChoice>[row.Places.Count];
            for (int ordinal = 0; ordinal < choices.Length; ordinal++)
                choices[ordinal] = Choices(row, inBay, ordinal, outline, turnings);

            Pins.Apply(site.Project, row, number, choices, stations.Added);
            tasks.Add(new RowTask(
                tasks.Count, row, number, stations.Columns, section.LengthOfRow(Math.Max(1, number.Whole)), choices, RunEnds.Of(row, inBay), site)
            { FirstSlot = tasks.Count == 0 ? 0 : tasks[^1].FirstSlot + tasks[^1].Count, LeftOutByHand = stations.LeftOut });
        }
    }

    /// <summary>The grid place and the places a whole number of shift steps from it, up to half a spacing, that the face allows.</summary>
    private static List<HeadChoice> Choices(RowHeads row, RowHeads[] inBay, int ordinal, FaceOutline outline, Turnings turnings)
    {
        Bay bay = row.Bay;
        Rules rules = bay.Rules;
        Along place = row.Places[ordinal];
        double quantum = Lengths.Quantum(bay.Unit);
        int steps = (int)Math.Floor(bay.Section.HorizontalSpacing / 2 / rules.ShiftStep + Tolerance.Rounding);
        Head grid = row.HeadAt(place);
        bool isTop = bay.Wall.Top.At(place) - grid.Elevation <= rules.TopMax + quantum && !HasOther(row, inBay, grid, above: true);
        bool isBottom = grid.Elevation - bay.Wall.Bottom.At(place) <= rules.BottomMax + quantum && !HasOther(row, inBay, grid, above: false);
        var choices = new List<HeadChoice>();
        for (int k = -steps; k <= steps; k++)
        {
            Along along = k == 0 ? place : bay.Rounded(place + k * rules.ShiftStep);
            Head head = row.HeadAt(along);
            if (k != 0)
            {
                if (!bay.Holds(head, Tolerance.Rounding) || !outline.Holds(head, quantum))
                    continue;
                if (isTop && bay.Wall.Top.At(along) - head.Elevation > rules.TopMax + quantum)
                    continue;
                if (isBottom && head.Elevation - bay.Wall.Bottom.At(along) > rules.BottomMax + quantum)
                    continue;
            }
            choices.Add(new HeadChoice(bay.Face, head, ordinal, k * rules.ShiftStep, turnings, false, null));
        }
        return choices;
    }

    /// <summary>True where another row's nail on the grid is higher at a head's place, or lower: that one is bound to the top, or the bottom, there.</summary>
    private static bool HasOther(RowHeads row, RowHeads[] inBay, Head head, bool above)
    {
        Bay bay = row.Bay;
        double level = bay.LevelOf(head), reach = bay.HalfWindow;
        foreach (RowHeads other in inBay)
        {
            int at = other.Places.BinarySearch(head.Along - reach);
            for (at = at < 0 ? ~at : at; at < other.Places.Count && other.Places[at] <= head.Along + reach; at++)
            {
                double higher = bay.LevelOf(other.HeadAt(other.Places[at])) - level;
                if (above ? higher > Tolerance.SameLength : higher < -Tolerance.SameLength)
                    return true;
            }
        }
        return false;
    }
}

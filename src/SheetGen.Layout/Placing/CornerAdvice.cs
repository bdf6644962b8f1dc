using SheetGen.Model;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Says where corner_rows: shifted would help. Where nails near an outside corner are left unresolved or noted, the project is placed
/// once more with the rows of the up-station leg moved, and the figures are compared.
/// </summary>
public static class CornerAdvice
{
    public static IEnumerable<string> For(WallProject project, Site site, IReadOnlyList<RowState> found)
    {
        HashSet<Section> sections = [.. site.Faces.SelectMany(face => SectionsInTrouble(face, found))];
        if (sections.Count == 0)
            yield break;
        WallProject shifted = project with
        {
            Walls = [.. project.Walls.Select(w => w with { Sections = [.. w.Sections.Select(s => sections.Contains(s) ? s with { CornerRows = CornerRows.Shifted } : s)] })],
        };
        var again = new Site(shifted);
        var search = new LayoutSearch(again, RowTasks.Make(again), new PlacingOptions(), null);
        search.Run();
        Cost now = RowState.CostOf(found), then = RowState.CostOf(search.States);
        if (then.Unresolved > now.Unresolved || (then.Unresolved == now.Unresolved && then.Noted >= now.Noted))
            yield break;
        string names = string.Join(", ", sections.Select(s => s.Name).Order(StringComparer.Ordinal));
        yield return FormattableString.Invariant($"corner_rows: shifted in section {names} would leave {then.Unresolved} nails unresolved and {then.Noted} noted, ")
            + FormattableString.Invariant($"not {now.Unresolved} and {now.Noted} as now");
    }

    private static IEnumerable<Section> SectionsInTrouble(Face face, IReadOnlyList<RowState> found)
    {
        foreach (Leg leg in face.Legs.Where(l => l.EndCorner is { } corner && face.IsOutside(corner)))
        {
            foreach (RowState state in found.Where(s => s.Row.Bay.Face == face && s.Row.Bay.Section.CornerRows == CornerRows.Continuous))
            {
                Section section = state.Row.Bay.Section;
                bool isAround = section.Start < leg.End - 1e-9 && section.End > leg.End + 1e-9;
                if (isAround && state.Nails.Any(n => (n.IsUnresolved || n.Turning.IsNoted) && Math.Abs(n.Choice.Head.Along - leg.End) <= state.Row.LongestNail))
                    yield return section;
            }
        }
    }
}

using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Clearance;

/// <summary>Nails that a person must know of: unresolved, turned beyond the field tolerance, left out.</summary>
internal static class TurnFindings
{
    /// <param name="clear">The findings of clear distances, which tell what an unresolved nail hits.</param>
    public static IEnumerable<Finding> Unresolved(IReadOnlyList<Nail> nails, IReadOnlyList<Finding> clear, LengthUnit unit)
    {
        ILookup<string, Finding> byMark = clear.SelectMany(f => f.Nails, (f, mark) => (f, mark)).ToLookup(x => x.mark, x => x.f);
        foreach (Nail nail in nails)
        {
            if (nail.Status != NailStatus.Unresolved)
                continue;
            Finding? worst = byMark[nail.Mark].Where(f => f.Clear is not null).MinBy(f => f.Clear - f.Required);
            string? other = worst?.Obstruction ?? worst?.Nails.FirstOrDefault(m => m != nail.Mark) ?? nail.Reason?.Blocker;
            string hit = other is null ? "" : $" because of {other}";
            string figure = worst is { Clear: { } c, Required: { } r }
                ? $": {(c < 0 ? Figures.Depth(-c, unit) + " into it" : Figures.Beside(c, r, unit) + " clear")} where {Figures.Length(r, unit)} is required"
                : "";
            yield return Of(FindingCode.Unresolved, Severity.Error, nail) with
            {
                Nails = worst is null ? [nail.Mark] : [nail.Mark, .. worst.Nails.Where(m => m != nail.Mark)],
                Obstruction = worst?.Obstruction,
                Clear = worst?.Clear,
                Required = worst?.Required,
                Points = worst?.Points ?? [],
                Message = $"{nail.Mark} is unresolved{hit}{figure}; it is not to be drilled until the engineer decides",
            };
        }
    }

    public static IEnumerable<Finding> Noted(WallProject project, IReadOnlyList<Nail> nails)
    {
        double limit = project.Rules.Redirect.FieldTolerance + Tolerance.Rounding;
        foreach (Nail nail in nails)
        {
            double change = nail.Inclination - nail.Section.Inclination;
            if (Math.Abs(nail.Splay) <= limit && Math.Abs(change) <= limit)
                continue;
            var turns = new List<string>();
            if (nail.Splay != 0)
                turns.Add($"{Figures.Degrees(Math.Abs(nail.Splay))} to the {Figures.Side(nail)}");
            if (change != 0)
                turns.Add($"to an inclination of {Figures.Degrees(nail.Inclination)} instead of {Figures.Number(nail.Section.Inclination)}");
            yield return Of(FindingCode.NotedRedirect, Severity.Notice, nail) with
            {
                Message = $"{nail.Mark} is turned {string.Join(" and ", turns)}, beyond the field tolerance of "
                    + $"{Figures.Degrees(project.Rules.Redirect.FieldTolerance)}",
            };
        }
    }

    public static IEnumerable<Finding> LeftOut(NailLayout layout)
    {
        foreach (LeftOut place in layout.LeftOut)
        {
            yield return new Finding
            {
                Code = FindingCode.LeftOut,
                Severity = Severity.Notice,
                Wall = place.Wall,
                Nails = [place.Mark],
                Station = place.Wall.StationOf(place.Along),
                Elevation = place.Elevation,
                Message = $"Grid place {place.Mark} has no nail: {place.Reason.TrimEnd('.')}",
            };
        }
    }

    private static Finding Of(string code, Severity severity, Nail nail) => new()
    {
        Code = code,
        Severity = severity,
        Wall = nail.Wall,
        Nails = [nail.Mark],
        Station = nail.Station,
        Elevation = nail.Elevation,
        Message = "",
    };
}

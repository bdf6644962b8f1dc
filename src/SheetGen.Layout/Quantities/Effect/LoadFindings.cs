using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>
/// Changed nails that fall under the ratio the engineer asks for, or whose area exceeds the design's by more than the stated share: who
/// carries what, and what would cure it. Without a ratio or a share given there is no finding.
/// </summary>
internal static class LoadFindings
{
    /// <summary>Cures are tried for this many nails.</summary>
    private const int MostTried = 24;

    public static IReadOnlyList<Finding> Make(WallProject project, NailLayout layout, LayoutEffect effect)
    {
        NailEffect[] found = [.. effect.Changed.Where(n => LoadLimits.IsUnderRatio(n) || LoadLimits.IsOverArea(n))];
        var cures = new LoadCures(project, layout);
        Dictionary<string, NailEffect> byMark = effect.Nails.ToDictionary(n => n.Nail.Mark);
        return
        [
            .. found.Select((n, i) => Of(n, project.Unit, Beside(n, byMark, cures), Causes(n, effect, Lengths.Symbol(project.Unit)), i < MostTried ? cures.Of(n, byMark) : null)),
            .. effect.Sections.SelectMany(s => OnGrid(s, effect, project.Unit)),
        ];
    }

    private static Finding Of(NailEffect nail, LengthUnit unit, string beside, string causes, string? cure)
    {
        var parts = new List<string>();
        Nail n = nail.Nail;
        string zone = nail.Zone == FaceZone.Inner ? "" : $" ({Word(nail.Zone)})";
        if (LoadLimits.IsOverArea(nail))
        {
            parts.Add(FormattableString.Invariant(
                $"carries {Area(nail.Drawn.Area, unit)} of face, {nail.Drawn.Area / LoadLimits.Reference(nail):0.00} of the design's {Area(LoadLimits.Reference(nail), unit)}, where {1 + n.Section.Design!.AreaShare:0.00} is allowed{causes}"));
        }
        if (LoadLimits.IsUnderRatio(nail))
        {
            LimitCheck lowest = nail.Drawn.Lowest!;
            string before = nail.Grid?.Lowest is { } grid ? FormattableString.Invariant($" ({grid.Ratio:0.00} at its grid place)") : "";
            string force = Lengths.IsFoot(unit) ? "kip" : "kN";
            parts.Add(FormattableString.Invariant(
                $"ratio {lowest.Ratio:0.00} in {Named(lowest)}{before} under the {n.Section.Design!.LeastRatio:0.00} asked for: resistance {lowest.Resistance:0.0} {force}, load {lowest.Load:0.0} {force}{(parts.Count == 0 ? causes : "")}"));
        }
        return new Finding
        {
            Code = FindingCode.Load,
            Severity = Severity.Warning,
            Wall = n.Wall,
            Nails = [n.Mark],
            Station = n.Station,
            Elevation = n.Elevation,
            Message = $"{n.Mark}{zone}: {string.Join("; ", parts)}{beside}; {cure ?? "what would cure it was not tried: too many such nails"}",
        };
    }

    /// <summary>What made the area grow, or the ratio fall.</summary>
    private static string Causes(NailEffect nail, LayoutEffect effect, string unit)
    {
        SharedArea[] left = [.. effect.LeftOut.Where(s => s.Carriers.Any(c => c.Mark == nail.Nail.Mark))];
        var causes = new List<string>();
        if (left.Length > 0)
            causes.Add($"{string.Join(", ", left.Select(s => s.Place.Mark))} left out beside it");
        if (nail.Nail.IsMoved)
            causes.Add("moved");
        if (nail.Grid is { } grid && grid.Length != nail.Nail.Length)
            causes.Add(FormattableString.Invariant($"{nail.Nail.Length:0.##} {unit} long, {grid.Length:0.##} on the grid"));
        if (nail.Nail.Splay != 0 || nail.Nail.Inclination != nail.Nail.Section.Inclination)
            causes.Add(FormattableString.Invariant($"turned: {nail.Drawn.Square:0.000} of its force square to the face, {nail.Grid?.Square ?? nail.Drawn.Square:0.000} on the grid"));
        return causes.Count == 0 ? "" : " (" + string.Join(", ", causes) + ")";
    }

    /// <summary>What its neighbours in the row carry.</summary>
    private static string Beside(NailEffect nail, Dictionary<string, NailEffect> byMark, LoadCures cures)
    {
        string[] beside =
        [
            .. cures.NeighboursOf(nail.Nail).Select(m => byMark[m]).Select(n => FormattableString.Invariant($"{n.Nail.Mark} {n.AreaShare:0.00} of the design's area")
                + (n.Drawn.Lowest is { } lowest ? FormattableString.Invariant($" at ratio {lowest.Ratio:0.00}") : "")),
        ];
        return beside.Length == 0 ? "" : "; beside it " + string.Join(", ", beside);
    }

    /// <summary>One notice a section where the grid itself falls under the ratio, before anything was changed.</summary>
    private static IEnumerable<Finding> OnGrid(SectionEffect section, LayoutEffect effect, LengthUnit unit)
    {
        NailEffect[] under = [.. effect.Nails.Where(n => ReferenceEquals(n.Nail.Section, section.Section) && n.Grid is { } grid && LoadLimits.IsUnder(section.Section, grid))];
        if (under.Length == 0)
            yield break;
        NailEffect lowest = under.MinBy(n => n.Grid!.Lowest!.Ratio)!;
        LimitCheck check = lowest.Grid!.Lowest!;
        yield return new Finding
        {
            Code = FindingCode.Load,
            Severity = Severity.Notice,
            Wall = section.Wall,
            Nails = [lowest.Nail.Mark],
            Station = lowest.Nail.Station,
            Elevation = lowest.Nail.Elevation,
            Message = FormattableString.Invariant(
                $"section {section.Section.Name}: {under.Length} of its grid places {(under.Length == 1 ? "is" : "are")} under the ratio {section.Section.Design!.LeastRatio:0.00} asked for before anything is changed, the lowest {check.Ratio:0.00} in {Named(check)} at {lowest.Nail.Mark}, with {Area(lowest.Grid.Area, unit)} of face against {Area(lowest.DesignArea, unit)} by the spacings: check the values, or the grid"),
        };
    }

    /// <summary>A limit state in words, with its slip surface.</summary>
    internal static string Named(LimitCheck check)
    {
        string name = check.State switch
        {
            LimitState.Pullout => "pullout",
            LimitState.Bar => "tension of the bar",
            LimitState.Front => "head and pullout in front",
            LimitState.Flexure => "flexure of the facing",
            LimitState.Punching => "punching of the facing",
            LimitState.PermanentFlexure => "flexure of the permanent facing",
            LimitState.PermanentPunching => "punching of the permanent facing",
            _ => "tension of the studs",
        };
        return check.Surface is null ? name : $"{name}, slip surface {check.Surface}";
    }

    private static string Word(FaceZone zone) => zone switch
    {
        FaceZone.UpperRow => "upper row",
        FaceZone.Corner => "at a corner",
        _ => "at an end",
    };

    private static string Area(double area, LengthUnit unit) => Lengths.IsFoot(unit) ? FormattableString.Invariant($"{area:0.0} ft2") : FormattableString.Invariant($"{area:0.00} m2");
}

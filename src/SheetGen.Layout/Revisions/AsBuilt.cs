using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Revisions;

/// <summary>What has been drilled against the plan: tolerances, clearances, cover, and where planned nails that are in trouble could go.</summary>
public static class AsBuilt
{
    /// <summary>How far a head may stand from its place, an angle may be off, and a nail may be short.</summary>
    /// <param name="Head">Project units, along the wall and up.</param>
    /// <param name="Angle">Degrees.</param>
    /// <param name="Length">Project units.</param>
    public readonly record struct Tolerances(double Head, double Angle, double Length)
    {
        /// <summary>6 in (150 mm) and 3 degrees: from memory of guide specifications, to be checked against the project's own; no shortfall of length.</summary>
        public static Tolerances Default(LengthUnit unit) => new(Lengths.IsFoot(unit) ? 0.5 : 0.15, 3, Lengths.Quantum(unit));
    }

    public static AsBuiltReport Of(WallProject project, NailLayout plan, IReadOnlyList<AsBuiltNail> record, Tolerances tolerances)
    {
        Dictionary<string, AsBuiltNail> byMark = record.ToDictionary(r => r.Mark);
        DrawnNail[] standing = [.. plan.Nails.Select(n => byMark.TryGetValue(n.Mark, out AsBuiltNail? built)
            ? new DrawnNail(n, n.Wall, built.Station is double s ? n.Wall.LayoutLine.AlongOf(s) : n.Along, built.Elevation ?? n.Elevation, built.Splay, built.Inclination, built.Length)
            : new DrawnNail(n, n.Wall, n.Along, n.Elevation, null, null, null))];
        EditedLayout now = EditedLayout.Of(project, plan, standing, "as drilled");
        ClearanceReport was = Checker.Check(project, plan);
        HashSet<string> before = [.. was.Findings.Select(Key)];
        // Of the others the sheets say DO NOT DRILL.
        HashSet<string> stopped = [.. plan.Nails.Where(n => n.Status == NailStatus.Unresolved).Select(n => n.Mark).Except(was.AcceptedNails())];
        // Of a nail that is drilled nothing is said of whether it may be; what it is too close to is told by the clear distance.
        Finding[] found = [.. Checker.Check(project, now.Layout).Findings.Where(f => !before.Contains(Key(f)) && !(f.Code == FindingCode.Unresolved && byMark.ContainsKey(f.Nails[0])))];
        Dictionary<string, Nail> planned = plan.Nails.ToDictionary(n => n.Mark);
        Nail[] drilled = [.. now.Layout.Nails.Where(n => byMark.ContainsKey(n.Mark) && n.Kind != NailKind.Verification)];
        Nail[] grouted = [.. now.Layout.Nails.Where(n => byMark.TryGetValue(n.Mark, out AsBuiltNail? b) && b.Grout is not null)];
        return new AsBuiltReport
        {
            Layout = now.Layout,
            Drilled = [.. record.Select(r => r.Mark)],
            Misses = [.. now.Layout.Nails.Where(n => byMark.ContainsKey(n.Mark)).SelectMany(n => Missed(planned[n.Mark], n, tolerances, project.Unit, stopped.Contains(n.Mark)))],
            NewFindings = found,
            Open = OpenOf(project, plan, now.Layout, byMark, found),
            DrilledProduction = drilled.Length,
            PlannedProduction = plan.Nails.Count(n => n.Kind != NailKind.Verification),
            DrilledLength = drilled.Sum(n => n.Length),
            PlannedLengthOfDrilled = drilled.Sum(n => planned[n.Mark].Length),
            PlannedLength = plan.Nails.Where(n => n.Kind != NailKind.Verification).Sum(n => n.Length),
            Grout = record.Sum(r => r.Grout ?? 0),
            HoleVolumeOfGrouted = grouted.Sum(n => Math.PI * n.HoleDiameter * n.HoleDiameter / 4 * n.Length),
        };
    }

    private static string Key(Finding f) => $"{f.Code}|{f.Message}";

    private static IEnumerable<ToleranceMiss> Missed(Nail plan, Nail built, Tolerances t, LengthUnit unit, bool isStopped)
    {
        string Show(double v) => PlainNumber.Fixed(v, Lengths.Decimals(unit)) + " " + Lengths.Symbol(unit);
        if (isStopped)
            yield return new(plan.Mark, "drilled, though the plan says DO NOT DRILL");
        double along = built.Along - plan.Along, up = built.Elevation - plan.Elevation, splay = built.Splay - plan.Splay, inclination = built.Inclination - plan.Inclination;
        if (Math.Abs(along) > t.Head + Tolerance.SameLength)
            yield return new(plan.Mark, $"head {Show(Math.Abs(along))} {(along > 0 ? "up" : "down")}-station of its place; {Show(t.Head)} is the tolerance");
        if (Math.Abs(up) > t.Head + Tolerance.SameLength)
            yield return new(plan.Mark, $"head {Show(Math.Abs(up))} {(up > 0 ? "above" : "below")} its place; {Show(t.Head)} is the tolerance");
        if (Math.Abs(splay) > t.Angle + RevisionTolerance.SameTurn)
            yield return new(plan.Mark, PlainNumber.Text($"splay {built.Splay:0.##} instead of {plan.Splay:0.##} deg; {t.Angle:0.##} deg is the tolerance"));
        if (Math.Abs(inclination) > t.Angle + RevisionTolerance.SameTurn)
            yield return new(plan.Mark, PlainNumber.Text($"inclination {built.Inclination:0.##} instead of {plan.Inclination:0.##} deg; {t.Angle:0.##} deg is the tolerance"));
        if (plan.Length - built.Length > t.Length + Tolerance.SameLength)
            yield return new(plan.Mark, FormattableString.Invariant($"{built.Length:0.##} long instead of {plan.Length:0.##} {Lengths.Symbol(unit)}"));
    }

    /// <summary>Planned nails that new clearance findings name, with the places that a search with all drilled nails fixed gives them.</summary>
    private static List<OpenTrouble> OpenOf(WallProject project, NailLayout plan, NailLayout now, Dictionary<string, AsBuiltNail> drilled, Finding[] found)
    {
        Nail[] open = [.. now.Nails.Where(n => !drilled.ContainsKey(n.Mark) && n.Kind != NailKind.Verification
            && found.Any(f => f.Severity == Severity.Error && f.Clear is not null && f.Nails.Contains(n.Mark)))];
        if (open.Length == 0)
            return [];
        FixedNail[] pins = [.. now.Nails.Where(n => drilled.ContainsKey(n.Mark) && n.Kind != NailKind.Verification).Select(EditedPins.Kept)];
        NailLayout searched = Placer.Place(project with { FixedNails = [.. EditedPins.Untouched(project, plan.Nails.Where(n => drilled.ContainsKey(n.Mark))), .. pins] }, new PlacingOptions(false));
        Dictionary<string, Nail> again = searched.Nails.ToDictionary(n => n.Mark);
        return [.. open.Select(n => new OpenTrouble(
            n.Mark, string.Join("; ", found.Where(f => f.Clear is not null && f.Nails.Contains(n.Mark) && f.Code != FindingCode.Unresolved).Select(f => f.Message)),
            again.TryGetValue(n.Mark, out Nail? to) && to.Status != NailStatus.Unresolved ? Place(to, project.Unit) : ""))];
    }

    private static string Place(Nail n, LengthUnit unit) => PlainNumber.Text(
        $"{n.Wall.TextOf(n.Station, unit)}, elevation {PlainNumber.Fixed(n.Elevation, Lengths.Decimals(unit))}, splay {n.Splay:0.##} deg, {n.Inclination:0.##} deg down, {n.Length:0.##} {Lengths.Symbol(unit)}");
}

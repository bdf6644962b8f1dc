using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Cross-checks of a wall whose parts are good.</summary>
internal sealed class WallChecks(LengthUnit unit, ProblemList problems)
{
    private const double MostNails = 2e6;

    public void Check(Wall wall, MapItem map, Profiles profiles, IReadOnlyList<Section> sections)
    {
        if (HasHeight(wall, map, profiles))
        {
            CheckGrade(wall, map, profiles);
            CheckExposed(wall, map);
            foreach (Opening opening in wall.Openings)
                CheckOnFace(wall, profiles, $"the opening \"{Shown.Short(opening.Name)}\"", opening.Start, opening.End, opening.Bottom, opening.Top, opening.Spot);
            foreach (ClosedStretch closed in wall.ClosedStretches)
                CheckOnFace(wall, profiles, "the closed stretch", closed.Start, closed.End, closed.Bottom, closed.Top, closed.Spot);
            new ElevationSlips(unit, problems).Check(wall, map, profiles, [.. Levels(wall, wall.Top, wall.Bottom).Select(l => l.High - l.Low)]);
        }
        if (HasFace(wall, map, profiles))
            CheckStepsAtBreaks(wall, map, profiles);
        CheckCount(wall, map, sections);
    }

    /// <summary>Places where the wall's height may be least, with the two sides of vertical steps.</summary>
    private static IEnumerable<(double Along, double High, double Low)> Levels(Wall wall, Profile high, Profile low)
    {
        double[] places =
        [
            .. high.Points.Concat(low.Points).Select(p => p.Along).Append(wall.Start).Append(wall.End)
                .Where(s => s >= wall.Start && s <= wall.End).Distinct().Order(),
        ];
        foreach (double s in places)
        {
            if (s > wall.Start)
                yield return (s, high.Before(s), low.Before(s));
            if (s < wall.End)
                yield return (s, high.At(s), low.At(s));
        }
    }

    /// <summary>An opening above or below the face would change nothing, which nobody means.</summary>
    private void CheckOnFace(Wall wall, Profiles profiles, string what, double start, double end, double? bottom, double? top, SourceSpot spot)
    {
        (double Along, double High, double Low)[] levels =
        [
            .. Levels(wall, wall.Top, wall.Bottom).Where(l => l.Along > start && l.Along < end),
            (start, wall.Top.At(start), wall.Bottom.At(start)), (end, wall.Top.Before(end), wall.Bottom.Before(end)),
        ];
        (double high, double low) = (levels.Max(l => l.High), levels.Min(l => l.Low));
        if (bottom >= high - Tolerance.Length)
            problems.Add(ProblemCodes.Unusual, spot, FormattableString.Invariant($"{what} begins at {bottom}, above the face, which ends at {high:0.###} from {profiles.Show(start)} to {profiles.Show(end)}: it changes nothing"), "correct the elevations, or remove it");
        else if (top <= low + Tolerance.Length)
            problems.Add(ProblemCodes.Unusual, spot, FormattableString.Invariant($"{what} ends at {top}, below the face, which begins at {low:0.###} from {profiles.Show(start)} to {profiles.Show(end)}: it changes nothing"), "correct the elevations, or remove it");
    }

    private bool HasHeight(Wall wall, MapItem map, Profiles profiles)
    {
        double most = 0;
        foreach ((double along, double top, double bottom) in Levels(wall, wall.Top, wall.Bottom))
        {
            if (top < bottom - Tolerance.Length)
            {
                problems.Add(ProblemCodes.TopBelowBottom, map.SpotOf("top"), FormattableString.Invariant($"at {profiles.Show(along)} the top {top:0.###} is below the bottom {bottom:0.###}"), "correct the elevations", map.SpotOf("bottom"));
                return false;
            }
            most = Math.Max(most, top - bottom);
        }
        if (most > Tolerance.Length)
            return true;
        problems.Add(ProblemCodes.TopBelowBottom, map.SpotOf("top"), "the wall has no height: the top is the bottom everywhere", "correct the elevations", map.SpotOf("bottom"));
        return false;
    }

    private bool HasFace(Wall wall, MapItem map, Profiles profiles)
    {
        var face = new Face(wall);
        double[] elevations =
        [
            wall.Bottom.Points.Min(p => p.Elevation),
            Levels(wall, wall.Top, wall.Bottom).Max(l => l.High),
        ];
        foreach (double z in elevations)
        {
            foreach (LayoutPiece piece in wall.LayoutLine.Pieces.Where(p => p.IsCurved && p.Start < wall.End && p.End > wall.Start))
            {
                if (Math.Min(1 - piece.Curvature * wall.Side * face.OffsetAt(z), 1 - piece.CurvatureAt(piece.End) * wall.Side * face.OffsetAt(z)) > Tolerance.Length)
                    continue;
                problems.Add(ProblemCodes.FaceVanishes, map.SpotOf("face_offset"), FormattableString.Invariant($"at elevation {z:0.###} the face is at or beyond the centre of the curve at {profiles.Show(piece.Start)}"), "correct face_offset, batter or the radius");
                return false;
            }
            foreach (Leg leg in face.Legs)
            {
                double cut = (leg.StartCorner is null ? 0 : face.MitreCut(leg.StartCorner, z)) + (leg.EndCorner is null ? 0 : face.MitreCut(leg.EndCorner, z));
                if (leg.End - leg.Start - cut > Tolerance.Length)
                    continue;
                problems.Add(ProblemCodes.FaceVanishes, map.SpotOf("face_offset"), FormattableString.Invariant($"at elevation {z:0.###} the mitres leave nothing of the leg {profiles.Show(leg.Start)} to {profiles.Show(leg.End)}"), "correct face_offset, batter or the corners");
                return false;
            }
        }
        return true;
    }

    private void CheckStepsAtBreaks(Wall wall, MapItem map, Profiles profiles)
    {
        if (wall.Panels is null || map.Map("bottom")?.List("steps") is not { } list)
            return;
        foreach (ProfilePoint step in wall.BottomSteps.Skip(1))
        {
            double? nearest = wall.PanelBreaks.Count == 0 ? null : wall.PanelBreaks.MinBy(b => Math.Abs(b - step.Along));
            if (nearest is { } near && Math.Abs(near - step.Along) <= Lengths.Quantum(unit))
                continue;
            SourceSpot spot = list.Maps.First(i => i.NumberItem("station") is { } s && StationPlaces.Along(wall.LayoutLine, s, unit, problems) == step.Along).Spot;
            string where = nearest is { } place ? $"the nearest panel break is {profiles.Show(place)}" : "there is no panel break";
            problems.Add(ProblemCodes.StepOffBreak, spot, $"the bottom steps at {profiles.Show(step.Along)}; {where}", "move the step, or use from_grade");
        }
    }

    private void CheckGrade(Wall wall, MapItem map, Profiles profiles)
    {
        if (wall.FinishedGrade is not { } grade)
            return;
        foreach ((double along, double level, double bottom) in Levels(wall, grade, wall.Bottom))
        {
            if (level >= bottom - Tolerance.Length)
                continue;
            problems.Add(ProblemCodes.GradeBelowBottom, map.SpotOf("finished_grade"), FormattableString.Invariant($"at {profiles.Show(along)} the finished grade {level:0.###} is below the bottom {bottom:0.###}"), "check the elevations", map.SpotOf("bottom"));
            break;
        }
        foreach ((double along, double top, double level) in Levels(wall, wall.Top, grade))
        {
            if (top >= level - Tolerance.Length)
                continue;
            problems.Add(ProblemCodes.GradeBelowBottom, map.SpotOf("finished_grade"), FormattableString.Invariant($"at {profiles.Show(along)} the finished grade {level:0.###} is above the top {top:0.###}"), "check the elevations", map.SpotOf("top"));
            break;
        }
    }

    /// <summary>Warns where less than half of the face stands above the finished grade.</summary>
    private void CheckExposed(Wall wall, MapItem map)
    {
        if (wall.FinishedGrade is not { } grade)
            return;
        const int Steps = 400;
        double[] places = [.. Enumerable.Range(0, Steps).Select(i => wall.Start + (wall.End - wall.Start) * (i + 0.5) / Steps)];
        double[] exposed = [.. places.Select(s => Math.Clamp(wall.Top.At(s) - grade.At(s), 0, wall.Top.At(s) - wall.Bottom.At(s)))];
        double height = places.Sum(s => wall.Top.At(s) - wall.Bottom.At(s));
        if (exposed.Sum() >= 0.5 * height)
            return;
        problems.Add(ProblemCodes.MostlyBelowGrade, map.SpotOf("finished_grade"),
            FormattableString.Invariant($"only {exposed.Average():0.0} of {height / Steps:0.0} {Lengths.Symbol(unit)} of the wall stand above the finished grade, on the average"),
            "finished_grade is the ground in front, at the foot of the wall", map.SpotOf("top"));
    }

    private void CheckCount(Wall wall, MapItem map, IReadOnlyList<Section> sections)
    {
        double height = Math.Max(0, Levels(wall, wall.Top, wall.Bottom).Max(l => l.High - l.Low));
        double nails = sections.Sum(s => ((s.End - s.Start) / s.HorizontalSpacing + 1) * (height / s.VerticalSpacing + 1));
        if (nails > MostNails)
            problems.Add(ProblemCodes.TooManyNails, map.SpotOf("sections"), FormattableString.Invariant($"the grids ask for about {nails:0} nails; the limit is {MostNails:0}"), $"check spacings ({Lengths.Symbol(unit)}) and elevations");
    }
}

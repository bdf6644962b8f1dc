using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Walls with their cross-checks.</summary>
internal sealed class WallBuilder(Rules rules, LengthUnit unit, ProblemList problems)
{
    /// <summary>The wall; null where it is faulty, which is reported.</summary>
    public Wall? Build(WallName name)
    {
        MapItem map = name.Map;
        if (name.Line is not { } line || Stretches.Read(map, line, unit, problems) is not { } stretch)
            return null;
        (double start, double end) = stretch;
        if (start < -Tolerance.Length || end > line.Length + Tolerance.Length)
        {
            problems.Add(ProblemCodes.StationOffLine, map.SpotOf("stations"),
                $"the wall {Show(line, start)} to {Show(line, end)} leaves its layout line {Show(line, 0)} to {Show(line, line.Length)}",
                StationHint.Behind("correct the stations, or lengthen the layout line", line, [line.StationOf(start), line.StationOf(end)], unit));
        }
        var profiles = new Profiles(line, start, end, unit, problems);
        Profile? top = profiles.Read(map, "top");
        Profile? existing = profiles.Read(map, "existing_ground");
        Profile? grade = profiles.Read(map, "finished_grade");
        Wall? bare = Bare(name, start, end, top, existing, grade);
        Panels? panels = ReadPanels(map, line, start, end);
        IReadOnlyList<double> breaks = bare is null || panels is null ? [] : PanelJoints.Of(bare, panels);
        List<ProfilePoint>? steps = ReadBottom(map, profiles, bare, panels, breaks);
        Wall? wall = bare is null || steps is null ? null : bare with
        {
            BottomSteps = steps,
            Bottom = new Profile(StepProfile(steps, end)),
            Panels = panels,
            PanelBreaks = breaks,
        };
        var sections = new SectionBuilder(rules, unit, problems);
        IReadOnlyList<Section>? built = sections.Build(map, line, start, end, name.Name);
        IReadOnlyList<Opening> openings = new OpeningBuilder(unit, problems).Openings(map, line, start, end);
        IReadOnlyList<ClosedStretch> closed = new OpeningBuilder(unit, problems).ClosedStretches(map, line, start, end);
        IReadOnlyList<CrossSection> crossSections = new CrossSectionBuilder(unit, problems).Build(map, line, start, end);
        if (wall is not null && top is not null)
            new WallChecks(unit, problems).Check(wall with { Openings = openings, ClosedStretches = closed }, map, profiles, built ?? []);
        CheckFaces(name, start, end);
        if (wall is null || top is null || built is null || name.Name is null)
            return null;
        return wall with { Sections = built, Openings = openings, ClosedStretches = closed, CrossSections = crossSections };
    }

    /// <summary>The wall without bottom and sections, as far as its face and its profiles go.</summary>
    private Wall? Bare(WallName name, double start, double end, Profile? top, Profile? existing, Profile? grade)
    {
        MapItem map = name.Map;
        if (name.Side is not { } side || map.IsFaulty("face_offset") || map.IsFaulty("batter"))
            return null;
        Batter? batter = null;
        if (map.Map("batter") is { } lean)
        {
            if (lean.Number("angle") is not { } angle || lean.Number("elevation") is not { } elevation)
                return null;
            batter = new Batter(angle, elevation);
        }
        var level = new Profile([new ProfilePoint(start, 0)]);
        return new Wall
        {
            Name = name.Name ?? "",
            LayoutLine = name.Line!,
            RetainedSide = side > 0 ? Turn.Right : Turn.Left,
            Start = start,
            End = end,
            FaceOffset = map.Number("face_offset") ?? 0,
            Batter = batter,
            Top = top ?? level,
            Bottom = level,
            BottomSteps = [],
            ExistingGround = existing,
            FinishedGrade = grade,
            HeadsAboveGrade = rules.HeadsBelowGrade == HeadsBelowGrade.None && grade is not null,
            Facing = FacingBuilder.Facing(map.Map("facing")),
            Drainage = FacingBuilder.Drainage(map.Map("drainage"), unit, problems),
            Lifts = FacingBuilder.Lifts(map.Map("lifts")),
            Sections = [],
            Spot = map.Spot,
        };
    }

    /// <summary>Compares where the face looks with what the file says.</summary>
    private void CheckFaces(WallName name, double start, double end)
    {
        if (name.Map.Text("faces") is not { } faces || name.Side is not { } side)
            return;
        double looks = WallWords.FaceAzimuth(name.Line!, side, start, end), off = Math.Abs(Angles.NormalizeAzimuth(looks - Compass.AzimuthOf(faces) + Math.PI) - Math.PI);
        if (off > Math.PI * 3 / 8)
            problems.Add(ProblemCodes.FacesOther, name.Map.SpotOf("faces"), $"the face looks {Compass.Name(looks)}, with the soil {(side > 0 ? "right" : "left")} of the layout line; \"faces\" says {faces}", off > Math.PI * 5 / 8 ? $"did you mean retained_side: {(side > 0 ? "left" : "right")}?" : "correct the azimuth, or faces", name.Map.SpotOf("retained_side"));
    }

    private Panels? ReadPanels(MapItem map, LayoutLine line, double start, double end)
    {
        if (map.Map("panels") is not { } panels || panels.Number("width") is not { } width || panels.Number("height") is not { } height)
            return null;
        if (panels.IsFaulty("first_break"))
            return null;
        double? given = panels.NumberItem("first_break") is { } station ? StationPlaces.Along(line, station, unit, problems) : start;
        if (given is not { } first)
            return null;
        double legEnd = line.Corners.Where(c => c.Along > start && c.Along < end).Select(c => c.Along).FirstOrDefault(end);
        if (first < start - Tolerance.Length || first > legEnd + Tolerance.Length)
        {
            problems.Add(ProblemCodes.OutsideWall, panels.SpotOf("first_break"),
                $"the first panel break {Show(line, first)} is not between the wall's start {Show(line, start)} and the end of its first leg {Show(line, legEnd)}",
                "panels restart at corners: give a break of the first leg");
            return null;
        }
        return new Panels(width, height, first);
    }

    private List<ProfilePoint>? ReadBottom(
        MapItem map, Profiles profiles, Wall? bare, Panels? panels, IReadOnlyList<double> breaks)
    {
        if (map.Map("bottom") is not { } bottom)
            return null;
        if (bottom.Gives("steps"))
            return profiles.ReadSteps(bottom);
        if (bottom.Map("from_grade") is not { } rule)
            return null;
        foreach (string needed in new[] { "finished_grade", "panels" }.Where(k => !map.Gives(k)))
            problems.Add(ProblemCodes.FromGradeNeeds, rule.Spot, $"\"from_grade\" needs \"{needed}\" of the wall", $"add {needed}, or give the steps");
        if (bare?.FinishedGrade is null || panels is null || rule.IsFaulty("datum"))
            return null;
        if (rule.Number("embedment") is not { } embedment || rule.Number("rise") is not { } rise)
            return null;
        return GradeSteps.Of(bare.Start, bare.End, breaks, bare.FinishedGrade, embedment, rise, rule.Number("datum") ?? 0);
    }

    private static List<ProfilePoint> StepProfile(List<ProfilePoint> steps, double end)
    {
        var points = new List<ProfilePoint>();
        foreach (ProfilePoint step in steps)
        {
            if (points.Count > 0)
                points.Add(points[^1] with { Along = step.Along });
            points.Add(step);
        }
        points.Add(points[^1] with { Along = end });
        return points;
    }

    private string Show(LayoutLine line, double along) => line.StationText(along, unit);
}

using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Cross sections of the ground in front of a wall.</summary>
internal sealed class CrossSectionBuilder(LengthUnit unit, ProblemList problems)
{
    /// <summary>The cross sections in order of station; what is faulty is reported and left out.</summary>
    public IReadOnlyList<CrossSection> Build(MapItem wall, LayoutLine line, double start, double end)
    {
        string Show(double along) => line.StationText(along, unit);
        var sections = new List<CrossSection>();
        double? before = null;
        foreach (MapItem map in wall.Maps("cross_sections"))
        {
            List<CrossSectionPoint>? ground = Ground(map);
            if (map.NumberItem("station") is not { } station || StationPlaces.Along(line, station, unit, problems) is not { } along)
                continue;
            if (along < start - Tolerance.Length || along > end + Tolerance.Length)
            {
                problems.Add(ProblemCodes.OutsideWall, map.SpotOf("station"),
                    $"the cross section {Show(along)} is not between the wall's start {Show(start)} and end {Show(end)}", "correct the station");
            }
            else if (along <= before + Tolerance.Length)
            {
                problems.Add(ProblemCodes.StationOrder, map.SpotOf("station"),
                    $"the cross section {Show(along)} is not behind {Show(before!.Value)}", "put the cross sections in order of station");
            }
            else if (ground is not null)
            {
                sections.Add(new CrossSection(along, ground));
            }
            before = along;
        }
        return sections;
    }

    private List<CrossSectionPoint>? Ground(MapItem map)
    {
        if (map.List("ground") is not { Faulty: false } list)
            return null;
        var points = new List<CrossSectionPoint>();
        foreach (MapItem item in list.Maps)
        {
            if (item.Number("in_front") is not { } inFront || item.Number("elevation") is not { } elevation)
                return null;
            if (points.Count == 0 && inFront > Tolerance.Length)
            {
                problems.Add(ProblemCodes.CrossSectionPoints, item.SpotOf("in_front"), FormattableString.Invariant($"the ground starts {inFront} in front of the face"), "start at the face: [0, elevation]");
                return null;
            }
            if (points.Count > 0 && inFront < points[^1].InFront)
            {
                problems.Add(ProblemCodes.CrossSectionPoints, item.SpotOf("in_front"), FormattableString.Invariant($"the distance {inFront} comes behind {points[^1].InFront}"), "give the points from the face outward");
                return null;
            }
            points.Add(new CrossSectionPoint(inFront, elevation));
        }
        return points;
    }
}

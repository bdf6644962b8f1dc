using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>
/// Elevations that look like a slip of the decimal point or of a digit, told before anything is laid out: a wall higher than such walls are,
/// or a profile that jumps. The limits are this program's own.
/// </summary>
internal sealed class ElevationSlips(LengthUnit unit, ProblemList problems)
{
    /// <summary>Share of the wall's median height: a steep rise or fall of more than that between two points of a profile is a jump.</summary>
    private const double JumpShare = 0.5;

    private double HighWall => Lengths.IsFoot(unit) ? 60 : 18;

    private double HighestWall => Lengths.IsFoot(unit) ? 300 : 90;

    /// <param name="heights">Top less bottom at all places where it may be greatest.</param>
    public void Check(Wall wall, MapItem map, Profiles profiles, IReadOnlyList<double> heights)
    {
        List<Given> top = Points(wall, map, "top"), steps = map.Map("bottom") is { } bottom ? Points(wall, bottom, "steps") : [];
        Given[] all = [.. top, .. steps];
        if (all.Length == 0 || heights.Count == 0)
            return;
        double usual = Median([.. all.Select(p => p.Elevation)]), height = Median(heights), most = heights.Max();
        if (most > HighWall)
        {
            Given odd = all.MaxBy(p => Math.Abs(p.Elevation - usual))!;
            ProblemCode code = most > HighestWall ? ProblemCodes.WallTooHigh : ProblemCodes.WallHigh;
            string limit = FormattableString.Invariant($"{(most > HighestWall ? HighestWall : HighWall):0} {Lengths.Symbol(unit)}");
            problems.Add(code, odd.Spot,
                FormattableString.Invariant($"the wall is {most:0.##} {Lengths.Symbol(unit)} high, over {limit}; {odd.Elevation:0.###} at {profiles.Show(odd.Along)} lies furthest from its other elevations"),
                "correct the elevation");
        }
        Jumps(top, "the top", usual, height, profiles);
        Jumps(steps, "the bottom", usual, height, profiles);
        Jumps(Points(wall, map, "existing_ground"), "the existing ground", usual, height, profiles);
        Jumps(Points(wall, map, "finished_grade"), "the finished grade", usual, height, profiles);
    }

    private sealed record Given(double Along, double Elevation, SourceSpot Spot);

    private List<Given> Points(Wall wall, MapItem map, string key)
    {
        if (!map.Gives(key))
            return [];
        return [.. map.Maps(key).Where(i => i.NumberItem("station") is not null && i.Number("elevation") is not null)
            .Select(i => new Given(StationPlaces.Along(wall.LayoutLine, i.NumberItem("station")!, unit, problems) ?? double.NaN, i.Number("elevation")!.Value, i.Spot)).Where(g => !double.IsNaN(g.Along))];
    }

    private void Jumps(List<Given> points, string what, double usual, double height, Profiles profiles)
    {
        var told = new HashSet<Given>();
        for (int i = 1; i < points.Count; i++)
        {
            Given a = points[i - 1], b = points[i];
            double rise = Math.Abs(b.Elevation - a.Elevation);
            bool isSteps = what == "the bottom", isSteep = isSteps || rise > b.Along - a.Along;
            if (!isSteep || rise <= JumpShare * height)
                continue;
            Given odd = Math.Abs(b.Elevation - usual) >= Math.Abs(a.Elevation - usual) ? b : a;
            if (told.Add(odd))
                problems.Add(ProblemCodes.ElevationJump, odd.Spot,
                    FormattableString.Invariant($"{what} jumps by {rise:0.##} {Lengths.Symbol(unit)} between {profiles.Show(a.Along)} and {profiles.Show(b.Along)}, more than half of the wall's median height"),
                    "check the elevation");
        }
    }

    /// <summary>The middle value, the lower of two.</summary>
    private static double Median(IReadOnlyList<double> values) => values.Order().ElementAt((values.Count - 1) / 2);
}

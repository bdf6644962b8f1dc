using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Pipes: by points with elevations, or by one elevation and a grade; along points or along the layout line.</summary>
internal sealed class PipeBuilder(Points points, ProblemList problems)
{
    public Obstruction? Build(MapItem map)
    {
        double? diameter = map.Number("diameter"), bore = map.Number("bore");
        bool invert = map.Text("elevation_is") == "invert" || map.Gives("invert");
        string inverted = map.Gives("invert") ? "invert" : "elevation_is";
        if (invert && !map.Gives("bore"))
            problems.Add(ProblemCodes.PipeBore, map.SpotOf(inverted), "the elevation is the invert: this needs \"bore\"", "add bore: (inside diameter)");
        if (bore > diameter)
            problems.Add(ProblemCodes.PipeBore, map.SpotOf("bore"), FormattableString.Invariant($"the bore {bore} is larger than the outside diameter {diameter}"), "diameter is the outside", map.SpotOf("diameter"));
        if (points.Course(map) is not { } course || Levels(map, course) is not { } levels)
            return null;
        if (diameter is not { } outside || map.IsFaulty("elevation_is") || (invert && bore is null))
            return null;
        List<Vector3D> axis = [.. course.Zip(levels, (p, z) => p.At(z + (invert ? bore!.Value / 2 : 0)))];
        Solid[] pieces = [.. axis.Zip(axis.Skip(1), (a, b) => new CapsuleSolid(a, b, outside / 2))];
        return ObstructionBuilder.New(ObstructionKind.Pipe, pieces, axis) with
        {
            Diameter = outside,
            Top = axis.Max(p => p.Z) + outside / 2,
            Bottom = axis.Min(p => p.Z) - outside / 2,
        };
    }

    /// <summary>The elevation at each point: given, or from the one that is given by the grade; null where faulty, which is reported.</summary>
    private List<double>? Levels(MapItem map, List<Vector2D> course)
    {
        MapItem[] maps = [.. map.Maps("points")];
        string? atStart = new[] { "elevation", "invert" }.FirstOrDefault(map.Gives);
        if (map.Gives("elevation") && map.Gives("invert"))
        {
            problems.Add(ProblemCodes.ExactlyOne, map.SpotOf("invert"), "a pipe takes elevation or invert, not both", "keep one of them", map.SpotOf("elevation"));
            return null;
        }
        if (map.IsFaulty("grade") || (atStart is not null && map.IsFaulty(atStart)) || maps.Any(m => m.IsFaulty("elevation")))
            return null;
        int[] given = [.. Enumerable.Range(0, maps.Length).Where(i => maps[i].Gives("elevation"))];
        if (atStart is null && !map.Gives("grade") && maps.Length > 0)
        {
            foreach (MapItem point in maps.Where(m => !m.Gives("elevation")))
                problems.Add(ProblemCodes.MissingKey, point.Spot, "\"elevation\" is missing in \"point\"", "for example elevation: 108; or give the pipe a grade");
            return given.Length == maps.Length ? [.. maps.Select(m => m.Number("elevation")!.Value)] : null;
        }
        if (given.Length + (atStart is null ? 0 : 1) != 1)
        {
            string found = given.Length == 0 && atStart is null ? "none is given" : FormattableString.Invariant($"{given.Length + (atStart is null ? 0 : 1)} are given");
            problems.Add(ProblemCodes.ExactlyOne, map.SpotOf(map.Gives("grade") ? "grade" : "name"), $"a pipe with a grade or offset_line takes one elevation: {found}", "give elevation or invert once, at the pipe or at one of its points");
            return null;
        }
        int from = given.Length == 1 ? given[0] : 0;
        double z = given.Length == 1 ? maps[from].Number("elevation")!.Value : map.Number(atStart!)!.Value, grade = map.Number("grade") ?? 0;
        double[] run = [0, .. course.Zip(course.Skip(1), (a, b) => (b - a).Length)];
        for (int i = 1; i < run.Length; i++)
            run[i] += run[i - 1];
        return [.. run.Select(r => z + grade * (r - run[from]))];
    }
}

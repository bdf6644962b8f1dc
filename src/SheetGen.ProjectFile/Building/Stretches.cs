using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Pairs of stations.</summary>
internal static class Stretches
{
    /// <summary>Start and end along the line of stations: [a, b]; null where faulty or not in order, which is reported.</summary>
    public static (double Start, double End)? Read(MapItem map, LayoutLine line, LengthUnit unit, ProblemList problems)
    {
        if (map.List("stations") is not { Faulty: false } list || list.Numbers.Count != 2)
            return null;
        double? first = StationPlaces.Along(line, list.Numbers[0], unit, problems), last = StationPlaces.Along(line, list.Numbers[1], unit, problems);
        if (first is not { } start || last is not { } end)
            return null;
        if (end - start > Tolerance.Length)
            return (start, end);
        problems.Add(ProblemCodes.StationOrder, list.Spot, $"the stations {Show(list.Numbers[0], unit)} and {Show(list.Numbers[1], unit)} do not grow", "write [first, last]");
        return null;
    }

    /// <summary>As <see cref="Read"/>, and within the wall.</summary>
    public static (double Start, double End)? ReadInWall(
        MapItem map, string what, LayoutLine line, double wallStart, double wallEnd, LengthUnit unit, ProblemList problems)
    {
        if (Read(map, line, unit, problems) is not { } stretch)
            return null;
        if (stretch.Start >= wallStart - Tolerance.Length && stretch.End <= wallEnd + Tolerance.Length)
            return stretch;
        problems.Add(ProblemCodes.OutsideWall, map.SpotOf("stations"),
            $"{what} {line.StationText(stretch.Start, unit)} to {line.StationText(stretch.End, unit)} reaches out of the wall {line.StationText(wallStart, unit)} to {line.StationText(wallEnd, unit)}",
            StationHint.Behind("correct the stations", line, [line.StationOf(stretch.Start), line.StationOf(stretch.End)], unit));
        return null;
    }

    private static string Show(NumberItem station, LengthUnit unit) => new PrintedStation(station.Value).Text(unit);
}

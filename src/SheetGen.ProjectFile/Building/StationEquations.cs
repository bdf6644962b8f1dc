using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>The station equations of a layout line.</summary>
internal static class StationEquations
{
    /// <summary>The equations in order; null where one is faulty, out of order or off the line, or makes a station exist three times, which is reported.</summary>
    /// <param name="length">Length of the layout line.</param>
    public static IReadOnlyList<StationEquation>? Read(MapItem map, double startStation, double length, LengthUnit unit, ProblemList problems)
    {
        var equations = new List<StationEquation>();
        if (map.List("station_equations") is not { } list)
            return equations;
        if (list.Faulty)
            return null;
        double at = 0, ahead = startStation;
        foreach (MapItem item in list.Maps)
        {
            if (item.NumberItem("back") is not { } back || item.NumberItem("ahead") is not { } next)
                return null;
            double along = at + back.Value - ahead;
            if (along <= at || along >= length)
            {
                string range = $"{new PrintedStation(ahead).Text(unit)} to {new PrintedStation(ahead + length - at).Text(unit)}";
                problems.Add(ProblemCodes.StationOffLine, back.Spot, $"the back station {new PrintedStation(back.Value).Text(unit)} is not between {range}, the stations of the line there", "give the equations in order along the line, each with the back station of its place");
                return null;
            }
            equations.Add(new StationEquation(along, new(back.Value), new(next.Value)));
            (at, ahead) = (along, next.Value);
        }
        if (Thrice(new Stationing(startStation, equations), length) is not { } thrice)
            return equations;
        problems.Add(ProblemCodes.BadStation, list.Spot, $"with these equations station {thrice.Text(unit)} exists three times, so that BK and AH do not tell which is meant", "correct the equations");
        return null;
    }

    private static PrintedStation? Thrice(Stationing stations, double length)
    {
        PrintedStation[] ends = [new(stations.StartStation), .. stations.Equations.SelectMany(e => new[] { e.Back, e.Ahead }), stations.Printed(length)];
        PrintedStation[] sorted = [.. ends.Distinct().Order()];
        for (int i = 0; i + 1 < sorted.Length; i++)
        {
            var middle = new PrintedStation((sorted[i].Number + sorted[i + 1].Number) / 2);
            if (stations.PlacesOf(middle).Count(a => a >= 0 && a <= length) > 2)
                return middle;
        }
        return null;
    }
}

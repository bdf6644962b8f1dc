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
                string range = $"{Stations.Format(ahead, unit)} to {Stations.Format(ahead + length - at, unit)}";
                problems.Add(ProblemCodes.StationOffLine, back.Spot, $"the back station {Stations.Format(back.Value, unit)} is not between {range}, the stations of the line there", "give the equations in order along the line, each with the back station of its place");
                return null;
            }
            equations.Add(new StationEquation(along, back.Value, next.Value));
            (at, ahead) = (along, next.Value);
        }
        if (Thrice(new Stationing(startStation, equations), length) is not { } thrice)
            return equations;
        problems.Add(ProblemCodes.BadStation, list.Spot, $"with these equations station {Stations.Format(thrice, unit)} exists three times, so that BK and AH do not tell which is meant", "correct the equations");
        return null;
    }

    private static double? Thrice(Stationing stations, double length)
    {
        double[] ends = [stations.StartStation, .. stations.Equations.SelectMany(e => new[] { e.Back, e.Ahead }), stations.Printed(length)];
        double[] sorted = [.. ends.Distinct().Order()];
        for (int i = 0; i + 1 < sorted.Length; i++)
        {
            double middle = (sorted[i] + sorted[i + 1]) / 2;
            if (stations.PlacesOf(middle).Count(a => a >= 0 && a <= length) > 2)
                return middle;
        }
        return null;
    }
}

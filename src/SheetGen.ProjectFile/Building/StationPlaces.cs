using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Where a station that the file gives lies on its layout line.</summary>
internal static class StationPlaces
{
    /// <summary>Distance along the line; null where the station does not exist there, or twice, which is reported.</summary>
    public static double? Along(LayoutLine line, NumberItem station, LengthUnit unit, ProblemList problems)
    {
        if (station.Mark == StationMark.Along)
            return station.Value;
        Stationing stations = line.Stationing;
        if (stations.Equations.Count == 0)
        {
            if (station.Mark == StationMark.None)
                return line.AlongOf(station.Value);
            problems.Add(ProblemCodes.BadStation, station.Spot, $"BK and AH go with station equations, and layout line \"{Shown.Short(line.Name)}\" has none", "write the station alone, or add station_equations");
            return null;
        }
        var printed = new PrintedStation(station.Value);
        IReadOnlyList<(int Zone, double Along)> places = stations.ZonesOf(printed);
        string shown = printed.Text(unit);
        if (station.Mark != StationMark.None && places.Count > 0)
        {
            // At the equation itself, and wherever the station exists once, the word must still agree with the side.
            (int Zone, double Along) meant = station.Mark == StationMark.Back ? places[0] : places[^1];
            bool agrees = station.Mark == StationMark.Back ? meant.Zone < stations.Equations.Count : meant.Zone > 0;
            if (agrees)
                return meant.Along;
        }
        if (places.Count == 0 || station.Mark != StationMark.None)
        {
            problems.Add(ProblemCodes.BadStation, station.Spot, $"there is no station {shown}{(station.Mark == StationMark.Back ? " BK" : station.Mark == StationMark.Ahead ? " AH" : "")} on layout line \"{Shown.Short(line.Name)}\"", $"its station equations: {InWords(stations, unit)}");
            return null;
        }
        if (places.Count == 1 || Math.Abs(places[^1].Along - places[0].Along) < Tolerance.Length)
            return places[0].Along;
        problems.Add(ProblemCodes.BadStation, station.Spot, $"station {shown} exists twice on layout line \"{Shown.Short(line.Name)}\"", $"write {shown} BK or {shown} AH");
        return null;
    }

    private static string InWords(Stationing stations, LengthUnit unit) =>
        string.Join(", ", stations.Equations.Select(e => $"{e.Back.Text(unit)} BK = {e.Ahead.Text(unit)} AH"));
}

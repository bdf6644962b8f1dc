using SheetGen.Model.Units;

namespace SheetGen.Model.Results;

/// <summary>Printing of stretches.</summary>
public static class StationRange
{
    public static string Of(Wall wall, double start, double end, LengthUnit unit) =>
        Stations.Format(wall.StationOf(start), unit) + " to " + Stations.Format(wall.StationOf(end), unit);
}

using SheetGen.Model.Units;

namespace SheetGen.Model.Results;

/// <summary>Printing of stretches.</summary>
public static class StationRange
{
    public static string Of(Wall wall, double start, double end, LengthUnit unit) =>
        wall.StationText(start, unit) + " to " + wall.StationText(end, unit);
}

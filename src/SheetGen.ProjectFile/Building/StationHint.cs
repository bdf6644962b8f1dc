using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.ProjectFile.Building;

/// <summary>Stations written without their plus: 212.5 for 212+50.</summary>
internal static class StationHint
{
    /// <summary>The station that was probably meant: far off the line as it stands, on it where the point is a plus; else null.</summary>
    public static string? Meant(LayoutLine line, double station, LengthUnit unit)
    {
        if (line.Stationing.Equations.Count > 0)
            return null;
        double along = line.AlongOf(station), full = PrintedStation.Full(unit), meant = line.AlongOf(station * full);
        bool far = along < -full || along > line.Length + full;
        return far && meant >= -Tolerance.Length && meant <= line.Length + Tolerance.Length ? new PrintedStation(station * full).Text(unit, 0) : null;
    }

    /// <summary>The hint behind another one; empty where there is none.</summary>
    public static string Behind(string hint, LayoutLine line, IEnumerable<double> stations, LengthUnit unit) =>
        stations.Select(s => Meant(line, s, unit)).FirstOrDefault(m => m is not null) is { } meant ? $"did you mean {meant}?" : hint;
}

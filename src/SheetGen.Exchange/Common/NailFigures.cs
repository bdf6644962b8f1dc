using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Exchange.Common;

/// <summary>Figures of a nail that surveyors and maps ask for.</summary>
internal static class NailFigures
{
    /// <summary>Azimuth of the hole in plan, degrees clockwise from grid north, 0 to under 360, rounded to 6 decimals.</summary>
    public static double Azimuth(Nail nail)
    {
        double degrees = Math.Round(Angles.ToDegrees(nail.Hole.Direction.Plan.Azimuth), 6);
        return degrees >= 360 ? 0 : degrees;
    }

    /// <summary>The printed station as a number; at a station equation the ahead station.</summary>
    public static double Station(Nail nail)
    {
        LayoutLine line = nail.Wall.LayoutLine;
        return line.Stationing.Equations.Count == 0 ? nail.Station : line.Stationing.Printed(line.AlongOf(nail.Station)).Number;
    }

    /// <summary>The station in words, with BK or AH where it exists twice.</summary>
    public static string StationText(Nail nail, LengthUnit unit) => nail.Wall.LayoutLine.StationText(nail.Wall.LayoutLine.AlongOf(nail.Station), unit);

    /// <summary>The nails in the order in which they are set out: by layout line and station, in one station from the top down.</summary>
    public static IReadOnlyList<Nail> InStationOrder(ExchangeInput input)
    {
        List<string> lines = [.. input.Project.LayoutLines.Select(l => l.Name)];
        return
        [
            .. input.Layout.Nails.OrderBy(n => lines.IndexOf(n.Wall.LayoutLine.Name)).ThenBy(n => n.Along).ThenByDescending(n => n.Elevation)
                .ThenBy(n => n.Mark, StringComparer.Ordinal),
        ];
    }

    /// <summary>What must not be overlooked in the field; empty for an ordinary nail.</summary>
    public static string Remark(Nail nail) => nail switch
    {
        { Status: NailStatus.Unresolved } => "DO NOT DRILL: unresolved, the engineer decides",
        { Kind: NailKind.Verification } => "verification test nail, sacrificial",
        { Kind: NailKind.Proof } => "proof test",
        { Status: NailStatus.Noted } => "turned beyond the field tolerance, see sheets",
        _ => "",
    };

    /// <summary>A point with the project's origin added back.</summary>
    public static Vector3D Absolute(ExchangeInput input, Vector3D point) =>
        new(point.N + input.Project.Origin.N, point.E + input.Project.Origin.E, point.Z);
}

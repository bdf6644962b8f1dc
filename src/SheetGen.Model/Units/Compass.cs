namespace SheetGen.Model.Units;

/// <summary>Points of the compass.</summary>
public static class Compass
{
    /// <summary>The eight points, clockwise from north.</summary>
    public static IReadOnlyList<string> Points { get; } =
        ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];

    /// <summary>The nearest point of an azimuth in radians.</summary>
    public static string Name(double azimuth) =>
        Points[(int)Math.Round(Angles.NormalizeAzimuth(azimuth) / (Math.PI / 4), MidpointRounding.AwayFromZero) % 8];

    /// <summary>Azimuth of a point in radians.</summary>
    /// <exception cref="ArgumentException">No such point.</exception>
    public static double AzimuthOf(string point)
    {
        int index = Points.ToList().IndexOf(point);
        return index >= 0 ? index * Math.PI / 4 : throw new ArgumentException("no point of the compass", nameof(point));
    }
}
